"""A system at rest: points, bodies, and every force and couple that acts on them.

Ids and mathematics only: what things are called is kept beside it (`probgen.bank.labels`).
Frame: x to the right, y up, metres.  Directions are degrees counter-clockwise from +x and tell
which way a force acts ON the body when its magnitude is positive.  Torques and couples are positive
counter-clockwise.  Nothing here is solved and nothing has a value: values come with a draw.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from functools import cached_property
from typing import Final

from probgen.quantities.expression import Expression, Name, names_in
from probgen.quantities.unit import FORCE, Dimension, Unit
from probgen.statics.quantity_id import Quantity, QuantityPart
from probgen.statics.shape import Shape


class Role(StrEnum):
    """Where the value of a quantity comes from."""

    GIVEN = "given"  # drawn
    DERIVED = "derived"  # computed from givens before the problem is stated, printed as data
    CONSTANT = "constant"  # g
    DEFINED = "defined"  # computed in the working, such as a weight m g
    UNKNOWN = "unknown"  # found by the plan


@dataclass(frozen=True, slots=True)
class Variable:
    """A quantity.

    as_name: how expressions name it; unit: what it is stated and printed in.
    nonnegative: a negative value has no meaning (a pull, a push of a surface, a length).
    component_of: the element whose force it is the x- or y-component of, "" for any other.
    low, high: an unknown's bounds in all draws, coherent, or None; least, most: computed in each.
    """

    as_name: Name
    dimension: Dimension
    unit: Unit
    role: Role
    nonnegative: bool = False
    component_of: str = ""
    low: float | None = None
    high: float | None = None
    least: Expression | None = None
    most: Expression | None = None

    @property
    def id(self) -> str:
        return self.as_name.id


@dataclass(frozen=True, slots=True)
class Link:
    """A straight step from one point to another: a length (m) in a direction (deg)."""

    length: Expression
    direction: Expression


@dataclass(frozen=True, slots=True)
class Point:
    """A point, reached from the origin by its links one after the other.

    meeting: where two lines of action meet; added as a pivot, not the author's.
    """

    id: str
    links: tuple[Link, ...]
    meeting: bool = False

    def told_by(self, names: frozenset[str]) -> bool:
        return any(names_in(link.length) & names for link in self.links)


@dataclass(frozen=True, slots=True)
class Body:
    """A body, whose axis or outline runs through points in order (one point for a particle).

    particle: no extent matters; only the force balances are written.
    joints: of a truss or a part of one, whose outline is a walk along all its members; each is a
    particle, so the whole says nothing more.  part_of: the body that a section leaves this part of.
    """

    id: str
    outline: tuple[str, ...]
    particle: bool = False
    joints: tuple[str, ...] = ()
    part_of: str = ""


@dataclass(frozen=True, slots=True)
class Member:
    """A bar pinned at both ends that carries nothing between: a two-force member.

    body: the truss it belongs to, or the body it is by itself, a link (`statics.link`).
    force: what it pulls its joints with (N), negative where it pushes, in compression.
    direction: from its start to its end, degrees.
    """

    body: str
    start: str
    end: str
    force: Name
    direction: Expression

    @property
    def ends(self) -> frozenset[str]:
        return frozenset((self.start, self.end))


class Kind(StrEnum):
    """What exerts a force."""

    WEIGHT = "weight"
    HOLE = "hole"  # what a part that is cut out does not weigh, upward
    FORCE = "force"
    CABLE = "cable"
    MUSCLE = "muscle"
    HINGE = "hinge"
    ROLLER = "roller"
    CONTACT = "contact"  # smooth: pushes along its normal
    ROUGH = "rough"  # pushes along its normal, and friction along the surface
    FIXED = "fixed"  # a built-in end or a cut: a force by components, and a couple
    STRUT = "strut"  # pushes along its line
    SPRING = "spring"
    ROPE = "rope"  # one tension wherever the rope pulls, over pulleys or round a bone
    DISTRIBUTED = "distributed"  # the resultant of a load spread along a line
    COUPLE = "couple"  # a couple and no force
    MEMBER = "member"  # of a truss: pulls along its line, or pushes where it is negative
    LINK = "link"  # pinned at both ends: pulls along its line, or pushes where it is negative
    CUT = "cut"  # the part of a member that is cut off
    RESULTANT = "resultant"  # exerts nothing itself: several forces gathered for a find


class ForcePart(StrEnum):
    """Which part of what exerts it a force is."""

    WHOLE = ""
    X = "x"
    Y = "y"
    NORMAL = "normal"
    FRICTION = "friction"
    AXIAL = "axial"
    SHEAR = "shear"

    @property
    def is_component(self) -> bool:
        """Along x or y, as the force of a joint is taken apart."""
        return self in (ForcePart.X, ForcePart.Y)


@dataclass(frozen=True, slots=True)
class Force:
    """One force with a known line of action; a hinge gives two, along x and y.

    id: the id of its magnitude where that is one quantity ("T", "R.x").
    magnitude: newtons; direction: degrees, of the force on the body when the magnitude is positive.
    element: what exerts it; part: which part of that.
    pair: id of the equal and opposite force on another body, "" when it comes from outside.
    """

    id: str
    body: str
    point: str
    magnitude: Expression
    direction: Expression
    kind: Kind
    element: str
    part: ForcePart = ForcePart.WHOLE
    pair: str = ""


@dataclass(frozen=True, slots=True)
class Couple:
    """A couple on a body: its moment in newton metres, counter-clockwise positive."""

    id: str
    body: str
    point: str
    moment: Expression
    element: str
    pair: str = ""


@dataclass(frozen=True, slots=True)
class Intensity:
    """The size of a load by a formula: `load` (N/m) at a distance `along` (m) from `origin`.

    letter: of that size; low, high: the distance at the start and the end of the load;
    centroid: the letter of the distance at which its resultant acts.
    """

    load: Expression
    along: Name
    letter: Name
    origin: str
    low: Expression
    high: Expression
    centroid: Name


@dataclass(frozen=True, slots=True)
class Spread:
    """Where a distributed load lies: along a straight line, its size (N/m) running evenly.

    start: the point it begins at; line: from there to its end; first, last: its sizes at the ends.
    intensity: where it runs between them by a formula, else None.
    """

    start: str
    line: Link
    first: Expression
    last: Expression
    intensity: Intensity | None = None


@dataclass(frozen=True, slots=True)
class Element:
    """One entry of a template that acts on a body: what the figure draws and sentences name.

    id: unique; the symbol's id for a force ("T", "R"), or the weight's symbol id.
    at: the point it acts at; toward: the point a cable or muscle runs to, "" if none is named.
    forces: the ids of the forces it exerts.  surface: direction of the outward normal of rollers
    and contacts (deg); spread: where a distributed load lies; shape: of what weighs; each None of
    others.  compressed: a spring that pushes.  slides: a surface its body slides over.  own: of the
    body itself, not of what it carries.  of: the element whose reaction or pull it is, "" for none.
    """

    id: str
    kind: Kind
    body: str
    at: str
    forces: tuple[str, ...] = ()
    toward: str = ""
    surface: Expression | None = None
    spread: Spread | None = None
    shape: Shape | None = None
    compressed: bool = False
    slides: bool = False
    own: bool = False
    of: str = ""


@dataclass(frozen=True, slots=True)
class Definition:
    """A quantity computed from others: variable = expression."""

    variable: str
    expression: Expression


@dataclass(frozen=True, slots=True)
class Condition:
    """A further equation, left = right."""

    id: str
    left: Expression
    right: Expression


@dataclass(frozen=True, slots=True)
class Limit:
    """Something that may give way: left must stay below ("<=") or above (">=") right."""

    id: str
    left: Expression
    relation: str
    right: Expression


class Form(StrEnum):
    """How an answer is asked."""

    VALUE = "value"
    COMPONENTS = "components"
    MAGNITUDE_AND_DIRECTION = "magnitude and direction"
    LARGEST = "largest"  # the largest value before a limit is reached, and which limit
    SMALLEST = "smallest"
    HOLDS = "holds"  # whether every limit is kept, yes or no, with the margin


@dataclass(frozen=True, slots=True)
class Find:
    """Something asked: an unknown's id, or a two-component element's id with a form."""

    quantity: str
    form: Form

    @property
    def numbers(self) -> tuple[Quantity, ...]:
        """The numbers that answer it, in the order they are asked."""
        return tuple(Quantity(self.quantity, part) for part in _NUMBERS.get(self.form, ()))


@dataclass(frozen=True, slots=True)
class LargestMoment:
    """The largest bending moment in a body, its distance from `origin`, the point it is bared at.

    between: two points with no load at a point between them, where V is zero; else none.
    """

    body: str
    moment: str
    place: str
    origin: str
    at: str
    between: tuple[str, ...] = ()


_NUMBERS: Final[dict[Form, tuple[QuantityPart, ...]]] = {
    **dict.fromkeys((Form.VALUE, Form.LARGEST, Form.SMALLEST), (QuantityPart.WHOLE,)),
    Form.COMPONENTS: (QuantityPart.X, QuantityPart.Y),
    Form.MAGNITUDE_AND_DIRECTION: (QuantityPart.MAGNITUDE, QuantityPart.DIRECTION),
}


@dataclass(frozen=True)
class System:
    """Everything a template says of a situation, in the terms of statics.

    members: of trusses that are not taken apart into joints and parts yet (`statics.truss`), and
    links whose pins have not given way to one force yet (`statics.link`).
    diagrams: bodies along which what acts inside is drawn; to_draw: those that a student draws.
    by: what trusses are taken apart into, "joints" or "sections"; "" for whichever is shorter.
    """

    variables: Mapping[str, Variable]
    definitions: tuple[Definition, ...]
    points: Mapping[str, Point]
    bodies: tuple[Body, ...]
    forces: tuple[Force, ...]
    couples: tuple[Couple, ...]
    elements: tuple[Element, ...]
    conditions: tuple[Condition, ...]
    finds: tuple[Find, ...]
    pivot: str = ""
    given: tuple[str, ...] = field(default=())
    limits: tuple[Limit, ...] = field(default=())
    members: tuple[Member, ...] = field(default=())
    by: str = ""
    diagrams: tuple[str, ...] = field(default=())
    to_draw: tuple[str, ...] = field(default=())
    largest: tuple[LargestMoment, ...] = field(default=())

    @cached_property
    def unknowns(self) -> tuple[str, ...]:
        """Ids of the unknowns, in the order the template names them."""
        return tuple(v.id for v in self.variables.values() if v.role is Role.UNKNOWN)

    @cached_property
    def unknown_forces(self) -> tuple[str, ...]:
        """Ids of those unknowns that are forces."""
        return tuple(id for id in self.unknowns if self.variables[id].dimension == FORCE)

    @cached_property
    def asked(self) -> Mapping[str, Quantity]:
        """The numbers asked for by their ids, in the order asked."""
        return {str(number): number for find in self.finds for number in find.numbers}

    @cached_property
    def names_used(self) -> frozenset[str]:
        """Ids of what its forces, couples, equations and limits are written with."""
        written = [force.magnitude for force in self.forces]
        written += [member.force for member in self.members]
        written += [couple.moment for couple in self.couples]
        written += [each.expression for each in self.definitions]
        written += [side for each in self.conditions for side in (each.left, each.right)]
        written += [side for each in self.limits for side in (each.left, each.right)]
        return frozenset().union(*map(names_in, written))

    @cached_property
    def uncut(self) -> System:
        """The system without the parts that sections leave, and points whose place is one found."""
        if not (parts := {body.id for body in self.bodies if body.part_of}):
            return self
        sought = frozenset(each.place for each in self.largest if each.between)
        return replace(
            self,
            points={id: p for id, p in self.points.items() if not p.told_by(sought)},
            bodies=tuple(body for body in self.bodies if body.id not in parts),
            forces=tuple(force for force in self.forces if force.body not in parts),
            couples=tuple(couple for couple in self.couples if couple.body not in parts),
            elements=tuple(element for element in self.elements if element.body not in parts),
        )

    def body(self, id: str) -> Body:
        return next(body for body in self.bodies if body.id == id)

    def element(self, id: str) -> Element:
        return next(element for element in self.elements if element.id == id)

    def force(self, id: str) -> Force:
        return next(force for force in self.forces if force.id == id)
