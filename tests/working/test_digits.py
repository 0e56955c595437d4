"""Digits: data as given, carried values with guard digits, results rounded; no line contradicts."""

from dataclasses import replace
from decimal import Decimal

import pytest

from probgen.bank.labels import Labels
from probgen.quantities.expression import (
    Call,
    Expression,
    Lump,
    Name,
    Number,
    evaluate,
    number,
    over,
    times,
    total,
)
from probgen.quantities.printing import plain
from probgen.quantities.unit import (
    ANGLE,
    DEGREE,
    FORCE,
    LENGTH,
    METRE,
    NEWTON,
    PLAIN,
    PRESSURE,
    UNITS,
    US_CUSTOMARY,
    Dimension,
    Unit,
)
from probgen.statics.method import Method
from probgen.statics.plan import Plan
from probgen.statics.system import Condition, Find, Form, Limit, Role, System, Variable
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.digits import Digits
from probgen.working.multiple import same_amount


def _variable(id: str, dimension: Dimension, unit: Unit, role: Role) -> Variable:
    return Variable(Name(id, id), dimension, unit, role)


VARIABLES = {
    "d": _variable("d", LENGTH, UNITS["cm"], Role.GIVEN),
    "L": _variable("L", LENGTH, METRE, Role.GIVEN),
    "s": _variable("s", LENGTH, UNITS["in"], Role.GIVEN),
    "a": _variable("a", ANGLE, DEGREE, Role.GIVEN),
    "T": _variable("T", FORCE, NEWTON, Role.UNKNOWN),
    "x": _variable("x", LENGTH, UNITS["cm"], Role.UNKNOWN),
}
NUMBERS = {
    "d": Number(Decimal("35.0"), UNITS["cm"]),
    "L": Number(Decimal("1.20"), METRE),
    "s": Number(Decimal("13.0"), UNITS["in"]),
    "a": Number(Decimal("40"), DEGREE),
}
VALUES = {"d": 0.35, "L": 1.2, "s": 0.3302, "a": 40.0, "T": 190.57616879, "x": 0.034567}
SYSTEM = System(VARIABLES, (), {}, (), (), (), (), (), ())
CASE = Case(Plan(SYSTEM, Method(), (), (), ()), Labels(), NUMBERS, VALUES)
D, L, S, A, T = (Name(n, n) for n in "dLsaT")


def _digits(**choices: object) -> Digits:
    return Digits(CASE, Convention(**choices))  # type: ignore[arg-type]


def _convention(rule: str) -> Convention:
    return Convention(rounding=rule)  # type: ignore[arg-type]


DATA = [("d", "0.350 m"), ("L", "1.20 m"), ("a", "40°"), ("s", "0.3302 m")]


@pytest.mark.parametrize(("id", "text"), DATA)
def test_data_keep_their_digits_in_the_coherent_unit(id: str, text: str) -> None:
    assert plain(_digits().data(id)) == text


def test_customary_data_are_shown_in_customary_units() -> None:
    assert plain(_digits(units=US_CUSTOMARY).data("s")) == "13.0 in"


def test_results_are_in_their_own_unit() -> None:
    assert plain(_digits().final("x")) == "3.46 cm"


# 190.57616879 N to two figures; the other by hand.
def test_so_results_are_in_a_multiple_of_their_unit() -> None:
    assert plain(_digits(figures=2).final("T")) == "0.19 kN"
    assert plain(_digits().rounded(1204.5, NEWTON)) == "1.20 kN"
    assert same_amount(_digits(figures=2).final("T"), Number(Decimal("190"), NEWTON))
    assert not same_amount(_digits(figures=2).final("T"), Number(Decimal("190.6"), NEWTON))


def test_carried_whole_numbers_are_written_in_full() -> None:
    assert plain(_digits().carried(1000.0, FORCE)) == "1000 N"
    assert plain(_digits(figures=2).carried(1234.5, FORCE)) == "1.23 × 10³ N"
    assert plain(_digits().carried(4190.48, FORCE)) == "4190 N"  # all of its figures are known


