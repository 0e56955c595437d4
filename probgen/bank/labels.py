"""What the things of a system are called: letters, nouns and reasons, by id.

The system itself knows none of this, so that the same physics may be told in other words.  What an
author wrote is kept as it was written; what was left to us is data, which a language has words for.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import dataclass, field, replace
from enum import Enum, StrEnum, auto
from typing import Final

from probgen.quantities.expression import Name
from probgen.statics.system import Body, Couple, Find, Force


class Carried(StrEnum):
    """What a body does that another carries."""

    PULLS = auto()
    PUSHES = auto()
    ACTS = auto()  # either, as it is held fast


class ByKind(Enum):
    """What exerts a force, by its kind alone."""

    HINGE = auto()
    SUPPORT = auto()  # a built-in end
    PART_CUT_OFF = auto()
    ROLLER = auto()
    SURFACE = auto()
    FULCRUM = auto()
    CABLE = auto()
    MUSCLE = auto()
    STRUT = auto()
    SPRING = auto()
    ROPE = auto()
    FORCE = auto()
    COUPLE = auto()
    LOAD = auto()


@dataclass(frozen=True, slots=True)
class BodyNamed:
    """Called as a body is."""

    body: str


class Sort(Enum):
    """What a quantity is, of what exerts it or where."""

    TENSION = auto()
    LEVEL_PART = auto()  # of the tension along a cable with loads
    PULL = auto()
    PUSH = auto()
    SPRING_FORCE = auto()
    SUPPORT_FORCE = auto()
    X_COMPONENT = auto()
    Y_COMPONENT = auto()
    COUPLE = auto()
    NORMAL_FORCE = auto()
    FRICTION = auto()
    LEAST_COEFFICIENT = auto()  # of static friction
    AXIAL_FORCE = auto()
    SHEAR_FORCE = auto()
    BENDING_MOMENT = auto()
    LARGEST_MOMENT = auto()  # the largest bending moment in a body
    LARGEST_MOMENT_PLACE = auto()  # how far from a point that is
    APPLIED_FORCE = auto()
    WEIGHT = auto()
    RESULTANT = auto()
    CENTRE_X = auto()  # a coordinate of a centre of mass
    CENTRE_Y = auto()
    FREE_FALL = auto()
    MEMBER_FORCE = auto()
    ALONG_LOAD = auto()  # the distance along a load that is told by a formula
    INTENSITY = auto()  # its size at one place
    CENTROID = auto()  # the distance its resultant acts at
    TORQUE = auto()  # of forces and couples about a point
    CROSSING = auto()  # how far from a point the line of action of a force is


@dataclass(frozen=True, slots=True)
class Coined:
    """A quantity its author gave no name; of: what exerts it or weighs.

    at: a point of a member, or of a force that goes by the name of another.
    line: of a distance the points it is counted between, from the first toward the second; () to
    the right.
    """

    sort: Sort
    of: Called = ""
    at: str = ""
    line: tuple[str, ...] = ()


class Piece(Enum):
    """A piece of a truss."""

    MEMBER = auto()
    JOINT = auto()
    PART = auto()  # what a section leaves


@dataclass(frozen=True, slots=True)
class Lettered:
    """A piece of a truss goes by the letters of its joints."""

    piece: Piece
    joints: tuple[str, ...]


Called = str | ByKind | BodyNamed | Coined | Lettered
"""A name: the author's own text, or what goes in its place."""


@dataclass(frozen=True, slots=True)
class Slipping:
    """What happens beyond a limit of friction: a body slips on what it is on."""

    body: str
    on: Called


class Reason(Enum):
    """Why a condition or a definition holds whose author does not say it."""

    RATIO_STATED = auto()
    SLIDES_STEADILY = auto()
    VERGE_OF_SLIPPING = auto()
    FRICTION_AT_LIMIT = auto()
    LEAST_COEFFICIENT = auto()
    CENTRE_OF_MASS = auto()
    CENTRE_WITH_HOLES = auto()  # of parts, and of what is cut out
    CENTRE_SHARED = auto()  # all parts have one coordinate in common
    LOAD_ON_PART = auto()  # how much of a spread load lies on a part of unknown length
    LARGEST_MOMENT = auto()  # that it is at a point known
    TORQUE = auto()  # each force by its lever arm
    SAME_TORQUE = auto()  # a resultant turns as much as the forces it stands for


