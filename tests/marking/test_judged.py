"""Answers judged: by themselves, by what came before them, and by the slip they come from.

A rail of weight W = m g hangs from two cords: T = S = W/2, and with a wrong T the other cord,
from the balance of forces, carries S = W - T.
"""

from __future__ import annotations

import math
from decimal import Decimal
from functools import cache
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.marking.asked import asked_of
from probgen.marking.finding import Finding
from probgen.marking.follow import order
from probgen.marking.form import Place
from probgen.marking.judged import Judged, judged
from probgen.marking.naming import MOST, limit_table
from probgen.marking.points import points_of
from probgen.marking.policy import Policy
from probgen.mistakes.comparison import class_slips, likely
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.statics.rerun import rerun
from probgen.wording.slip import tell_slip
from probgen.working.convention import Convention
from tests.situations import HUNG_ASIDE, SLIDES, TIPS, cabinet, finding, worked
from tests.terms import lamp

BOTH = lamp() + '[[find]]\nquantity = "S"\n'
TEMPLATES = Path(__file__).parents[2] / "templates"


@cache
def hung() -> tuple[Problem, Worked]:
    problem = prepare(read_template(BOTH, "lamp.toml"), Convention())
    (worked,) = work(problem, draw_class(problem, "cords", ["1"]).draws)
    return problem, worked


def weight() -> float:
    return float(hung()[1].draw.values["m"].value) * 9.8


def cords() -> tuple[str, str]:
    """The cord that the working comes to first, and the other one."""
    first, second = (id for id in order(hung()[0].plan) if id in ("T", "S"))
    return first, second


def judge(**typed: str) -> dict[str, Judged]:
    problem, worked = hung()
    told = {id: {Place.NUMBER: text} for id, text in typed.items()}
    (answers,) = judged(problem, [worked], [told], 10, Policy())
    return {each.asked.id: each for each in answers}


def test_points_add_up_and_every_answer_has_some() -> None:
    problem, worked = hung()
    for points in (2, 5, 10, 30):
        shares = points_of(problem, asked_of(problem, worked), points)
        assert sum(shares.values()) == points
    assert all(shares.values())


def test_a_later_answer_is_right_by_the_students_own_earlier_one() -> None:
    wrong = 0.37 * weight()
    first, second = cords()
    typed = {first: f"{wrong:.4g}", second: f"{weight() - float(f'{wrong:.4g}'):.4g}"}
    found = judge(**typed)
    assert found[first].finding in (Finding.WRONG, Finding.SLIP)
    assert found[second].finding is Finding.CARRIED
    assert found[second].points == found[second].most


def test_a_later_answer_that_fits_neither_is_wrong() -> None:
    first, second = cords()
    found = judge(**{first: f"{0.37 * weight():.4g}", second: f"{0.81 * weight():.4g}"})
    assert found[second].finding in (Finding.WRONG, Finding.SLIP)


def test_right_values_stay_right_whatever_stands_before() -> None:
    first, second = cords()
    found = judge(**{first: f"{0.37 * weight():.4g}", second: f"{weight() / 2:.3g}"})
    assert found[second].finding is Finding.RIGHT


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("{0:.3g}", Finding.RIGHT),
        ("{0:.2g}", Finding.RIGHT),  # rounded rightly, though to fewer figures than asked for
        ("-{0:.3g}", Finding.SIGN),
        ("{0:.3g} kN", Finding.UNIT),
        ("{0:.3g} kg", Finding.UNIT),
        ("", Finding.EMPTY),
        ("about {0:.3g} or so", Finding.UNREAD),
    ],
)
def test_one_answer_by_itself(typed: str, expected: Finding) -> None:
    assert judge(T=typed.format(weight() / 2))["T"].finding is expected


def test_a_mass_used_as_a_weight_is_named() -> None:
    mass = float(hung()[1].draw.values["m"].value)
    found = judge(T=f"{mass / 2:.4f}")
    assert found["T"].finding is Finding.SLIP
    assert "mass_as_weight" in {id for way in found["T"].slips for id in way.ids}


def test_few_figures_name_nothing() -> None:
    mass = float(hung()[1].draw.values["m"].value)
    assert judge(T=f"{mass / 2:.0f}e0")["T"].finding is Finding.WRONG


# What is typed for T and theta, what each is found to be; whether nothing follows from T.
ASIDE = [
    ("19.6", "30", "right", "right", False),
    ("15.0", "40.8", "wrong", "carried", False),  # sin theta = 9.8/15.0
    ("15.0", "41.7", "wrong", "carried", False),  # an angle's degree either way
    ("15.0", "41.9", "wrong", "wrong", False),
    ("15.0", "30", "wrong", "right", False),
    ("9.0", "40", "wrong", "wrong", True),  # no sine is 9.8/9.0
    ("", "30", "empty", "right", False),
    ("", "40.8", "empty", "wrong", False),
    ("?", "40.8", "unread", "wrong", False),
    ("19.6 kg", "40.8", "unit", "wrong", False),
    ("15.0 kg", "40.8", "wrong", "wrong", False),
]