# Halves by hand: 2.505 m lies between 2.50 and 2.51, of which 2.50 ends with an even figure; with
# a guard digit, 2.5005 m between 2.500 and 2.501.  0.02625 m is 2.625 cm, between
# 2.62 and 2.63.
HALVES = [
    ("half up", "2.51 m", "2.501 m", "2.63 cm"),
    ("half even", "2.50 m", "2.500 m", "2.62 cm"),
]


@pytest.mark.parametrize(("rule", "rounded", "carried", "final"), HALVES)
def test_an_exact_half_goes_where_the_course_wants_it(
    rule: str, rounded: str, carried: str, final: str
) -> None:
    digits = Digits(replace(CASE, values={**VALUES, "x": 0.02625}), _convention(rule))
    assert plain(digits.rounded(2.505, METRE)) == rounded
    assert plain(digits.carried(2.5005, LENGTH)) == carried
    assert plain(digits.final("x")) == final


def test_a_result_ends_where_its_own_rule_of_rounding_gives_the_answer() -> None:
    """2.5049 m is 2.505 m with one guard digit: half up needs another digit to stay 2.50 m."""
    assert plain(Digits(CASE, _convention("half up")).result(2.5049, LENGTH)) == "2.5049 m"
    assert plain(Digits(CASE, _convention("half even")).result(2.5049, LENGTH)) == "2.505 m"


def test_what_no_answer_tells_of_needs_no_digits_to_be_rounded_by() -> None:
    """149.4992 N rounds to 149 N, and its 149.5 N to 150 N: nobody rounds what is not asked."""
    assert plain(Digits(CASE, Convention()).result(149.4992, FORCE, "T")) == "149.5 N"
    system = replace(SYSTEM, finds=(Find("T", Form.VALUE),))
    case = replace(CASE, plan=replace(CASE.plan, system=system))
    assert plain(Digits(case, Convention()).result(149.4992, FORCE, "T")) == "149.499 N"


# The largest or smallest value before a limit ends on the side where the limit still holds.
SIDES = [
    (190.57, Form.LARGEST, "190 N"),
    (190.57, Form.SMALLEST, "191 N"),
    (190.43, Form.LARGEST, "190 N"),
    (190.43, Form.SMALLEST, "191 N"),
    (190.0, Form.LARGEST, "190 N"),
    (190.0, Form.SMALLEST, "190 N"),
]


@pytest.mark.parametrize(("value", "form", "text"), SIDES)
def test_an_utmost_value_is_rounded_to_the_side_that_holds(
    value: float, form: Form, text: str
) -> None:
    case = replace(CASE, values={**VALUES, "T": value, "x": 0.02625})
    asked = Digits(case, Convention(), utmost=(Find("T", form),))
    assert plain(asked.final("T")) == text
    assert plain(asked.result(value, FORCE, "T")).startswith(text[:2])
    assert plain(asked.rounded(value, NEWTON)) == f"{value:.0f} N"
    assert plain(asked.final("x")) == "2.63 cm"  # another quantity: the course's rule


def test_a_line_that_ends_in_an_utmost_value_does_so_by_its_rule() -> None:
    """190.95 N with one guard digit is 191.0 N, which is 191: to stay 190, two are needed."""
    case = replace(CASE, values={**VALUES, "T": 190.95})
    asked = Digits(case, Convention(), utmost=(Find("T", Form.LARGEST),))
    assert plain(asked.final("T")) == "190 N"
    assert plain(asked.result(190.95, FORCE, "T")) == "190.95 N"
    assert plain(Digits(case, Convention()).result(190.95, FORCE)) == "191.0 N"


