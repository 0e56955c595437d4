r"""Every printed working read back from its LaTeX alone, and worked again with its units.

The reader below knows the marks that stand on a page, and nothing of the trees they came from: a
fraction is \dfrac or \tfrac, side by side is times, a number and \mathrm{..} is a quantity, a thin
space between groups of three digits is no sign.  It is strict where a page would be ambiguous: a
power stands on a symbol, a number without unit, or brackets; a minus sign never follows a sign.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.draws.draw import completed
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.expression import Name
from probgen.quantities.printing import latex
from probgen.quantities.unit import US_CUSTOMARY
from probgen.statics.solution import solve
from probgen.wording.block import Block, Display, Itemize, Math, Paragraph
from probgen.working.convention import Convention

PUBLISHED = Path(__file__).parents[1] / "published"
CONVENTIONS = {
    "angle": Convention(torque="angle"),
    "arm": Convention(torque="arm", positive="clockwise"),
    "components": Convention(torque="components", figures=4),
    "customary": Convention(units=US_CUSTOMARY),
}

# -- the reader --------------------------------------------------------------------------------

Kind = tuple[float, float, float, float]
"""Exponents of metre, kilogram, second and degree."""

World = dict[str, tuple[float, Kind]]
"""What printed symbols stand for."""

NONE: Kind = (0, 0, 0, 0)
DEGREES: Kind = (0, 0, 0, 1)
POUND_FORCE = 0.45359237 * 9.80665
UNITS: dict[str, tuple[float, Kind]] = {
    r"m": (1.0, (1, 0, 0, 0)),
    r"cm": (0.01, (1, 0, 0, 0)),
    r"mm": (0.001, (1, 0, 0, 0)),
    r"km": (1000.0, (1, 0, 0, 0)),
    r"ft": (0.3048, (1, 0, 0, 0)),
    r"in": (0.0254, (1, 0, 0, 0)),
    r"kg": (1.0, (0, 1, 0, 0)),
    r"g": (0.001, (0, 1, 0, 0)),
    r"t": (1000.0, (0, 1, 0, 0)),
    r"lb": (0.45359237, (0, 1, 0, 0)),
    r"slug": (POUND_FORCE / 0.3048, (0, 1, 0, 0)),
    r"N": (1.0, (1, 1, -2, 0)),
    r"kN": (1000.0, (1, 1, -2, 0)),
    r"lbf": (POUND_FORCE, (1, 1, -2, 0)),
    r"N{\cdot}m": (1.0, (2, 1, -2, 0)),
    r"kN{\cdot}m": (1000.0, (2, 1, -2, 0)),
    r"lbf{\cdot}ft": (POUND_FORCE * 0.3048, (2, 1, -2, 0)),
    r"m/s^{2}": (1.0, (1, 0, -2, 0)),
    r"ft/s^{2}": (0.3048, (1, 0, -2, 0)),
    r"N/m": (1.0, (0, 1, -2, 0)),
    r"N/cm": (100.0, (0, 1, -2, 0)),
    r"N/mm": (1000.0, (0, 1, -2, 0)),
    r"kN/m": (1000.0, (0, 1, -2, 0)),
    r"lbf/ft": (POUND_FORCE / 0.3048, (0, 1, -2, 0)),
    r"Pa": (1.0, (-1, 1, -2, 0)),
    r"N/m^{2}": (1.0, (-1, 1, -2, 0)),
    r"m^{2}": (1.0, (2, 0, 0, 0)),
}

TOKEN = re.compile(
    r"(?P<number>\d{1,3}(?:\\,\d{3})+(?!\d)(?:\.\d+)?|\d+(?:\.\d+)?)"
    r"|(?P<unit>\\mathrm\{(?:[^{}]|\{[^{}]*\})*\})"
    r"|(?P<degree>\^\{\\circ\})"
    r"|(?P<power>\^\{-?\d+\})"
    r"|(?P<symbol>(?:\\(?:alpha|beta|gamma|delta|epsilon|eta|theta|kappa|lambda|mu|nu|rho|sigma"
    r"|tau|phi|psi|omega|Delta|Sigma|Omega|Phi|ell)(?![A-Za-z])|\\mathit\{[A-Za-z]+\}|[A-Za-z])"
    r"(?:_\{(?:[^{}]|\{[^{}]*\})*\})?)"
    r"|(?P<word>\\(?:dfrac|tfrac|sqrt|sin|cos|tan|arcsin|arccos|arctan|times|left|right)(?![A-Za-z]))"
    r"|(?P<mark>[-+(){}|])"
    r"|(?P<thin>\\,)"
    r"|(?P<space>\s+)"
)


class UnreadableError(Exception):
    """The formula says nothing, or two things."""


class UnknownSymbolError(UnreadableError):
    """A symbol that stands for nothing here."""


@dataclass(frozen=True)
class Size:
    """A value in metres, kilograms, seconds, degrees; `last`: one unit of its last digit.

    last is None for what is no single printed number; whole: whether a symbol entered it.
    """

    value: float
    kind: Kind = NONE
    last: float | None = None
    named: bool = False


@dataclass
class Reader:
    """Recursive descent through one formula."""

    text: str
    names: World = field(default_factory=dict)
    at: int = 0

    def __post_init__(self) -> None:
        self.tokens: list[tuple[str, str]] = []
        place = 0
        while place < len(self.text):
            found = TOKEN.match(self.text, place)
            if not found:
                raise UnreadableError(f"no mark known at {self.text[place:]!r}")
            kind = str(found.lastgroup)
            if kind != "space":
                self.tokens.append((kind, found.group()))
            place = found.end()

    def whole(self) -> Size:
        size = self.sum()
        if self.at != len(self.tokens):
            raise UnreadableError(f"left over: {self.tokens[self.at:]} of {self.text}")
        return size

    def next(self) -> tuple[str, str]:
        return self.tokens[self.at] if self.at < len(self.tokens) else ("end", "")

    def take(self, text: str = "") -> str:
        found = self.next()[1]
        if text and found != text:
            raise UnreadableError(f"{text!r} expected, {found!r} found in {self.text}")
        self.at += 1
        return found

    def sum(self) -> Size:
        sign = -1.0 if self.next()[1] == "-" else 1.0
        if sign < 0:
            self.take()
        first = self.product()
        result = Size(sign * first.value, first.kind, first.last, first.named)
        while self.next()[1] in ("+", "-"):
            sign = 1.0 if self.take() == "+" else -1.0
            term = self.product()
            result = Size(*self.added(result, term, sign), named=result.named or term.named)
        return result

    def added(self, one: Size, other: Size, sign: float) -> tuple[float, Kind]:
        """Terms of a sum are of one kind; a plain 0 may be of any."""
        if one.kind != other.kind:
            raise UnreadableError(f"{one.kind} and {other.kind} added in {self.text}")
        return one.value + sign * other.value, one.kind

    def product(self) -> Size:
        result = self.factor()
        while True:
            kind, text = self.next()
            if kind == "thin" or text == r"\times":
                self.take()
            elif not (text in ("(", r"\left") or (kind == "word" and text not in (r"\right",))):
                return result
            other = self.factor()
            kinds = tuple(a + b for a, b in zip(result.kind, other.kind, strict=True))
            named = result.named or other.named
            result = Size(result.value * other.value, kinds, named=named)  # type: ignore[arg-type]

    def factor(self) -> Size:
        kind, text = self.next()
        if kind == "number":
            return self.number()
        if kind == "symbol":
            return self.raised(self.symbol())
        if text in ("(", r"\left"):
            return self.raised(self.brackets())
        if text == "|":
            self.take()
            inner = self.sum()
            self.take("|")
            return Size(abs(inner.value), inner.kind, named=inner.named)
        if text in (r"\dfrac", r"\tfrac"):
            return self.unpowered(self.fraction())
        if text == r"\sqrt":
            self.take()
            inner = self.group()
            kinds = tuple(exponent / 2 for exponent in inner.kind)
            if inner.value < 0.0:
                raise UnreadableError(f"root of a negative number in {self.text}")
            root = Size(math.sqrt(inner.value), kinds, named=inner.named)  # type: ignore[arg-type]
            return self.unpowered(root)
        if kind == "word" and text != r"\right":
            return self.function()
        raise UnreadableError(f"{text!r} found where a quantity should be in {self.text}")

    def number(self) -> Size:
        """Digits, a power of ten, a unit: one printed number."""
        digits = self.take().replace(r"\,", "")
        value, last = float(digits), 10.0 ** -len(digits.partition(".")[2])
        ahead = self.tokens[self.at : self.at + 3]
        if [text for _, text in ahead[:2]] == [r"\times", "10"] and ahead[2:3]:
            power = 10.0 ** int(ahead[2][1][2:-1])
            value, last, self.at = value * power, last * power, self.at + 3
        if self.next()[0] == "degree":
            self.take()
            return self.unpowered(Size(value, DEGREES, last))
        ahead = self.tokens[self.at : self.at + 2]
        if [kind for kind, _ in ahead] == ["thin", "unit"]:
            factor, kinds = UNITS[ahead[1][1][len(r"\mathrm{") : -1]]
            self.at += 2
            return self.unpowered(Size(value * factor, kinds, last * factor))
        return self.raised(Size(value, NONE, last))

    def symbol(self) -> Size:
        text = self.take()
        if text not in self.names:
            raise UnknownSymbolError(f"{text} stands for nothing known in {self.text}")
        return Size(*self.names[text], named=True)

    def brackets(self) -> Size:
        tall = self.next()[1] == r"\left"
        if tall:
            self.take()
        self.take("(")
        inner = self.sum()
        if tall:
            self.take(r"\right")
        self.take(")")
        return inner

    def group(self) -> Size:
        self.take("{")
        inner = self.sum()
        self.take("}")
        return inner

    def fraction(self) -> Size:
        self.take()
        above, below = self.group(), self.group()
        kinds = tuple(a - b for a, b in zip(above.kind, below.kind, strict=True))
        named = above.named or below.named
        if below.value == 0.0:
            return Size(math.nan, kinds, named=named)  # type: ignore[arg-type]
        return Size(above.value / below.value, kinds, named=named)  # type: ignore[arg-type]

    def function(self) -> Size:
        name = self.take()
        if self.next()[0] == "power":
            raise UnreadableError(f"a power on {name} in {self.text}")
        argument = self.factor()
        if name in (r"\sin", r"\cos", r"\tan"):
            if argument.kind not in (DEGREES, NONE):
                raise UnreadableError(f"{name} of {argument.kind} in {self.text}")
            if argument.kind == NONE:
                raise UnreadableError(f"{name} of a number without a degree sign in {self.text}")
            turned = math.radians(argument.value)
            worked = {r"\sin": math.sin, r"\cos": math.cos, r"\tan": math.tan}[name](turned)
            return Size(worked, named=argument.named)
        if argument.kind != NONE:
            raise UnreadableError(f"{name} of {argument.kind} in {self.text}")
        back = {r"\arcsin": math.asin, r"\arccos": math.acos, r"\arctan": math.atan}[name]
        return Size(math.degrees(back(argument.value)), DEGREES, named=argument.named)

    def raised(self, base: Size) -> Size:
        if self.next()[0] != "power":
            return base
        exponent = int(self.take()[2:-1])
        kinds = tuple(exponent * each for each in base.kind)
        return Size(base.value**exponent, kinds, named=base.named)  # type: ignore[arg-type]

    def unpowered(self, size: Size) -> Size:
        if self.next()[0] == "power":
            raise UnreadableError(f"a power on something that is not in brackets in {self.text}")
        return size


# -- the lines of a page -----------------------------------------------------------------------

RELATION = re.compile(r"(\\rightarrow|\\approx|\\Rightarrow|\\leq|\\geq|=|<|>|→|≈|≤|≥)")
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
            links = tuple(chain_of(latex(each.formula, display=False)))
            if len(links) > 1:
                yield Chain(links)


def sizes(chain: Chain, names: World) -> list[tuple[str, Size]]:
    """The parts of a chain that have a value; the name of a balance has none."""
    return [
        (relation, Reader(text, names).whole())
        for relation, text in chain.links
        if text and not text.startswith(r"\textstyle\sum")
    ]


ANGLES = math.radians(0.05)
"""What a sine may be off when its angle is printed to a tenth of a degree."""


def close(one: float, other: float, slack: float) -> bool:
    return abs(one - other) <= slack * (1.0 + 1e-9) + 1e-12


def check_numbers(chain: Chain, names: World, figures: int) -> int:
    """Numbers put in give the printed result within its last digit; how many lines were read.

    A result after an arrow is the one before it, rounded to so many figures.
    """
    read = [(relation, size) for relation, size in sizes(chain, names) if not size.named]
    results = [place for place, (_, size) in enumerate(read) if size.last is not None]
    count = 0
    for place, (relation, size) in enumerate(read):
        before = read[place - 1][1]
        if relation == r"\rightarrow":
            assert size.last is not None, f"an arrow to no number: {chain}"
            half = max(size.last, rounding(size.value, size.last, figures)) / 2
            assert close(before.value, size.value, half), f"rounded wrongly: {chain}"
            assert before.kind == size.kind, f"units differ: {chain}"
        elif size.last is None:
            result = next((read[at][1] for at in results if at > place), None)
            if result is None:  # two ways of writing one thing, with printed angles
                assert close(size.value, read[0][1].value, ANGLES), f"not the same: {chain}"
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
    written = re.split(r" [-+] ", chain.links[-2][1].strip("-"))
    terms = [Reader(part.strip()).whole() for part in written]
    rounded = sum(term.last or 0.0 for term in terms) / 2
    noise = 1e-12 * sum(abs(term.value) for term in terms)
    return rounded if chain.links[-1][0] == r"\approx" else noise


def check_symbols(chain: Chain, worlds: Sequence[World]) -> int:
    """What is printed in symbols is so, with the unrounded values, in one of the worlds."""
    told = [text for relation, text in chain.links]
    for names in worlds:
        try:
            read = [(relation, size) for relation, size in sizes(chain, names) if size.named]
        except UnknownSymbolError:
            continue
        exact = [size for relation, size in read if relation in ("", "=")]
        zero = any(text == "0" for text in told) and told[0].startswith(r"\textstyle")
        wanted = 0.0 if zero or not exact else exact[0].value
        scale = max((abs(size.value) for size in exact), default=1.0)
        scale = max([scale, *(abs(value) for value, _ in names.values())]) if zero else scale
        if all(close(size.value, wanted, 1e-7 * max(scale, 1.0)) for size in exact):
            return len(exact)
    raise AssertionError(f"not so with the unrounded values: {chain}")


# -- the templates -----------------------------------------------------------------------------


@cache
def problem_of(id: str, convention: str) -> Problem:
    bank = default_bank()
    if id in bank.files:
        return prepare(bank.read(id), CONVENTIONS[convention])
    text = (PUBLISHED / f"{id}.toml").read_text(encoding="utf-8")
    return prepare(read_template(text, f"{id}.toml"), CONVENTIONS[convention])


def worlds_of(own: Worked) -> list[World]:
    """What each printed symbol stands for: in the end, with each resultant's angle, at each limit.
    """
    data = {name: own.case.values[name] for name in own.case.numbers}
    branches = [solve(branch.plan, data) for branch in own.case.plan.branches]
    found = []
    for values in [own.complete, *branches]:
        world: World = {}
        for variable in own.case.system.variables.values():
            if variable.id in values:
                length, mass, time, angle = map(float, variable.dimension)
                size = float(values[variable.id])
                world[latex(Name(variable.id, variable.symbol))] = size, (length, mass, time, angle)
        angles: list[World] = []
        for element in own.case.system.elements:
            if f"{element.id}.magnitude" in values:
                size = float(values[f"{element.id}.magnitude"])
                world[latex(Name(element.id, element.symbol))] = size, (1, 1, -2, 0)
                x, y = (abs(float(values[f"{element.id}.{axis}"])) for axis in "xy")
                steep = math.degrees(math.atan2(y, x))
                angles.append({r"\phi": (steep, DEGREES)})
        found += [world | angle for angle in angles or [{}]]
    return found


def reread(id: str, convention: str, draws: int) -> int:
    """Every line of so many students' workings read back; how many lines there were."""
    problem = problem_of(id, convention)
    if draws == 1:
        first = {given.id: given.choices[0] for given in problem.template.givens}
        chosen = [completed(problem.template, first)]
    else:
        ids = [f"reader-{place}" for place in range(draws)]
        chosen = list(draw_class(problem, "reread", ids).draws)
    lines = told = 0
    for own in work(problem, chosen):
        worlds = worlds_of(own)
        for section in tell_steps(problem, own):
            for chain in chains(section.blocks):
                lines += check_numbers(chain, worlds[0], problem.convention.figures)
                told += check_symbols(chain, worlds)
    assert told > lines / 2  # equations in symbols were read as well
    return lines


