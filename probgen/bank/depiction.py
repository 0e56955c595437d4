"""What figures can show of bodies, what loads them and what holds them.

The words a template asks for it by are in `vocabulary.py`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum, auto
from typing import Final


class Look(Enum):
    """What a body is drawn as."""

    BEAM = auto()
    PLANK = auto()
    ROD = auto()
    FISHING_ROD = auto()
    LADDER = auto()
    WHEELBARROW = auto()
    DRUM = auto()
    CRANKED_DRUM = auto()
    REEL = auto()
    GATE = auto()
    CABINET = auto()
    BOOKCASE = auto()
    FILES = auto()
    FRIDGE = auto()
    TROLLEY = auto()
    SIGN_POST = auto()
    STONE = auto()
    FOREARM = auto()
    ARM = auto()
    LEG = auto()
    TRUNK = auto()
    FOOT = auto()
    JAW = auto()
    PELVIS = auto()
    HEAD = auto()
    KNEECAP = auto()
    PUSH_UP = auto()
    BOLLARD = auto()
    WEDGE = auto()
    RING = auto()
    CRATE = auto()
    BLOCK = auto()
    BRICK = auto()
    PALLET = auto()
    TROUGH = auto()
    SLED = auto()
    PANEL = auto()
    BOARD = auto()
    BALL = auto()
    PIPE = auto()
    PERSON = auto()
    BUCKET = auto()
    SITTER = auto()
    TRUSS = auto()


class Thing(Enum):
    """What weighs on a body."""

    BLOCK = auto()
    CRATE = auto()
    PLANT = auto()
    TREE = auto()
    BALL = auto()
    CUFF = auto()
    HEAD = auto()
    SIGN = auto()
    LAMP = auto()
    BUCKET = auto()
    PERSON = auto()
    RIDER = auto()
    CHILD = auto()
    HEAP = auto()
    FEEDER = auto()
    NET = auto()
    BOTTLE = auto()
    TODDLER = auto()
    PIANO = auto()
    SACK = auto()
    HOLDALL = auto()
    TOOLBOX = auto()
    BALE = auto()
    ENGINE = auto()
    SPEAKER = auto()
    CENTRE = auto()  # nothing but the centre of mass of the body itself


class Manner(Enum):
    """How a body carries what weighs on it; the value is the word a template adds."""

    STANDS = "standing"
    HANGS = "hung"
    SITS = "sitting"
    LIES = "lying"
    HELD = "held"


@dataclass(frozen=True, slots=True)
class Load:
    """What a weight is drawn as."""

    thing: Thing
    manner: Manner


class Hinge(Enum):
    """What a hinge is drawn as."""

    WALL = auto()
    FLOOR = auto()
    CEILING = auto()
    FULCRUM = auto()
    BLOCK = auto()
    AXLE = auto()
    SHAFT = auto()
    PUMP = auto()
    WELL = auto()
    MACHINE = auto()
    JOINT = auto()
    SHOULDER = auto()
    ELBOW = auto()
    KNEE = auto()
    HIP = auto()


class Roller(Enum):
    """What a roller is drawn as."""

    ROLLERS = auto()
    WHEEL = auto()
    HAND_TRUCK = auto()
    CASTER = auto()
    POST = auto()
    ROLLED_POST = auto()
    LEDGE = auto()
    BANK = auto()


class Touch(Enum):
    """What a body that is in contact touches."""

    FACE = auto()
    EDGE = auto()
    POST = auto()
    STOP = auto()
    SLIDER = auto()
    SLOT = auto()
    BRANCH = auto()
    FULCRUM = auto()
    TILE = auto()
    ROOF = auto()
    JOINT = auto()
    PLANK = auto()


class Source(Enum):
    """What a force is drawn as: an arrow, or what exerts it."""

    ARROW = auto()
    PUSH = auto()
    FLOOR = auto()
    CEILING = auto()
    NUT = auto()
    SCALE = auto()
    PEDAL = auto()
    VALVE = auto()
    GRIP = auto()
    STICK = auto()
    LIFTER = auto()
    BEARER = auto()
    HOLDER = auto()
    BOOT = auto()


class Scenery(Enum):
    """What stands about a situation."""

    WATER = auto()
    BOAT = auto()
    WALL_LEFT = auto()
    WALL_RIGHT = auto()
    PHONE = auto()
    STANDING = auto()
    HIP_BONES = auto()
    TILTED = auto()
    VAN = auto()
    STAIRS = auto()
    HATCHWAY = auto()
    SUBMERGED = auto()
    RAFT = auto()
    BILLBOARD = auto()


class Anchor(Enum):
    """What the far end of a line is fixed to."""

    WALL = auto()
    POST = auto()
    MAST = auto()
    SLING = auto()
    TREE = auto()
    TREE_THICK = auto()
    BAND = auto()
    CEILING = auto()
    WINCH = auto()
    MACHINE = auto()
    GAS_STRUT = auto()
    CHAIN = auto()


TREES: Final = frozenset({Anchor.TREE, Anchor.TREE_THICK})


class Fluid(Enum):
    """What stands beside a distributed load, or about it, and presses with it."""

    WATER = auto()
    TUB = auto()
    BALES = auto()


Depiction = Look | Load | Hinge | Roller | Touch | Source | Anchor | Scenery | Fluid


@dataclass(frozen=True, slots=True)
class Depictions:
    """What the bodies and elements of one template are drawn as, by their ids.

    What is left out has no word; the figure then shows the plainest thing of its kind.
    """

    bodies: Mapping[str, Look] = field(default_factory=dict)
    loads: Mapping[str, Load] = field(default_factory=dict)
    hinges: Mapping[str, Hinge] = field(default_factory=dict)
    rollers: Mapping[str, Roller] = field(default_factory=dict)
    contacts: Mapping[str, Touch] = field(default_factory=dict)
    forces: Mapping[str, Source] = field(default_factory=dict)
    lines: Mapping[str, Anchor] = field(default_factory=dict)
    about: Mapping[str, Scenery] = field(default_factory=dict)
    fluids: Mapping[str, Fluid] = field(default_factory=dict)

    @property
    def wedges(self) -> frozenset[str]:
        """The bodies drawn as wedges."""
        return frozenset(id for id, look in self.bodies.items() if look is Look.WEDGE)
