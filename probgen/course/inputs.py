"""What an assignment file names, read: the class list, the templates, the house."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from probgen.bank.bank import default_bank
from probgen.bank.template import Template
from probgen.course.assignment import ProblemSet
from probgen.course.roster import ClassList, Student, read_roster
from probgen.course.seating import seat_order
from probgen.input.fault import Faults, InputError
from probgen.problem.lookup import choose_banks, choose_template, with_pivot
from probgen.sheets.house import USUAL, House, read_house


@dataclass(frozen=True, slots=True)
class Inputs:
    """The students in the order of the print run, the templates in the order of the set.

    places: of the templates in the set; remarks: on how the class list was read.
    """

    students: tuple[Student, ...]
    templates: tuple[Template, ...]
    house: House
    places: tuple[int, ...] = ()
    remarks: tuple[str, ...] = ()


def read_inputs(
    problem_set: ProblemSet,
    assignment_file: Path,
    layouts: Path | None,
    noted: Faults | None = None,
) -> Inputs:
    """Everything an assignment file names; layouts: a folder in place of the assignment file's own.

    noted: where faults go, when what could be read is wanted all the same.
    Raises InputError with the faults of all of it at once otherwise.
    """
    faults = Faults(str(assignment_file)) if noted is None else noted
    listed = _read_class(problem_set, assignment_file.parent, faults)
    templates = _read_templates(problem_set, assignment_file, faults)
    style, own = (
        assignment_file.parent / named if named else None
        for named in (problem_set.style, problem_set.layouts)
    )
    house = USUAL
    try:
        house = read_house(style, layouts or own)
    except InputError as error:
        faults.take(error)
    if noted is None:
        faults.settle()
    return Inputs(
        listed.students, tuple(templates.values()), house, tuple(templates), listed.remarks
    )


def read_class(problem_set: ProblemSet, class_list: Path) -> ClassList:
    """The class of an assignment from another list than the one it names.  Raises InputError."""
    faults = Faults(str(class_list))
    listed = _read_class(replace(problem_set, roster=class_list.name), class_list.parent, faults)
    faults.settle()
    return listed


def _read_class(problem_set: ProblemSet, folder: Path, faults: Faults) -> ClassList:
    path = folder / problem_set.roster
    if not problem_set.roster:  # a fault of the assignment file
        return ClassList(())
    try:
        listed = read_roster(path)
    except InputError as error:
        faults.take(error)
        return ClassList(())
    if problem_set.run.order == "roster":
        return listed
    if not any(student.seat for student in listed.students):
        mend = f'add a column Seat to {path}, or write order = "roster"'
        faults.add("print.order", "seat", "a class list with seats", mend)
    return replace(listed, students=seat_order(listed.students))


def _read_templates(
    problem_set: ProblemSet, assignment_file: Path, faults: Faults
) -> dict[int, Template]:
    """The templates that can be read, by their places in the set."""
    folder, where = assignment_file.parent, str(assignment_file)
    try:
        bank = choose_banks(problem_set.banks, folder, where, "bank")
    except InputError as error:
        faults.take(error)
        bank = default_bank()
    templates: dict[int, Template] = {}
    units = problem_set.convention.units
    for place, problem in enumerate(problem_set.problems):
        if not problem.template:  # a fault of the assignment file
            continue
        field = f"problem[{place}]"
        try:
            named = problem.template
            found = choose_template(named, bank, folder, where, f"{field}.template", units)
            templates[place] = with_pivot(found, problem.pivot, where, f"{field}.pivot")
        except InputError as error:
            faults.take(error)
    return templates
