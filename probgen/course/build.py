"""The main job: a set file and a class list become a record, and a record becomes a folder.

Everything a build prints follows from its record; that is why a record alone can make it again.
"""

from __future__ import annotations

import os
import secrets
import warnings
from collections.abc import Callable, Generator, Iterable, Iterator
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

from joblib import Parallel, delayed

from probgen.bank.bank import default_bank
from probgen.bank.fault import Faults, InputError
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.course.answers import Row, write_answers
from probgen.course.choice import choose_bank, choose_template
from probgen.course.code import assign_codes
from probgen.course.folder import RECORD, delivered, file_names
from probgen.course.printing import CHUNK, Chunk, Kind, PrintedChunk, print_chunk, require_tex
from probgen.course.problem import Problem, draw_class, prepare
from probgen.course.record import Assignment, Record, read_record, write_record
from probgen.course.roster import Student, read_roster
from probgen.course.setfile import ProblemSet, read_set
from probgen.press.split import join
from probgen.sheets.escape import unprintable

Report = Callable[[str, int, int], None]
"""Told of a stage, what of it is done, and its whole: ("keys", 12, 300)."""

_SEED_BYTES = 16


@dataclass(frozen=True, slots=True)
class Built:
    """A finished build; remarks: what the instructor should know of the draws."""

    folder: Path
    record: Record
    remarks: tuple[str, ...] = ()

    @property
    def summary(self) -> str:
        """What was built and where it is, for a terminal."""
        students, problems = len(self.record.students), len(self.record.assignments)
        return (
            f"{students} students x {problems} problems in {self.folder}\n"
            f"  to hand out   {self.folder / 'all-sheets.pdf'}, one by one in sheets/\n"
            f"  to mark with  {self.folder / 'all-keys.pdf'}, one by one in keys/\n"
            f"  all answers   {self.folder / 'answers.csv'}\n"
            f"  to rebuild    {self.folder / RECORD} (seed {self.record.seed})"
        )


def build_set(
    set_file: Path, out: Path, seed: str | None, workers: int | None, report: Report
) -> Built:
    """Builds a class from a set file.

    seed: in place of the set file's; drawn (128 bits) when neither has one.  workers: processes at
    a time, all cores for None.  Raises InputError with every fault of the set file, class list and
    templates, OutsideError or OSError when something outside fails; then nothing is written.
    """
    problem_set = read_set(set_file)
    students, templates = _read_inputs(problem_set, set_file)
    seed = seed or problem_set.seed or secrets.token_hex(_SEED_BYTES)
    record, problems, remarks = _draw(problem_set, students, templates, seed, report)
    inputs = (set_file, set_file.parent / problem_set.roster)
    _print(record, problems, out, workers, report, inputs)
    return Built(out, record, remarks)


def build_record(path: Path, out: Path, workers: int | None, report: Report) -> Built:
    """Builds a class again from the record of an earlier build.  Raises as `build_set` does."""
    record = read_record(path)
    convention = record.set.convention
    problems = tuple(
        prepare(read_template(each.source, f"{path}: {each.template_id}"), convention)
        for each in record.assignments
    )
    _print(record, problems, out, workers, report, (path,))
    return Built(out, record)


def _read_inputs(
    problem_set: ProblemSet, set_file: Path
) -> tuple[tuple[Student, ...], tuple[Template, ...]]:
    """The class list and the templates a set file names, all their faults at once."""
    faults = Faults(str(set_file))
    folder = set_file.parent
    students: tuple[Student, ...] = ()
    try:
        students = read_roster(folder / problem_set.roster)
    except InputError as error:
        faults.take(error)
    templates: list[Template] = []
    try:
        bank = choose_bank(problem_set.bank, folder, str(set_file), "bank")
    except InputError as error:
        faults.take(error)
        bank = default_bank()
    for place, problem in enumerate(problem_set.problems):
        field = f"problem[{place}].template"
        try:
            named = problem.template
            templates.append(choose_template(named, bank, folder, str(set_file), field))
        except InputError as error:
            faults.take(error)
    faults.settle()
    return students, tuple(templates)


