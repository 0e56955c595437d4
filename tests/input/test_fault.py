from datetime import date
from decimal import Decimal

import pytest

from probgen.input.fault import Fault, Faults, InputError, counted_from_one, nearest, one_of, shown


def test_the_message_names_place_value_expectation_and_mend() -> None:
    error = InputError([Fault("a.toml", "hinge[0].at", '"Q"', "one of A, B", "write A")])
    lines = [line.split(maxsplit=1) for line in str(error).splitlines()]
    assert lines == [
        ["1", "problem:"],
        ["a.toml:", "hinge 1, at"],
        ["found", '"Q"'],
        ["expected", "one of A, B"],
        ["mend", "write A"],
    ]


def test_what_is_in_no_file_is_told_by_itself() -> None:
    assert str(Fault("", "--seed", '"x"', "more")).startswith("--seed\n")
    assert str(Fault("a.toml", "", '"x"', "more")).startswith("a.toml\n")


COUNTED = {
    "problem[0].template": "problem 1, template",
    "person[1].load[2].at": "person 2, load 3, at",
    "given.m.choices[3]": "given.m.choices 4",
    "[2]": "3",
    "line 2, id": "line 2, id",
    "m_2": "m_2",
}


@pytest.mark.parametrize(("field", "told"), COUNTED.items())
def test_people_count_from_one(field: str, told: str) -> None:
    assert counted_from_one(field) == told


def test_several_faults_are_told_together() -> None:
    faults = Faults("a.toml")
    faults.settle()
    faults.add("x", None, "a number")
    faults.add("y", True, "text")
    with pytest.raises(InputError) as caught:
        faults.settle()
    assert str(caught.value).startswith("2 problems:")
    assert [fault.found for fault in caught.value.faults] == ["", "true"]
    more = Faults("b.toml")
    more.take(caught.value)
    assert [fault.field for fault in more.found] == ["x", "y"]


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (None, ""),
        ("a", '"a"'),
        (3, "3"),
        (False, "false"),
        ("\u200b", r'"\u200b"'),
        ("x" * 78, f'"{"x" * 78}"'),
        ("x" * 200, '"' + "x" * 76 + "..."),
    ],
)
def test_values_are_shown_as_typed(value: bool | int | str | None, text: str) -> None:
    assert shown(value) == text


def test_suggestions() -> None:
    assert nearest("hinges", ["hinge", "cable"]) == 'did you mean "hinge"?'
    assert nearest("zzz", ["hinge", "cable"]) == ""
    assert nearest("optics", ["particles", "levers"]) == ""
    assert nearest("hung crate", ["crate hung", "block"]) == 'did you mean "crate hung"?'
    assert nearest("seesaw", ["seesaw-two-riders", "arm"]) == 'did you mean "seesaw-two-riders"?'
    assert nearest("beam", ["beam-stay-cable", "footbridge-two-beams"]) == ""
    assert one_of(["a", "b"], "the points ") == "one of the points a, b"
    assert one_of(map(str, range(30))).endswith(" 11 and 18 more")
    assert one_of([], "points") == "nothing, for there are no points"


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ({"a": Decimal("1.20"), "b": [True, None]}, "{ a = 1.20, b = [true, null] }"),
        (["x"] * 20, '["x", "x", "x", "x", "x", "x", "x", "x", ...]'),
        (date(2026, 3, 9), "2026-03-09"),
        ("a\x1b[2J\ud800", '"a\\x1b[2J\\ud800"'),
    ],
)
def test_no_value_shows_the_programs_inside(value: object, text: str) -> None:
    assert shown(value) == text


def test_nothing_is_near_to_what_is_no_text() -> None:
    assert nearest(3, ["a"]) == nearest(["a"], ["a"]) == nearest("a" * 100_000, ["a"]) == ""


def test_a_flood_of_faults_is_cut_short() -> None:
    message = str(InputError([Fault("a", str(i), "", "x") for i in range(1000)]))
    assert message.startswith("1000 problems:")
    assert message.endswith("and 800 more")
