"""Wedges, and the blocks they bear: particles drawn with the faces at which they touch.

Which way a face looks is known from the contact there, so that a wedge has its true angle and what
it is driven under is cut to it.  Places are complex numbers in pt from the middle of the body,
whatever the scale of the figure.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from probgen.bank.depiction import Look
from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import Spot, bearing, dot, heading
from probgen.quantities.expression import Name
from probgen.statics.geometry import angle_of
from probgen.statics.system import Body, Element, Kind

HALF: Final = 32 + 14j
"""Half the least width and height of a block on a wedge, pt."""
BARE: Final = 46 + 16j
"""The same of one alone, with room for arrows along its faces."""

_TALL: Final = 26 + 28j
"""The same of one between two faces, whose weight has room within it."""

_SURFACES: Final = (Kind.CONTACT, Kind.ROUGH, Kind.ROLLER)
_BLOCKS: Final = (Look.CRATE, Look.BLOCK)
_BORNE: Final = (Look.BEAM, *_BLOCKS, Look.LEG)  # a block: what nothing is said of, or a word
_OUT: Final = 42.0  # how far a wedge stands out from under what it bears, pt
_SHORT: Final = 8.0  # how far its tip ends within that, pt
_TIP: Final = 5.0  # thickness of the tip of a slender wedge, pt
_BLUNT: Final = 12.0  # what steeper ones have more, times the tangent of their angle
_PARALLEL: Final = 0.02  # two faces that make less than about a degree are no wedge
_ALIGNED: Final = 0.5  # degrees
_SQUARE: Final = 1e-6  # cosine between faces that are square to each other


@dataclass(frozen=True, slots=True)
class Face:
    """Where a body touches another: the middle of the face, and the unit step out of the body."""

    at: Spot
    out: complex


@dataclass(frozen=True, slots=True)
class Corner:
    """The angle of a wedge where it stands out from under what it bears.

    at: its vertex on the sloping face; reference, way: along the other face and up this one, deg;
    id: the quantity it is.
    """

    at: Spot
    reference: float
    way: float
    id: str


@dataclass(frozen=True, slots=True)
class Faced:
    """A particle with its outline.

    corners: of the outline, in order; faces: by the element that touches there; tip: the unit step
    in which a wedge is driven, 0 for a block; head: where it is driven; corner: its angle, where
    that is a quantity; clear: the middle of what no face cuts into, where a label is set; beside:
    where one may lie beside a wedge, and which way from there (deg), the sloping face first;
    within: whether its weight has room below its middle.
    """

    corners: tuple[Spot, ...]
    faces: Mapping[str, Face]
    tip: complex = 0j
    head: Spot = 0j
    corner: Corner | None = None
    clear: Spot = 0j
    beside: tuple[tuple[Spot, float], ...] = ()
    within: bool = False

    def grip(self, way: complex) -> Spot:
        """Where a line that leaves in a direction (unit step) begins: the head of a wedge where it
        goes along, else at the edge.
        """
        if self.tip and abs(dot(way, self.tip)) > 0.7:
            return self.head
        reaches = []
        for a, b in pairwise((*self.corners, self.corners[0])):
            out = (b - a) / abs(b - a) * -1j
            if dot(way, out) > 1e-9:
                reaches.append(dot(a, out) / dot(way, out))
        return way * min(reaches)


def faced(
    measured: Survey, body: Body, look: Look, wedges: Collection[str], half: complex = BARE
) -> Faced | None:
    """A wedge, or the block on one, with its outline; None for any other body.

    look: what the body is drawn as; wedges: the bodies drawn as such; half: half the width and
    height (pt) of a block, or of what a wedge bears.
    """
    if len(body.outline) != 1:
        return None
    if body.id in wedges:
        return _wedge(measured, body, half)
    touched = any(_beyond(measured, each) in wedges for each in touching(measured, body))
    return _block(measured, body, half) if touched and look in _BORNE else None


def pressed(measured: Survey, body: Body, look: Look) -> Faced | None:
    """A block between two faces, one below it and one beside it; None for any other body."""
    if len(body.outline) != 1 or look not in _BLOCKS:
        return None
    outs = [_out(measured, contact) for contact in touching(measured, body)]
    upright = all(min(abs(out.real), abs(out.imag)) < _SQUARE for out in outs)
    between = len(outs) == 2 and abs(dot(*outs)) < _SQUARE
    if not (upright and between):
        return None
    return replace(_block(measured, body, _TALL), within=True)


def touching(measured: Survey, body: Body) -> list[Element]:
    """The contacts of a body whose faces look a way that is known."""
    return [
        element
        for element in measured.system.elements
        if element.body == body.id
        and element.kind in _SURFACES
        and element.surface is not None
        and measured.has(element.surface)
    ]


def partners(measured: Survey, body: Body) -> dict[str, Element]:
    """What a body touches of the system, by its own element there: the other body's element."""
    found = {}
    for element in touching(measured, body):
        other = _back(measured, element)
        if other is not None:
            found[element.id] = other
    return found


def _back(measured: Survey, element: Element) -> Element | None:
    """The same contact as the other body has it; None where it is with something outside."""
    elements = measured.system.elements
    return next((e for e in elements if element.id == e.of or element.of == e.id), None)


