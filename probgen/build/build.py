"""The main job: a set file and a class list become a record, and a record becomes a folder.

Everything a build prints follows from its record; that is why a record alone can make it again.
"""

from __future__ import annotations

import secrets
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.build.delivery import deliver
from probgen.build.folder import ANSWERS, MISSING, recover, working_on
from probgen.build.joined_pdfs import Report
from probgen.build.workers import Crew
from probgen.course.record import RECORD, Assignment, Record, read_record
from probgen.course.roster import Student, read_roster
from probgen.course.seating import seat_order
from probgen.course.setfile import ProblemSet, read_set
from probgen.course.version_code import assign_codes
from probgen.input.fault import Faults, InputError
from probgen.papers.chunk import Loss
from probgen.papers.typesetter import Kind, typesetter_of
from probgen.problem.lookup import about, choose_bank, choose_template
from probgen.problem.plan_cache import prepared
from probgen.problem.problem import Problem, draw_class
from probgen.sheets.escape import unprintable
from probgen.sheets.house import USUAL, House, read_house

_SEED_BYTES = 16


@dataclass(frozen=True, slots=True)
class Built:
    """A finished build.

    remarks: what the instructor should know of the draws; losses: documents that are missing.
    """

    folder: Path
    record: Record
    remarks: tuple[str, ...] = ()
    losses: tuple[Loss, ...] = ()

    @property
    def summary(self) -> str:
        """What was built and where it is, for a terminal."""
        exam, problems = self.record.set.exam, len(self.record.assignments)
        whom = f"{len(self.record.students)} students"
        whom = f"{exam.versions} versions for {whom}" if exam else whom
        lists = [name for name in ("answers.pdf", "versions.pdf") if (self.folder / name).exists()]
        return (
            f"{whom} x {problems} problems in {self.folder}\n"
            f"  to hand out   {self._together(Kind.SHEETS)}, one by one in sheets/\n"
            f"  to mark with  {self._together(Kind.KEYS)}, one by one in keys/\n"
            f"  all answers   {' and '.join([str(self.folder / ANSWERS), *lists])}\n"
            f"  to rebuild    {self.folder / RECORD} (seed {self.record.seed})"
        )

    def _together(self, kind: Kind) -> str:
        """The PDF of all sheets or keys; the first and the last when there are several."""
        paths = sorted(self.folder.glob(f"all-{kind}*.pdf"))
        return " to ".join(str(path) for path in dict.fromkeys((paths[0], paths[-1])))

    @property
    def shortfall(self) -> str:
        """What is missing and why, for a terminal; empty when nothing is."""
        if not self.losses:
            return ""
        count = len(self.losses)
        noun = "document is" if count == 1 else "documents are"
        told = "\n".join(str(loss) for loss in self.losses)
        return (
            f"{count} {noun} missing, listed in {self.folder / MISSING}:\n{told}\n"
            "    mend      correct the cause, then build again: "
            f"the same seed ({self.record.seed}) gives everybody the same numbers"
        )


def build_set(
    set_file: Path,
    out: Path,
    seed: str | None,
    crew: Crew,
    report: Report,
    layouts: Path | None = None,
) -> Built:
    """Builds a class from a set file, or goes on with a build that was stopped.

    seed, layouts: in place of the set file's; a seed of 128 bits is drawn when neither has one.
    Raises InputError with every fault of the set file, class list and templates, OutsideError or
    OSError when something outside fails; then nothing in `out` has changed.
    """
    recover(out)
    problem_set = read_set(set_file)
    inputs = _read_inputs(problem_set, set_file, layouts)
    typesetter_of(problem_set, inputs.house).require_tex()
    seed = seed or problem_set.seed or _kept_seed(out) or secrets.token_hex(_SEED_BYTES)
    record, problems, remarks = _draw(problem_set, inputs, seed, report)
    own = (set_file, set_file.parent / problem_set.roster)
    losses = deliver(record, problems, out, crew, report, own)
    return Built(out, record, remarks, losses)


def build_record(path: Path, out: Path, crew: Crew, report: Report) -> Built:
    """Builds a class again from the record of an earlier build.  Raises as `build_set` does."""
    recover(out)
    record = read_record(path)
    convention = record.set.convention
    problems = tuple(
        prepared(_of_record(each, assigned.pivot, str(path)), convention)
        for each, assigned in zip(record.assignments, record.set.problems, strict=True)
    )
    typesetter_of(record.set, record.house).require_tex()
    losses = deliver(record, problems, out, crew, report, (path,))
    return Built(out, record, losses=losses)


