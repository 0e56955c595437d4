"""Openings: the named angles of members, cables and forces, and where each reads best."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from probgen.figures.measured.survey import Survey, is_stated
from probgen.figures.paper.scene import apart, heading
from probgen.quantities.expression import Expression, Name
from probgen.statics.geometry import angle_of
from probgen.statics.system import Kind

_ALIGNED: Final = 0.5  # degrees
_LINES: Final = (
    Kind.CABLE, Kind.MUSCLE, Kind.FORCE, Kind.ROPE, Kind.SPRING, Kind.STRUT, Kind.MEMBER, Kind.LINK,
)  # fmt: skip
_TOUCHING: Final = (Kind.ROLLER, Kind.CONTACT, Kind.ROUGH)


@dataclass(frozen=True, slots=True)
class Opening:
    """A named angle at a place, from a reference direction to another, both in degrees.

    force: the force whose direction it is, "" for that of a member.
    """

    id: str
    at: complex
    reference: float
    direction: float
    force: str = ""

    @property
    def reflex(self) -> bool:
        """Whether it is more than half a turn."""
        return 180.0 < abs(self.direction - self.reference) < 360.0

    @property
    def behind(self) -> Opening:
        """The equal angle on the other side of its vertex."""
        return replace(self, reference=self.reference + 180.0, direction=self.direction + 180.0)


def openings(measured: Survey) -> tuple[Opening, ...]:
    """The named angles of members, cables and forces, each once, where it reads best."""
    return _best(measured, _member_openings(measured), _force_openings(measured, _LINES))


def openings_shown(measured: Survey, shown: Callable[[Opening], bool]) -> tuple[Opening, ...]:
    """Those that a diagram shows, each once: of members and of what pulls or pushes along a line,
    else of a force from a surface, else of the continuation of one beyond its point.
    """
    members, lines, touching = (
        [opening for opening in each if shown(opening)]
        for each in (
            _member_openings(measured),
            _force_openings(measured, _LINES),
            _force_openings(measured, _TOUCHING),
        )
    )
    found = list(_best(measured, members, lines))
    pressed = _force_openings(measured, (*_LINES, *_TOUCHING))
    behind = [turned for opening in pressed if shown(turned := opening.behind)]
    for others in (touching, behind):
        known = {opening.id for opening in found}
        rest = [opening for opening in others if opening.id not in known]
        found += _best(measured, [], rest)
    return tuple(found)


def _best(measured: Survey, members: list[Opening], forces: list[Opening]) -> tuple[Opening, ...]:
    """Of each angle the opening that reads best; forces: of lines, or of surfaces."""
    found: dict[str, tuple[int, Opening]] = {}
    for opening in members:
        _offer(found, opening, _reads(measured, opening))
    # An angle of a member stays with it, though a force's direction may hold it too; unless the
    # member is the lever arm of that force, laid off square to its line.
    own = {id for id, (rank, _) in found.items() if rank}
    for opening in forces:
        if opening.id in found and _is_arm_of(found[opening.id][1], opening):
            found[opening.id] = (1, opening)
        elif opening.id not in own:
            _offer(found, opening, _reads(measured, opening))
    return tuple(opening for _, opening in found.values())


def _is_arm_of(member: Opening, force: Opening) -> bool:
    """Whether an angle that opens from the level for a force opens from the plumb line for what
    is square to it.
    """
    level = abs((force.reference + 90.0) % 180.0 - 90.0) < _ALIGNED
    plumb = abs(member.reference % 180.0 - 90.0) < _ALIGNED
    return level and plumb and abs(apart(member.direction, force.direction) - 90.0) < _ALIGNED


def _offer(found: dict[str, tuple[int, Opening]], opening: Opening, rank: int) -> None:
    if opening.id not in found or rank > found[opening.id][0]:
        found[opening.id] = (rank, opening)


def _member_openings(measured: Survey) -> list[Opening]:
    found = []
    for point in measured.system.points.values():
        at = complex(0, 0)
        for link in point.links:
            found += _split(measured, at, link.direction)
            at += measured.number(link.length) * heading(measured.number(link.direction))
    for member in measured.system.members:
        found += _split(measured, measured.places[member.start], member.direction)
    return found


def _force_openings(measured: Survey, kinds: tuple[Kind, ...]) -> list[Opening]:
    """Those of forces that are drawn whole."""
    found = []
    for force in measured.system.forces:
        whole = not force.part.is_component and (force.kind in _TOUCHING or not force.part)
        if force.kind in kinds and whole and measured.has(force.direction):
            found += _split(measured, measured.places[force.point], force.direction, force.id)
    return found


def _split(measured: Survey, at: complex, direction: Expression, force: str = "") -> list[Opening]:
    """The named angles a direction is made of, each from what remains without it."""
    whole = measured.number(direction)
    return [
        Opening(part.id, at, whole - float(factor) * measured.number(part), whole, force)
        for part, factor in angle_of(direction).multiples
        if isinstance(part, Name) and abs(factor) == 1 and is_stated(measured.system, part.id)
    ]


def _reads(measured: Survey, opening: Opening) -> int:
    """How naturally an angle reads: from a member best, then from the level or the plumb line."""
    if measured.runs_along(opening.at, opening.reference):
        return 2
    return 1 if abs((opening.reference + 45) % 90 - 45) < _ALIGNED else 0
