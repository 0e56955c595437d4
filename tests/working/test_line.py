"""A line gives its last digit from its printed numbers, with as few guard digits as do."""

from __future__ import annotations

import pytest

from probgen.bank.labels import Labels
from probgen.quantities.expression import Call, Name, number, times, total
from probgen.quantities.printing import plain
from probgen.quantities.unit import ANGLE, DEGREE, FORCE, NEWTON, Dimension, Unit
from probgen.statics.method import Method
from probgen.statics.plan import Plan
from probgen.statics.system import Role, System, Variable
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits
from probgen.working.line import line_of


def _variable(id: str, dimension: Dimension, unit: Unit, role: Role) -> Variable:
    return Variable(Name(id, id), dimension, unit, role)


def _forces(**values: float) -> Digits:
    """Forces (N) found before, and an angle of 40 degrees that is given."""
    forces = {id: _variable(id, FORCE, NEWTON, Role.UNKNOWN) for id in values}
    variables = {**forces, "a": _variable("a", ANGLE, DEGREE, Role.GIVEN)}
    system = System(variables, (), {}, (), (), (), (), (), ())
    plan = Plan(system, Method(), (), (), ())
    numbers = {"a": number(40, DEGREE)}
    return Digits(Case(plan, Labels(), numbers, {**values, "a": 40.0}), Convention())


A, T = (Name(n, n) for n in "aT")


def test_guard_digits_grow_until_the_printed_numbers_give_the_result() -> None:
    """117.6 - 190.6 sin 40° is -4.92, but -4.90 is right: one digit more is needed."""
    rest = total((1, number("117.6", NEWTON)), (-1, times(T, Call("sin", (A,)))))
    assert line_of(_forces(T=190.57616879), rest, -4.9, FORCE).guard == 2


def test_one_more_digit_is_tried_before_a_result_is_written_otherwise() -> None:
    """190.576 sin 30° is 95.288; who works with 190.6 finds 95.30, with 190.58 95.29."""
    digits, turned = _forces(T=190.57616879), number(30, DEGREE)
    line = line_of(digits, times(T, Call("sin", (turned,))), 95.288084, FORCE)
    assert (plain(line.printed), plain(line.result)) == ("(190.58 N) sin 30°", "95.29 N")


def test_a_result_is_written_as_its_printed_numbers_give_it_where_no_digit_helps() -> None:
    """190.576 sin 23° is 74.4640; who works with 190.58 finds 74.4655, and 74.47 goes on."""
    digits, turned, value = _forces(T=190.57616879), number(23, DEGREE), 74.464041
    line = line_of(digits, times(T, Call("sin", (turned,))), value, FORCE)
    assert (plain(line.printed), plain(line.result)) == ("(190.58 N) sin 23°", "74.47 N")
    assert plain(digits.carried(-value, FORCE)) == "−74.47 N"
    assert plain(digits.rounded(value, NEWTON)) == "74.5 N"


def test_only_the_value_that_needs_it_has_a_digit_more() -> None:
    """1130 + 1813 - 2557 is 386 and 385.62 is right: 2557.4 alone gives 385.6."""
    digits = _forces(P=1129.94, Q=1813.04, N=2557.36)
    line = line_of(digits, DIFFERENCE, 385.62, FORCE)
    assert plain(line.printed) == "1130 N + 1813 N − 2557.4 N"
    assert plain(line.result) == "385.6 N"


def test_what_is_not_rounded_is_written_as_it_is() -> None:
    """65.18 N to its last digit, though 190.6 sin 20° is 65.189."""
    digits, twenty = _forces(T=190.57616879), number(20, DEGREE)
    line = line_of(digits, times(T, Call("sin", (twenty,))), 65.18, FORCE)
    assert plain(line.result) == plain(digits.carried(65.18, FORCE)) == "65.18 N"


def test_a_working_that_cannot_give_its_result_is_refused() -> None:
    with pytest.raises(ArithmeticError, match=r"no printed working of \['T'\] reaches 100"):
        line_of(_forces(T=190.57616879), T, 100.0, FORCE)


def test_rounding_twice_never_changes_a_result() -> None:
    """190.46 is 190.5 with one guard digit, which would round to 191; the answer is 190."""
    line = line_of(_forces(T=190.46), T, 190.46, FORCE)
    assert (plain(line.result), plain(line.printed)) == ("190.46 N", "190.46 N")


# 1129.941 + 1465.96 - 2557.36 is 38.541; of five digits, 1129.9 + 1466.0 - 2557.4 is 38.5.
PUSHES = {"P": 1129.941, "Q": 1465.96, "N": 2557.36}
DIFFERENCE = total((1, Name("P", "P")), (1, Name("Q", "Q")), (-1, Name("N", "N")))


def test_a_small_difference_is_written_as_its_printed_numbers_give_it() -> None:
    digits = _forces(**PUSHES, D=38.541)
    line = line_of(digits, DIFFERENCE, 38.541, FORCE)
    assert plain(line.printed) == "1129.9 N + 1466.0 N − 2557.4 N"
    assert plain(line.result) == "38.5 N"
    assert plain(digits.carried(38.541, FORCE)) == "38.5 N"
    assert plain(digits.carried(-38.541, FORCE)) == "−38.5 N"
    assert plain(digits.rounded(38.541, NEWTON)) == "38.5 N"


def test_unless_a_later_line_would_give_another_answer() -> None:
    """2.35 times 38.541 is 90.571, printed 90.6, and of 38.5 it is 90.475."""
    digits = _forces(**PUSHES, D=38.541)
    line_of(digits, DIFFERENCE, 38.541, FORCE)
    later = times(number("2.35"), Name("D", "D"))
    line = line_of(digits, later, 2.35 * 38.541, FORCE)
    assert plain(line.printed) == "(2.35)(38.54 N)"
    assert digits.guards.raised  # the key is told again, with more digits
    again = line_of(digits, DIFFERENCE, 38.541, FORCE)
    assert plain(again.printed) == "1129.94 N + 1465.96 N − 2557.36 N"
    assert plain(again.result) == "38.54 N"


def test_a_result_that_its_own_line_works_with_needs_no_more_digits_than_itself() -> None:
    """S is T: each more digit of S would want one more of T, which is written like it, for ever.

    113.333 + 32 - 72.6667 is 72.6663: 72.67, whatever T has; told once more it stays so.
    """
    digits = _forces(T=218 / 3, N=340 / 3, S=218 / 3)
    rest = total((1, Name("N", "N")), (1, number(32, NEWTON)), (-1, Name("T", "T")))
    for _ in range(2):
        line = line_of(digits, rest, 218 / 3, FORCE)
        assert plain(line.result) == "72.67 N"
        digits.guards.begin_key()
    assert plain(line.printed) == "113.333 N + 32 N − 72.6667 N"
    assert not digits.guards.raised
