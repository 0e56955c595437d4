"""Whether the points that an assignment file shares out itself add up and fit the problem."""

from __future__ import annotations

from string import ascii_lowercase

from probgen.course.assignment import Assigned
from probgen.input.fault import Faults, one_of
from probgen.problem.problem import Problem
from probgen.working.criteria import criteria
from probgen.working.scheme import for_groups
from probgen.working.shares import GROUPS, by_part, of_group


def judge_shares(problem: Problem, assigned: Assigned, field: str, faults: Faults) -> None:
    """Notes where points are for what the problem does not ask, or its working does not have.

    field: of the problem, in messages.
    """
    noted = [fault.field for fault in faults.found]
    for name, told in assigned.shares.complaints(assigned.points):
        where = ".".join((field, name))
        if any(each.startswith(where) for each in noted):  # by who read the file
            continue
        expected = f"a sum of {assigned.points}, as points says"
        faults.add(where, told, expected, "make the two agree")
    found = tuple(criteria(problem.plan, problem.convention))
    there = [group for group in GROUPS if of_group(for_groups(found, [group]), group)]
    for share in assigned.marks:
        if share.group not in there:
            mend = "give its points to another"
            expected = f"a kind of step that its working has: {one_of(there)}"
            faults.add(f"{field}.marks", share.group, expected, mend)
    if not assigned.parts:
        return
    groups = by_part(problem.plan, found)
    if len(assigned.parts) != len(groups):
        expected = f"points for each of its {len(groups)} parts"
        faults.add(f"{field}.parts", f"{len(assigned.parts)} numbers", expected)
        return
    for letter, own in zip(ascii_lowercase, groups, strict=False):
        if not own:
            expected = f"parts with steps of their own; ({letter}) follows from those before it"
            mend = "use marks, or leave parts out"
            faults.add(f"{field}.parts", f"points for ({letter})", expected, mend)
