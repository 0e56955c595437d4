"""Lengths in a free-body diagram: from the pivot to each force, and the lever arms of oblique ones.

They are those of a torque balance, with the expressions it holds, so that every length and every
arm of the equation is seen in the diagram.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.dimension_line import draw_length, strips
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import FINE, REFERENCE, Path, Spot, bearing, dot, heading, line
from probgen.figures.paper.tag import Tag, What
from probgen.quantities.expression import UNITY, Expression, Lump, Name, negative, times
from probgen.quantities.printing import plain
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import way
from probgen.statics.system import Force

_LEAST: Final = 7.0  # the shortest length that is drawn, pt
_CORNER: Final = 4.5  # side of the mark of a right angle, pt
_PAST: Final = 8.0  # how far a line of action goes on beyond the foot of its arm, pt
_LEVEL: Final = 0.1  # degrees


@dataclass(frozen=True, slots=True)
class Reach:
    """A straight piece of the way from the pivot to a force, or its lever arm; metres.

    length: as the balance has it, or the opposite where that is below nothing.
    """

    start: complex
    end: complex
    length: Expression

    @property
    def tag(self) -> str:
        """What it is called by in a scene: the id of a plain length, else its expression."""
        return self.length.id if isinstance(self.length, Name) else plain(self.length)


@dataclass(frozen=True, slots=True)
class Arm:
    """The lever arm of an oblique force: from the pivot to the foot on its line of action."""

    force: Force
    reach: Reach


@dataclass(frozen=True, slots=True)
class Lengths:
    """What a torque balance measures: pieces along ways, shortest first, and slanting arms.

    The arm of a force that stands upright or level is drawn as other lengths are, in place of
    the way to that force.
    """

    reaches: tuple[Reach, ...] = ()
    arms: tuple[Arm, ...] = ()


def lengths_of(measured: Survey, balance: Equation, body: str) -> Lengths:
    """Every length that stands in a torque balance for the forces on a body, each once."""
    arms = lever_arms(measured, balance, body)
    straight = {arm.force.id: arm.reach for arm in arms if _is_straight(measured, arm)}
    found: dict[tuple[complex, complex], Reach] = {}
    for source in _sources(measured, balance, body):
        own = straight.get(source)
        pieces = _way(measured, balance, measured.system.force(source))
        for reach in (own,) if own else pieces:
            found.setdefault((_near(reach.start), _near(reach.end)), reach)
    sized = sorted(found.values(), key=lambda each: abs(each.end - each.start))
    return Lengths(tuple(sized), tuple(arm for arm in arms if arm.force.id not in straight))


def _sources(measured: Survey, balance: Equation, body: str) -> list[str]:
    """The forces on a body that stand in a balance, which may be of several bodies."""
    own = {force.id for force in measured.system.forces if force.body == body}
    reaching = (term for term in balance.terms if term.length is not None)
    return list(dict.fromkeys(term.source for term in reaching if term.source in own))


def lever_arms(measured: Survey, balance: Equation, body: str) -> tuple[Arm, ...]:
    """The arms of the forces oblique to their way, where the balance goes by lever arms; else of
    those alone whose way it counts together, of several pieces alike.
    """
    pivot = measured.places[balance.about]
    found = []
    for source in _sources(measured, balance, body):
        terms = [term for term in balance.terms if term.source == source]
        if len(terms) != 1 or terms[0].length is None or terms[0].ratio == UNITY:
            continue
        if balance.method.torque == "arm" or terms[0].link is None:
            force = measured.system.force(source)
            unit = heading(measured.number(force.direction))
            foot = pivot + 1j * unit * dot(measured.places[force.point] - pivot, 1j * unit)
            arm = times(Lump(terms[0].length), terms[0].ratio)
            found.append(Arm(force, Reach(pivot, foot, arm)))
    return tuple(found)


def _way(measured: Survey, balance: Equation, force: Force) -> Iterator[Reach]:
    """The pieces from the pivot to a force that stand in the balance."""
    at = measured.places[balance.about]
    for link in way(measured.system.points, balance.about, force.point):
        step = measured.number(link.length) * heading(measured.number(link.direction))
        for term in balance.terms:
            if term.source == force.id and _measures(measured, term, step):
                assert term.length is not None
                below = measured.number(term.length) < 0  # a place on the other side
                length = negative(term.length) if below else term.length
                yield Reach(at, at + step, length)
                break
        at += step


def _measures(measured: Survey, term: Term, step: complex) -> bool:
    """Whether a term's length is that of a piece of the way: as long, and along it."""
    if term.length is None:
        return False
    if term.link is not None:
        along = heading(measured.number(term.link.direction))
        if abs((step * along.conjugate()).imag) > 1e-6 * abs(step):
            return False
    return abs(abs(measured.number(term.length)) - abs(step)) < 1e-6 * (1e-6 + abs(step))


def _is_straight(measured: Survey, arm: Arm) -> bool:
    """Whether a force stands upright or level, so that its arm is drawn as other lengths are."""
    direction = measured.number(arm.force.direction)
    return abs((direction + 45.0) % 90.0 - 45.0) < _LEVEL


def _near(place: complex) -> complex:
    return complex(round(place.real, 6), round(place.imag, 6))


def draw_reaches(field: Field, found: tuple[Reach, ...], scale: float, half: float) -> int:
    """Dimension lines from the pivot; how many of them had no good place.

    scale: pt for each metre; half: half the body's thickness, pt.
    """
    ends = [(reach.start * scale, reach.end * scale) for reach in found]
    shown = [
        each for each in zip(found, ends, strict=True) if abs(each[1][1] - each[1][0]) >= _LEAST
    ]
    strained = 0
    for number, (reach, measured) in enumerate(shown, start=1):
        due = [strip for _, later in shown[number:] for strip in strips(*later, half)]
        strained += not draw_length(field, *measured, reach.length, reach.tag, half, due)
    return strained


def draw_arms(field: Field, measured: Survey, arms: tuple[Arm, ...], scale: float) -> None:
    """Line of action and lever arm of each slanting force, dashed, square to each other."""
    for arm in arms:
        pivot, foot = arm.reach.start * scale, arm.reach.end * scale
        if abs(foot - pivot) < _LEAST:
            continue
        at = measured.places[arm.force.point] * scale
        inward = (pivot - foot) / abs(pivot - foot)
        out = inward * (1j if dot(foot - at, inward * 1j) >= 0 else -1j)
        field.add(line(at, foot + out * _PAST, REFERENCE, Tag(What.ACTION, arm.force.id)))
        field.add(line(pivot, foot, REFERENCE, Tag(What.LEVER, arm.force.id)))
        corner = foot - out * _CORNER
        square = (corner, corner + inward * _CORNER, foot + inward * _CORNER)
        field.add(Path((square,), FINE, Tag(What.SQUARE, arm.force.id)))


def name_arms(field: Field, arms: tuple[Arm, ...], scale: float) -> None:
    """The expression of each lever arm that is drawn beside it."""
    for arm in arms:
        pivot, foot = arm.reach.start * scale, arm.reach.end * scale
        if abs(foot - pivot) < _LEAST:
            continue
        along = bearing(foot - pivot)
        spots: list[tuple[Spot, float]] = [
            (pivot + (foot - pivot) * share, along + turn)
            for share in (0.5, 0.65, 0.35)
            for turn in (90.0, -90.0)
        ]
        text = arm.reach.length
        field.place(text, around(text, spots), Tag(What.LABEL, arm.reach.tag))
