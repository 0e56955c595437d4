"""Magnitude and direction of a force from its components."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import Call, Name, Number, Quotient, evaluate
from probgen.quantities.formula import Formula, Relation
from probgen.quantities.rounding import round_figures
from probgen.quantities.unit import ANGLE, DEGREE, FORCE
from probgen.statics.system import Element, Find, Form
from probgen.wording.block import Block, Display, Row, Section
from probgen.wording.direction import quarter_of, worded
from probgen.wording.sentence import Inlines, letter, paragraph, say
from probgen.working.digits import Digits


def resultant_sections(digits: Digits) -> Iterator[Section]:
    for find in digits.case.system.finds:
        if find.form is Form.MAGNITUDE_AND_DIRECTION:
            yield _resultant(digits, find)


def _resultant(digits: Digits, find: Find) -> Section:
    case = digits.case
    element = case.system.element(find.quantity)
    x, y = (case.system.variables[f"{find.quantity}.{axis}"].as_name for axis in "xy")
    blocks: list[Block] = []
    oblique = quarter_of(case.values[f"{find.quantity}.direction"]) is None
    if oblique:
        rows = (*_magnitude(digits, find, element, x, y), *_angle(digits, x, y))
        blocks.append(Display(rows))
    else:
        level = case.values[y.id] == 0.0
        said = say(
            "{zero} is zero, so {R} is {way} and its magnitude is that of {other}.",
            zero=y if level else x,
            R=letter(element.symbol),
            way="horizontal" if level else "vertical",
            other=x if level else y,
        )
        blocks.append(paragraph(said))
    blocks.append(paragraph(_sentence(digits, find, element)))
    return Section(f"Magnitude and direction of {element.symbol}", tuple(blocks))


def _magnitude(digits: Digits, find: Find, element: Element, x: Name, y: Name) -> Iterator[Row]:
    size = digits.case.values[f"{find.quantity}.magnitude"]
    root = Call("hypot", (x, y))
    line = digits.line(root, size, FORCE)
    yield Row((letter(element.symbol),), "=", (root, Relation("="), line.printed))
    final = digits.rounded(size, digits.unit_of(x.id))
    carried = line.result
    ending: Formula = (final,) if carried == final else (carried, Relation("→"), final)
    yield Row((), "=", ending)


def _angle(digits: Digits, x: Name, y: Name) -> Iterator[Row]:
    """phi = arctan(|R_y| / |R_x|), the steepness of the force."""
    sizes = [Call("abs", (part,)) for part in (y, x)]
    if digits.convention.direction == "vertical":
        sizes.reverse()
    slope = Call("atan", (Quotient(*sizes),))
    value = float(evaluate(slope, digits.case.values))
    guard = digits.line(slope, value, ANGLE).guard
    printed = Call("atan", (Quotient(*(_size(digits, part, guard) for part in sizes)),))
    final = round_figures(value, digits.convention.figures, digits.convention.rounding)
    yield Row((_letter_of_angle(digits),), "=", (slope,))
    yield Row((), "=", (printed, Relation("="), Number(final, DEGREE)))


def _letter_of_angle(digits: Digits) -> Name:
    """phi, or another letter where the problem has one of its own by that name."""
    taken = {variable.symbol for variable in digits.case.system.variables.values()}
    letter = next(each for each in ("phi", "psi", "omega", "delta") if each not in taken)
    return Name(letter, letter)


def _size(digits: Digits, part: Call, guard: int) -> Number:
    inner = part.arguments[0]
    assert isinstance(inner, Name)
    number = digits.shown(inner.id, guard)
    return Number(abs(number.value), number.unit)


def _sentence(digits: Digits, find: Find, element: Element) -> Inlines:
    case = digits.case
    way = worded(case.values[f"{find.quantity}.direction"], digits.convention)
    size = digits.rounded(
        case.values[f"{find.quantity}.magnitude"],
        digits.unit_of(f"{find.quantity}.x"),
    )
    body = case.system.body(element.body).name
    if element.kind == "resultant":
        return say(
            "The resultant {R} is {size}{joint}{way}.",
            R=letter(element.symbol),
            size=size,
            joint=" at " if way.words[0].isdigit() else ", ",
            way=way.words,
        )
    joint = " at " if way.words[0].isdigit() else ", "
    return say(
        "{by} acts on the {body} with a force of {size}{joint}{way}.",
        by=element.name[:1].upper() + element.name[1:],
        body=body,
        size=size,
        joint=joint,
        way=way.words,
    )
