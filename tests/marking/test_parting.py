"""Where a wrong working parts from the key, and the step that stands there."""

from __future__ import annotations

from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.marking.naming import WrongWay
from probgen.marking.parting import first_spoilt, step_to
from probgen.mistakes.comparison import gap
from probgen.problem.problem import draw_class, prepare, work
from probgen.statics.rerun import rerun
from probgen.working.convention import Convention

TEMPLATES = Path(__file__).parents[2] / "templates"
SOME = ["beams/beam-stay-cable", "limbs/forearm-load", "structures/gate-two-hinges"]


@pytest.mark.parametrize("name", SOME)
def test_nothing_before_the_parting_is_spoilt_and_a_step_of_the_key_leads_there(name: str) -> None:
    path = TEMPLATES / f"{name}.toml"
    problem = prepare(read_template(path.read_text(encoding="utf-8"), path.name), Convention())
    (own,) = work(problem, draw_class(problem, "parting", ["1"]).draws)
    case = own.case
    given = {id: case.values[id] for id in case.numbers}
    for misstep in problem.missteps[0]:
        wrong = rerun(misstep.plan, given)
        for answer, of in case.system.asked.items():
            right = case.values[answer]
            if not gap(of)(float(wrong[answer]), right) > 0.01 * abs(right) or misstep.figures:
                continue
            at = first_spoilt(WrongWay((misstep,)), case, answer)
            order = [line.id for line in misstep.plan.lines]
            assert order.index(at) <= order.index(answer)
            for id in order[: order.index(at)]:
                assert float(wrong[id]) == pytest.approx(case.values.get(id, wrong[id]))
            step = step_to(problem, at)
            lines = [line.id for line in problem.plan.lines]
            settled = [each.variable for each in problem.plan.definitions]
            assert (step is None) == (at in settled or at not in lines)
