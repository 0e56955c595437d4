"""The chains of equations on a page, and whether what each says is so."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from probgen.quantities.printing import latex
from probgen.wording.block import Block, Display, Itemize, Math, Paragraph
from tests.wording.formula_reader import (
    ALONG,
    Reader,
    Size,
    Told,
    UnknownSymbolError,
    World,
    read,
)

NOTHING: Told = {}

RELATION = re.compile(r"(\\rightarrow|\\approx|\\Rightarrow|\\leq|\\geq|=|<|>|→|≈|≤|≥)")
ANYWHERE = ("V", "M")
"""What acts inside a body, at whatever place is spoken of."""
SIGNS = {"→": r"\rightarrow", "≈": r"\approx", "≤": r"\leq", "≥": r"\geq"}


@dataclass(frozen=True)
class Chain:
    """What is said of one left side: relation and formula, one after the other."""

    links: tuple[tuple[str, str], ...]

    def __str__(self) -> str:
        return " ".join(f"{relation} {text}" for relation, text in self.links)


def chain_of(text: str) -> Iterator[tuple[str, str]]:
    parts = RELATION.split(text)
    yield "", parts[0].strip()
    for relation, part in zip(parts[1::2], parts[2::2], strict=True):
        yield SIGNS.get(relation, relation), part.strip()


def chains(blocks: Sequence[Block]) -> Iterator[Chain]:
    """Every chain of equations on a page, from its LaTeX."""
    for block in blocks:
        match block:
            case Display(rows):
                links: list[tuple[str, str]] = []
                for row in rows:
                    left = latex(row.left)
                    if left and links:
                        yield Chain(tuple(links))
                        links = []
                    written = f"{left} {row.relation} {latex(row.right)}"
                    links += list(chain_of(written))[0 if left else 1 :]
                yield Chain(tuple(links))
            case Paragraph(inlines):
                yield from inline(inlines)
            case Itemize(items):
                for item in items:
                    yield from inline(item)


def inline(inlines: Sequence[object]) -> Iterator[Chain]:
    for each in inlines:
        if isinstance(each, Math):
            links = tuple(chain_of(latex(each.formula)))
            if len(links) > 1:
                yield Chain(links)


def sizes(chain: Chain, names: World, told: Told) -> list[tuple[str, Size]]:
    """The parts of a chain that have a value; the name of a balance has none."""
    return [
        (relation, read(text, names, told))
        for relation, text in chain.links
        if text
        and not text.startswith(r"\textstyle\sum")
        and (text not in ANYWHERE or text in names)
    ]


ANGLES = math.radians(0.05)
"""What a sine may be off when its angle is printed to a tenth of a degree."""


def close(one: float, other: float, slack: float) -> bool:
    return abs(one - other) <= slack * (1.0 + 1e-9) + 1e-12


def check_numbers(chain: Chain, names: World, figures: int, told: Told = NOTHING) -> int:
    """Numbers put in give the printed result within its last digit; how many lines were read.

    told: as in `formula_reader.read`.  A result after an arrow is the one before it, rounded to so
    many figures.
    """
    parts = [(relation, size) for relation, size in sizes(chain, names, told) if not size.named]
    results = [place for place, (_, size) in enumerate(parts) if size.last is not None]
    count = 0
    for place, (relation, size) in enumerate(parts):
        before = parts[place - 1][1]
        if relation == r"\rightarrow":
            assert size.last is not None, f"an arrow to no number: {chain}"
            half = max(size.last, rounding(size.value, size.last, figures)) / 2
            assert close(before.value, size.value, half), f"rounded wrongly: {chain}"
            assert before.kind == size.kind, f"units differ: {chain}"
        elif size.last is None:
            result = next((parts[at][1] for at in results if at > place), None)
            if result is None:  # two ways of writing one thing, with printed angles
                assert close(size.value, parts[0][1].value, ANGLES), f"not the same: {chain}"
                continue
            assert size.kind == result.kind, f"units differ: {chain}"
            assert close(size.value, result.value, slack_of(chain, result)), f"not so: {chain}"
            count += 1
        elif relation == "=" and place and before.last is not None:  # the same in another unit
            assert close(before.value, size.value, size.last / 2), f"not the same: {chain}"
    return count


def rounding(value: float, last: float, figures: int) -> float:
    """One unit of the last of so many figures; zeros before the point need not be figures."""
    digits = round(abs(value) / last)
    return last * 10.0 ** max(len(str(digits)) - figures, 0)


def slack_of(chain: Chain, result: Size) -> float:
    """One unit of the result's last digit; for a check that is zero, of its rounded terms."""
    assert result.last is not None
    if result.value != 0.0:
        return result.last
    terms = [Reader(part).whole() for part in _terms(chain.links[-2][1].strip("-"))]
    rounded = sum(term.last or 0.0 for term in terms) / 2
    noise = 1e-12 * sum(abs(term.value) for term in terms)
    return rounded if chain.links[-1][0] == r"\approx" else noise


def _terms(text: str) -> Iterator[str]:
    """The terms of a sum, without their signs; what stands in parentheses is one of them, and an
    exponent of ten is part of one.
    """
    term, depth = "", 0
    for mark in text:
        depth += (mark in "({") - (mark in ")}")
        if depth == 0 and mark in "+-":
            yield term.strip()
            term = ""
        else:
            term += mark
    yield term.strip()


def check_symbols(chain: Chain, worlds: Sequence[World], told: Told = NOTHING) -> int:
    """What is printed in symbols is so, with the unrounded values, in one of the worlds."""
    texts = [text for relation, text in chain.links]
    if texts[0] == ALONG:  # it says how far along, and claims nothing
        return 0
    for names in worlds:
        try:
            parts = [(r, size) for r, size in sizes(chain, names, told) if size.named]
        except UnknownSymbolError:
            continue
        exact = [size for relation, size in parts if relation in ("", "=")]
        zero = any(text == "0" for text in texts) and texts[0].startswith(r"\textstyle")
        wanted = 0.0 if zero or not exact else exact[0].value
        scale = max((abs(size.value) for size in exact), default=1.0)
        scale = max([scale, *(abs(value) for value, _ in names.values())]) if zero else scale
        if all(close(size.value, wanted, 1e-7 * max(scale, 1.0)) for size in exact):
            return len(exact)
    raise AssertionError(f"not so with the unrounded values: {chain}")
