"""One table read key by key: what is taken, what is refused, and that reading goes on."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from decimal import Decimal

import pytest

from probgen.input.fault import Faults
from probgen.input.table import LONGEST_LIST, Table

Read = Callable[[Table], object]


def table(text: str) -> Table:
    return Table(tomllib.loads(text, parse_float=Decimal), "hinge[0]", Faults("own.toml"))


# What stands in the file, how it is read, and what that gives without a fault.
TAKEN: list[tuple[str, Read, object]] = [
    ('a = " up "', lambda t: t.text("a"), "up"),
    ("", lambda t: t.text("a", "down"), "down"),
    ('a = "up"', lambda t: t.word("a", ["up", "down"]), "up"),
    ("", lambda t: t.word("a", ["up", "down"], "down"), "down"),
    ("a = 3", lambda t: t.whole("a", 3, 5), 3),
    ("a = 5", lambda t: t.whole("a", 3, 5), 5),
    ("", lambda t: t.whole("a", 3, 5, 4), 4),
    ("a = 3", lambda t: t.decimal("a"), Decimal(3)),
    ("a = 3.50", lambda t: str(t.decimal("a")), "3.50"),  # with its digits
    ("a = 1e12", lambda t: t.decimal("a"), Decimal("1e12")),
    ("a = 1e-12", lambda t: t.decimal("a"), Decimal("1e-12")),
    ("a = 0", lambda t: t.decimal("a"), Decimal(0)),
    ("", lambda t: t.decimal("a", required=False), None),
    ("a = [1, 2.5]", lambda t: t.decimals("a"), (Decimal(1), Decimal("2.5"))),
    ("a = true", lambda t: t.flag("a"), True),
    ("a = false", lambda t: t.flag("a", True), False),
    ("", lambda t: (t.flag("a"), t.flag("b", True)), (False, True)),
    ('a = ["x", "y"]', lambda t: t.texts("a"), ("x", "y")),
    ("", lambda t: t.texts("a"), ()),
    ("[a]\nb = 1", lambda t: (t.table("a").content, t.table("a").path), ({"b": 1}, "hinge[0].a")),
    ("", lambda t: t.table("a").content, {}),
    ("[[a]]\n[[a]]", lambda t: [e.path for e in t.tables("a")], ["hinge[0].a[0]", "hinge[0].a[1]"]),
    ("", lambda t: t.tables("a"), []),
    ("a = {}\nb = {}", lambda t: [key for key, _ in t.rows()], ["a", "b"]),
    ("a = 1", lambda t: (t.has("a"), t.has("b")), (True, False)),
]


@pytest.mark.parametrize(("text", "read", "value"), TAKEN)
def test_what_is_sound_is_taken(text: str, read: Read, value: object) -> None:
    own = table(text)
    assert read(own) == value
    assert own.close()
    assert own.faults.found == []


MANY = ", ".join(["1"] * (LONGEST_LIST + 1))
# What stands in the file, how it is read, the stand-in, and field and expectation of the one fault.
REFUSED: list[tuple[str, Read, object, str, str]] = [
    ("", lambda t: t.text("a"), "", "a", "text"),
    ("a = 3", lambda t: t.text("a"), "", "a", "text"),
    ('a = " "', lambda t: t.text("a"), "", "a", "text"),
    ("a = 3", lambda t: t.text("a", "down"), "down", "a", "text"),
    ('a = "upp"', lambda t: t.word("a", ["up", "down"]), "", "a", "one of up, down"),
    ('a = "upp"', lambda t: t.word("a", ["up", "down"], "down"), "down", "a", "one of up, down"),
    ("a = 3", lambda t: t.word("a", ["up", "down"]), "", "a", "one of up, down"),
    ("a = 2", lambda t: t.whole("a", 3, 5), 3, "a", "a whole number from 3 to 5"),
    ("a = 6", lambda t: t.whole("a", 3, 5), 3, "a", "a whole number from 3 to 5"),
    ("a = 4.0", lambda t: t.whole("a", 3, 5), 3, "a", "a whole number from 3 to 5"),
    ("a = true", lambda t: t.whole("a", 0, 5), 0, "a", "a whole number from 0 to 5"),
    ("", lambda t: t.whole("a", 3, 5), 3, "a", "a whole number from 3 to 5"),
    ("", lambda t: t.decimal("a"), None, "a", "a number"),
    ('a = "3"', lambda t: t.decimal("a"), None, "a", "a number, without quotes or unit"),
    ("a = true", lambda t: t.decimal("a"), None, "a", "a number, without quotes or unit"),
    ("a = inf", lambda t: t.decimal("a"), None, "a", "a number, without quotes or unit"),
    ("a = nan", lambda t: t.decimal("a"), None, "a", "a number, without quotes or unit"),
    ("a = 1e13", lambda t: t.decimal("a"), None, "a", "a number of ordinary size"),
    ("a = 1e-13", lambda t: t.decimal("a"), None, "a", "a number of ordinary size"),
    ('a = [1, "2"]', lambda t: t.decimals("a"), (1,), "a[1]", "a number, without quotes or unit"),
    ("", lambda t: t.decimals("a"), (), "a", "a list of numbers"),
    ("a = []", lambda t: t.decimals("a"), (), "a", "a list of 1 to 200 numbers"),
    ("a = 1", lambda t: t.decimals("a"), (), "a", "a list of 1 to 200 numbers"),
    (f"a = [{MANY}]", lambda t: t.decimals("a"), (), "a", "a list of 1 to 200 numbers"),
    ("a = 1", lambda t: t.flag("a"), False, "a", "true or false, without quotes"),
    ('a = ["x", 1]', lambda t: t.texts("a"), ("x",), "a[1]", "a text in quotes"),
    ("", lambda t: t.texts("a", required=True), (), "a", "a list of texts"),
    ("a = 1", lambda t: t.table("a").content, {}, "a", "a table: [hinge.a]"),
    ("a = 1", lambda t: t.tables("a"), [], "a", "entries, each below a line [[hinge.a]]"),
    ("a = [{}, 1]", lambda t: t.tables("a"), [], "a", "entries, each below a line [[hinge.a]]"),
    ("[[a]]\n" * 201, lambda t: len(t.tables("a")), 200, "a", "at most 200"),
    ("a = 1", lambda t: list(t.rows()), [], "a", "a table: a = { ... }"),
]


@pytest.mark.parametrize(("text", "read", "value", "field", "expected"), REFUSED)
def test_what_is_not_is_one_fault_and_a_harmless_stand_in(
    text: str, read: Read, value: object, field: str, expected: str
) -> None:
    own = table(text)
    assert read(own) == value
    (fault,) = own.faults.found
    assert (fault.file, fault.field) == ("own.toml", f"hinge[0].{field}")
    assert fault.expected == expected


def test_a_field_may_have_its_former_name_for_a_release_and_that_is_remarked_on() -> None:
    own = table("b = 3")
    own.rename(a="b")
    assert own.whole("a", 3, 5) == 3
    (remark,) = own.faults.remarks
    assert remark.startswith("own.toml: hinge 1, b: ")
    assert " a " in remark
    both = table("a = 4\nb = 3")
    both.rename(a="b")
    assert [fault.field for fault in both.faults.found] == ["hinge[0].b"]
    assert both.faults.remarks == []


def test_too_many_rows_are_cut_with_one_fault() -> None:
    own = table("\n".join(f"k{i} = {{}}" for i in range(LONGEST_LIST + 1)))
    assert len(list(own.rows())) == LONGEST_LIST
    (fault,) = own.faults.found
    assert fault.field == "hinge[0]"
    assert "201 entries" in fault.found


def test_what_nobody_read_is_an_unknown_field() -> None:
    own = table("known = 1\nlater = 2\nknwn = 3")
    own.whole("known", 0, 9)
    own.expect("later")
    assert not own.close()
    (fault,) = own.faults.found
    assert fault.field == "hinge[0].knwn"
    assert "known" in fault.mend


def test_a_missing_field_says_what_to_add() -> None:
    own = Table({}, "", Faults("own.toml"))
    own.text("name")
    (fault,) = own.faults.found
    assert (fault.field, fault.mend) == ("name", "add name = ...")
    assert own.faulty("name")
    assert not own.faulty("other")
