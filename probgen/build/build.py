"""The main job: a set file and a class list become a record, and a record becomes a folder.

Everything a build prints follows from its record; that is why a record alone can make it again.
"""

from __future__ import annotations

import secrets
from dataclasses import dataclass, replace
from pathlib import Path

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.build.delivery import deliver
from probgen.build.folder import kept_record, recover, require_ours
from probgen.build.progress import Report
from probgen.build.workers import Crew
from probgen.course.inputs import Inputs, read_inputs, unprintable_texts
from probgen.course.paper import papers
from probgen.course.record import (
    Assignment,
    Record,
    read_record,
    require_drawn_from,
    require_no_layouts,
)
from probgen.course.setfile import ProblemSet, read_set
from probgen.course.version_code import assign_codes
from probgen.input.fault import Fault, InputError
from probgen.input.text import LONGEST_TEXT, unfit
from probgen.papers.chunk import Loss
from probgen.papers.typesetter import Kind, typesetter_of
from probgen.problem.lookup import with_pivot
from probgen.problem.problem import Problem, draw_class, prepare
from probgen.quantities.unit import UnitSystem
from probgen.sheets.house import House, read_layouts

_SEED_BYTES = 16


@dataclass(frozen=True, slots=True)
class Built:
    """A finished build.

    remarks: what the instructor should know of the draws and pages; losses: documents that are
    missing.
    """

    folder: Path
    record: Record
    remarks: tuple[str, ...] = ()
    losses: tuple[Loss, ...] = ()

    @property
    def lists(self) -> tuple[Path, ...]:
        """The tables of answers and versions that it has to print."""
        named = (self.folder / name for name in ("answers.pdf", "versions.pdf"))
        return tuple(path for path in named if path.exists())

    def together(self, kind: Kind) -> tuple[Path, ...]:
        """The PDFs of all sheets or all keys: one, or several volumes in their order."""
        return tuple(sorted(self.folder.glob(f"all-{kind}*.pdf")))


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
    _judge_seed(seed)
    problem_set = read_set(set_file)
    inputs = read_inputs(problem_set, set_file, layouts)
    own = (set_file, set_file.parent / problem_set.roster)
    require_ours(out, own)
    typesetter_of(problem_set, inputs.house).require_tex()
    seed = seed or problem_set.seed or _kept_seed(out) or secrets.token_hex(_SEED_BYTES)
    record, problems, remarks = _draw(problem_set, inputs, seed, report)
    short = deliver(record, problems, out, crew, report, own)
    return Built(_found(out), record, (*remarks, *short.remarks), short.losses)


def build_record(
    path: Path,
    out: Path,
    crew: Crew,
    report: Report,
    layouts: Path | None = None,
    trusted: bool = False,
) -> Built:
    """Builds a class again from the record of an earlier build.  Raises as `build_set` does.

    layouts: a folder of them in place of those the record carries, which are used only when they
    are `trusted`: a layout decides what TeX is told to do.
    """
    recover(out)
    record = read_record(path)
    require_ours(out, (path,))
    if layouts:
        own = House(record.house.style, read_layouts(layouts), str(layouts))
        record = replace(record, house=own)
    elif not trusted:
        require_no_layouts(record, str(path))
    convention = record.set.convention
    problems = tuple(
        prepare(_of_record(each, assigned.pivot, str(path), convention.units), convention)
        for each, assigned in zip(record.assignments, record.set.problems, strict=True)
    )
    typesetter_of(record.set, record.house).require_tex()
    short = deliver(record, problems, out, crew, report, (path,))
    return Built(_found(out), record, short.remarks, short.losses)


def _found(out: Path) -> Path:
    """The folder as it was named; without links where that way leads nowhere ("no/../class")."""
    return out if out.exists() else out.resolve()


def _of_record(each: Assignment, pivot: str, path: str, units: UnitSystem) -> Template:
    """A template as the record has kept it."""
    where = f"{path}: {each.template_id}"
    template = read_template(each.source, where, units)
    require_drawn_from(template, each, where)
    return with_pivot(template, pivot, path, each.template_id)


def _judge_seed(seed: str | None) -> None:
    """Raises InputError for a seed that no record could keep."""
    if seed is None:
        return
    if found := unfit(seed) or ("" if seed.strip() else "nothing"):
        expected = f"a text of 1 to {LONGEST_TEXT} characters"
        raise InputError([Fault("seed", "", found, expected, "leave it out to have one drawn")])


def _kept_seed(out: Path) -> str:
    """The seed that an unfinished build of this folder has drawn, "" when there is none."""
    kept = kept_record(out)
    try:
        return read_record(kept).seed if kept else ""
    except InputError:
        return ""


def _draw(
    problem_set: ProblemSet, inputs: Inputs, seed: str, report: Report
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
        problem = prepare(template, problem_set.convention)
        drawn = draw_class(problem, seed, ids)
        problems.append(problem)
        assignments.append(Assignment(template.id, template.source, drawn.draws))
        remarks += drawn.remarks
    report("draws", len(inputs.templates), len(inputs.templates))
    remarks += unprintable_texts(problem_set, inputs)
    codes = assign_codes(seed, papers(problem_set, ids, assignments))
    record = Record(
        seed,
        problem_set,
        inputs.students,
        tuple(codes[id] for id in ids),
        tuple(assignments),
        inputs.house,
    )
    return record, tuple(problems), tuple(remarks)
