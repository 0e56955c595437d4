"""Guard digits: as many as any line needs, and the same in every line."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain

import pytest

from probgen.problem.problem import draw_class, tell_steps, work
from probgen.quantities.expression import Expression, Number, evaluate, number, parts
from probgen.quantities.unit import US_CUSTOMARY
from probgen.working.convention import Convention
from probgen.working.guards import Guards
from tests.wording.own_telling import told_of
from tests.wording.told_keys import OWN, USUAL, cases, chains, digit, keys, problem, works


def test_a_value_has_the_digits_of_the_line_that_needs_most() -> None:
    guards = Guards()
    guards.begin_line()
    assert guards.of("190.6 N", 1) == 1
    guards.end_line()
    guards.begin_line()
    assert (guards.of("190.6 N", 2), guards.of("39.2 N", 2)) == (2, 2)
    guards.end_line()
    assert guards.of("190.6 N", 1) == 2
    assert guards.of("4.917 N", 1) == 1


def test_a_key_is_told_again_where_a_value_that_was_shown_has_more_digits_now() -> None:
    guards = Guards()
    guards.begin_key()
    raise_to(guards, "190.6 N", 2)
    assert not guards.raised  # nothing showed it before
    raise_to(guards, "190.6 N", 3)
    assert guards.raised
    guards.begin_key()
    assert not guards.raised
    assert guards.of("190.6 N", 1) == 3


def test_one_or_two_values_of_a_line_have_a_digit_more_before_all_have() -> None:
    """By hand: of three, each alone, then each two, then all; what has them already has no turn."""
    guards = Guards()
    raise_to(guards, "a", 2)
    seen = []
    for wanted in guards.attempts(2):
        seen.append("".join(str(guards.of(value, wanted)) for value in "abcd"))
    assert seen == ["2111", "2211", "2121", "2112", "2221", "2212", "2122", "2222"]


def test_values_that_are_to_be_alike_have_their_digits_together() -> None:
    guards = Guards()
    alike = guards.attempts(2, most_raised=0)
    assert [[guards.of(value, wanted) for value in "ab"] for wanted in alike] == [[1, 1], [2, 2]]


def test_both_sides_of_a_quotient_have_as_many_figures() -> None:
    """337.00 over 1.4381, though 337 would do; and 1.6070, of which 1.607 would be the same."""
    assert "= 337.00 N·m/(1.4381 m)" in told_of("box-carried-upstairs", draw=6)
    assert "= 1226.7 N·m/(1.6070 m)" in told_of("boom-level-cable", draw=8)


def test_a_line_gives_only_the_values_it_raised_more_digits() -> None:
    guards = Guards()
    for wanted in guards.attempts(2):
        shown = guards.of("a", wanted), guards.of("b", wanted)
        if shown == (1, 2):
            guards.end_line()
            break
    assert (guards.of("a", 1), guards.of("b", 1)) == (1, 2)


def test_a_line_that_is_not_shown_needs_nothing() -> None:
    guards = Guards()
    guards.begin_line()
    guards.of("190.6 N", 4)
    guards.leave_line()
    assert guards.of("190.6 N", 1) == 1


def test_the_first_line_that_writes_a_value_says_how_and_only_a_few_times() -> None:
    guards = Guards()
    for digits in range(4):
        assert guards.may_write("190.6 N", "a line")
        assert not guards.may_write("190.6 N", "another") or digits == 0
        guards.write("190.6 N", number(f"190.{digits}"), "a line", shown=False)
    assert guards.written == {"190.6 N": number("190.3")}
    guards.write("190.6 N", number("190.4"), "a line", shown=False)
    assert guards.written == {}
    assert not guards.may_write("190.6 N", "a line")


@pytest.mark.parametrize("shown", [True, False])
def test_a_value_that_was_shown_and_is_written_otherwise_has_the_key_told_again(
    shown: bool,
) -> None:
    guards = Guards()
    guards.begin_key()
    guards.show("190.6 N")
    assert guards.has_shown("190.6 N")
    guards.write("190.6 N", number("190.5"), "a line", shown)
    assert guards.raised is shown
    guards.begin_key()
    assert not guards.has_shown("190.6 N")
    guards.write("190.6 N", number("190.5"), "a line", shown=True)
    assert not guards.raised
    guards.write("190.6 N", number("190.6"), "a line", shown=False)
    assert guards.raised


def raise_to(guards: Guards, value: str, needed: int) -> None:
    guards.begin_line()
    guards.of(value, needed)
    guards.end_line()


def numbers(expression: Expression) -> Iterator[Number]:
    if isinstance(expression, Number):
        yield expression
    for part in parts(expression):
        yield from numbers(part)


CONVENTIONS = [USUAL, Convention(units=US_CUSTOMARY), Convention(torque="arm")]


@pytest.mark.one_in(3)
@pytest.mark.parametrize("convention", CONVENTIONS, ids=["usual", "US", "arm"])
@pytest.mark.parametrize("name", OWN)
def test_a_quantity_has_the_same_digits_in_every_line_of_a_key(
    name: str, convention: Convention
) -> None:
    for own, sections in zip(works(name, convention), keys(name, convention), strict=True):
        if len(cases(own)) > 1:
            continue  # a quantity has another value at each limit
        rounded = {own.digits.final(step.unknown) for step in own.case.plan.steps}
        # A check adds terms up, each to the same place.
        told = [section for section in sections if not section.title.startswith("Check")]
        lines = chain.from_iterable(chains(section) for section in told)
        pieces = [side for line in lines for relation, side in line if relation == "="]
        shown = [n for piece in pieces for n in numbers(piece) if n not in rounded and n.unit]
        for step in own.case.plan.steps:
            value = abs(own.case.values[step.unknown])
            kind = own.case.system.variables[step.unknown].dimension
            same = [n for n in shown if n.unit and n.unit.dimension == kind]
            alike = {abs(n.value) for n in same if value and _is_it(n, value)}
            assert len(alike) <= 1, (step.unknown, alike)


DIFFERENCES = ["beam-stay-cable", "footbridge-two-beams", "plank-over-edge"]


def test_few_keys_carry_more_digits_than_people_write() -> None:
    """13 in 270 keys with a difference do, where fewer digits round to another answer."""
    long = told = 0
    for name in DIFFERENCES:
        own = draw_class(problem(name), "digits", [str(n) for n in range(90)]).draws
        for worked in work(problem(name), own):
            lines = chain.from_iterable(map(chains, tell_steps(problem(name), worked)))
            shown = [n for line in lines for _, side in line for n in numbers(side)]
            long += max(len(n.value.as_tuple().digits) for n in shown) > USUAL.figures + 2
            told += 1
    assert 0 < long < 0.05 * told


def test_a_lever_arm_reads_in_its_line_as_in_the_equation() -> None:
    """The deltoid's arm in a draw: not 0.03629 m in one place and 0.036288 m in another."""
    text = "\n".join(told_of("arm-held-out", Convention(torque="arm"), draw=1))
    assert text.count("0.036288 m") == 3  # there, put in, and below the line
    assert not re.search(r"0\.0362[89](?!\d)", text)


def _is_it(number: Number, value: float) -> bool:
    """Whether a number is a value (coherent) rounded to four figures or more."""
    size = abs(float(evaluate(number, {})))
    long = len(number.value.as_tuple().digits) > USUAL.figures
    return long and abs(size - value) <= 0.51 * digit(number)
