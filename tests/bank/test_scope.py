"""What a template may name, and how an expression over it is checked."""

from __future__ import annotations

import pytest

from probgen.bank.labels import Label
from probgen.bank.scope import Scope, check_id, is_symbol, read_symbol
from probgen.input.fault import Faults
from probgen.input.table import Table
from probgen.quantities.expression import UNITY, Name, Product, Quotient, number
from probgen.quantities.unit import LENGTH, MASS, METRE, UNITS
from probgen.statics.system import Role, Variable

L, M = Name("L", "L"), Name("m", "m")


def scope() -> Scope:
    found = Scope()
    for name, dimension, unit in ((L, LENGTH, METRE), (M, MASS, UNITS["kg"])):
        found.declare(Variable(name, dimension, unit, Role.GIVEN), Label(name.symbol, "own"), row())
    return found


def row(**content: object) -> Table:
    return Table(content, "row", Faults("own.toml"))


def declared(id: str, symbol: str) -> tuple[Scope, Table]:
    found, table = scope(), row(symbol=symbol)
    found.declare(Variable(Name(id, symbol), LENGTH, METRE, Role.GIVEN), Label(symbol, "x"), table)
    return found, table


def test_every_scope_knows_gravity() -> None:
    assert Scope().names == {"g": Name("g", "g")}
    assert Scope().bounds["g"] == (0.1, 100.0)
    assert scope().symbols == {"g", "L", "m"}


def test_a_name_and_a_symbol_are_their_own() -> None:
    found, table = declared("d", "d")
    assert table.faults.found == []
    assert list(found.names) == ["g", "L", "m", "d"]
    for id, symbol, expected in (
        ("L", "l", "a name that nothing else has"),
        ("d", "L", "a symbol that nothing else has"),
    ):
        found, table = declared(id, symbol)
        assert [(f.field, f.expected) for f in table.faults.found] == [("row.symbol", expected)]
    assert found.variables["L"].dimension == LENGTH


def test_what_was_there_first_stays() -> None:
    found, _ = declared("m", "k")
    assert found.variables["m"].dimension == MASS
    assert found.labels["m"].symbol == "m"


READ = [
    ("L/2", Quotient(L, number(2))),
    (0, number(0)),
    ("0.5*L", Product((number("0.5"), L))),
]


@pytest.mark.parametrize(("written", "expected"), READ)
def test_expressions_of_the_dimension_wanted(written: object, expected: object) -> None:
    table = row(at=written)
    assert scope().expression(table, "at", LENGTH) == expected
    assert table.faults.found == []


@pytest.mark.parametrize("written", ["m", "L*L", "L + m", "k", "L/", "2 kg", True, ["L"]])
def test_anything_else_is_refused_with_its_place(written: object) -> None:
    table = row(at=written)
    scope().expression(table, "at", LENGTH)
    (fault,) = table.faults.found
    assert (fault.field, fault.expected) == ("row.at", "an expression for a length")


def test_what_is_not_there_yet_is_to_be_declared() -> None:
    table = row(at="m_2")
    scope().expression(table, "at", LENGTH)
    (fault,) = table.faults.found
    assert "no quantity named 'm_2'" in fault.mend
    assert "below [given] with its range, or below [unknown]" in fault.mend


def test_nothing_written_is_a_fault_and_unity_stands_in() -> None:
    table = row()
    assert scope().expression(table, "at", LENGTH) == UNITY
    assert [fault.field for fault in table.faults.found] == ["row.at"]


def test_what_uses_a_doubtful_quantity_is_not_blamed_too() -> None:
    found, table = scope(), row(at="m")
    found.doubtful.add("m")
    assert found.expression(table, "at", LENGTH) == M
    assert table.faults.found == []


def test_a_name_not_found_may_be_in_what_could_not_be_read() -> None:
    found, table = scope(), row(at="k")
    found.whole = False
    assert found.expression(table, "at", LENGTH) == UNITY
    assert table.faults.found == []


def test_comparisons_and_equations_have_sides_of_one_dimension() -> None:
    good, bad, wrong = row(that="L < 3 m"), row(that="L < 3 kg"), row(that="L = 3 m")
    read = scope().comparison(good, "that")
    assert read is not None
    assert (read.left, read.relation, good.faults.found) == (L, "<", [])
    scope().comparison(bad, "that")
    assert [fault.field for fault in bad.faults.found] == ["row.that"]
    assert scope().comparison(wrong, "that") is None
    assert scope().equation(row(that="L = 3 m"), "that") is not None
    assert scope().equation(row(that="L < 3 m"), "that") is None


@pytest.mark.parametrize(
    ("text", "is_one"),
    [("m", True), ("m_1", True), ("theta", True), ("theta_max", True), ("m_1234567", False),
     ("mu_s", True), ("mm", False), ("m_", False), ("1", False), ("", False), ("m 1", False)],
)  # fmt: skip
def test_symbols(text: str, is_one: bool) -> None:
    assert is_symbol(text) is is_one


def test_a_short_id_is_its_own_symbol() -> None:
    assert read_symbol(row(), "L") == "L"
    assert read_symbol(row(symbol="m_2"), "load_mass") == "m_2"
    for table, id in ((row(), "load_mass"), (row(symbol="mass"), "m")):
        assert read_symbol(table, id) == ""
        assert [fault.field for fault in table.faults.found] == ["row.symbol"]


@pytest.mark.parametrize(
    ("id", "may"),
    [("load_mass", True), ("L2", True), ("g", False), ("sin", False), ("2L", False), ("", False),
     ("a" * 40, True), ("a" * 41, False)],
)  # fmt: skip
def test_names_of_quantities(id: str, may: bool) -> None:
    table = row()
    assert check_id(table, id) is may
    assert bool(table.faults.found) is not may
