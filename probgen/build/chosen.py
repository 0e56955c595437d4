"""An assignment's rules followed: templates of its banks in their places, before any draw."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from probgen.course.assignment import ProblemSet
from probgen.course.candidates import candidates
from probgen.course.choice import choose
from probgen.course.record import Record
from probgen.input.fault import Faults, InputError
from probgen.problem.lookup import choose_banks


def with_choice(
    problem_set: ProblemSet,
    assignment_file: Path,
    seed: str,
    earlier: Record | None,
    faults: Faults,
) -> ProblemSet:
    """The set without rules; earlier: the record that is gone on with, whose choice stays.

    Notes the faults of rules that nothing fits, and of what is noted of uses; a bank that cannot
    be read is told by who reads the templates.
    """
    unruled = tuple(each for each in problem_set.problems if not each.rule)
    before = earlier.set.problems if earlier and earlier.issues else ()
    folder, where = assignment_file.parent, str(assignment_file)
    try:
        bank = choose_banks(problem_set.banks, folder, where, "bank")
    except InputError:
        return replace(problem_set, problems=unruled)
    try:
        found = candidates(bank, problem_set)
    except InputError as error:
        faults.take(error)
        return replace(problem_set, problems=unruled)
    return choose(problem_set, found, seed, before, faults)