def _beyond(measured: Survey, element: Element) -> str:
    """The body on the other side of a contact, "" for something outside."""
    back = _back(measured, element)
    return back.body if back else ""


def _out(measured: Survey, element: Element) -> complex:
    """The unit step out of a body at its contact: against the push on it."""
    assert element.surface is not None  # as `touching` has it
    return -heading(measured.number(element.surface))


def _wedge(measured: Survey, body: Body, half: complex) -> Faced | None:
    """A wedge between its two faces, against something of half a width and height (pt).

    It is laid out from the apex its faces would meet at; its tip is blunt, and its head square to
    the face that slides on something outside.
    """
    contacts = touching(measured, body)
    outs = [_out(measured, contact) for contact in contacts]
    if len(contacts) != 2 or abs(outs[0] + outs[1]) < _PARALLEL:
        return None
    back = -(outs[0] + outs[1]) / abs(outs[0] + outs[1])
    ways = [_along(out, back) for out in outs]
    outer = [not _beyond(measured, contact) for contact in contacts]
    axis = back if outer[0] == outer[1] else ways[outer.index(True)]
    steps = [way / dot(way, axis) for way in ways]
    across = 2 * abs(dot(half, complex(abs(axis.real), abs(axis.imag))))
    opening = abs(steps[0] - steps[1])  # how much thicker it is for each pt further back
    tip = (_TIP + _BLUNT * opening) / opening
    under = tip - _SHORT + across / 2
    head = under + across / 2 + _OUT
    corners = _turned((steps[0] * tip, steps[0] * head, steps[1] * head, steps[1] * tip))
    middle = sum(corners, 0j) / 4
    faces = {
        contact.id: Face(step * under - middle, out)
        for contact, step, out in zip(contacts, steps, outs, strict=True)
    }
    sloping = 0 if outer == [False, True] else 1
    vertex = steps[sloping] * (under + across / 2) - middle
    corner = _corner(measured, contacts, vertex, ways[1 - sloping], ways[sloping])
    return Faced(
        tuple(each - middle for each in corners),
        faces,
        -axis,
        (steps[0] + steps[1]) / 2 * head - middle,
        corner,
        beside=tuple(
            (steps[k] * (head - _OUT / 2) - middle, bearing(outs[k]))
            for k in (sloping, 1 - sloping)
        ),
    )


def _along(out: complex, back: complex) -> complex:
    """The unit step along a face towards the thick end."""
    along = out * 1j
    return along if dot(along, back) > 0 else -along


def _corner(
    measured: Survey, contacts: Sequence[Element], at: Spot, reference: complex, way: complex
) -> Corner | None:
    """A wedge's angle, where one of its faces is laid off by a quantity that is that angle."""
    sweep = (bearing(way) - bearing(reference) + 180.0) % 360.0 - 180.0
    for contact in contacts:
        assert contact.surface is not None  # as `touching` has it
        for part, factor in angle_of(contact.surface).multiples:
            if not isinstance(part, Name) or abs(factor) != 1:
                continue
            if abs(measured.number(part) - abs(sweep)) < _ALIGNED:
                return Corner(at, bearing(reference), bearing(way), part.id)
    return None


def _turned(corners: tuple[Spot, ...]) -> tuple[Spot, ...]:
    """Corners in counter-clockwise order."""
    pairs = pairwise((*corners, corners[0]))
    area = sum((a.conjugate() * b).imag for a, b in pairs)
    return corners if area > 0 else corners[::-1]


def _block(measured: Survey, body: Body, half: complex) -> Faced:
    """A block with level and upright sides, those that touch something turned to it.

    It grows by what its slanting sides cut off, so that half its size stays clear of them.
    """
    sides = [-1j, 1 + 0j, 1j, -1 + 0j]  # out of it, counter-clockwise from below
    outs, touched = list(sides), {}
    for contact in touching(measured, body):
        out = _out(measured, contact)
        place = max(range(4), key=lambda k: dot(sides[k], out))
        touched[contact.id] = place
        outs[place] = out
    cuts = [_cut(side, out, half) for side, out in zip(sides, outs, strict=True)]
    grown = half + complex(cuts[1] + cuts[3], cuts[0] + cuts[2]) / 2
    spots = [complex(grown.real * side.real, grown.imag * side.imag) for side in sides]
    lines = list(zip(spots, outs, strict=True))
    corners = tuple(_meeting(lines[k - 1], lines[k]) for k in range(4))
    faces = {}
    for id, place in touched.items():
        faces[id] = Face((corners[place] + corners[(place + 1) % 4]) / 2, outs[place])
    clear = sum((-side * cut / 2 for side, cut in zip(sides, cuts, strict=True)), 0j)
    return Faced(corners, faces, clear=clear)


def _cut(side: complex, out: complex, half: complex) -> float:
    """How far a side that is turned reaches into the block, pt."""
    across = half.real if side.real == 0 else half.imag
    return across * abs((out / side).imag / (out / side).real)


def _meeting(one: tuple[Spot, complex], other: tuple[Spot, complex]) -> Spot:
    """Where two sides meet, each known by a spot on it and the unit step out of it."""
    (p, n), (q, m) = one, other
    along = n * 1j
    return p + along * dot(q - p, m) / dot(along, m)
