"""Seats: neighbours never have the same version, in whatever room."""

from itertools import combinations

import pytest

from probgen.course.roster import Student
from probgen.course.seating import beside, dealt, neighbours, places_of, seat_order


def people(*seats: str) -> list[Student]:
    return [Student(f"Student {n}", str(n), seat=seat) for n, seat in enumerate(seats)]


ORDERS = {
    "numbers by size": (["A10", "B1", "A2"], ["A2", "A10", "B1"]),
    "rows that are numbers": (["10-1", "9-12", "9-2"], ["9-2", "9-12", "10-1"]),
    "numbers alone": (["101", "12", "7"], ["7", "12", "101"]),
    "no seat comes last": (["", "B1", "A1"], ["A1", "B1", ""]),
    "a thousand digits and dashes": (["9" * 1000, "-" * 1000, "8"], ["-" * 1000, "8", "9" * 1000]),
    "case and spaces": (["b 2", "A3", "B1"], ["A3", "B1", "b 2"]),
}


@pytest.mark.parametrize(("seats", "order"), ORDERS.values(), ids=ORDERS)
def test_seat_order(seats: list[str], order: list[str]) -> None:
    assert [student.seat for student in seat_order(people(*seats))] == order


PLACES = {
    "rows and numbers": (["A1", "A2", "B1", "B2"], 0, [(0, 0), (0, 1), (1, 0), (1, 1)]),
    "every other seat and row": (["A1", "A3", "C1", "C3"], 0, [(0, 0), (0, 1), (1, 0), (1, 1)]),
    "a gap in a row": (["A1", "A3", "B2"], 0, [(0, 0), (0, 2), (1, 1)]),
    "numbers of rows": (["2/1", "10/1"], 0, [(0, 0), (1, 0)]),
    "no seats, rows of two": (["", "", ""], 2, [(0, 0), (0, 1), (1, 0)]),
    "no seats, no rows": (["", "", ""], 0, [(0, 0), (0, 1), (0, 2)]),
    "numbers alone, rows of two": (["4", "2", "1"], 2, [(1, 1), (0, 1), (0, 0)]),
    "one without a seat": (["A1", "", "B1"], 2, [(0, 0), (0, 1), (1, 0)]),
}


@pytest.mark.parametrize(("seats", "row", "places"), PLACES.values(), ids=PLACES)
def test_places(seats: list[str], row: int, places: list[tuple[int, int]]) -> None:
    assert list(places_of(people(*seats), row)) == places


@pytest.mark.parametrize("versions", range(2, 9))
def test_neighbours_differ(versions: int) -> None:
    room = [(down, across) for down in range(7) for across in range(9)]
    has = dict(zip(room, dealt(room, versions), strict=True))
    assert set(has.values()) == set(range(versions))
    for (down, across), (other_down, other_across) in combinations(room, 2):
        apart = abs(down - other_down), abs(across - other_across)
        if apart in {(0, 1), (1, 0)} or (apart == (1, 1) and versions >= 4):
            assert has[down, across] != has[other_down, other_across]


@pytest.mark.parametrize("versions", range(2, 6))
def test_neighbours_are_those_that_are_kept_apart(versions: int) -> None:
    beside = {(2, 4), (4, 4), (3, 3), (3, 5)}
    diagonal = {(2, 3), (2, 5), (4, 3), (4, 5)}
    found = neighbours((3, 4), versions)
    assert len(found) == len(set(found))
    assert set(found) == beside | (diagonal if versions >= 4 else set())


def test_versions_are_dealt_evenly() -> None:
    room = places_of(people(*[""] * 300), 20)
    counts = [dealt(room, 4).count(version) for version in range(4)]
    assert max(counts) - min(counts) <= 1


BESIDE = {
    "in the list": (["", "", ""], {"0": "1", "1": "02", "2": "1"}),
    "in rooms: beside, before, behind, on a diagonal": (
        ["A1", "B3", "B2", "A3", "C1", "B1"],
        {"0": "52", "1": "23", "2": "05314", "3": "21", "4": "52", "5": "024"},
    ),
    "a seat or a row between": (
        ["A1", "A3", "C2", "B7", "C5"],
        {"0": "", "1": "", "2": "", "3": "4", "4": "3"},
    ),
    "a seat for two": (["A1", "B2", "A1"], {"0": "21", "1": "02", "2": "01"}),
    "one without a seat: as the list goes": (["A2", "", "A1"], {"0": "1", "1": "02", "2": "1"}),
    "alone": ([""], {"0": ""}),
}


@pytest.mark.parametrize(("seats", "near"), BESIDE.values(), ids=BESIDE)
def test_who_sits_beside_whom(seats: list[str], near: dict[str, str]) -> None:
    found = beside(people(*seats))
    assert {id: set(found[id]) for id in near} == {id: set(each) for id, each in near.items()}
    assert all(len(each) == len(set(each)) for each in found.values())
