"""The survey: where a system's points lie and which way its lines run, for one set of values.

Places are complex numbers x + i y in metres in the ground frame; directions are degrees
counter-clockwise from +x.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Final

from probgen.bank.labels import Labels
from probgen.figures.paper.scene import apart, bearing, heading
from probgen.quantities.expression import (
    Expression,
    Lump,
    Name,
    Sum,
    Value,
    evaluate,
    names_in,
    parts,
)
from probgen.quantities.unit import ANGLE, LENGTH, MASS
from probgen.statics.system import Body, Condition, Element, Kind, Link, Point, Role, System
from probgen.statics.taken_as_one import Whole

_SKETCHED_ANGLE: Final = 40.0  # degrees, for an angle that is to be found
_SKETCHED_SHARE: Final = 0.62  # of the longest known length, for a length that is to be found
_CLEAR: Final = 0.1  # of a body's length, that such a length leaves before its end
_ALIGNED: Final = 0.5  # degrees


@dataclass(frozen=True, slots=True)
class Survey:
    """A system measured.

    labels: what its things are called.
    values: every quantity known, in coherent units; places: the points, metres.
    sketched: lengths and angles without a value, which are drawn at some other size.
    letters: of points that stand for another one, its id.
    states: the bodies of each state that stands apart from the others, none where there is one.
    """

    system: System
    labels: Labels
    values: Mapping[str, float]
    places: Mapping[str, complex]
    sketched: frozenset[str]
    letters: Mapping[str, str] = field(default_factory=dict)
    states: tuple[tuple[str, ...], ...] = ()

    def number(self, expression: Expression) -> float:
        """The value of an expression; KeyError when it holds an unknown without value."""
        return float(evaluate(expression, self.values))

    def has(self, expression: Expression) -> bool:
        """Whether everything the expression is made of has a value."""
        try:
            evaluate(expression, self.values)
        except KeyError:
            return False
        return True

    def outline(self, body: Body) -> tuple[complex, ...]:
        """The places a body's axis runs through."""
        return tuple(self.places[name] for name in body.outline)

    def axes(self, body: Body) -> list[tuple[complex, ...]]:
        """The places the axis of a body runs through, or of each that is taken as one in it."""
        if not isinstance(body, Whole):
            return [self.outline(body)]
        return [self.outline(self.system.body(id)) for id in body.made_of]

    def runs_along(self, at: complex, direction: float, body: Body | None = None) -> bool:
        """Whether a body's axis leaves a place in a direction."""
        return self.reach(at, direction, body) > 0.0

    def reach(self, at: complex, direction: float, body: Body | None = None) -> float:
        """How far a body's axis runs straight on from a place in a direction, m; 0 if none does."""
        bodies = self.system.bodies if body is None else (body,)
        axes = (axis for each in bodies for axis in self.axes(each))
        ways = [way for axis in axes for way in ways_out(axis, at)]
        return max((abs(w) for w in ways if apart(bearing(w), direction) < _ALIGNED), default=0.0)

    def is_longer_behind(self, at: complex, direction: float, body: Body | None = None) -> bool:
        """Whether it runs on further the opposite way."""
        return self.reach(at, direction + 180.0, body) > self.reach(at, direction, body) > 0.0

    def direction_of(self, element: Element) -> float | None:
        """The direction a one-force element acts in, if its value is known; none by components."""
        force = self.system.force(element.forces[0])
        if force.part.is_component:
            return None
        return self.number(force.direction) if self.has(force.direction) else None


def ways_out(outline: tuple[complex, ...], at: complex) -> list[complex]:
    """The steps along a body's axis that lead away from a place on it (metres)."""
    size = max((abs(b - a) for a in outline for b in outline), default=0.0)
    near = 1e-6 * size
    steps = []
    for a, b in pairwise(outline):
        length = abs(b - a)
        if length <= near:
            continue
        along = (at - a) / (b - a)
        if abs(along.imag) * length > near or not -1e-6 <= along.real <= 1 + 1e-6:
            continue
        steps += [end - at for end in (a, b) if abs(end - at) > near]
    return steps


