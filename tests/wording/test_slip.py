"""Likely slips in words."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Literal

import pytest

from probgen.bank.reading import read_template
from probgen.mistakes.comparison import likely, slips
from probgen.mistakes.likelihood import LIKELIHOOD
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.quantities.expression import Name, Number
from probgen.wording.block import Text
from probgen.wording.english.slips import SLIPS, one_slip
from probgen.wording.sentence import plain_text
from probgen.wording.slip import slips_told, tell_slip
from probgen.working.convention import Convention
from tests import situations
from tests.mistakes import supplied
from tests.situations import SLIDES, TIPS, cabinet, finding
from tests.two_states import two_crates

ROOT = Path(__file__).parents[2]
STRUT = ROOT / "tests" / "published" / "up1-12.2-cyu8.toml"
EVERY = [STRUT, *sorted(ROOT.glob("templates/*/*.toml"))]
USUAL = Convention()


@cache
def worked(path: Path, convention: Convention = USUAL) -> tuple[Problem, Worked]:
    own = prepare(read_template(path.read_text(encoding="utf-8"), path.name), convention)
    return own, work(own, draw_class(own, "slips", ["0"]).draws)[0]


def strut(convention: Convention = USUAL) -> dict[str, str]:
    """What is told of the strut where each slip is made, by slip."""
    problem, own = worked(STRUT, convention)
    told: dict[str, str] = {}
    for each in slips(own.digits, problem.missteps):
        if each.origin:
            said = problem.language.say(tell_slip(each, own.digits), problem.nouns)
            told.setdefault(each.id, plain_text(said))
    return told


SAID = {
    "own_weight_forgotten": "T = 0.667 kN: the strut's own weight w_b left out.",
    "whole_length_for_weight": "T = 1.67 kN: the strut's weight w_b placed at its end B.",
    "sin_cos_swap": "T = 0.875 kN: sine and cosine exchanged in the torque of T.",
    "tension_equals_load": "T = 0.400 kN: T taken to be the load w_s.",
    "joint_is_total_weight": "R straight up: R taken as the sum of the weights alone.",
    "tangent_inverted": (
        "R at 72.2° above the horizontal, to the right: R_x and R_y exchanged in the tangent."
    ),
}


@pytest.mark.parametrize("id", SAID)
def test_is_told_with_the_letters_of_the_problem(id: str) -> None:
    assert strut()[id] == SAID[id]


def test_the_course_has_its_word_for_turning() -> None:
    told = strut(replace(USUAL, turning="moment"))
    assert told["sin_cos_swap"] == "T = 0.875 kN: sine and cosine exchanged in the moment of T."


def test_units_are_words_and_no_letters() -> None:
    problem, own = worked(ROOT / "templates" / "levers" / "bookcase-centre-tilt.toml")
    told = [
        problem.language.say(tell_slip(each, own.digits), problem.nouns)
        for each in slips(own.digits, problem.missteps)
        if each.id == "unit_not_converted"
    ]
    assert told
    assert {said[-1] for said in told} == {Text(" left in cm, not converted to m.")}


def test_the_other_limit_is_printed_as_the_working_prints_it() -> None:
    """It tips at 490 N x 0.50 m/(2 x 0.74 m) = 165.54 N, which the working rounds down."""
    text = cabinet(m="50", b="0.50", h="0.74", mu="0.30") + SLIDES + TIPS + finding("P", "largest")
    problem, own = situations.worked(text)
    told = [tell_slip(each, own.digits) for each in slips(own.digits, problem.missteps)]
    said = [plain_text(problem.language.say(each, problem.nouns)) for each in told]
    assert [line for line in said if line.startswith("P = 165 N: ")]
    assert not [line for line in said if line.startswith("P = 166 N: ")]


def test_a_round_body_has_no_distances_along_it() -> None:
    own, wrong = supplied.problem("cable-reel-ramp"), supplied.told("cable-reel-ramp", 20)
    said = [
        plain_text(own.language.say(tell_slip(each, worked.digits), own.nouns))
        for worked, found in zip(supplied.works("cable-reel-ramp", 20), wrong, strict=True)
        for each in found
        if each.id == "distance_not_perpendicular"
    ]
    assert said
    for line in said:
        assert line.endswith(": the distance KO used as the lever arm of W_r.")


def test_a_slip_on_the_way_to_a_limit_is_rounded_as_any_number() -> None:
    """Without friction T = 490 N sin 25 = 207.08 N; rounded up it were 208 N."""
    problem, own = situations.worked(two_crates())
    (smooth,) = (
        each
        for each in slips(own.digits, problem.missteps)
        if each.id == "friction_left_out" and each.answer == "T"
    )
    said = plain_text(problem.language.say(tell_slip(smooth, own.digits), problem.nouns))
    assert said.startswith("T = 207 N: ")


def test_every_slip_has_words_and_a_rank() -> None:
    assert {id for id, _ in SLIPS} == set(LIKELIHOOD)


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", EVERY, ids=lambda path: path.stem)
def test_all_can_be_told(path: Path) -> None:
    problem, own = worked(path)
    for fact in slips_told(likely(slips(own.digits, problem.missteps)), own.digits).facts:
        text = plain_text(problem.language.say(fact, problem.nouns))
        assert text.endswith(".")
        assert not re.search(r"[{}]|\bnan\b|\binf\b", text)


DONE = [
    (
        "cabinet-slide-or-tip",
        "other_limit",
        "worked out for the case that the cabinet slides, though the other limit comes first",
    ),
    (
        "box-carried-upstairs",
        "half_forgotten",
        "L and h taken whole in the arm of W_c, not halved",
    ),
    ("hip-walking-stick", "arm_from_elsewhere", "c taken as the arm of S about M, not c + a"),
    ("derrick-hoist-rope", "pull_left_out", "T left out of the balance of forces"),
    (
        "head-over-phone",
        "distance_not_perpendicular",
        "the distance OC used as the lever arm of W",
    ),
    (
        "head-over-phone",
        "joint_added_not_subtracted",
        "the vertical component of F taken off W in J_y, not added",
    ),
]


@pytest.mark.parametrize(("name", "slip", "done"), DONE)
def test_what_was_done_is_said(name: str, slip: str, done: str) -> None:
    (path,) = (each for each in EVERY if each.stem == name)
    problem, own = worked(path)
    chosen = [each for each in likely(slips(own.digits, problem.missteps)) if each.id == slip]
    said = [problem.language.say(tell_slip(each, own.digits), problem.nouns) for each in chosen]
    assert [plain_text(each).split(": ")[1] for each in said] == [f"{done}."]


def test_a_joint_s_force_taken_as_weights_says_of_which_of_several_bodies() -> None:
    (own,) = [
        each
        for ways in supplied.problem("shed-three-hinges").missteps
        for each in ways
        if each.slip == "joint_is_total_weight" and each.parts["y"] == Name("R.y", "R_y")
    ][:1]
    nouns = supplied.problem("shed-three-hinges").nouns
    assert plain_text(one_slip("torque", own, nouns)) == (
        "R taken as the weights on the left half alone"
    )


def test_a_weight_given_as_a_mass_is_said_as_such() -> None:
    feeder = supplied.problem("feeder-cord-strength")
    made = [each for ways in feeder.missteps for each in ways if each.slip == "mass_as_weight"]
    said = {plain_text(one_slip("torque", each, feeder.nouns)) for each in made}
    assert said == {"W given as m, not divided by g"}


def _told_of(name: str, convention: Convention = USUAL) -> list[str]:
    (path,) = (each for each in EVERY if each.stem == name)
    problem, own = worked(path, convention)
    chosen = likely(slips(own.digits, problem.missteps))
    return [
        plain_text(problem.language.say(tell_slip(e, own.digits), problem.nouns)) for e in chosen
    ]


@pytest.mark.parametrize("torque", ["angle", "arm"])
def test_an_arm_that_is_read_off_is_told_without_its_ratio(
    torque: Literal["angle", "arm"],
) -> None:
    told = _told_of("climbing-triangle", replace(USUAL, torque=torque))
    assert any(": 2 L taken as the lever arm of N_B, without cos θ." in each for each in told)


def test_distances_are_from_the_pivots_of_the_balances_that_come_out_wrong() -> None:
    told = _told_of("climbing-triangle")
    assert any(
        each.startswith("f_B = ")
        and each.endswith(": distances from C used as lever arms of N_B, f_B and W_2.")
        for each in told
    )


@pytest.mark.parametrize("name", ["band-brake-hoist", "triceps-band", "street-lamp-section"])
def test_a_wrong_number_is_in_the_unit_of_the_right_one(name: str) -> None:
    found = supplied.told(name, 20)
    for worked_out, wrong in zip(supplied.works(name, 20), found, strict=True):
        digits = worked_out.digits
        for each in wrong:
            shown = tell_slip(each, digits).shown
            if isinstance(shown, Number) and each.answer in digits.case.system.variables:
                assert shown.unit == digits.final(each.answer).unit


def test_another_limit_is_told_of_what_is_asked_how_far() -> None:
    (other,) = (e for e in _told_of("feeder-cord-strength") if "the other limit comes first" in e)
    assert other.startswith("m = ")
