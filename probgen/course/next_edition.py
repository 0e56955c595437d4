"""Editions before they have numbers and codes: who gets a new one, and why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from probgen.course.edition import Edition
from probgen.course.issue import Erratum, Issue
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.course.wanted import Wanted
from probgen.input.fault import Faults

NOBODY = "none"
"""In the column "Numbers of": nobody's, although somebody of the same name has left."""


@dataclass(frozen=True, slots=True)
class NextEdition:
    """An edition that is to be made.

    old: whose numbers it keeps where it can, None for new ones.  fresh: other numbers than old's.
    errata: all the lines it is to print; replaces: the id it takes the place of, where that is
    another; former: an id that its owner had in other assignments; same_paper: whether it is old in
    letters of another size.  words: what is told of it.
    """

    owner: str
    name: str = ""
    section: str = ""
    large: bool = False
    version: int = 1
    old: Edition | None = None
    fresh: bool = False
    errata: tuple[Erratum, ...] = ()
    follows: str = ""
    replaces: str = ""
    former: str = ""
    same_paper: bool = False
    words: str = ""

    @property
    def corrects(self) -> bool:
        """Whether it prints an erratum that the paper before it did not."""
        return self.old is not None and not set(self.errata) <= set(self.old.errata)


@dataclass(slots=True)
class NextEditions:
    """earlier, wanted: as `succeed` has them; issues: of the record that is to be.

    erratum: of single students' papers, where nothing that all have in common has changed.
    remarks: what the class list says that has no effect; new_ids: of students known by
    another, with that; stale: whose papers say another name or section than the class list.
    """

    earlier: Record
    wanted: Wanted
    issues: tuple[Issue, ...]
    erratum: Erratum | None = None
    remarks: list[str] = field(default_factory=list)
    new_ids: dict[str, str] = field(default_factory=dict)
    stale: list[str] = field(default_factory=list)

    def of_exam(self, letters: Sequence[str]) -> list[NextEdition]:
        """Those of the versions that are new or are to be corrected."""
        assert self.wanted.exam is not None
        made = []
        for letter in self.wanted.exam.letters:
            held = self.earlier.held.get((letter, False))
            if held is None:
                made.append(NextEdition(letter, old=self.wanted.drafted.get(letter)))
            elif errata := self._errata(held):
                made.append(NextEdition(letter, old=held, errata=errata, follows=held.code))
        return made

    def of_class(self) -> list[NextEdition]:
        """Those of the papers that are new, or other than they were.

        Raises InputError where the class list names numbers that nobody has, or a student comes
        under another id without a word on it.
        """
        faults = Faults(self.wanted.class_list)
        now = {student.id for student in self.wanted.students}
        made = []
        for student in self.wanted.students:
            held = self.earlier.held.get((student.id, False))
            if held is None:
                made.append(self._newcomer(student, now, faults))
            elif paper := self._kept(student, held):
                made.append(paper)
        faults.settle()
        return made

    def _kept(self, student: Student, held: Edition) -> NextEdition | None:
        """What is to be printed for one who has a paper; None where that holds."""
        version = _number(student)
        errata = self._errata(held)
        own = (student.name, student.section) != (held.name, held.section)
        if self.erratum and own:
            errata = (*held.errata, self.erratum)
        printed = errata or version > held.version
        name, section = (student.name, student.section) if printed else (held.name, held.section)
        paper = NextEdition(
            student.id, name, section, student.large, held.version, held, errata=errata,
            follows=held.code,
        )  # fmt: skip
        if version > held.version:
            words = f"{student.name} ({student.id}): other numbers, version {version}"
            return replace(paper, version=version, fresh=True, words=words)
        if errata:
            return paper
        self._remark_kept(student, held, own)
        if student.large != held.large:
            words = f"{student.name} ({student.id}): {'large' if student.large else 'usual'} print"
            return replace(paper, same_paper=True, errata=held.errata, words=words)
        return None

    def _remark_kept(self, student: Student, held: Edition, own: bool) -> None:
        owner = f"{student.name} ({student.id})"
        if own:
            printed = ", ".join(filter(None, (held.name, held.section)))
            told = f"{owner}: the paper in hand says {printed}, and stays as it is"
            if lacks := self._lacks(student.section, held.section):
                told += f"; section {student.section} has {lacks}"
            self.remarks.append(told)
            self.stale.append(owner)
        source = student.numbers_of
        if source and source != NOBODY and not self._has_numbers_of(held, source):
            self.remarks.append(f"{owner}: the numbers in hand stay, and not those of {source}")

    def _lacks(self, now: str, held: str) -> str:
        """What papers of a section have otherwise than those of another, in words."""
        own = self.wanted.issue.set
        places, before = own.places_in(now), own.places_in(held)
        due = own.for_section(now).due
        told = [
            *(f"{own.problems[place].template} besides" for place in places if place not in before),
            *(f"no {own.problems[place].template}" for place in before if place not in places),
            f"another due date, {due}" * (due != own.for_section(held).due),
        ]
        return ", ".join(filter(None, told))

    def _has_numbers_of(self, held: Edition, source: str) -> bool:
        return any(e.owner == source and e.draws == held.draws for e in self.earlier.editions)

    def _newcomer(self, student: Student, now: set[str], faults: Faults) -> NextEdition:
        large, version = student.large, max(1, _number(student))
        old = self.wanted.drafted.get(student.id)
        fresh = old is not None and version > old.version
        paper = NextEdition(student.id, student.name, student.section, large, version, old, fresh)
        source = "" if student.numbers_of == NOBODY else student.numbers_of
        if not source:
            self._judge_namesake(student, now, faults)
            return paper
        held = self.earlier.held.get((source, False))
        if held is None:
            self._judge_source(student, source, now, faults)
            return replace(paper, former=source)
        if source in now:
            return replace(paper, old=held, fresh=False)
        self.new_ids[student.id] = source
        words = f"{student.name} ({student.id}): the paper of {source} under the new id"
        errata = self._errata(held) or held.errata
        return replace(
            paper, old=held, fresh=False, version=held.version, errata=errata, follows=held.code,
            replaces=source, words=words,
        )  # fmt: skip

    def _judge_source(self, student: Student, source: str, now: set[str], faults: Faults) -> None:
        """Numbers of one who has none: of the class, or an id of before this assignment."""
        if source in now:
            expected = "the id of somebody who has a paper already"
            mend = "correct it, or leave it empty for new numbers"
            faults.add(f"{student.name}, numbers of", source, expected, mend)
            return
        self._judge_namesake(student, now, faults)
        self.remarks.append(
            f"{student.name} ({student.id}): nobody has a paper here under the id {source}, so the "
            "numbers are new"
        )

    def _judge_namesake(self, student: Student, now: set[str], faults: Faults) -> None:
        """Somebody of that name has just left: most likely the same one under another id."""
        if student.numbers_of == NOBODY:
            return
        name = student.name.casefold()
        for gone in self.earlier.students:
            if gone.name.casefold() == name and gone.id not in now:
                expected = f"{gone.id}, under which {gone.name} has a paper"
                mend = (
                    f'write {gone.id} in a column "Numbers of" of that row to keep the numbers, '
                    f'or "{NOBODY}" for somebody else of that name'
                )
                faults.add(f"{student.name}, id", student.id, expected, mend)

    def _errata(self, held: Edition) -> tuple[Erratum, ...]:
        """All errata an edition is to print; none where it is of the issue that holds now."""
        issue = self.earlier.issue_of[held.code]
        since = self.issues[issue + 1 :]
        if not since:
            return ()
        return (*held.errata, *(each.erratum for each in since if each.erratum))


def _number(student: Student) -> int:
    """The version of a paper that the class list asks for, 0 where it says nothing."""
    return int(student.version) if student.version.isdecimal() else 0