X, FORTY = Name("x", "x"), Number(Decimal("40.00"), UNITS["cm"])
LIMITS = [
    (Limit("l", X, "<=", D), (), 0.35, "35.0 cm"),  # with the limit's own digits
    (Limit("l", D, ">=", X), (), 0.35, "35.0 cm"),
    (Limit("l", X, "<=", D), (), 0.35 * (1 + 5e-10), "35.0 cm"),
    (Limit("l", X, "<=", D), (), 0.35 * (1 + 1e-6), "35 cm"),
    (Limit("l", X, "<=", D), (), 0.2, "20 cm"),
    (Limit("l", X, "<=", FORTY), (), 0.4, "40.00 cm"),
    (Limit("l", X, "<=", L), (), 1.2, "1.2 m"),  # given in another unit
    (Limit("l", T, "<=", D), (), 0.35, "35 cm"),  # a limit of something else
    (Limit("l", total((1, X), (1, D)), "<=", D), (), 0.35, "35 cm"),
    (None, (Condition("c", X, D),), 0.35, "35.0 cm"),
    (None, (Condition("c", D, X),), 0.35, "35.0 cm"),
]


@pytest.mark.parametrize(("limit", "conditions", "value", "text"), LIMITS)
def test_a_value_at_its_limit_is_shown_equal_to_it(
    limit: Limit | None, conditions: tuple[Condition, ...], value: float, text: str
) -> None:
    limits = (limit,) if limit else ()
    system = replace(SYSTEM, limits=limits, conditions=conditions)
    case = Case(replace(CASE.plan, system=system), Labels(), NUMBERS, {**VALUES, "x": value})
    assert plain(Digits(case, Convention(figures=2)).final("x")) == text


CONVERTED = [
    (Number(Decimal("35.0"), UNITS["mm"]), LENGTH, "0.0350 m"),
    (Number(Decimal("2.5"), UNITS["km"]), LENGTH, "2500 m"),
    (Number(Decimal("3.0"), UNITS["ft"]), LENGTH, "0.9144 m"),  # an exact short value stays short
    (Number(Decimal("0.7"), UNITS["rad"]), ANGLE, "40.11°"),
    (Number(Decimal("1.5"), UNITS["kN"]), FORCE, "1500 N"),
    (Number(Decimal("7"), UNITS["lbf"]), FORCE, "31.14 N"),
    (Number(Decimal("0.30"), UNITS["1"]), PLAIN, "0.30"),
    (Number(Decimal("250"), UNITS["N/m^2"]), PRESSURE, "250 N/m²"),  # no other name is put on it
    (Number(Decimal("250"), UNITS["Pa"]), PRESSURE, "250 Pa"),
    (Number(Decimal("0.4"), UNITS["kN/m^2"]), PRESSURE, "400 Pa"),
]


@pytest.mark.parametrize(("number", "dimension", "text"), CONVERTED)
def test_given_numbers_in_the_unit_of_the_working(
    number: Number, dimension: Dimension, text: str
) -> None:
    """Powers of ten keep the digits; a foot of 0.3048 m or a pound does with a guard digit.

    Another force is given in newtons; were all in kN, the working would be too.
    """
    assert number.unit is not None
    given = {"q": (dimension, number.unit), "P": (FORCE, NEWTON)}
    beside = {id: _variable(id, *each, Role.GIVEN) for id, each in given.items()}
    system = replace(SYSTEM, variables=beside)
    value = float(evaluate(number, {}))
    case = Case(replace(CASE.plan, system=system), Labels(), {"q": number}, {"q": value})
    assert plain(Digits(case, Convention()).data("q")) == text
    assert plain(Digits(case, Convention()).shown("q")) == text


def test_what_counts_as_data() -> None:
    roles = {Role.GIVEN: True, Role.DERIVED: True, Role.CONSTANT: True, Role.UNKNOWN: False}
    for role, data in roles.items():
        system = replace(SYSTEM, variables={"q": _variable("q", LENGTH, METRE, role)})
        case = Case(replace(CASE.plan, system=system), Labels(), {}, {})
        assert Digits(case, Convention()).is_data("q") is data


UNITS_OF_ANSWERS = [("x", {}, "3.46 cm"), ("x", {"units": US_CUSTOMARY}, "1.36 in"),
                    ("s", {"units": US_CUSTOMARY}, "13.0 in")]  # fmt: skip


