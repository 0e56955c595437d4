"""The main job: an assignment file and a class list become a record, and a record becomes a folder.

Everything a build prints follows from its record; that is why a record alone can make it again.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from probgen.build.chosen import with_choice
from probgen.build.delivery import deliver
from probgen.build.example import remarks_on_example
from probgen.build.folder import Delivery, kept_record, recover, require_ours
from probgen.build.joined_pdfs import SECTIONS
from probgen.build.manifest import made_in
from probgen.build.progress import Report
from probgen.build.use import note_use
from probgen.build.workers import Crew
from probgen.course.archive import records_beside
from probgen.course.assignment import ProblemSet, judge_seed, read_assignment
from probgen.course.avoided import read_avoided, require_new
from probgen.course.edited import recoded
from probgen.course.edition import Edition
from probgen.course.frozen import frozen_problems
from probgen.course.inputs import Inputs, read_class, read_inputs
from probgen.course.issue import Erratum, FrozenTemplate, Issue
from probgen.course.numbers_had import Had
from probgen.course.record import RECORD, Record, require_no_layouts
from probgen.course.record_file import read_record
from probgen.course.secret import SECRET, find_secret, new_secret
from probgen.course.section import judge_sections
from probgen.course.shares import judge_shares
from probgen.course.succession import Changes, asking_others, succeed
from probgen.course.typed_texts import judge_typed, remarks_on_texts
from probgen.course.wanted import Wanted
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.remedy import CorrectOrReplace, OtherFolderOrReplace, Replace
from probgen.papers.chunk import Loss
from probgen.papers.typesetter import Kind, typesetter_of
from probgen.problem.problem import Problem, prepare
from probgen.sheets.house import House, read_layouts


@dataclass(frozen=True, slots=True)
class Order:
    """What an instructor asks of a build, besides what stands in the files.

    seed: in place of the assignment file's; guessable: whether it may be.  secret: in place of one
    that is drawn, or the course's.  layouts: a folder of them in place of the assignment file's, or
    of those a record carries, which are used only when `trusted`.
    correct: what is corrected in papers that were handed out, on this day.
    replace: begin anew, and keep an earlier build beside the new one; forget: begin anew.
    draft: print papers that are not to be handed out; the next build takes their place.
    edited: take a record that somebody has edited.
    another: ids of students who get other numbers than those they have.
    roster: a class list in place of the class that a record has.
    uses: whether the banks drawn from note what was set; None: where the file lies in a course.
    """

    seed: str = ""
    guessable: bool = False
    secret: str = ""
    layouts: Path | None = None
    trusted: bool = False
    correct: str = ""
    day: str = ""
    replace: bool = False
    forget: bool = False
    draft: bool = False
    edited: bool = False
    another: tuple[str, ...] = ()
    roster: Path | None = None
    uses: bool | None = None

    @property
    def erratum(self) -> Erratum | None:
        return Erratum(self.day or date.today().isoformat(), self.correct) if self.correct else None


USUAL = Order()


@dataclass(frozen=True, slots=True)
class Built:
    """A finished build.

    changes: of the class before, None where a record was built as it is.
    remarks: what the instructor should know of the draws and pages; losses: documents that are
    missing; left: files that somebody has edited, and that stay; kept: where the earlier build is.
    """

    folder: Path
    record: Record
    remarks: tuple[str, ...] = ()
    losses: tuple[Loss, ...] = ()
    changes: Changes | None = None
    left: tuple[str, ...] = ()
    kept: Path | None = None

    def tables(self, name: str) -> tuple[Path, ...]:
        """The forms of a table ("answers") that there are: for programs, spreadsheets, paper."""
        forms = (self.folder / f"{name}{ending}" for ending in (".csv", ".xlsx", ".pdf"))
        return tuple(path for path in forms if path.exists())

    @property
    def sections(self) -> tuple[Path, ...]:
        """The folders with the piles and tables of each section, where the run makes them."""
        return tuple(sorted((self.folder / SECTIONS).glob("*/")))

    def together(self, kind: Kind) -> tuple[Path, ...]:
        """The PDFs of all sheets or all keys: one, or several volumes in their order."""
        return tuple(sorted(self.folder.glob(f"all-{kind}*.pdf")))

    @property
    def fresh(self) -> tuple[Path, ...]:
        """The PDFs of what was printed last, where that was not all."""
        named = (self.folder / f"new-{kind}.pdf" for kind in Kind)
        return tuple(path for path in named if path.exists())


def build_assignment(
    assignment_file: Path, out: Path, crew: Crew, report: Report, order: Order = USUAL
) -> Built:
    """Builds a class from an assignment file, or goes on with a build that was stopped.

    Where the folder has a record, that is the fixed point: who has a paper keeps it.
    Raises InputError with every fault of the file, class list and templates, and with all that
    would change papers; OutsideError or OSError when something outside fails; then nothing in
    `out` has changed.
    """
    recover(out)
    words: list[str] = []
    faults = Faults(str(assignment_file))
    problem_set = read_assignment(assignment_file, words, faults)
    problem_set, order = _by_rule(problem_set, assignment_file, out, order, faults)
    inputs = read_inputs(problem_set, assignment_file, order.layouts, faults)
    roster, secret = (assignment_file.parent / name for name in (problem_set.roster, SECRET))
    own = (assignment_file, roster, secret, *_record_read(out, order))
    if order.correct:
        judge_typed(order.correct, "correct", faults)
    if not faults.found:
        require_ours(out, own)
        typesetter_of(problem_set, inputs.house).require_tex()
    earlier, told, drafted = _before(problem_set, assignment_file, out, order, faults)
    if inputs.students and problem_set.problems:
        judge_sections(problem_set, inputs.students, earlier, str(roster), faults)
    problems = _problems(problem_set, inputs, faults, report)
    faults.settle()
    wanted = _wanted(problem_set, inputs, problems, assignment_file)
    had = _had_before(wanted, assignment_file, earlier, out, order.replace)
    wanted = replace(
        wanted, issue=replace(wanted.issue, draft=order.draft), drafted=drafted, had=had
    )
    if order.another:
        wanted = asking_others(earlier, wanted, order.another)
    elsewhere = records_beside(out, find_secret(assignment_file.parent))
    record, changes = succeed(earlier, wanted, order.erratum, elsewhere)
    how = Delivery(inputs=own, replace=order.replace)
    short = deliver(record, wanted.problems, out, crew, report, how)
    texts = remarks_on_texts(record)
    listed = (*inputs.remarks, *remarks_on_example(roster))
    noted = _noted(record, inputs, assignment_file, order)
    remarks = (*words, *told, *changes.remarks, *listed, *texts, *short.remarks, *noted)
    return Built(_found(out), record, remarks, short.losses, changes, how.left, how.kept)


def _by_rule(
    problem_set: ProblemSet, assignment_file: Path, out: Path, order: Order, faults: Faults
) -> tuple[ProblemSet, Order]:
    """The set with templates in the places of its rules, and the seed that chose them."""
    if not any(problem.rule for problem in problem_set.problems):
        return problem_set, order
    earlier = None if order.replace or order.forget else _there(out)
    known = earlier or _kept(out)
    seed = order.seed or problem_set.seed or (known.seed if known else new_secret())
    found = with_choice(problem_set, assignment_file, seed, earlier, faults)
    return found, replace(order, seed=seed, guessable=order.guessable or not order.seed)


def _there(out: Path) -> Record | None:
    """The record in a folder; None where there is none that can be read."""
    try:
        return read_record(out / RECORD, edited=True)
    except InputError:
        return None


def _noted(record: Record, inputs: Inputs, assignment_file: Path, order: Order) -> tuple[str, ...]:
    """Has banks note what was set, unless it is a draft; remarks on what could not be."""
    wanted = order.uses
    if wanted is None:
        wanted = find_secret(assignment_file.parent) is not None
    return note_use(record, inputs.templates, date.today()) if wanted and not order.draft else ()


def _had_before(
    wanted: Wanted, assignment_file: Path, earlier: Record, out: Path, anew: bool
) -> tuple[Had, ...]:
    """What students had in the assignments that this one avoids; anew: as `read_avoided` has it.

    Raises InputError as `read_avoided` does, and for templates of an exam that the class had.
    """
    problem_set, ids = wanted.issue.set, [each.template_id for each in wanted.issue.templates]
    before = read_avoided(problem_set, ids, assignment_file, out, anew)
    handed = {each.template_id for issue in earlier.issues for each in issue.templates}
    require_new(before, problem_set, ids, handed, wanted.where)
    return before.had


def _found(out: Path) -> Path:
    """The folder as it was named; without links where that way leads nowhere ("no/../class")."""
    return out if out.exists() else out.resolve()


def _record_read(out: Path, order: Order) -> tuple[Path, ...]:
    """The record of the folder, where it was read although somebody had edited it."""
    return (out / RECORD,) if order.edited else ()


def build_record(path: Path, out: Path, crew: Crew, report: Report, order: Order = USUAL) -> Built:
    """Builds a class again from the record of an earlier build, or another class with its texts.

    Raises as `build_assignment`.
    """
    recover(out)
    record, told = _read(path, order)
    if order.layouts:
        own = House(record.house.style, read_layouts(order.layouts), str(order.layouts))
        issue = replace(record.issue, house=own)
        record = replace(record, issues=(*record.issues[:-1], issue))
    elif not order.trusted:
        require_no_layouts(record, str(path))
    if not order.replace:
        _require_record(out)
        _require_no_loss(record, out)
    problems = frozen_problems(record.issue, record.current, str(path))
    typesetter_of(record.set, record.house).require_tex()
    changes = None
    if order.roster:
        listed = read_class(record.set, order.roster)
        issue, class_list = record.issue, str(order.roster)
        wanted = Wanted(issue, listed.students, problems, str(path), class_list)
        record, changes = succeed(record, wanted, None, records_beside(out, find_secret(out)))
        told = (*told, *listed.remarks, *changes.remarks)
    how = Delivery(inputs=(path,), replace=order.replace)
    short = deliver(record, problems, out, crew, report, how)
    remarks = (*told, *remarks_on_texts(record), *short.remarks)
    return Built(_found(out), record, remarks, short.losses, changes, how.left, how.kept)


def _before(
    problem_set: ProblemSet, assignment_file: Path, out: Path, order: Order, faults: Faults
) -> tuple[Record, tuple[str, ...], Mapping[str, Edition]]:
    """What was handed out before, remarks on it, and a draft's papers.

    Raises InputError where the folder's record cannot be gone on with, beside the faults so far.
    """
    try:
        earlier, told = _earlier(problem_set, assignment_file, out, order)
        earlier, drafted = _apart(earlier, problem_set, out / RECORD, order)
    except InputError as error:
        faults.take(error)
        faults.settle()
        raise
    return earlier, told, drafted


def _earlier(
    problem_set: ProblemSet, assignment_file: Path, out: Path, order: Order
) -> tuple[Record, tuple[str, ...]]:
    """The record that a folder holds, or one without papers for a new class; and remarks."""
    typed = order.seed or problem_set.seed
    if order.seed and not order.guessable:
        faults = Faults("", asked=True)
        judge_seed(order.seed, faults.add)
        faults.settle()
    course, kept, path = find_secret(assignment_file.parent), _kept(out), out / RECORD
    if not (order.replace or order.forget):
        _require_record(out)
    secret = order.secret or (course.text if course else kept.secret if kept else new_secret())
    if path.is_file() and not (order.replace or order.forget):
        record, told = _read(path, order)
        if record.is_draft and typed and typed != record.seed:
            return Record(typed, record.secret, (), (), ()), told
        if typed and typed != record.seed:
            told += (f"the seed stays that of {path}: the papers in hand were drawn from it",)
        return replace(record, secret=record.secret or secret), told
    seed = typed or (kept.seed if kept else new_secret())
    return Record(seed, secret, (), (), ()), ()


def _require_record(out: Path) -> None:
    """Raises InputError where the record of an earlier build is gone: nobody knows its papers."""
    if RECORD in made_in(out) and not (out / RECORD).is_file():
        expected = "the record of the papers that were built here"
        mend = "put a copy of it back, as the build left it"
        raise InputError([Fault(str(out / RECORD), "", "", expected, mend, Replace())])


def _apart(
    earlier: Record, problem_set: ProblemSet, path: Path, order: Order
) -> tuple[Record, Mapping[str, Edition]]:
    """A record of what was handed out, and a draft's papers, by owner, of which no record counts.

    Raises InputError where a draft would take the place of papers that were handed out.
    """
    if earlier.is_draft:
        anew = Record(earlier.seed, earlier.secret, (), (), (), version=earlier.version)
        alike = earlier.is_exam == (problem_set.exam is not None)
        return anew, {edition.owner: edition for edition in earlier.current if alike}
    if order.draft and earlier.issues:
        found, expected = "papers that were handed out", "none, or a draft"
        raise InputError([Fault(str(path), "", found, expected, "", OtherFolderOrReplace())])
    return earlier, {}


def _read(path: Path, order: Order) -> tuple[Record, tuple[str, ...]]:
    """A record, also an edited one where that is asked for; and remarks on it."""
    record = read_record(path, order.edited)
    return recoded(record) if order.edited else (record, ())


def _kept(out: Path) -> Record | None:
    """The record of an unfinished build of this folder."""
    kept = kept_record(out)
    try:
        return read_record(kept) if kept else None
    except InputError:
        return None


def _problems(
    problem_set: ProblemSet, inputs: Inputs, faults: Faults, report: Report
) -> tuple[Problem, ...]:
    """The problems of the templates that could be read; notes where they do not fit the set."""
    problems = []
    for done, (place, template) in enumerate(zip(inputs.places, inputs.templates, strict=True)):
        report("draws", done, len(inputs.templates))
        try:
            problems.append(prepare(template, problem_set.convention))
        except InputError as error:
            faults.take(error)
        else:
            judge_shares(problems[-1], problem_set.problems[place], f"problem[{place}]", faults)
    report("draws", len(inputs.templates), len(inputs.templates))
    return tuple(problems)


def _wanted(
    problem_set: ProblemSet, inputs: Inputs, problems: tuple[Problem, ...], assignment_file: Path
) -> Wanted:
    frozen = tuple(FrozenTemplate(t.id, t.revision, t.source) for t in inputs.templates)
    issue = Issue(problem_set, frozen, inputs.house)
    roster = assignment_file.parent / problem_set.roster
    return Wanted(issue, inputs.students, problems, str(assignment_file), str(roster))


def _require_no_loss(record: Record, out: Path) -> None:
    """Raises InputError where a folder's own record tells of papers that this one does not know."""
    path = out / RECORD
    try:
        found_there = read_record(path)
    except InputError:
        return
    there: Sequence[str] = [e.code for e in found_there.editions if not found_there.is_draft]
    known = {edition.code for edition in record.editions}
    if lost := [code for code in there if code not in known]:
        found = f"the paper {lost[0]}" + (f" and {len(lost) - 1} more" if lost[1:] else "")
        expected = "no paper that the record to be built does not know"
        raise InputError([Fault(str(path), "", found, expected, "", CorrectOrReplace())])
