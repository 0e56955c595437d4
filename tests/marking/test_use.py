"""What a marked class says of its templates, for their bank."""

from pathlib import Path

import numpy as np

from probgen.bank.bank import default_bank
from probgen.bank.uses import UNDATED
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.draws.draw import draw
from probgen.marking.class_report import ClassReport, SlipCount, Told
from probgen.marking.form import Paper
from probgen.marking.scores import Item, Scores
from probgen.marking.use import uses_marked
from probgen.mistakes.variant import Misstep
from probgen.problem.problem import Problem, prepare
from probgen.working.convention import Convention
from tests.records import Column, record_of

TEMPLATE = default_bank().read("forearm-load")
PROBLEM = prepare(TEMPLATE, Convention())
CLASS = tuple(Student(name, name) for name in ("Ada", "Bo", "Cy", "Di"))
POINTS = np.array([[4.0, 6.0], [2.0, 0.0], [0.0, np.nan], [4.0, 2.0]])


def counted(slips: tuple[str, ...], papers: int, problem: Problem = PROBLEM) -> SlipCount:
    return SlipCount(problem, Told(1, papers), tuple(Misstep(s, problem.plan) for s in slips))


def test_facility_and_slips_of_a_template_without_any_name(tmp_path: Path) -> None:
    problem_set = ProblemSet("M", "W", "class.csv", (Assigned("forearm-load", 10),))
    column = Column(TEMPLATE.id, TEMPLATE.source, [draw(TEMPLATE, "s", s.id) for s in CLASS])
    record = record_of(problem_set, CLASS, ("A1", "B1", "C1", "D1"), [column])
    papers = tuple(Paper(code, s.id, s.name, s.id) for code, s in zip("ABCD", CLASS, strict=True))
    scores = Scores(papers, (Item(1, "B", 4), Item(1, "J", 6)), POINTS)
    slips = (counted(("sign",), 2), counted(("unit", "sign"), 3), counted(("sign",), 4))
    report = ClassReport(scores, (), float("nan"), slips, (), (), ())
    (use,) = uses_marked(record, report)
    assert (use.template, use.students, use.marked, use.day) == ("forearm-load", 4, 3, UNDATED)
    assert use.facility == (10 + 2 + 6) / 3 / 10
    assert use.slips == (("sign", 6), ("unit + sign", 3))
    none = Scores(papers, scores.items, np.full((4, 2), np.nan))
    assert list(uses_marked(record, ClassReport(none, (), 0.0, (), (), (), ()))) == []
