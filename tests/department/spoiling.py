"""Templates changed in one way, at a place of a seed's choice, by the kind of the change."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from contextlib import suppress
from decimal import Decimal

from probgen.bank.bank import default_bank
from probgen.bank.customary import systems_of
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.department.change import Kind
from probgen.input.fault import InputError
from probgen.input.toml import parse_toml

New = Callable[[re.Match[str]], str]
Change = Callable[[str, random.Random], str]

_RANGE = r"from = [-\d.]+, to = (?P<to>-?\d+(?:\.\d+)?), step = (?P<step>\d+(?:\.\d+)?)"
_SIZE = r'(?m)^(?:mass|force|magnitude|moment|size|stiffness) = (?P<it>"[^"]+")$'
_DIRECTION = r'(?m)^direction = (?P<it>"[^"]+"|-?[\d.]+)$'


def _at_one(
    text: str, pattern: str, seed: random.Random, new: Callable[[re.Match[str]], str]
) -> str:
    found = list(re.finditer(pattern, text))
    if not found:
        return text
    one = seed.choice(found)
    return text[: one.start()] + new(one) + text[one.end() :]


def _wider(found: re.Match[str]) -> str:
    to = Decimal(found["to"]) + Decimal(found["step"])
    return found[0].replace(f"to = {found['to']}", f"to = {to}")


def _turned(found: re.Match[str]) -> str:
    old = found["it"].strip('"')
    return found[0].replace(found["it"], f'"{old} + 3"')


def _scaled(found: re.Match[str]) -> str:
    old = found["it"].strip('"')
    return found[0].replace(found["it"], f'"({old})*1.01"')


def comment(text: str, seed: random.Random) -> str:
    return _at_one(text, r"(?m)^\[", seed, lambda found: f"# to be looked at\n{found[0]}")


def particulars(text: str, seed: random.Random) -> str:
    levels = lambda found: f"level = {int(found['it']) % 5 + 1}"  # noqa: E731
    added: list[Change] = [
        lambda text, seed: _at_one(text, r"(?m)^level = (?P<it>\d)", seed, levels),
        lambda text, seed: _at_one(text, r"(?m)^goals = \[", seed, lambda f: f'{f[0]}"a goal", '),
        lambda text, seed: re.sub(r"(?m)^minutes = .*$", "minutes = 17", text),
        lambda text, seed: re.sub(r"(?m)^author = .*$", 'author = "A. N."', text),
    ]
    return seed.choice(added)(text, seed)


def words(text: str, seed: random.Random) -> str:
    start = text.index('statement = """')
    end = text.index('"""', start + 15)
    said = _at_one(text[start:end], r" (the|a|an|is|of) ", seed, lambda f: f" {f[1]} very ")
    if seed.random() < 0.3:
        return _at_one(text, r'(?m)^title = "', seed, lambda f: f"{f[0]}New: ")
    return text[:start] + said + text[end:]


def figure(text: str, seed: random.Random) -> str:
    """A word of [depicts] left out that is not what the figure shows anyway."""
    start = text.find("[depicts]")
    if start < 0:
        return text
    made = text[:start] + _at_one(text[start:], r"(?m)^[\w.]+ = .*\n", seed, lambda found: "")
    with suppress(InputError):
        if read_template(made, "made").depicts == read_template(text, "before").depicts:
            return text
    return made


def numbers(text: str, seed: random.Random) -> str:
    return _at_one(text, _RANGE, seed, _wider)


def physics(text: str, seed: random.Random) -> str:
    pattern, new = seed.choice(((_SIZE, _scaled), (_DIRECTION, _turned)))
    return _at_one(text, pattern, seed, new)


KINDS: dict[Kind, Change] = {
    Kind.LAYOUT: comment,
    Kind.PARTICULARS: particulars,
    Kind.WORDS: words,
    Kind.FIGURE: figure,
    Kind.NUMBERS: numbers,
    Kind.PHYSICS: physics,
}


def changed(seed: int) -> tuple[Template, Template, frozenset[Kind]]:
    """A supplied template, one made of it, and the kinds of what was changed."""
    own = random.Random(f"changes {seed}")
    bank = default_bank()
    while True:
        before = bank.read(own.choice(list(bank.files)))
        kinds = frozenset(own.sample(list(KINDS), own.choice((1, 1, 1, 2))))
        text = before.source
        for kind in sorted(kinds):
            made = KINDS[kind](text, own)
            if made == text:
                break
            text = made
        else:
            try:
                for units in systems_of(parse_toml(text, "changed")):
                    read_template(text, "changed", units)
                after = read_template(text, "changed")
            except InputError:
                continue
            return before, after, kinds
