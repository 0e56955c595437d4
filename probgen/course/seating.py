"""Where a class sits, and which version of an exam lies on which seat."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from probgen.course.roster import Student

Place = tuple[int, int]
"""A row, counted from the front, and a place in it, both from 0."""

_TOLD_APART: Final = 4
"""So many versions of an exam keep those on a diagonal apart too."""
_SEAT: Final = re.compile(r"(.*?)[\s/.,-]*(\d*)")


def seat_order(students: Sequence[Student]) -> tuple[Student, ...]:
    """The students row by row, numbers by their size: A2 before A10; those without a seat last."""
    return tuple(sorted(students, key=lambda student: (not student.seat, _natural(student.seat))))


def places_of(students: Sequence[Student], row: int = 0) -> tuple[Place, ...]:
    """The place of each student: by seats such as "B7", else in the order given.

    row: seats in a row where seats name no row, 0 for one long row.
    Empty rows and columns of the room do not count: who sits next to one is a neighbour.
    """
    seats = [_SEAT.fullmatch(student.seat) for student in students]
    rows = [match[1].casefold() if match else "" for match in seats]
    columns = [int(match[2] or 0) if match else 0 for match in seats]
    seated = all(student.seat for student in students)
    if seated and len(set(rows)) > 1:
        down, across = sorted(set(rows), key=_natural), sorted(set(columns))
        return tuple(
            (down.index(named), across.index(column))
            for named, column in zip(rows, columns, strict=True)
        )
    width = row or max(1, len(students))
    numbers = [each - min(columns) for each in columns] if seated else range(len(students))
    return tuple(divmod(number, width) for number in numbers)


def dealt(places: Sequence[Place], versions: int) -> tuple[int, ...]:
    """The version, from 0, that lies on each place.

    No two beside, in front of or behind one another have the same; with four versions or more no
    two on a diagonal either.
    """
    forward = 2 if versions > 2 else 1
    return tuple((across + forward * down) % versions for down, across in places)


def neighbours(place: Place, versions: int) -> tuple[Place, ...]:
    """The places that are to have other versions than this: as `dealt` keeps them apart."""
    down, across = place
    steps = [(0, -1), (0, 1), (-1, 0), (1, 0)]
    steps += [(-1, -1), (-1, 1), (1, -1), (1, 1)] if versions > 3 else []
    return tuple((down + rows, across + columns) for rows, columns in steps)


def beside(students: Sequence[Student]) -> dict[str, tuple[str, ...]]:
    """Those who sit next to each student, also on a diagonal, all by their ids.

    Without seats those before and after in the list.
    """
    places = dict(zip((student.id for student in students), places_of(students), strict=True))
    there: dict[Place, list[str]] = {}
    for id, place in places.items():
        there.setdefault(place, []).append(id)
    near = {id: (place, *neighbours(place, _TOLD_APART)) for id, place in places.items()}
    return {
        id: tuple(other for each in near[id] for other in there.get(each, ()) if other != id)
        for id in places
    }


def _natural(text: str) -> list[tuple[int, str]]:
    """A key that sorts the numbers in a text by their size."""
    parts = re.findall(r"\d+|\D+", text.casefold())
    return [(int(part), "") if part.isdecimal() else (-1, part.strip()) for part in parts]