def _draw(
    problem_set: ProblemSet,
    students: tuple[Student, ...],
    templates: tuple[Template, ...],
    seed: str,
    report: Report,
) -> tuple[Record, tuple[Problem, ...], tuple[str, ...]]:
    """The class's record, its problems ready to be worked, and remarks on the draws."""
    ids = [student.id for student in students]
    problems: list[Problem] = []
    assignments: list[Assignment] = []
    remarks: list[str] = []
    for done, template in enumerate(templates):
        report("draws", done, len(templates))
        problem = prepare(template, problem_set.convention)
        drawn = draw_class(problem, seed, ids)
        problems.append(problem)
        assignments.append(Assignment(template.id, template.source, drawn.draws))
        remarks += drawn.remarks
    report("draws", len(templates), len(templates))
    remarks += _unprintable(problem_set, students)
    codes = assign_codes(seed, ids)
    record = Record(seed, problem_set, students, tuple(codes[id] for id in ids), tuple(assignments))
    return record, tuple(problems), tuple(remarks)


def _unprintable(problem_set: ProblemSet, students: Iterable[Student]) -> Iterator[str]:
    """A remark for each text with characters that no page can show."""
    texts = [problem_set.course, problem_set.title, problem_set.due]
    for student in students:
        texts += [student.name, student.id, student.section]
    for text in texts:
        if lost := unprintable(text):
            yield f"{text}: boxes are printed for {lost}, which the fonts do not have"


def _print(
    record: Record,
    problems: tuple[Problem, ...],
    out: Path,
    workers: int | None,
    report: Report,
    inputs: tuple[Path, ...],
) -> None:
    """Everything a record makes, into its folder."""
    require_tex(record.set.paper)
    with delivered(out, inputs) as folder:
        for kind in Kind:
            (folder / kind).mkdir()
        shared: dict[Kind, list[Path]] = {kind: [] for kind in Kind}
        rows: list[Row] = []
        total = len(Kind) * len(record.students)
        done = 0
        with closing(_printed(record, problems, workers)) as chunks:
            for printed in chunks:
                shared[printed.kind].append(_write_pdfs(folder, printed))
                rows += printed.rows
                done += len(printed.pdfs)
                report("pages", done, total)
        for kind, parts in shared.items():
            (folder / f"all-{kind}.pdf").write_bytes(join(parts, record.set.title))
            for part in parts:
                part.unlink()
        write_answers(folder / "answers.csv", rows)
        (folder / RECORD).write_text(write_record(record), encoding="utf-8")


def _printed(
    record: Record, problems: tuple[Problem, ...], workers: int | None
) -> Generator[PrintedChunk, None, None]:
    """Every chunk's sheets and keys, in roster order, as they are done."""
    tasks = [(kind, chunk) for chunk in _chunks(record) for kind in Kind]
    processes = min(workers or os.cpu_count() or 1, len(tasks))
    run = Parallel(n_jobs=processes, return_as="generator", batch_size=1)
    with warnings.catch_warnings():
        # When one chunk fails the others are cancelled, which is as it should be.
        warnings.filterwarnings("ignore", message=".*have been cancelled")
        yield from run(
            delayed(print_chunk)(kind, chunk, record.set, problems) for kind, chunk in tasks
        )


def _chunks(record: Record) -> Iterator[Chunk]:
    names = file_names(record.students)
    for start in range(0, len(record.students), CHUNK):
        part = slice(start, start + CHUNK)
        yield Chunk(
            record.students[part],
            record.codes[part],
            names[part],
            tuple(assignment.draws[part] for assignment in record.assignments),
        )


def _write_pdfs(folder: Path, printed: PrintedChunk) -> Path:
    """Writes a chunk's PDFs; the path of the one that holds them all, to be joined later."""
    for name, pdf in printed.pdfs:
        (folder / printed.kind / f"{name}.pdf").write_bytes(pdf)
    together = folder / f".{printed.kind}-{printed.pdfs[0][0]}.pdf"
    together.write_bytes(printed.together)
    return together