def test_papers_are_judged_together_each_by_its_own_earlier_answers() -> None:
    problem, own = worked(HUNG_ASIDE)
    told = [
        {"T": {Place.NUMBER: tension}, "t": {Place.NUMBER: lean}} for tension, lean, *_ in ASIDE
    ]
    papers = judged(problem, [own] * len(told), told, 10, Policy())
    found = [
        (*case[:2], first.finding, second.finding, second.impossible)
        for case, (first, second) in zip(ASIDE, papers, strict=True)
    ]
    assert found == ASIDE
    earned = {"right": 4, "unit": 2, "unread": None}
    for (tension, _, verdict, *_), (first, second) in zip(ASIDE, papers, strict=True):
        stands = verdict == "wrong" and "kg" not in tension
        assert second.earlier == (stands and second.finding != "right")
        assert (first.earlier, first.impossible) == (False, False)
        assert (first.points, first.most) == (earned.get(verdict, 0), 4)


def test_an_answer_whose_cells_are_missing_is_empty() -> None:
    problem, own = worked(HUNG_ASIDE)
    ((first, second),) = judged(problem, [own], [{}], 10, Policy())
    assert first.finding is second.finding is Finding.EMPTY


def test_a_class_without_papers_has_no_answers() -> None:
    assert judged(hung()[0], [], [], 10, Policy()) == []


# The cabinet (40 kg, 0.50 m, pushed at 0.60 m, 0.30) slides at 117.6 N and would tip at 163.3 N.
PUSHED = cabinet(m="40", b="0.50", h="0.60", mu="0.30") + SLIDES + TIPS + finding("P", "largest")
LIMITS = [
    ("117.6", "slides", "right", "right", set()),
    ("163.3", "tips", "slip", "wrong", {"other_limit"}),
    ("12.0", "slides", "slip", "right", {"mass_as_weight"}),
    ("240", "both", "wrong", "unread", set()),
]


@pytest.mark.parametrize(("push", "limit", "first", "second", "slips"), LIMITS)
def test_a_largest_value_may_be_of_the_wrong_limit(
    push: str, limit: str, first: str, second: str, slips: set[str]
) -> None:
    problem, own = worked(PUSHED)
    told = {
        each.id: {Place.CHOICE if each.is_choice else Place.NUMBER: typed}
        for each, typed in zip(asked_of(problem, own), (push, limit), strict=True)
    }
    (answers,) = judged(problem, [own], [told], 10, Policy())
    assert [each.finding for each in answers] == [first, second]
    assert {id for way in answers[0].slips for id in way.ids} == slips


def test_of_ways_to_the_wrong_limit_those_are_named_that_lead_to_all_that_was_typed() -> None:
    """Most of them end with the thin cord at its strength: that number alone tells nothing."""
    path = "particles/feeder-cord-strength.toml"
    text = (TEMPLATES / path).read_text(encoding="utf-8")
    problem = prepare(read_template(text, path), Convention())
    class_ = work(problem, draw_class(problem, "knot", [str(n) for n in range(9)]).draws)
    strengths = [each.case.values["left_strength"] for each in class_]
    own = next(  # a strength of 28 N alone has too few figures to be judged
        each
        for each, most in zip(class_, strengths, strict=True)
        if each.case.values["T_1"] < most and most % 1.0
    )
    numbers = {each.id: each.blank.unit for each in asked_of(problem, own) if not each.is_choice}
    ways, rows = limit_table([own.case], problem.missteps, list(numbers))
    at_strength = 0
    for place, way in enumerate(ways):
        typed = {
            id: {Place.NUMBER: f"{rows[id][place, 0]:.5g}", Place.UNIT: unit.name if unit else ""}
            for id, unit in numbers.items()
        }
        (answers,) = judged(problem, [own], [typed], 10, Policy())
        (first,) = (each for each in answers if each.asked.id == "T_1")
        if first.finding is Finding.SLIP:
            assert way.keys in {each.keys for each in first.slips}, way.ids
            at_strength += math.isclose(rows["T_1"][place, 0], own.case.values["left_strength"])
    assert at_strength > MOST


def test_one_figure_is_too_few_to_be_right() -> None:
    right = weight() / 2
    one = f"{right:.0e}"
    assert abs(float(one) / right - 1) > 0.02, "draw another lamp"
    assert judge(T=one)["T"].finding is not Finding.RIGHT


def test_few_figures_are_told_and_cost_points_only_by_choice() -> None:
    problem, worked = hung()
    told = {"T": {Place.NUMBER: f"{weight() / 2:.2g}"}}
    for off, part in ((Decimal(0), 1), (Decimal("0.25"), Decimal("0.75"))):
        (answers,) = judged(problem, [worked], [told], 10, Policy(figures=off))
        (own,) = (each for each in answers if each.asked.id == "T")
        assert own.few_figures
        assert own.points == part * own.most