def survey(system: System, labels: Labels, values: Mapping[str, Value]) -> Survey:
    """Measure a system.

    values: coherent values of one draw; unknown lengths and angles may be missing, and are then
    drawn at a size of their own that tells nothing.  Raises KeyError when a given is missing.
    """
    known = {name: float(value) for name, value in values.items()}
    _settle(system, known)
    sketched = _sketch(system, known)
    for definition in system.definitions:
        if definition.variable not in known:
            try:
                known[definition.variable] = float(evaluate(definition.expression, known))
            except KeyError:  # made of an unknown that is not solved yet
                continue
    places = {name: _place(point, known) for name, point in system.points.items()}
    return Survey(system, labels, known, places, sketched)


def again(measured: Survey, changed: Mapping[str, float]) -> Survey:
    """The same system surveyed with other values of some quantities."""
    made = {definition.variable for definition in measured.system.definitions}
    known = {name: value for name, value in measured.values.items() if name not in made}
    return survey(measured.system, measured.labels, {**known, **changed})


def _settle(system: System, known: dict[str, float]) -> None:
    """Find the angles and lengths that the data alone decide, by a condition of the system."""
    for condition in system.conditions:
        held = names_in(condition.left) | names_in(condition.right)
        missing = [system.variables[id] for id in held if id not in known]
        if len(missing) != 1 or missing[0].dimension not in (LENGTH, ANGLE):
            continue
        id, low, high = missing[0].id, missing[0].low, missing[0].high
        if low is None or high is None:
            continue

        def gap(value: float, id: str = id, condition: Condition = condition) -> float:
            trial = {**known, id: value}
            left, right = evaluate(condition.left, trial), evaluate(condition.right, trial)
            return float(left) - float(right)

        if gap(low) * gap(high) < 0:
            from scipy.optimize import brentq  # heavy, and seldom needed

            known[id] = float(brentq(gap, low, high))


def _sketch(system: System, known: dict[str, float]) -> frozenset[str]:
    """Give unknown lengths and angles a size to be drawn at."""
    lengths = [
        known[v.id] for v in system.variables.values() if v.dimension == LENGTH and v.id in known
    ]
    missing = [
        v
        for v in system.variables.values()
        if v.role is Role.UNKNOWN and v.id not in known and v.dimension in (LENGTH, ANGLE)
    ]
    for variable in missing:
        longest = max(lengths, default=1.0)
        known[variable.id] = (
            _SKETCHED_ANGLE if variable.dimension == ANGLE else _SKETCHED_SHARE * longest
        )
        if variable.dimension == LENGTH:
            _keep_on_body(system, known, variable.id)
    return frozenset(variable.id for variable in missing)


def _keep_on_body(system: System, known: dict[str, float], id: str) -> None:
    """Shorten a length that is to be found until what it leads to lies on its body."""
    for element in system.elements:
        links = system.points[element.at].links if element.at else ()
        outline = system.body(element.body).outline
        if len(outline) < 2 or not any(id in names_in(link.length) for link in links):
            continue
        try:
            places = tuple(_place(system.points[name], known) for name in outline)
            sizes = [known[id] * _SKETCHED_SHARE**times for times in range(12)]
            spots = [_place(system.points[element.at], {**known, id: size}) for size in sizes]
            on_body = [n for n, spot in enumerate(spots) if ways_out(places, spot)]
            inside = [n for n in on_body if _is_inside(places, spots[n])]
            for n in (*inside, *on_body)[:1]:
                known[id] = sizes[n]
        except KeyError:  # another unknown that has no size yet
            continue


def _is_inside(outline: tuple[complex, ...], at: complex) -> bool:
    """Whether a place is not as near to a corner or an end that it seems to be that."""
    size = max(abs(b - a) for a in outline for b in outline)
    return min(abs(end - at) for end in outline) > _CLEAR * size


def _place(point: Point, known: Mapping[str, float]) -> complex:
    steps = (
        float(evaluate(link.length, known)) * heading(float(evaluate(link.direction, known)))
        for link in point.links
    )
    return sum(steps, 0j)


def is_distorted(measured: Survey) -> bool:
    """Whether a length or an angle that is drawn has a size of which nobody knows whether it is
    true.
    """
    system = measured.system
    links = [link for point in system.points.values() for link in point.links]
    sizes = [size for link in links for size in (link.length, link.direction)]
    sizes += [force.direction for force in system.forces]
    return any(names_in(size) & measured.sketched for size in sizes)


