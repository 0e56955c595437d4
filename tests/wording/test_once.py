"""A reason that holds again is given in full the first time, then in short or not at all."""

from __future__ import annotations

from dataclasses import replace

from probgen.quantities.expression import Name, number
from probgen.wording.block import Display, Row
from probgen.wording.facts.ending import RoundedWithin
from probgen.wording.facts.forces import PartExpected, StrutAlong
from probgen.wording.facts.torque import TurnsNothing
from probgen.wording.once import said_once
from probgen.wording.passage import Items, Passage, Sentences
from probgen.working.direction import way_of
from probgen.working.fact import Fact
from tests.wording.own_telling import told_of

A, B = Name("A", "A"), Name("B", "B")
UP, DOWN = RoundedWithin(True, number(3), "it"), RoundedWithin(False, number(3), "it")
ANY = Fact()
EAST, NORTH, WEST, SOUTH = (way_of(turn) for turn in (0.0, 90.0, 180.0, 270.0))


def once(*passages: tuple[Fact, ...]) -> list[list[Fact]]:
    """What is left of the facts of each passage."""
    told = [Passage(ANY, (Sentences(facts),)) for facts in passages]
    left: list[list[Fact]] = []
    for passage in said_once(told):
        left.append([])
        for part in passage.parts:
            assert isinstance(part, Sentences)
            left[-1] += part.facts
    return left


def test_why_forces_turn_nothing_is_explained_once_whatever_the_forces() -> None:
    first, second = TurnsNothing((A,), "", (A,)), TurnsNothing((B,), "C", ())
    assert once((first,), (second,)) == [[first], [TurnsNothing((B,), "C", (), again=True)]]


def test_each_strut_is_told_once_and_the_reason_with_the_first() -> None:
    one, other = StrutAlong("one", A), StrutAlong("other", B)
    shortly = StrutAlong("other", B, again=True)
    assert once((one,), (one, other), (other, one)) == [[one], [shortly], []]


def test_why_a_value_is_rounded_to_one_side_is_told_once_and_to_the_other_again() -> None:
    assert once((UP,), (DOWN,), (UP, DOWN)) == [[UP], [DOWN], []]


def test_a_part_of_which_nothing_is_left_goes_and_what_holds_no_facts_stays() -> None:
    rows = Display((Row((A,), "=", (number(1),)),))
    (passage,) = said_once([Passage(ANY, (Items((UP,)), rows, Sentences((UP,)), rows))])
    assert passage.parts == (Items((UP,)), rows, rows)


def test_other_facts_are_said_as_often_as_they_are_told() -> None:
    assert once((ANY, ANY), (ANY,)) == [[ANY, ANY], [ANY]]


def test_how_a_force_lies_to_the_axes_is_said_once_for_both_limits() -> None:
    lines = told_of("feeder-cord-strength")
    assert sum("T_1 points" in line for line in lines) == 1


def test_in_one_passage_a_force_drawn_against_its_way_is_told_in_short_the_second_time() -> None:
    left = PartExpected(A, WEST, (B,), EAST, "x", drawn=False)
    down = PartExpected(B, SOUTH, (A,), NORTH, "y", drawn=False)
    first, later = once((left, replace(left, drawn=True), down), (down,))
    assert first == [left, replace(left, drawn=True), replace(down, again=True)]
    assert later == [down]
