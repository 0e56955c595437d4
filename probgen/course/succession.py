"""From the record of what was handed out, and what is wanted now, to the next record.

Nobody's paper changes unless an instructor says so: what would change one is refused, or corrected
with an erratum; newcomers draw around all numbers there ever were; who has left stays on record.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from probgen import __version__
from probgen.course.copying import copying_in, remarks_on_copying
from probgen.course.differences import Difference, differences
from probgen.course.edition import Coder, Edition, Elsewhere, Nowhere, Printing
from probgen.course.exam import letters_for
from probgen.course.issue import Erratum, Issue
from probgen.course.next_edition import NextEdition, NextEditions
from probgen.course.numbering import Numbering
from probgen.course.record import Record, large_letters
from probgen.course.roster import Student
from probgen.course.wanted import Wanted
from probgen.draws.kept import kept_draw
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.remedy import CorrectOrReplace
from probgen.problem.problem import fit

NOWHERE = Nowhere()
_OWN_EXAM = "write an exam of one version, versions = 1, with this one as its class"
_NAMED = 5
"""Students whose names a message tells; of more it tells how many."""


@dataclass(frozen=True, slots=True)
class Changes:
    """What a build changed of the class before.

    added, left: students who are new, and who are gone; back: who had left and has come again.
    printed: editions made; moved: students who have other numbers without anybody's saying so.
    redrawn: whose numbers a correction could not keep; others: words on single students' papers.
    stale: whose papers in hand say another name or section than the class list.
    remarks: what the instructor should know of the draws and the class list.
    """

    added: tuple[Student, ...] = ()
    left: tuple[Student, ...] = ()
    back: tuple[Student, ...] = ()
    printed: int = 0
    moved: int = 0
    corrected: int = 0
    redrawn: tuple[str, ...] = ()
    others: tuple[str, ...] = ()
    stale: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()


def succeed(
    earlier: Record,
    wanted: Wanted,
    erratum: Erratum | None = None,
    elsewhere: Elsewhere = NOWHERE,
) -> tuple[Record, Changes]:
    """The record that follows on an earlier one, and what is new in it.

    earlier: without issues for a new class.  erratum: of the papers that are to be corrected.
    elsewhere: the course's other assignments.
    Raises InputError with all that would change papers, or that cannot be drawn.
    """
    changed = differences(earlier.issue, wanted.issue) if earlier.issues else ()
    _require_kind(earlier, wanted)
    if changed and erratum is None:
        raise InputError(list(_refusals(earlier, wanted, changed)))
    issues = _issues(earlier, wanted, bool(changed), erratum)
    renamed = _renamed(earlier, wanted)
    letters = _letters(earlier, wanted, renamed)
    following = NextEditions(earlier, wanted, issues, None if changed else erratum)
    made = following.of_exam(letters) if wanted.exam else following.of_class()
    new = changed or any(paper.corrects for paper in made)
    if erratum and not new and erratum not in _told_already(earlier):
        expected = "something that differs from what was handed out"
        mend = "leave the correction out, or correct the file first"
        raise InputError([Fault(wanted.where, "", "nothing", expected, mend)])
    drawn = Numbering(earlier, wanted, issues[0]).of(made)
    taken = {edition.code for edition in earlier.editions}
    coder = Coder(earlier.secret, issues[-1], taken, elsewhere)
    editions = _editions(coder, earlier, drawn.editions, letters, wanted)
    printings = earlier.printings
    if editions:
        printings = (*printings, Printing(len(issues) - 1, editions))
    version = __version__ if editions else earlier.version
    record = Record(
        earlier.seed, earlier.secret, issues, printings, wanted.students, letters, version,
        drawn.avoided, earlier.copying,
    )  # fmt: skip
    record, told = _with_copying(record, earlier, wanted)
    changes = _changes(earlier, record, made, {**renamed, **following.new_ids})
    return record, replace(
        changes,
        printed=len(editions),
        redrawn=drawn.redrawn,
        stale=tuple(following.stale),
        remarks=(*following.remarks, *drawn.remarks, *told),
    )


def _with_copying(
    record: Record, earlier: Record, wanted: Wanted
) -> tuple[Record, tuple[str, ...]]:
    """The record with who could copy, where papers or class are others; remarks on new papers."""
    before, now = ((own.printings, own.students, own.letters) for own in (earlier, record))
    if before == now:
        return record, ()
    told = replace(record, copying=copying_in(record, wanted.problems))
    return told, tuple(remarks_on_copying(told)) if before[0] != now[0] else ()


def _told_already(earlier: Record) -> Iterator[Erratum]:
    """The errata of papers that somebody holds: a command may be given twice, as after a stop."""
    yield from (erratum for edition in earlier.held.values() for erratum in edition.errata)


def asking_others(earlier: Record, wanted: Wanted, ids: Collection[str]) -> Wanted:
    """The same wish, and other numbers for single students, by their ids.

    Raises InputError for those who have no paper, and for an exam, whose versions are nobody's own.
    """
    faults = Faults("", asked=True)
    here = {student.id for student in wanted.students}
    for id in ids:
        if wanted.exam:
            faults.add("another", id, "homework: an exam's versions are nobody's own", _OWN_EXAM)
        elif id not in here or (id, False) not in earlier.held:
            mend = "newcomers get numbers of their own anyway"
            faults.add("another", id, "the id of a student of the class who has a paper", mend)
    faults.settle()
    students = tuple(
        replace(each, version=str(earlier.held[each.id, False].version + 1))
        if each.id in ids
        else each
        for each in wanted.students
    )
    return replace(wanted, students=students)


def _changes(
    earlier: Record, record: Record, made: Sequence[NextEdition], renamed: Mapping[str, str]
) -> Changes:
    """Who is new, gone and back; whose paper is another one.

    renamed: the earlier ids of students who were known by another, by the new one.
    """
    before = {student.id: student for student in earlier.students}
    ids = {student.id for student in record.students}
    known = set(before)
    if not record.is_exam:
        known |= {edition.owner for edition in earlier.editions}
    new = [s for s in record.students if s.id not in before and s.id not in renamed]
    gone = {id: s for id, s in before.items() if id not in {*ids, *renamed.values()}}
    return Changes(
        added=tuple(s for s in new if s.id not in known),
        left=tuple(gone.values()),
        back=tuple(s for s in new if s.id in known),
        moved=_moved(earlier, record, made),
        corrected=sum(paper.corrects for paper in made),
        others=(
            *(paper.words for paper in made if paper.words),
            *_versions_kept(record, renamed),
        ),
    )


def _versions_kept(record: Record, renamed: Mapping[str, str]) -> Iterator[str]:
    """Words on those who sit an exam under another id than before."""
    for student in record.students if record.is_exam else ():
        if old := renamed.get(student.id):
            yield f"{student.name} ({student.id}): the version of {old} under the new id"


def _issues(
    earlier: Record, wanted: Wanted, changed: bool, erratum: Erratum | None
) -> tuple[Issue, ...]:
    """The issues with the one that holds now last; what is on no paper may have changed in it."""
    if not earlier.issues:
        return (wanted.issue,)
    if changed:
        return (*earlier.issues, replace(wanted.issue, erratum=erratum))
    return (*earlier.issues[:-1], replace(earlier.issue, set=wanted.issue.set))


def _renamed(earlier: Record, wanted: Wanted) -> dict[str, str]:
    """The students of an exam who were known by another id, and that, by the new one."""
    now = {student.id for student in wanted.students}
    before = earlier.letter_of
    return {
        each.id: each.numbers_of
        for each in wanted.students
        if wanted.exam and each.id not in before and each.numbers_of in before.keys() - now
    }


def _letters(earlier: Record, wanted: Wanted, renamed: Mapping[str, str]) -> tuple[str, ...]:
    if not wanted.exam:
        return ()
    kept = earlier.letter_of
    kept |= {id: kept[old] for id, old in renamed.items()}
    return letters_for(wanted.exam, wanted.students, kept)


def _editions(
    coder: Coder,
    earlier: Record,
    drawn: Sequence[tuple[NextEdition, Edition]],
    letters: tuple[str, ...],
    wanted: Wanted,
) -> tuple[Edition, ...]:
    """The new editions under their codes; large print of an exam's version has that one's code."""
    made = tuple(e if paper.same_paper else coder.coded(e) for paper, e in drawn)
    if not wanted.exam:
        return made
    now = {**earlier.held, **{(edition.owner, False): edition for edition in made}}
    large = large_letters(wanted.students, letters)
    twins = (
        replace(now[letter, False], large=True) for letter in wanted.exam.letters if letter in large
    )
    held = {edition.code for place, edition in earlier.held.items() if place[1]}
    return (*made, *(twin for twin in twins if twin.code not in held))


def _moved(earlier: Record, record: Record, made: Sequence[NextEdition]) -> int:
    """Students of before who have other numbers now, and nobody has asked for it."""
    asked = {paper.owner for paper in made if paper.old is not None}
    return sum(
        edition.draws != record.held[place].draws
        for place, edition in earlier.held.items()
        if place in record.held and place[0] not in asked
    )


def _require_kind(earlier: Record, wanted: Wanted) -> None:
    if earlier.issues and earlier.is_exam != (wanted.exam is not None):
        kinds = ("papers of each student's own", "an exam's versions")
        found, expected = kinds[not earlier.is_exam], f"{kinds[earlier.is_exam]}, as before"
        mend = "give it a folder of its own"
        raise InputError([Fault(wanted.where, "exam", found, expected, mend, CorrectOrReplace())])


def _refusals(earlier: Record, wanted: Wanted, changed: Sequence[Difference]) -> list[Fault]:
    """A fault for each difference, with those whose papers it would change."""
    owners = _told([_owner(edition, earlier.is_exam) for edition in earlier.current])
    faults = []
    for each in changed:
        was = f"{each.was}, " if each.was else ""
        expected = f"{was}as handed out to {owners}"
        if lost := _would_lose(earlier, wanted, each.problem):
            expected += f"; the numbers of {_told(lost)} would no longer do"
        remedy = CorrectOrReplace()
        faults.append(Fault(wanted.where, each.field, each.now, expected, "", remedy))
    return faults


def _would_lose(earlier: Record, wanted: Wanted, place: int | None) -> list[str]:
    """Whose numbers of a problem its template, as it is now, would not give."""
    if place is None or place >= min(len(wanted.problems), len(earlier.issue.templates)):
        return []
    problem = wanted.problems[place]
    if problem.template.id != earlier.issue.templates[place].template_id:
        return []
    kept = [kept_draw(problem.template, edition.draws[place]) for edition in earlier.current]
    fits = iter(fit(problem, [draw for draw in kept if draw is not None]))
    return [
        _owner(edition, earlier.is_exam)
        for edition, draw in zip(earlier.current, kept, strict=True)
        if draw is None or not next(fits)
    ]


def _owner(edition: Edition, exam: bool) -> str:
    return f"version {edition.owner}" if exam else f"{edition.name} ({edition.owner})"


def _told(owners: Sequence[str]) -> str:
    more = f" and {len(owners) - _NAMED} more" if len(owners) > _NAMED else ""
    return ", ".join(owners[:_NAMED]) + more
