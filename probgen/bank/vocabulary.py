"""The words of [depicts], and what each of them is drawn as.

A template uses the words, the figures what they show alone; `guide` prints them for authors.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Generic, TypeVar

from probgen.bank.depiction import (
    Anchor,
    Fluid,
    Hinge,
    Load,
    Look,
    Manner,
    Roller,
    Scenery,
    Source,
    Thing,
    Touch,
)

T = TypeVar("T", covariant=True)


@dataclass(frozen=True, slots=True)
class Entry(Generic[T]):
    """One drawing with the words that ask for it; drawn: what is seen, for authors."""

    shows: T
    words: tuple[str, ...]
    drawn: str


@dataclass(frozen=True, slots=True)
class Vocabulary(Generic[T]):
    """The words for one kind of thing; of: the kind, for authors."""

    of: str
    entries: tuple[Entry[T], ...]

    @property
    def words(self) -> dict[str, T]:
        """What each word shows."""
        return {word: entry.shows for entry in self.entries for word in entry.words}

    @property
    def first_words(self) -> tuple[str, ...]:
        """One word for each drawing."""
        return tuple(entry.words[0] for entry in self.entries)


def _loads(thing: Thing, words: str, drawn: str, *manners: Manner) -> Iterator[Entry[Load]]:
    """A thing in each manner it can be carried in; the first needs no word of its own."""
    names = tuple(words.split(", "))
    for manner in manners:
        said = tuple(f"{name} {manner.value}" for name in names)
        whole = names + said if manner is manners[0] else said
        yield Entry(Load(thing, manner), whole, f"{drawn}, {manner.value}")


_PEOPLE: Final = (Manner.STANDS, Manner.HANGS, Manner.LIES)

BODIES: Final = Vocabulary("a body", (
    Entry(Look.BEAM, ("beam", "bell crank"), "a bar, or the outline where it is closed"),
    Entry(Look.PLANK, ("plank",), "a thin bar"),
    Entry(Look.ROD, ("rod",), "a bar that is thinner still"),
    Entry(Look.FISHING_ROD, ("fishing rod",), "a rod that tapers, with a reel and a line along it"),
    Entry(Look.LADDER, ("ladder",), "two stiles and rungs"),
    Entry(Look.WHEELBARROW, ("wheelbarrow",), "shafts, a tray and a leg"),
    Entry(Look.DRUM, ("drum", "windlass", "winch", "wheel", "capstan", "pulley"),
          "a rim about the hinge for each other point"),
    Entry(Look.CRANKED_DRUM, ("drum with crank",), "the same, a crank to the farthest point"),
    Entry(Look.REEL, ("reel", "cable reel"), "the flange of a reel, with a hub"),
    Entry(Look.GATE, ("gate",), "boards between two stiles where it is closed, else a bar"),
    Entry(Look.CABINET, ("cabinet", "cupboard", "wardrobe"),
          "a box about its axis from the floor up"),
    Entry(Look.BOOKCASE, ("bookcase", "shelves"), "such a box with shelves"),
    Entry(Look.FILES, ("filing cabinet",), "such a box with drawers, their handles to the right"),
    Entry(Look.FRIDGE, ("refrigerator",), "such a box, the first long side its back, with doors"),
    Entry(Look.TROLLEY, ("motor trolley",), "a bar, a motor bolted on where its couple acts"),
    Entry(Look.SIGN_POST, ("sign post",), "a post, with a plate where a load is spread over it"),
    Entry(Look.STONE, ("stone",), "a slab of rough stone"),
    Entry(Look.FOREARM, ("forearm",), "a forearm and a hand"),
    Entry(Look.ARM, ("arm",), "an arm and a hand, stouter"),
    Entry(Look.LEG, ("leg", "lower leg"), "a lower leg and a foot"),
    Entry(Look.TRUNK, ("trunk", "torso", "back"), "a trunk; a hand holds what hangs from it"),
    Entry(Look.FOOT, ("foot",), "a foot raised on its ball"),
    Entry(Look.JAW, ("jaw",), "a lower jaw with its teeth"),
    Entry(Look.PELVIS, ("pelvis", "hip"), "one half of a pelvis"),
    Entry(Look.HEAD, ("head",), "a head in profile"),
    Entry(Look.PUSH_UP, ("push-up",), "a person, the outline from toes to shoulder to hands"),
))  # fmt: skip

PARTICLES: Final = Vocabulary("a particle", (
    Entry(Look.RING, ("ring", "knot"), "a ring where lines meet"),
    Entry(Look.CRATE, ("crate", "box", "chest"), "a crate"),
    Entry(Look.BLOCK, ("block",), "a block"),
    Entry(Look.BRICK, ("brick",), "a brick, longer than it is high"),
    Entry(Look.PALLET, ("pallet",), "a low stack on a pallet"),
    Entry(Look.TROUGH, ("trough",), "a trough cut lengthwise, dashed where it is about to slide"),
    Entry(Look.SLED, ("sled", "sledge"), "a box on the runners of a sled"),
    Entry(Look.PANEL, ("panel",), "a thin panel on a wall, dashed where it is about to slide"),
    Entry(Look.BOARD, ("board", "plank", "platform", "seat"), "a board somebody can be on"),
    Entry(Look.BALL, ("ball",), "a ball"),
    Entry(Look.PIPE, ("pipe",), "a pipe from its end"),
    Entry(Look.PERSON, ("person", "worker", "child"), "a person, who holds what line there is"),
    Entry(Look.BUCKET, ("bucket", "pail", "basket"), "a pail"),
    Entry(Look.SITTER, ("sitter", "person sitting"), "one who sits, and holds what line there is"),
    Entry(Look.HEAD, ("head",), "a head in profile"),
    Entry(Look.KNEECAP, ("kneecap",), "a kneecap between its tendons"),
    Entry(Look.BOLLARD, ("bollard",), "a bollard, with a rope's turns round it"),
    Entry(Look.LEG, ("leg",), "such a block as the leg of a table, under the end of its top"),
    Entry(Look.WEDGE, ("wedge",), "a wedge between its two contacts, a block there cut to it"),
))  # fmt: skip

LOADS: Final = Vocabulary("a weight", (
    *_loads(Thing.BLOCK, "block", "a block", Manner.STANDS, Manner.HANGS),
    *_loads(Thing.SACK, "bag, sack", "a bag tied at its neck", Manner.STANDS, Manner.HANGS),
    *_loads(Thing.HOLDALL, "holdall, tool bag", "a bag with two handles", Manner.HANGS),
    *_loads(Thing.TOOLBOX, "toolbox", "a box with a handle", Manner.HANGS),
    *_loads(Thing.BALE, "bale", "a bale of straw", Manner.STANDS, Manner.HANGS),
    *_loads(Thing.ENGINE, "engine", "the engine of an aeroplane", Manner.STANDS),
    *_loads(Thing.BOTTLE, "bottle", "a bottle", Manner.STANDS, Manner.HANGS),
    *_loads(Thing.CRATE, "crate, box, chest", "a crate", Manner.STANDS, Manner.HANGS),
    *_loads(Thing.PLANT, "plant, pot", "a potted plant", Manner.STANDS),
    *_loads(Thing.TREE, "tree", "a tree", Manner.STANDS),
    *_loads(Thing.BALL, "ball, dumbbell", "a ball", Manner.HELD),
    *_loads(Thing.CUFF, "cuff", "a cuff round a limb", Manner.HELD),
    *_loads(Thing.HEAD, "head", "a head at the end of a trunk", Manner.HELD),
    *_loads(Thing.SIGN, "sign", "a sign", Manner.HANGS),
    *_loads(Thing.LAMP, "lamp, lantern", "a lamp", Manner.HANGS),
    *_loads(Thing.BUCKET, "bucket, pail, basket", "a pail", Manner.HANGS, Manner.STANDS),
    *_loads(Thing.PERSON, "person, worker, painter, climber, gymnast, diver", "a person", *_PEOPLE),
    *_loads(Thing.RIDER, "rider", "a person", Manner.SITS, Manner.HANGS),
    *_loads(Thing.CHILD, "child", "a child", Manner.SITS, Manner.HANGS),
    *_loads(Thing.TODDLER, "toddler", "a small child", Manner.STANDS),
    *_loads(Thing.HEAP, "heap, compost, sand, soil", "a heap", Manner.STANDS),
    *_loads(Thing.FEEDER, "feeder, bird feeder", "a bird feeder", Manner.HANGS),
    *_loads(Thing.NET, "net", "a full net", Manner.HANGS),
    *_loads(Thing.PIANO, "piano", "an upright piano in a sling", Manner.HANGS),
    *_loads(Thing.SPEAKER, "loudspeaker", "a loudspeaker", Manner.HANGS),
    Entry(Load(Thing.CENTRE, Manner.HELD), ("centre of mass",), "a mark, for its body's own"),
))  # fmt: skip

HINGES: Final = Vocabulary("a hinge", (
    Entry(Hinge.WALL, ("wall",), "a bracket on a wall"),
    Entry(Hinge.FLOOR, ("floor", "ground", "bracket"), "a bracket on the ground"),
    Entry(Hinge.CEILING, ("ceiling",), "a bracket under a ceiling"),
    Entry(Hinge.FULCRUM, ("fulcrum",), "a wedge with a pin"),
    Entry(Hinge.BLOCK, ("block",), "a block of wood, its edge at the hinge"),
    Entry(Hinge.AXLE, ("axle",), "the stand of a drum"),
    Entry(Hinge.SHAFT, ("shaft",), "the shaft of a drum, its bearings not shown"),
    Entry(Hinge.PUMP, ("pump",), "a hand pump, its rod the cable straight down from the handle"),
    Entry(Hinge.WELL, ("well",), "the wall of a well under a drum, what hangs there in it"),
    Entry(Hinge.MACHINE, ("machine", "arm", "frame"), "a pin on a part that is not shown"),
    Entry(Hinge.JOINT, ("joint", "jaw joint", "neck joint", "ankle joint"),
          "a joint of the body, with what is beyond it where that shows"),
    Entry(Hinge.SHOULDER, ("shoulder",), "such a joint; of an arm, with a neck and one side"),
    Entry(Hinge.ELBOW, ("elbow", "elbow joint"), "such a joint and an upper arm"),
    Entry(Hinge.KNEE, ("knee", "knee joint"), "such a joint and a thigh"),
    Entry(Hinge.HIP, ("hip", "hip joint"), "such a joint and the bone below"),
))  # fmt: skip

ROLLERS: Final = Vocabulary("a roller", (
    Entry(Roller.ROLLERS, ("roller", "rollers"), "two small wheels under a plate"),
    Entry(Roller.WHEEL, ("wheel",), "the wheel of a wheelbarrow"),
    Entry(Roller.HAND_TRUCK, ("hand truck",), "a hand truck along the body's longer side there"),
    Entry(Roller.CASTER, ("trolley wheel",), "the wheel of a trolley, in a fork"),
    Entry(Roller.POST, ("post", "posts", "pier", "trestle"), "a post, the body lying on it"),
    Entry(Roller.ROLLED_POST, ("roller on a post",), "the two wheels on such a post"),
    Entry(Roller.LEDGE, ("ledge",), "a sill on a ledge of a wall"),
    Entry(Roller.BANK, ("bank", "shore"), "a sill under the body's end, on ground that falls away"),
))  # fmt: skip

CONTACTS: Final = Vocabulary("a contact, smooth or rough", (
    Entry(Touch.FACE, ("floor", "ground", "wall", "ramp"), "a face as its normal has it"),
    Entry(Touch.ROOF, ("roof",), "such a slope as one side of a roof; two at a ridge are one"),
    Entry(Touch.PLANK, ("plank",), "such a slope as a plank with one end raised by a hand"),
    Entry(Touch.EDGE, ("edge",), "the outer edge of a wall"),
    Entry(Touch.POST, ("post", "mast"), "a post behind its body, a shoe on the side it presses"),
    Entry(Touch.STOP, ("stop", "sill"), "a face no longer than what it stops is thick"),
    Entry(Touch.SLIDER, ("slider", "ram", "piston"), "a block about a pin, along a face"),
    Entry(Touch.SLOT, ("slot", "slotted"), "a slot about a pin, in the bar its push is square to"),
    Entry(Touch.BRANCH, ("branch", "pipe", "rail", "log", "bar", "tube"), "something round"),
    Entry(Touch.FULCRUM, ("fulcrum", "pivot"), "a wedge"),
    Entry(Touch.TILE, ("tile", "slab", "batten"), "something flat that it presses on a face"),
    Entry(Touch.JOINT, ("joint", "hip joint"), "a joint of the body that pushes one way only"),
))  # fmt: skip

FORCES: Final = Vocabulary("a force", (
    Entry(Source.ARROW, ("arrow", "hand", "hands"), "an arrow, where its direction is known"),
    Entry(Source.PUSH, ("push",), "the same, behind what it pushes"),
    Entry(Source.FLOOR, ("floor", "ground"), "the ground instead of the arrow"),
    Entry(Source.CEILING, ("ceiling",), "a ceiling it hangs from"),
    Entry(Source.NUT, ("nut", "stone"), "something bitten on"),
    Entry(Source.SCALE, ("scale",), "a scale to weigh on"),
    Entry(Source.PEDAL, ("pedal", "foot"), "an arrow that presses on a pad"),
    Entry(Source.VALVE, ("valve",), "an arrow below a valve on a boiler, with a post to the hinge"),
    Entry(Source.GRIP, ("grip", "pulling hand"), "a fist about its point, a forearm that pulls"),
    Entry(Source.STICK, ("stick", "crutch"), "a hand on a stick from the ground up"),
    Entry(Source.LIFTER, ("lifter", "worker"), "an arrow, and somebody below who reaches up there"),
    Entry(Source.BEARER, ("bearer", "shoulder"), "an arrow, and somebody whose shoulder is there"),
    Entry(Source.HOLDER, ("holding hand",), "an arrow, and a hand that holds its body there"),
    Entry(Source.BOOT, ("boot", "boots"), "an arrow, and a boot that pushes along the ground"),
))  # fmt: skip

LINES: Final = Vocabulary("a cable, rope, spring or strut", (
    Entry(Anchor.WALL, ("wall",), "fixed to a wall"),
    Entry(Anchor.POST, ("post", "pole", "bollard", "hook"), "fixed to a post; a pulley, on top"),
    Entry(Anchor.TREE, ("tree",), "fixed to a tree"),
    Entry(Anchor.TREE_THICK, ("tree by a thick cord",), "the same, a thicker line"),
    Entry(Anchor.BAND, ("band", "belt"), "a thicker line, round the drum between two of them"),
    Entry(Anchor.MAST, ("mast",), "fixed to a mast beside its body, up from the ground"),
    Entry(Anchor.CEILING, ("ceiling", "beam", "roof"), "fixed above, to no post"),
    Entry(Anchor.SLING, ("sling",), "a band round its body, hung from above"),
    Entry(Anchor.WINCH, ("winch",), "wound on a winch up its slope; along a bar, over its end"),
    Entry(Anchor.MACHINE, ("machine", "arm", "frame"), "pinned to a part that is not shown"),
    Entry(Anchor.CHAIN, ("chain",), "a chain, so fixed"),
    Entry(Anchor.GAS_STRUT, ("gas strut",), "so pinned, a strut drawn as a cylinder and its rod"),
))  # fmt: skip

FLUIDS: Final = Vocabulary("a distributed load", (
    Entry(Fluid.WATER, ("water",), "arrows in the water, up to the surface where there is none"),
    Entry(Fluid.BALES, ("bales",), "a row of bales about the arrows"),
    Entry(Fluid.TUB, ("bathtub", "tub"), "the outline of a bathtub about the arrows"),
))  # fmt: skip

SCENERY: Final = Vocabulary("`scenery`", (
    Entry(Scenery.WATER, ("water", "river"), "water about what stands in it"),
    Entry(Scenery.SUBMERGED, ("under water",), "the same, up to above all that is there"),
    Entry(Scenery.BOAT, ("boat",), "the same, a boat at the end of a force's arrow"),
    Entry(Scenery.WALL_LEFT, ("wall left",), "a wall to the left of all, which holds nothing"),
    Entry(Scenery.WALL_RIGHT, ("wall right",), "the same, to the right"),
    Entry(Scenery.PHONE, ("phone",), "a phone before a head"),
    Entry(Scenery.STANDING, ("person", "person standing"), "a person about a pelvis, to the knees"),
    Entry(Scenery.HIP_BONES, ("hip bones",), "a pelvis as such a bone, the thigh bone below it"),
    Entry(Scenery.VAN, ("van",), "the rear of a van below the first hinge, struts pinned on it"),
    Entry(Scenery.STAIRS, ("stairs",), "a staircase that rises below the first body as it does"),
    Entry(Scenery.HATCHWAY, ("hatchway",), "the floor past an opening that the first body covers"),
    Entry(Scenery.RAFT, ("raft",), "a raft from above, its upper right corner at a particle"),
    Entry(Scenery.BILLBOARD, ("billboard",), "the edge of a board, where level pushes are"),
    Entry(Scenery.TILTED, ("tilted",), "a box tilted about an edge of its base, dashed"),
))  # fmt: skip

ALL: Final = (BODIES, PARTICLES, LOADS, FLUIDS, HINGES, ROLLERS, CONTACTS, FORCES, LINES, SCENERY)


def guide() -> str:
    """The vocabulary as a table of the authoring guide (Markdown)."""
    rows = ["| of | word | is drawn as |", "| --- | --- | --- |"]
    for vocabulary in ALL:
        for place, entry in enumerate(vocabulary.entries):
            words = ", ".join(f"`{word}`" for word in entry.words)
            rows.append(f"| {'' if place else vocabulary.of} | {words} | {entry.drawn} |")
    return "\n".join(rows) + "\n"
