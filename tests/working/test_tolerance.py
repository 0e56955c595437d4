"""The intervals that earn full marks."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Worked, draw_class, prepare, work
from probgen.quantities.expression import Number
from probgen.quantities.unit import US_CUSTOMARY, Unit, unit_named
from probgen.wording.answer import Answer
from probgen.wording.english import ENGLISH
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from probgen.working.tolerance import ANGLE_FLOOR, half_width, intervals, margins

ROOT = Path(__file__).parents[2]
PUBLISHED = ROOT / "tests" / "published"
OWN = sorted(ROOT.glob("templates/*/*.toml"))
STRUT, LADDER, ARM, FIRST_LIMIT = (
    PUBLISHED / f"{name}.toml"
    for name in ("up1-12.2-cyu8", "up1-12.2-ex5", "cp2e-9.6-ex4", "up1-12.1-ex2")
)
EVERY = [*OWN, STRUT, LADDER, ARM]
USUAL = Convention()
COURSES = [
    USUAL,
    Convention(direction="axis", units=US_CUSTOMARY),
    replace(USUAL, direction="vertical", figures=2, tolerance=0.05),
]


@cache
def works(path: Path, convention: Convention = USUAL) -> tuple[Worked, ...]:
    own = prepare(read_template(path.read_text(encoding="utf-8"), path.name), convention)
    students = [str(each) for each in range(4 if own.template.room > 1 else 1)]
    return work(own, draw_class(own, "scheme", students).draws)


def numbers(own: Worked) -> list[Answer]:
    """Answers without the name of a limit and without yes or no."""
    return [answer for answer in own.answers if answer.is_number]


def printed_unit(answer: Answer) -> Unit | None:
    """The unit of an answer on the page."""
    if isinstance(answer.shown, Number):
        return answer.shown.unit
    return unit_named(answer.unit)


def named(path: Path) -> str:
    return path.stem


@pytest.mark.one_in(6)
@pytest.mark.parametrize("convention", COURSES, ids=["usual", "customary", "two figures"])
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_printed_interval_holds_the_exact_one(path: Path, convention: Convention) -> None:
    for own in works(path, convention):
        asked = [a for a in numbers(own) if a.asked]
        told = intervals(own.digits, own.answers)
        assert [each.answer for each in told] == [answer.id for answer in asked]
        for answer, each in zip(asked, told, strict=True):
            unit = each.low.unit
            assert unit is not None
            assert unit == each.high.unit == printed_unit(answer)
            half = half_width(own.digits, answer.id) / unit.factor
            value = answer.value if answer.angle_from_x is None else answer.angle_from_x
            value *= unit_named(answer.unit).factor / unit.factor
            slack = 1e-9 * abs(value)
            assert float(each.low.value) <= value - half + slack
            assert float(each.high.value) >= value + half - slack
            step = 10.0 ** int(each.low.value.as_tuple().exponent)
            assert float(each.high.value - each.low.value) < 2 * half + 2 * step + slack


@pytest.mark.one_in(6)
@pytest.mark.parametrize("convention", COURSES, ids=["usual", "customary", "two figures"])
@pytest.mark.parametrize("path", OWN, ids=named)
def test_half_width_is_the_course_tolerance_or_a_floor(path: Path, convention: Convention) -> None:
    for own in works(path, convention):
        for answer in numbers(own):
            half = half_width(own.digits, answer.id)
            if answer.angle_from_x is None:
                assert half >= convention.tolerance * abs(own.case.values[answer.id])
            else:
                assert half == ANGLE_FLOOR


def test_a_small_component_of_large_forces_is_not_asked_closer_than_they_are() -> None:
    """The arm's level joint component is zero; 470 N and −407 N are known to half a newton."""
    assert half_width(works(ARM)[0].digits, "J.x") == 0.5
    assert half_width(works(ARM)[0].digits, "J.y") == pytest.approx(0.02 * 406.7)


def test_an_answer_that_is_nothing_is_exact_and_what_rounding_leaves_still_passes() -> None:
    """Bars BE of the bracket carry nothing; 2 N beside forces of 1.2 kN come from rounding."""
    (path,) = (path for path in OWN if path.stem == "wall-bracket-board")
    own = works(path)[0]
    told = {each.answer: each for each in intervals(own.digits, own.answers)}
    assert [id for id, each in told.items() if each.exact] == ["F_BE"]
    none = told["F_BE"]
    assert float(none.low.value) <= -0.002 < 0.002 <= float(none.high.value)
    nouns = prepare(read_template(path.read_text(encoding="utf-8"), path.name), USUAL).nouns
    assert plain_text(ENGLISH.say(none, nouns)) == "exactly 0"
    assert " to " in plain_text(ENGLISH.say(told["F_CE"], nouns))


ASKED = [("bookcase-centre-tilt", ["y_G", "phi", "M"]), ("up1-12.1-ex2", ["m"])]


@pytest.mark.parametrize(("name", "ids"), ASKED)
def test_what_is_no_number_has_none(name: str, ids: list[str]) -> None:
    (path,) = (path for path in [*OWN, FIRST_LIMIT] if path.stem == name)
    own = works(path)[0]
    assert [each.answer for each in intervals(own.digits, own.answers)] == ids


ROUGH = replace(USUAL, figures=2)


@pytest.mark.one_in(2)
@pytest.mark.parametrize("path", OWN, ids=named)
def test_at_two_figures_full_marks_are_no_wider_and_hold_the_printed_answer(path: Path) -> None:
    """190.6 N, printed 0.19 kN: from 0.186 kN to 0.195 kN, and not from 0.18 kN to 0.20 kN."""
    for own in works(path, ROUGH):
        told = {each.answer: each for each in intervals(own.digits, own.answers)}
        for answer in (a for a in numbers(own) if a.asked):
            each = told[answer.id]
            unit = printed_unit(answer)
            assert unit is not None
            half = half_width(own.digits, answer.id) / unit.factor
            assert float(each.high.value - each.low.value) <= 2.5 * half * (1 + 1e-9)
            if isinstance(answer.shown, Number):
                assert each.low.value <= answer.shown.value <= each.high.value


def test_a_margin_may_be_off_as_an_answer_may() -> None:
    """The ladder that holds: two in a hundred of its margin, and half a newton of either side."""
    (path,) = ROOT.glob("templates/ladders/ladder-holds.toml")
    for own in works(path):
        (found,) = margins(own.digits, own.answers)
        f, normal, mu = (own.case.values[id] for id in ("f", "N_g", "mu"))
        size = abs(mu * normal - abs(f))
        half = max(0.02 * size, 1.0)
        low, high = float(found.low.value), float(found.high.value)
        assert low <= size - half <= low + half / 2
        assert high - half / 2 <= size + half <= high