@pytest.mark.parametrize(("id", "choices", "text"), UNITS_OF_ANSWERS)
def test_an_answer_is_in_its_own_unit_where_the_course_speaks_it(
    id: str, choices: dict[str, object], text: str
) -> None:
    """0.034567 m are 1.3609 in, for a length is given in inches."""
    assert plain(_digits(**choices).final(id)) == text


def test_angles_end_at_a_tenth_of_a_degree_whatever_the_figures() -> None:
    for figures in (2, 3, 5):
        assert plain(_digits(figures=figures).rounded(12.345, DEGREE)) == "12.3°"
        assert plain(_digits(figures=figures).rounded(0.06, DEGREE)) == "0.1°"


CARRIED = [
    *((190.57616879, 1, "190.6 N"), (190.57616879, 2, "190.58 N"), (39.2, 1, "39.2 N")),
    *((612.5, 1, "612.5 N"), (612.5, 3, "612.5 N"), (600.0, 1, "600 N"), (0.5, 1, "0.500 N")),
    *((0.50004, 1, "0.5000 N"), (12.0, 2, "12.0 N"), (0.0, 1, "0 N")),
    *((77.102, 1, "77.10 N"), (77.102, 3, "77.102 N"), (31.8991, 1, "31.90 N")),
]


@pytest.mark.parametrize(("value", "guard", "text"), CARRIED)
def test_zeros_are_left_out_where_nothing_was_rounded_off(
    value: float, guard: int, text: str
) -> None:
    assert plain(_digits().carried(value, FORCE, guard)) == text


def test_an_answer_is_carried_without_zeros_beyond_its_figures() -> None:
    case = replace(CASE, values={**VALUES, "T": 77.102})
    asked = Digits(case, Convention(), utmost=(Find("T", Form.LARGEST),))
    assert plain(asked.carried(77.102, FORCE)) == "77.1 N"
    assert plain(asked.cut(77.0985, FORCE, 1, of=77.102)) == "77.1 N"
    assert plain(asked.cut(77.0985, FORCE, 1)) == "77.10 N"


PUT_IN: list[tuple[Expression, str]] = [
    (times(T, Lump(over(L, number(2)))), "(190.6 N)(0.600 m)"),
    (times(T, D, Call("sin", (A,))), "(190.6 N)(0.350 m) sin 40°"),
    (Lump(total((1, L), (-1, D))), "0.850 m"),
    (Lump(Call("hypot", (number(2), number(3)))), "3.606"),  # of a slope by two numbers
]


@pytest.mark.parametrize(("expression", "text"), PUT_IN)
def test_numbers_in_the_places_of_names(expression: Expression, text: str) -> None:
    assert plain(_digits().put_in(expression)) == text


GROWN = times(
    number("351.69", NEWTON),
    Call("exp", (times(number("0.38"), Call("rad", (Name("beta", "beta"),))),)),
)


def _half_a_turn() -> Digits:
    variables = {"beta": _variable("beta", ANGLE, DEGREE, Role.GIVEN)}
    system = replace(SYSTEM, variables=variables)
    numbers = {"beta": number(180, DEGREE)}
    case = Case(replace(CASE.plan, system=system), Labels(), numbers, {"beta": 180.0})
    return Digits(case, Convention())


def test_a_line_holds_with_the_radians_it_prints() -> None:
    """With all figures of pi it gives 1160.4409 N, with those printed 1160.4397 N."""
    assert evaluate(_half_a_turn().put_in(GROWN), {}) == pytest.approx(1160.43975, abs=1e-5)


def test_a_line_that_needs_them_has_more_figures_of_an_angle_in_radians() -> None:
    """All lines have them then; 1160.44 N alone comes of the six that are usual."""
    digits = _half_a_turn()
    digits.guards.begin_line()
    assert evaluate(digits.put_in(GROWN, 4), {}) == pytest.approx(1160.44094, abs=1e-5)
    digits.guards.end_line()
    assert "(3.1415927 rad)" in plain(digits.put_in(GROWN))