SUPPLIED = sorted(default_bank().files)
PRINTED = sorted(path.stem for path in PUBLISHED.glob("*.toml") if path.stem != "answers")


@pytest.mark.parametrize("convention", CONVENTIONS)
@pytest.mark.parametrize("id", SUPPLIED)
def test_what_is_printed_gives_what_is_printed(id: str, convention: str) -> None:
    assert reread(id, convention, 3) >= 3


@pytest.mark.proof
@pytest.mark.parametrize("convention", CONVENTIONS)
@pytest.mark.parametrize("id", SUPPLIED)
def test_so_it_does_for_a_whole_class(id: str, convention: str) -> None:
    assert reread(id, convention, 50) >= 50


@pytest.mark.parametrize("id", PRINTED)
def test_so_do_the_published_problems(id: str) -> None:
    assert reread(id, "angle", 1) >= 1


@pytest.mark.proof
@pytest.mark.parametrize("convention", [name for name in CONVENTIONS if name != "angle"])
@pytest.mark.parametrize("id", PRINTED)
def test_so_do_they_however_torque_is_written(id: str, convention: str) -> None:
    assert reread(id, convention, 1) >= 1


@pytest.mark.parametrize(
    ("formula", "wrong"),
    [
        (r"T = \dfrac{60.0\,\mathrm{N}}{2} = 30.0\,\mathrm{N}", r"30.0\,\mathrm{N{\cdot}m}"),
        (r"T = (20.0\,\mathrm{N})\,\sin 30^{\circ} = 10.0\,\mathrm{N}", r"17.3\,\mathrm{N}"),
        (r"T = 10\,976\,\mathrm{N} = 1.098\times 10^{4}\,\mathrm{N}", r"10\,970\,\mathrm{N}"),
        (r"T = 190.6\,\mathrm{N} \rightarrow 191\,\mathrm{N}", r"190\,\mathrm{N}"),
        (r"T = 2345\,\mathrm{N} \rightarrow 2350\,\mathrm{N}", r"2330\,\mathrm{N}"),
    ],
)
def test_the_reader_tells_right_from_wrong(formula: str, wrong: str) -> None:
    """So that no line above is read as true whatever it says."""
    names: World = {"T": (1.0, (1, 1, -2, 0))}
    check_numbers(Chain(tuple(chain_of(formula))), names, 3)
    last = formula.rsplit(r"\rightarrow" if "arrow" in formula else "=", 1)[1].strip()
    with pytest.raises(AssertionError):
        check_numbers(Chain(tuple(chain_of(formula.replace(last, wrong)))), names, 3)


@pytest.mark.parametrize(
    "formula",
    [
        r"\tfrac{1}{2}^{2}",  # a power on a fraction without brackets
        r"3.0\,\mathrm{m}^{2}",  # a power on a unit, or on the number as well?
        r"2 + -3",
        r"2\,\mathrm{m} + 3\,\mathrm{N}",
        r"\sin 30",  # radians?
        r"\sin^{2} 30^{\circ}",
        r"2 3",
        r"\sqrt{-1}",
    ],
)
def test_the_reader_refuses_what_is_ambiguous(formula: str) -> None:
    with pytest.raises(UnreadableError):
        Reader(formula).whole()
