"""Facts of the forces on a body."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum, auto

from probgen.bank.labels import Carried
from probgen.quantities.expression import Expression, Name
from probgen.statics.shape import Outline
from probgen.statics.system import ForcePart, Kind
from probgen.working.convention import Rotation
from probgen.working.direction import Way
from probgen.working.fact import Fact


@dataclass(frozen=True, slots=True)
class ForcesHeading(Fact):
    """bodies: the body, or those taken as one."""

    bodies: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TakenAsOne(Fact):
    """Several bodies whose inner forces cancel.

    inner: these, with the point where one acts on both bodies; "" for none, as between particles.
    """

    bodies: tuple[str, ...]
    inner: tuple[tuple[Expression, str], ...]


@dataclass(frozen=True, slots=True)
class ForcesCounted(Fact):
    """How many forces and couples act on a body; each follows as a fact of its own.

    bodies: that body, or those that were just taken as one.
    """

    bodies: tuple[str, ...]
    forces: int
    couples: int


@dataclass(frozen=True, slots=True)
class JointForce(Fact):
    """A force unknown in size and direction, by its components and which way each is taken.

    point: where it acts, "" on a particle; again: whether it was told on the whole truss before;
    stated: whether the problem says what a component is, so that not both size and direction are
    unknown.
    """

    element: str
    letter: Name
    parts: tuple[tuple[Expression, Way], ...]
    point: str
    again: bool = False
    stated: bool = False


@dataclass(frozen=True, slots=True)
class JointReaction(Fact):
    """The same force on the second of two bodies; other: the first."""

    element: str
    other: str
    parts: tuple[tuple[Expression, Way], ...]
    point: str


@dataclass(frozen=True, slots=True)
class ForceNamed(Fact):
    """One force; part: as in `statics.system.Force`; point: where it acts, "" on a particle.

    carried: what does its weight that is no part of the body; None for all else.
    again: whether that was told of on another body, or on a whole, before.
    on: the body, of those taken as one, where another force there is told alike; else "".
    middle: whether it is a body's own weight, in the middle of its length whatever is drawn.
    across: the body that a smooth contact pushes square to, as it touches it between its ends with
    an edge or something round; "" where what pushes has the surface.
    reaction_to: the body that the equal and opposite force was named on before; else "".
    """

    element: str
    kind: Kind
    part: ForcePart
    letter: Expression
    point: str
    way: Way
    on: str = ""
    carried: Carried | None = None
    again: bool = False
    middle: bool = False
    across: str = ""
    reaction_to: str = ""


@dataclass(frozen=True, slots=True)
class CoupleNamed(Fact):
    """rotation: which way it turns; taken: whether that is only how it is counted positive.

    bared: the bending moment at a section.
    """

    couple: str
    moment: Expression
    rotation: Rotation
    taken: bool
    bared: bool = False


@dataclass(frozen=True, slots=True)
class SignsOpen(Fact):
    """Quantities that may come out negative, which then means the opposite way."""

    letters: tuple[Expression, ...]


@dataclass(frozen=True, slots=True)
class SlipOpposed(Fact):
    """Which way a body would slip along what touches it, and that friction acts the other way.

    elements: what it touches; slips, way: the ways of the slipping and of friction; steady: whether
    it slides already.
    """

    forces: tuple[Expression, ...]
    body: str
    elements: tuple[str, ...]
    slips: Way
    way: Way
    steady: bool


@dataclass(frozen=True, slots=True)
class LeftOpen(Fact):
    """Quantities that no step works out, because nobody asks for them.

    unsettled: whether equilibrium alone does not even give them.
    """

    letters: tuple[Expression, ...]
    unsettled: bool = False


@dataclass(frozen=True, slots=True)
class PartExpected(Fact):
    """Which way a force has to act, because all others along its axis act the opposite way.

    way: which way it acts; others, theirs: the forces it holds in balance, and their way.
    axis: "" of friction along a slope.
    drawn: whether it is drawn that way too, and so will come out positive; again: whether what
    follows where it is not was said before.  strands: how many pulls of one rope the others are,
    where they are no more than that.  every: whether the body is under no force besides.
    axial: whether the force is what a section lays bare along the body, which is drawn as tension.
    """

    force: Expression
    way: Way
    others: tuple[Expression, ...]
    theirs: Way
    axis: str
    drawn: bool
    strands: int = 1
    every: bool = False
    axial: bool = False
    again: bool = False


@dataclass(frozen=True, slots=True)
class LeverExpected(Fact):
    """Which way a joint's force has to act, beside one force that holds all others about it.

    lever, side: that force and which way it acts; nearer: whether it acts nearer to the pivot than
    the others, so that its part that way is larger than all of them, or farther out.
    drawn: as in `PartExpected`; oblique: whether only a part of some of the others acts along its
    axis; partly: whether only a part of the lever's own does.  held: the others that have a lever
    arm about the joint, which that force holds.  by_line: whether its other part turns too, so that
    what is nearer is where its line of action meets the level (or the upright) through the pivot.
    """

    force: Expression
    way: Way
    lever: Expression
    others: tuple[Expression, ...]
    held: tuple[Expression, ...]
    side: Way
    pivot: str
    nearer: bool
    drawn: bool
    oblique: bool = False
    partly: bool = False
    by_line: bool = False


@dataclass(frozen=True, slots=True)
class TurnExpected(Fact):
    """Which way a force or couple has to act that alone holds others about a pivot.

    rotation: which way the others all turn the body; way: which way the force acts, None for a
    couple; drawn: as in `PartExpected`.
    """

    letter: Expression
    bodies: tuple[str, ...]
    pivot: str
    others: tuple[Expression, ...]
    rotation: Rotation
    way: Way | None
    drawn: bool


@dataclass(frozen=True, slots=True)
class SharesExpected(Fact):
    """Two forces in a stated ratio, which together hold others; the rest as in `PartExpected`."""

    forces: tuple[Expression, Expression]
    way: Way
    others: tuple[Expression, ...]
    theirs: Way
    drawn: bool


@dataclass(frozen=True, slots=True)
class NothingAgainst(Fact):
    """A force that has to be zero, for no other has a part along its axis."""

    force: Expression
    axis: str


@dataclass(frozen=True, slots=True)
class StrutAlong(Fact):
    """A strut pinned at both ends and carrying nothing else pushes along itself.

    again: whether the reason was given before, of another.
    """

    element: str
    force: Expression
    again: bool = False


@dataclass(frozen=True, slots=True)
class LinkAlong(Fact):
    """A body pinned at both ends that carries nothing else, and the one force along it.

    pins: the points it is pinned at, in the order of the alphabet.
    """

    body: str
    force: Expression
    pins: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SameTension(Fact):
    """A rope that pulled on another body pulls on this one too; force: its tension."""

    element: str
    force: Expression


class Spreading(StrEnum):
    """How a load is spread along its line."""

    EVEN = auto()
    TRIANGLE = auto()
    UNEVEN = auto()


@dataclass(frozen=True, slots=True)
class SpreadLoad(Fact):
    """What the resultant of a spread load stands for; element: what loads.

    heavy: the heavy end of a triangle, or "" where it has no letter; largest: its load there, or
    that of an even one (N/m).
    """

    element: str
    force: Expression
    spreading: Spreading
    heavy: str = ""
    largest: Expression | None = None


@dataclass(frozen=True, slots=True)
class PartsHeading(Fact):
    """The weights on a body, or other loads, where no balance of it is needed.

    made: they are those of parts that it is made of; heavy: they are weights, all of them.
    """

    body: str
    made: bool
    heavy: bool


@dataclass(frozen=True, slots=True)
class PartPlaced(Fact):
    """A part's weight and the coordinates of its centroid; hole: it is cut out."""

    element: str
    force: Expression
    hole: bool
    x: Expression
    y: Expression


@dataclass(frozen=True, slots=True)
class PartCentred(Fact):
    """Where the centroid of a part is; out: from the middle of its straight side or its ends.

    at: its point, "" where that is not shown.
    """

    element: str
    outline: Outline
    at: str
    out: Expression


@dataclass(frozen=True, slots=True)
class HoleCounted(Fact):
    """Why the weight of what is cut out counts upward."""

    force: Expression


@dataclass(frozen=True, slots=True)
class SectionLaid(Fact):
    """A section through members of a truss, and the part that is kept.

    members: the elements of those that are cut and pull; idle: of those that carry nothing.
    """

    part: str
    members: tuple[str, ...]
    idle: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BodyCut(Fact):
    """A section through a body at a point, the part that is kept, and what the section bares.

    shear: None where it is laid where there is no shear force.
    """

    body: str
    part: str
    at: str
    axial: Name
    shear: Name | None
    moment: Name