def test_what_a_slip_spoils_first_is_known() -> None:
    mass = float(hung()[1].draw.values["m"].value)
    first, second = cords()
    own = judge(**{second: f"{mass / 2:.4f}"})[second]
    assert own.parts == "W"  # a mass for a weight, which is long before the cord
    assert judge(**{first: f"{0.37 * weight():.4g}"})[first].parts == first
    assert judge(**{first: f"{weight() / 2:.4g}"})[first].parts == ""


BREAKS = (
    lamp()
    + """
[[limit]]
id = "breaks"
that = "T <= 0.8*W"
name = "the cord breaks"
[[find]]
quantity = "breaks"
as = "holds"
"""
)


@pytest.mark.parametrize(
    ("part", "kept", "expected"),
    [
        (0.9, "no", Finding.CARRIED),  # 0.9 W is more than the cord bears, by their own T
        (0.9, "yes", Finding.RIGHT),  # as it truly is
        (0.7, "no", Finding.WRONG),
        (0.5, "no", Finding.WRONG),
        (0.5, "yes", Finding.RIGHT),
    ],
)
def test_a_yes_or_no_is_right_by_the_students_own_number(
    part: float, kept: str, expected: Finding
) -> None:
    problem = prepare(read_template(BREAKS, "lamp.toml"), Convention())
    worked = work(problem, draw_class(problem, "cords", ["1"]).draws)
    own = part * worked[0].case.values["W"]
    told = {"T": {Place.NUMBER: f"{own:.4g}"}, "breaks": {Place.CHOICE: kept}}
    (answers,) = judged(problem, worked, [told], 10, Policy())
    assert {each.asked.id: each.finding for each in answers}["breaks"] is expected


def forearm() -> tuple[Problem, Worked]:
    path = Path(__file__).parents[2] / "templates/limbs/forearm-load.toml"
    problem = prepare(read_template(path.read_text(encoding="utf-8"), path.name), Convention())
    (worked,) = work(problem, draw_class(problem, "elbow", ["1"]).draws)
    return problem, worked


def test_a_slip_has_to_fit_what_stands_before_and_beside() -> None:
    """A mass taken for a weight spoils all; whoever has one answer right has not made it there."""
    problem, worked = forearm()
    (slipped,) = (each for each in problem.missteps[0] if each.slip == "mass_as_weight")
    given = {id: worked.case.values[id] for id in worked.case.numbers}
    wrong = {id: float(value) for id, value in rerun(slipped.plan, given).items()}
    right = worked.case.values
    angle = math.degrees(math.asin(abs(right["J.y"]) / right["J.magnitude"]))
    side = "below the horizontal, to the right"

    def slips(pull: float, push: float, lean: float) -> list[Finding]:
        told = {
            "B": {Place.NUMBER: f"{pull:.4f}"},
            "J.magnitude": {Place.NUMBER: f"{push:.4f}"},
            "J.direction": {Place.NUMBER: f"{lean:.1f}", Place.SIDE: side},
        }
        (answers,) = judged(problem, [worked], [told], 10, Policy())
        return [own.finding for own in answers]

    all_wrong = slips(wrong["B"], wrong["J.magnitude"], angle)
    assert all_wrong[0] is Finding.SLIP
    assert all_wrong[1] in (Finding.SLIP, Finding.CARRIED)
    assert slips(right["B"], wrong["J.magnitude"], angle)[:2] == [Finding.RIGHT, Finding.WRONG]
    assert slips(wrong["B"], wrong["J.magnitude"], 5.0)[0] is Finding.SLIP


@pytest.mark.parametrize("path", ["limbs/arm-held-out.toml", "limbs/leg-raise-cuff.toml"])
def test_what_the_key_tells_of_is_named_as_it_is_printed(path: str) -> None:
    """Also where so few figures name nothing else; with one figure less nobody can tell."""
    text = (TEMPLATES / path).read_text(encoding="utf-8")
    problem = prepare(read_template(text, "own.toml"), Convention())
    own = work(problem, draw_class(problem, "k", [str(n) for n in range(6)]).draws)
    made = class_slips([each.digits for each in own], problem.missteps)
    told = [
        (paper, slip, shown)
        for paper, slips in zip(own, made, strict=True)
        for slip in likely(slips)
        if isinstance(shown := tell_slip(slip, paper.digits).shown, Number)
    ]
    typed = [{slip.answer: {Place.NUMBER: plain(shown)}} for _, slip, shown in told]
    found = judged(problem, [paper for paper, _, _ in told], typed, 10, Policy())
    assert len(told) > 6
    for (_, slip, _), answers in zip(told, found, strict=True):
        (named,) = (each for each in answers if each.asked.id == slip.answer)
        assert slip.id in {id for way in named.slips for id in way.ids}