@dataclass(frozen=True, slots=True)
class Label:
    """What a quantity, or an element, is called.

    symbol: its printed letter in the author's short notation, "m_1", "theta", "R_x"; "R" for the
    whole of a hinge.
    name: in words: "shelf mass" for a quantity; "cable" or "your hand" for what exerts a force.
    measured: how an angle or a distance is measured, in words ("from the shelf"), or "".
    """

    symbol: str
    name: Called
    measured: str = ""


@dataclass(frozen=True, slots=True)
class Labels:
    """The words that go with a system.

    quantities, elements: by id of a variable, of an element.
    bodies: the noun a body goes by, "shelf"; limits: what happens beyond one, "the foot slips".
    reasons: why a condition or a definition holds; finds: the author's own words for what is
    asked, where any.
    plan: whether all is seen from above, so that ways are told by the compass, y to the north.
    together: what all bodies together are called, "" where the author does not say.
    carried: what does its weight to a body that it is no part of, by the id of the weight.
    """

    quantities: Mapping[str, Label] = field(default_factory=dict)
    elements: Mapping[str, Label] = field(default_factory=dict)
    bodies: Mapping[str, str] = field(default_factory=dict)
    limits: Mapping[str, str | Slipping] = field(default_factory=dict)
    reasons: Mapping[str, str | Reason] = field(default_factory=dict)
    finds: Mapping[Find, str] = field(default_factory=dict)
    plan: bool = False
    carried: Mapping[str, Carried] = field(default_factory=dict)
    together: str = ""

    def __hash__(self) -> int:
        return hash(frozenset(self.quantities))

    def letter(self, quantity: str) -> Name:
        """A quantity's letter, for formulas."""
        return Name(quantity, self.quantities[quantity].symbol)

    def whole(self, element: str) -> Name:
        """The letter of an element as a whole: R where R_x and R_y are its components."""
        return Name(element, self.elements[element].symbol)

    def source(self, acting: Force | Couple) -> Called:
        """What exerts a force or a couple."""
        return self.elements[acting.element].name


_FORCES: Final = (
    Sort.TENSION, Sort.PULL, Sort.PUSH, Sort.SPRING_FORCE, Sort.SUPPORT_FORCE, Sort.X_COMPONENT,
    Sort.Y_COMPONENT, Sort.NORMAL_FORCE, Sort.FRICTION, Sort.APPLIED_FORCE,
)  # fmt: skip


def told_apart(
    quantities: Mapping[str, Label], forces: Sequence[Force], bodies: Iterable[Body]
) -> dict[str, Label]:
    """The labels of quantities, in which forces of one name are told apart by their points.

    So is the push of a body that acts on others in several places: "the force from the leg at C",
    and a coefficient of friction where others are looked for elsewhere.
    A particle's place has no letter on paper.
    """
    extended = {body.id for body in bodies if not body.particle}
    places: dict[str, str] = {}
    for force in forces:
        if isinstance(force.magnitude, Name) and force.body in extended:
            places.setdefault(force.magnitude.id, force.point)
    named = {id: quantities[id].name for id in places if id in quantities}
    acted = {(force.body, force.point) for force in forces if force.pair}
    several = [body for body, count in Counter(body for body, _ in acted).items() if count > 1]
    made = dict(quantities)
    for id, name in named.items():
        if not isinstance(name, Coined) or name.sort not in _FORCES or name.at:
            continue
        alike = {places[other] for other, its in named.items() if its == name}
        if len(alike) > 1 or (isinstance(name.of, BodyNamed) and name.of.body in several):
            made[id] = replace(quantities[id], name=replace(name, at=places[id]))
    return made | _coefficients(quantities, {f.point for f in forces if f.body in extended})


def _coefficients(quantities: Mapping[str, Label], lettered: Set[str]) -> dict[str, Label]:
    """The labels of coefficients looked for, by their points where there are several."""
    least = Sort.LEAST_COEFFICIENT
    found = {
        id: (label, label.name)
        for id, label in quantities.items()
        if isinstance(label.name, Coined) and label.name.sort is least
    }
    if len(found) > 1 and all(name.at in lettered for _, name in found.values()):
        return {}
    return {id: replace(label, name=replace(name, at="")) for id, (label, name) in found.items()}


def asks_coordinates(labels: Labels) -> bool:
    """Whether something is told by its coordinates, which are measured from somewhere."""
    coined = (each.name for each in labels.quantities.values() if isinstance(each.name, Coined))
    return any(each.sort in (Sort.CENTRE_X, Sort.CENTRE_Y) for each in coined)