@dataclass(frozen=True, slots=True)
class Span:
    """A named length between two places (metres)."""

    id: str
    start: complex
    end: complex


def spans(measured: Survey) -> tuple[Span, ...]:
    """The named lengths that can be read off as the distance of two points, each once."""
    found: dict[str, Span] = {}
    for point in measured.system.points.values():
        at = complex(0, 0)
        for link in point.links:
            end = at + measured.number(link.length) * heading(measured.number(link.direction))
            name = _lone_name(link.length)
            if name and is_stated(measured.system, name):
                found.setdefault(name, Span(name, at, end))
            at = end
    for name, span in _halved(measured):
        found.setdefault(name, span)
    return tuple(
        span
        for span in found.values()
        if abs(span.end - span.start) > 0 and is_told(measured, span.id)
    )


def _halved(measured: Survey) -> list[tuple[str, Span]]:
    """Lengths laid off by halves to both sides of one place, as the width of a base."""
    found = []
    points = [point for point in measured.system.points.values() if point.links]
    for i, one in enumerate(points):
        for other in points[i + 1 :]:
            if one.links[:-1] != other.links[:-1]:
                continue
            ends = (measured.places[one.id], measured.places[other.id])
            for name in names_in(one.links[-1].length) & names_in(other.links[-1].length):
                whole = measured.values.get(name, 0.0)
                start = ends[0] - _step(measured, one.links[-1])
                even = abs((ends[0] + ends[1]) / 2 - start) < 1e-9
                if even and abs(abs(ends[1] - ends[0]) - whole) < 1e-9:
                    found.append((name, Span(name, *sorted(ends, key=lambda p: p.real))))
    return found


def _step(measured: Survey, link: Link) -> complex:
    return measured.number(link.length) * heading(measured.number(link.direction))


def is_told(measured: Survey, name: str) -> bool:
    """Whether a student knows of a quantity: it is given, asked, or a find is made of it."""
    system = measured.system
    if system.variables[name].role is not Role.UNKNOWN:
        return is_stated(system, name)
    return any(find.quantity == name for find in system.finds)


def untold_in(measured: Survey, point: str) -> bool:
    """Whether a point lies where something says that a student is told nothing of."""
    held = frozenset[str]().union(
        *(names_in(link.length) for link in measured.system.points[point].links)
    )
    unknown = (id for id in held if measured.system.variables[id].role is Role.UNKNOWN)
    return any(id in measured.sketched and not is_told(measured, id) for id in unknown)


def _lone_name(expression: Expression) -> str | None:
    """The id when an expression is a name, or a name with a minus sign."""
    match expression:
        case Name(id=id):
            return id
        case Lump(inner):
            return _lone_name(inner)
        case Sum(((_, Name(id=id)),)):
            return id
        case _:
            return None


def is_stated(system: System, name: str) -> bool:
    """Whether a quantity belongs on the figure: data of the problem, or what is to be found."""
    variable = system.variables.get(name)
    return variable is not None and variable.role in (Role.GIVEN, Role.DERIVED, Role.UNKNOWN)


def pushes(element: Element) -> bool:
    """Whether a line pushes on its body: a strut, or a spring that is compressed."""
    return element.kind == Kind.STRUT or element.compressed


def mass_name(system: System, element: Element) -> Name | None:
    """The mass a weight is computed from, or the weight itself when that is given; None where it is
    made of several quantities, a weight per volume and lengths.
    """
    magnitude: Expression = system.force(element.forces[0]).magnitude
    for definition in system.definitions:
        if isinstance(magnitude, Name) and magnitude.id == definition.variable:
            magnitude = definition.expression
    return _data_in(system, magnitude)


def _data_in(system: System, expression: Expression) -> Name | None:
    if isinstance(expression, Name):
        variable = system.variables.get(expression.id)
        wanted = variable is not None and variable.role is not Role.CONSTANT
        return expression if wanted else None
    names = [name for part in parts(expression) if (name := _data_in(system, part))]
    masses = [n for n in names if system.variables[n.id].dimension == MASS]
    if masses or len({name.id for name in names}) == 1:
        return (masses or names)[0]
    return None