def _of_record(each: Assignment, pivot: str, path: str) -> Template:
    """A template as the record has kept it."""
    template = read_template(each.source, f"{path}: {each.template_id}")
    return about(template, pivot, path, each.template_id)


def _kept_seed(out: Path) -> str:
    """The seed that an unfinished build of this folder has drawn, "" when there is none."""
    try:
        return read_record(working_on(out).record).seed
    except InputError:
        return ""


@dataclass(frozen=True, slots=True)
class _Inputs:
    """What a set file names, read; the students in the order of the print run."""

    students: tuple[Student, ...]
    templates: tuple[Template, ...]
    house: House


def _read_inputs(problem_set: ProblemSet, set_file: Path, layouts: Path | None) -> _Inputs:
    """The class list, the templates and the house a set file names, all their faults at once."""
    faults = Faults(str(set_file))
    students = _read_class(problem_set, set_file.parent, faults)
    templates = _read_templates(problem_set, set_file, faults)
    style, own = (
        set_file.parent / named if named else None
        for named in (problem_set.style, problem_set.layouts)
    )
    house = USUAL
    try:
        house = read_house(style, layouts or own)
    except InputError as error:
        faults.take(error)
    faults.settle()
    return _Inputs(students, templates, house)


def _read_class(problem_set: ProblemSet, folder: Path, faults: Faults) -> tuple[Student, ...]:
    path = folder / problem_set.roster
    try:
        students = read_roster(path)
    except InputError as error:
        faults.take(error)
        return ()
    if problem_set.run.order == "roster":
        return students
    if not any(student.seat for student in students):
        mend = f'add a column Seat to {path}, or write order = "roster"'
        faults.add("print.order", "seat", "a class list with seats", mend)
    return seat_order(students)


def _read_templates(
    problem_set: ProblemSet, set_file: Path, faults: Faults
) -> tuple[Template, ...]:
    folder, where = set_file.parent, str(set_file)
    try:
        bank = choose_bank(problem_set.bank, folder, where, "bank")
    except InputError as error:
        faults.take(error)
        bank = default_bank()
    templates: list[Template] = []
    for place, problem in enumerate(problem_set.problems):
        field = f"problem[{place}]"
        try:
            found = choose_template(problem.template, bank, folder, where, f"{field}.template")
            templates.append(about(found, problem.pivot, where, f"{field}.pivot"))
        except InputError as error:
            faults.take(error)
    return tuple(templates)


def _draw(
    problem_set: ProblemSet, inputs: _Inputs, seed: str, report: Report
) -> tuple[Record, tuple[Problem, ...], tuple[str, ...]]:
    """The class's record, its problems ready to be worked, and remarks on the draws."""
    ids = [student.id for student in inputs.students]
    if problem_set.exam:
        ids = [f"version {letter}" for letter in problem_set.exam.letters]
    problems: list[Problem] = []
    assignments: list[Assignment] = []
    remarks: list[str] = []
    for done, template in enumerate(inputs.templates):
        report("draws", done, len(inputs.templates))
        problem = prepared(template, problem_set.convention)
        drawn = draw_class(problem, seed, ids)
        problems.append(problem)
        assignments.append(Assignment(template.id, template.source, drawn.draws))
        remarks += drawn.remarks
    report("draws", len(inputs.templates), len(inputs.templates))
    remarks += _unprintable(problem_set, inputs.students)
    codes = assign_codes(seed, ids)
    record = Record(
        seed,
        problem_set,
        inputs.students,
        tuple(codes[id] for id in ids),
        tuple(assignments),
        inputs.house,
    )
    return record, tuple(problems), tuple(remarks)


def _unprintable(problem_set: ProblemSet, students: Iterable[Student]) -> Iterator[str]:
    """A remark for each text with characters that no page can show."""
    texts = [problem_set.course, problem_set.title, problem_set.due]
    texts += problem_set.exam.notes if problem_set.exam else ()
    for student in students:
        texts += [student.name, student.id, student.section]
    for text in texts:
        if lost := unprintable(text):
            yield f"{text}: boxes are printed for {lost}, which the fonts do not have"
