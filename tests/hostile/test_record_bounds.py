"""Every number and text of a record has bounds, and is taken up to them."""

from __future__ import annotations

from base64 import b64encode
from pathlib import Path
from typing import Any

import pytest

from probgen.course.record_schema import _picture
from probgen.input.schema import WrongError
from probgen.sheets.logo import LARGEST_LOGO
from tests.hostile.test_records import changed, faults_of, set_at

# A field, its least and its greatest value, and what is just beyond them.
NUMBERS: list[tuple[tuple[str | int, ...], list[Any], list[Any]]] = [
    (("set", "working"), [0, 20], [-0.01, 20.01]),
    (("set", "problems", 0, "points"), [1, 1000], [0, 1001]),
    (("set", "convention", "gravity"), ["0.01", "100"], ["0.009", "100.1", "1000", "+9.8"]),
    (("set", "convention", "gravity"), ["9.123456789"], ["9.1234567891"]),
    (("set", "convention", "figures"), [2, 6], [1, 7]),
    (("set", "convention", "tolerance"), [0, 0.5], [-0.001, 0.501]),
    (("style", "logo_height"), [5, 40], [4.9, 40.1]),
    (("problems", 0, "revision"), [1, 1_000_000], [0, 1_000_001]),
    (("seed",), ["x", " x", "x" * 1000], ["", " ", "x" * 2001, " " * 5000 + "x"]),
    (("students", 0, "section"), ["", "x" * 1000], ["x" * 1001]),
    (("problems", 0, "source"), ["x" * 100_000], ["x" * 100_001]),
    (("style", "colour"), ["", "#10aBfF"], ["#10aBf", "red", "#10aBfF0"]),
    (("style", "logo_kind"), [".png"], [".gif", "png"]),
]


@pytest.mark.parametrize(("place", "inside", "beyond"), NUMBERS, ids=[str(n[0]) for n in NUMBERS])
def test_fields_are_taken_up_to_their_bounds(
    place: tuple[str | int, ...], inside: list[Any], beyond: list[Any], tmp_path: Path
) -> None:
    for value in inside:
        assert faults_of(changed(set_at(*place, to=value)), tmp_path) == []
    for value in beyond:
        (field,) = faults_of(changed(set_at(*place, to=value)), tmp_path)
        assert field.endswith(str(place[-1]))


EXAMS: list[tuple[str, list[int], list[int]]] = [
    ("row", [0, 1000], [-1, 1001]),
    ("spare", [0, 1000], [-1, 1001]),
    ("versions", [1, 26], [0, 27]),
]


@pytest.mark.parametrize(("name", "inside", "beyond"), EXAMS)
def test_numbers_of_an_exam_are_taken_up_to_their_bounds(
    name: str, inside: list[int], beyond: list[int], tmp_path: Path
) -> None:
    for value in inside + beyond:
        exam = {"versions": 2, name: value}
        found = faults_of(changed(set_at("set", "exam", to=exam)), tmp_path)
        assert (f"set.exam.{name}" in found) is (value in beyond)


def test_the_largest_logo() -> None:
    """Four letters of base 64 stand for three bytes."""
    assert len(_picture(b64encode(b"x" * LARGEST_LOGO).decode())) == LARGEST_LOGO
    with pytest.raises(WrongError):
        _picture(b64encode(b"x" * (LARGEST_LOGO + 6)).decode())
