"""Wrong workings of a class: the limit that is reached first, student by student; what is asked."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.mistakes.wrong_working import WrongWorking, wrong_workings
from probgen.problem.problem import draw_class, prepare, work
from probgen.statics.system import Find, Form
from probgen.working.convention import Convention
from tests.situations import SLIDES, STAYED_SHELF, TIPS, cabinet, finding, worked

PROBLEM = prepare(
    read_template(cabinet(mu="0.25, 0.70") + SLIDES + TIPS + finding("P", "largest"), "own.toml"),
    Convention(),
)
CASES = [
    own.case for own in work(PROBLEM, draw_class(PROBLEM, "own", [str(n) for n in range(30)]).draws)
]


def made(slip: str) -> list[WrongWorking]:
    return [each for each in wrong_workings(CASES, PROBLEM.missteps) if each.misstep.slip == slip]


def test_each_student_comes_to_the_limit_that_is_reached_first_with_the_slip() -> None:
    """Half of the depth forgotten, it tips at W b/h; mu W stays, where it slides."""
    (forgotten,) = made("half_forgotten")
    ends = [
        (c.values["mu"] * c.values["m"] * c.values["g"],
         c.values["m"] * c.values["g"] * c.values["b"] / c.values["h"])
        for c in CASES
    ]  # fmt: skip
    assert len({slides < tips for slides, tips in ends}) == 2
    assert forgotten.values["P"] == pytest.approx([min(each) for each in ends])


def test_one_limit_alone_is_looked_at_for_each() -> None:
    """The cabinet slides at mu W and tips at W b/(2 h)."""
    sliding, tipping = made("other_limit")
    weights = np.array([c.values["m"] * c.values["g"] for c in CASES])
    slides = weights * [c.values["mu"] for c in CASES]
    tips = weights * [c.values["b"] / 2 / c.values["h"] for c in CASES]
    assert sliding.values["P"] == pytest.approx(slides)
    assert tipping.values["P"] == pytest.approx(tips)
    assert {sliding.misstep.parts["limit"], tipping.misstep.parts["limit"]} == set(
        PROBLEM.template.system.limits
    )


ASKED = [
    (Form.VALUE, ["T"]),
    (Form.LARGEST, ["T"]),
    (Form.SMALLEST, ["T"]),
    (Form.COMPONENTS, ["T.x", "T.y"]),
    (Form.MAGNITUDE_AND_DIRECTION, ["T.magnitude", "T.direction"]),
    (Form.HOLDS, []),
]


@pytest.mark.parametrize(("form", "ids"), ASKED)
def test_which_numbers_are_asked(form: Form, ids: list[str]) -> None:
    system = worked(STAYED_SHELF)[0].template.system
    assert list(replace(system, finds=(Find("T", form),)).asked) == ids
