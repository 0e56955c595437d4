"""What elements stand on: bodies, points, and the names that are still free."""

from __future__ import annotations

import pytest

from probgen.bank.labels import BodyNamed, ByKind, Label
from probgen.bank.scope import Scope
from probgen.bank.situation import Situation
from probgen.input.fault import Faults
from probgen.input.table import Table
from probgen.quantities.expression import Name, number
from probgen.quantities.unit import METRE, NEWTON
from probgen.statics.system import Body, Element, Force, Kind, Limit, Link, Point, Role

BEAM, BALL = Body("beam", ("A", "B")), Body("ball", ("P",), particle=True)


def situation(*bodies: Body) -> Situation:
    points = {name: Point(name, ()) for name in "ABP"}
    nouns = {"beam": "beam", "ball": "your ball"}
    return Situation(Scope(), points, bodies=bodies, nouns=nouns)


def row(**content: object) -> Table:
    return Table(content, "row", Faults("own.toml"))


def test_the_only_body_need_not_be_named() -> None:
    assert situation(BEAM).body(row()) == "beam"
    assert situation(BEAM, BALL).body(row(body="ball")) == "ball"
    table = row()
    situation(BEAM, BALL).body(table)
    assert [fault.field for fault in table.faults.found] == ["row.body"]


def test_what_has_no_name_goes_by_its_kind_or_by_what_it_touches() -> None:
    found = situation(BEAM, BALL)
    usual, named = row(), row(name=" your hand ")
    assert found.named_or(usual, ByKind.HINGE) is ByKind.HINGE
    assert found.named_or(named, ByKind.HINGE) == "your hand"
    assert found.touched(row(other="ball"), ByKind.SURFACE) == BodyNamed("ball")
    assert found.touched(row(other="bal"), ByKind.SURFACE) is ByKind.SURFACE
    assert found.touched(row(other="ball", name="pad"), ByKind.SURFACE) == "pad"


def test_a_particle_is_where_it_is() -> None:
    found = situation(BEAM, BALL)
    assert (found.place_of("ball"), found.place_of("beam"), found.place_of("none")) == ("P", "", "")
    assert found.at(row(), "ball") == "P"
    assert found.at(row(at="B"), "ball") == "B"
    assert found.at(row(at="A"), "beam") == "A"
    table = row()
    assert found.at(table, "beam") == ""
    assert [fault.field for fault in table.faults.found] == ["row.at"]


def test_a_text_may_name_points_and_quantities_but_no_component() -> None:
    found = situation(BEAM)
    found.unknown(row(), "T", NEWTON, "pull")
    found.unknown(row(), "R_x", NEWTON, "part", component_of="R")
    assert found.names_to_tell == ["g", "T", "A", "B", "P"]


def test_a_new_point_has_a_letter_nothing_else_has() -> None:
    found = situation(BEAM)
    found.letters = frozenset({"G_1"})
    link = Link(number(1, METRE), number(0))
    assert found.add_point("G", [link]) == "G"
    assert found.add_point("G", []) == "G_2"
    assert found.points["G"].links == (link,)


def test_a_pull_has_a_direction_or_an_end() -> None:
    found = situation(BEAM)
    found.points["B"] = Point("B", (Link(number(2, METRE), number(0)),))
    assert found.line(row(direction=40), "A") == (number(40), "")
    assert found.line(row(toward="B"), "A")[1] == "B"
    for content, field in (
        ({"toward": "B", "direction": 40}, "row.direction"),
        ({"toward": "A"}, "row.toward"),
    ):
        table = row(**content)
        found.line(table, "A")
        assert [fault.field for fault in table.faults.found] == [field]


REACTING = [
    ({"other": "ball", "at": "A"}, ("ball", "P", "")),
    ({"other": "ball"}, ("ball", "P", "")),
]


@pytest.mark.parametrize(("content", "expected"), REACTING)
def test_on_a_particle_it_acts_back_at_its_point(
    content: dict[str, object], expected: tuple[str, str, str]
) -> None:
    table = row(**content)
    back = situation(BEAM, BALL).reaction(table, "beam", "A", "the hinge")
    assert back is not None
    assert (back.body, back.at, back.toward) == expected
    assert table.faults.found == []


def test_nothing_acts_back_without_another_body() -> None:
    assert situation(BEAM, BALL).reaction(row(at="A"), "beam", "A", "the hinge") is None


def test_where_it_acts_back_on_a_body_must_be_said() -> None:
    table = row(other="beam")
    situation(BEAM, BALL).reaction(table, "ball", "P", "the ball")
    assert [fault.field for fault in table.faults.found] == ["row.at"]


def test_a_pull_acts_back_where_it_runs_to() -> None:
    back = situation(BEAM, BALL).reaction(row(other="beam"), "ball", "P", "x", "B", "toward")
    assert back is not None
    assert (back.at, back.toward) == ("B", "P")


def test_a_bare_name_is_a_size_and_anything_else_a_quantity_of_its_own() -> None:
    found = situation(BEAM)
    push = found.unknown(row(), "F", NEWTON, "push")
    assert found.known(row(magnitude="F"), "magnitude", "", NEWTON, "push") == push
    assert found.known(row(magnitude="F"), "magnitude", "F", NEWTON, "push") == push
    twice = found.known(row(magnitude="2*F"), "magnitude", "P", NEWTON, "twice")
    assert twice == Name("P", "P")
    assert [definition.variable for definition in found.definitions] == ["P"]
    roles = {id: variable.role for id, variable in found.scope.variables.items()}
    assert (roles["F"], roles["P"]) == (Role.UNKNOWN, Role.DEFINED)


def test_a_defined_quantity_may_be_written_otherwise() -> None:
    found = situation(BEAM)
    part = found.defined(row(), "R_x", number(2, NEWTON), NEWTON, "part", symbol="X")
    assert part == found.scope.variables["R_x"].as_name == Name("R_x", "X")


def test_elements_have_ids_of_their_own() -> None:
    found, table = situation(BEAM), row(symbol="T")
    element = Element("T", Kind.CABLE, "beam", "A", ("T",))
    force = Force("T", "beam", "A", Name("T", "T"), number(90), Kind.CABLE, "T")
    found.place(table, element, Label("T", "the cable"), [force])
    assert table.faults.found == []
    found.place(table, element, Label("T", "the rope"), [force])
    assert [fault.field for fault in table.faults.found] == ["row.symbol"]
    assert found.named["T"].name == "the cable"


def test_conditions_are_numbered_and_limits_keep_their_event() -> None:
    found = situation(BEAM)
    a, b = Name("a", "a"), Name("b", "b")
    found.add_condition(a, b, "first")
    found.add_condition(a, b, "told", "2")
    found.add_condition(a, b, "next")
    assert [each.id for each in found.conditions] == ["1", "2", "3"]
    assert found.reasons == {"1": "first", "2": "told", "3": "next"}
    found.add_limit(Limit("l", a, "<=", b), "it slips")
    found.add_limit(Limit("l", a, "<=", b), "it tips")
    assert found.events == {"l": "it slips"}
    assert found.names_used == {"a", "b"}


def test_closing_finds_fields_that_nobody_reads() -> None:
    found, table = situation(BEAM), row(colour="red")
    found.finish(table)
    assert [fault.field for fault in table.faults.found] == ["row.colour"]
    assert not found.scope.whole
    found.scope.whole = True
    found.finish(row())
    assert found.scope.whole
