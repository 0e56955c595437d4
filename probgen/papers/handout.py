"""One problem printed on its own: a sheet, and the key behind it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet
from probgen.course.version import Version
from probgen.input.outside import OutsideError
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import Copy
from probgen.papers.typesetter import Kind, Typesetter
from probgen.problem.single import Single

_POINTS: Final = 10


def print_handout(single: Single, typesetter: Typesetter) -> bytes:
    """Sheet and key as one PDF.

    Raises InputError when the problem cannot be told, OutsideError when TeX fails.
    """
    problem, own = single.problem, single.worked
    title = problem.template.title
    problem_set = ProblemSet("", title, "", (Assigned(problem.template.id, _POINTS),))
    version = Version(0, "", title, Student("", ""))
    wrong = class_slips([own.digits])
    copy = Copy(problem_set, version, (problem,), (own,), wrong)
    written = (typesetter.document(kind, copy) for kind in Kind)
    batch = typesetter.print([replace(each, name=each.pile, pile="") for each in written])
    if batch.failures:
        told = "; ".join(f"{failure.name}: {failure.complaint}" for failure in batch.failures)
        mend = "look at the texts of the template; nothing was written"
        raise OutsideError(f"TeX could not set {told}", mend)
    return batch.together[""]
