"""Editions before they have numbers and codes: who gets a new one, and why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from hashlib import blake2b

from probgen.course.edition import Edition
from probgen.course.issue import Erratum, Issue
from probgen.course.record import Record
from probgen.course.roster import Student
from probgen.course.wanted import Wanted
from probgen.draws.class_draws import Values
from probgen.draws.draw import Draw
from probgen.draws.kept import kept_draw
from probgen.input.fault import Fault, Faults, InputError
from probgen.problem.problem import Problem, draw_class, fit

NOBODY = "none"
"""In the column "Numbers of": nobody's, although somebody of the same name has left."""


@dataclass(frozen=True, slots=True)
class Draft:
    """An edition that is to be made.

    old: whose numbers it keeps where it can, None for new ones.  fresh: other numbers than old's.
    errata: all the lines it is to print; replaces: the id it takes the place of, where that is
    another; same_paper: whether it is old in letters of another size.  words: what is told of it.
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
    same_paper: bool = False
    words: str = ""


@dataclass(slots=True)
class Drafts:
    """earlier, wanted: as `succeed` has them; issues: of the record that is to be.

    erratum: of single students' papers, where nothing that all have in common has changed.
    remarks: what the class list says that has no effect; new_ids: of students known by another.
    """

    earlier: Record
    wanted: Wanted
    issues: tuple[Issue, ...]
    erratum: Erratum | None = None
    remarks: list[str] = field(default_factory=list)
    new_ids: set[str] = field(default_factory=set)

    def of_exam(self, letters: Sequence[str]) -> list[Draft]:
        """Drafts of the versions that are new or are to be corrected."""
        assert self.wanted.exam is not None
        made = []
        for letter in self.wanted.exam.letters:
            held = self.earlier.held.get((letter, False))
            if held is None:
                made.append(Draft(letter, old=self.wanted.drafted.get(letter)))
            elif errata := self._errata(held):
                made.append(Draft(letter, old=held, errata=errata, follows=held.code))
        return made

    def of_class(self) -> list[Draft]:
        """Drafts of the papers that are new, or other than they were.

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
            elif draft := self._kept(student, held):
                made.append(draft)
        faults.settle()
        return made

    def _kept(self, student: Student, held: Edition) -> Draft | None:
        """What is to be printed for one who has a paper; None where that holds."""
        version = _number(student)
        errata = self._errata(held)
        own = (student.name, student.section) != (held.name, held.section)
        if self.erratum and own:
            errata = (*held.errata, self.erratum)
        name, section = (student.name, student.section) if errata else (held.name, held.section)
        draft = Draft(
            student.id, name, section, student.large, held.version, held, errata=errata,
            follows=held.code,
        )  # fmt: skip
        if version > held.version:
            words = f"{student.name} ({student.id}): other numbers, version {version}"
            return replace(draft, version=version, fresh=True, words=words)
        if errata:
            return draft
        self._remark_kept(student, held, own)
        if student.large != held.large:
            words = f"{student.name} ({student.id}): {'large' if student.large else 'usual'} print"
            return replace(draft, same_paper=True, words=words)
        return None

    def _remark_kept(self, student: Student, held: Edition, own: bool) -> None:
        owner = f"{student.name} ({student.id})"
        if own:
            printed = ", ".join(filter(None, (held.name, held.section)))
            self.remarks.append(f"{owner}: the paper in hand says {printed}, and stays as it is")
        source = student.numbers_of
        if source and source != NOBODY and not self._has_numbers_of(held, source):
            self.remarks.append(f"{owner}: the numbers in hand stay, and not those of {source}")

    def _has_numbers_of(self, held: Edition, source: str) -> bool:
        return any(e.owner == source and e.draws == held.draws for e in self.earlier.editions)

    def _newcomer(self, student: Student, now: set[str], faults: Faults) -> Draft:
        large, version = student.large, max(1, _number(student))
        old = self.wanted.drafted.get(student.id)
        fresh = old is not None and version > old.version
        draft = Draft(student.id, student.name, student.section, large, version, old, fresh)
        source = "" if student.numbers_of == NOBODY else student.numbers_of
        if not source:
            self._judge_namesake(student, now, faults)
            return draft
        held = self.earlier.held.get((source, False))
        if held is None:
            expected = "the id of somebody who has a paper already"
            mend = "correct it, or leave it empty for new numbers"
            faults.add(f"{student.name}, numbers of", source, expected, mend)
            return draft
        if source in now:
            return replace(draft, old=held, fresh=False)
        self.new_ids.add(student.id)
        words = f"{student.name} ({student.id}): the paper of {source} under the new id"
        errata = self._errata(held) or held.errata
        return replace(
            draft, old=held, fresh=False, version=held.version, errata=errata, follows=held.code,
            replaces=source, words=words,
        )  # fmt: skip

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

    def drawn(
        self, made: Sequence[Draft]
    ) -> tuple[list[tuple[Draft, Edition]], tuple[str, ...], list[str]]:
        """Each draft as an edition without a code; whose numbers a correction lost; remarks.

        Raises InputError where a template has no numbers to give.
        """
        columns: list[tuple[Draw, ...]] = []
        lost: dict[str, None] = {}
        remarks: list[str] = []
        for place, problem in enumerate(self.wanted.problems):
            kept = self._kept_draws(problem, made)
            waiting = [draft for draft, draw in zip(made, kept, strict=True) if draw is None]
            fresh, told = self._fresh(place, waiting)
            remarks += told
            rows = zip(made, kept, strict=True)
            columns.append(tuple(draw or fresh[draft.owner] for draft, draw in rows))
            lost |= {
                self._whose(draft): None
                for draft in waiting
                if draft.old and not draft.fresh and _had(draft.old, problem)
            }
        drawn = zip(made, zip(*columns, strict=True), strict=True)
        editions = [(draft, _edition(draft, draws)) for draft, draws in drawn]
        _require_other(editions, self.wanted.class_list)
        return editions, tuple(lost), remarks

    def _whose(self, draft: Draft) -> str:
        return f"version {draft.owner}" if self.wanted.exam else f"{draft.name} ({draft.owner})"

    def _kept_draws(self, problem: Problem, made: Sequence[Draft]) -> list[Draw | None]:
        """The draw that each draft keeps of a problem, None where it has or may have none."""
        kept = [_old_draw(draft, problem) for draft in made]
        fits = iter(fit(problem, [draw for draw in kept if draw is not None]))
        return [draw if draw is not None and next(fits) else None for draw in kept]

    def _fresh(
        self, place: int, waiting: Sequence[Draft]
    ) -> tuple[dict[str, Draw], tuple[str, ...]]:
        """New draws, around all that this record has ever given, by owner; and remarks."""
        if not waiting:
            return {}, ()
        problem = self.wanted.problems[place]
        ever = list(self._ever(problem))
        avoided = self.wanted.avoided[place] if self.wanted.avoided else ()
        own = self.wanted.own[place] if self.wanted.own else {}
        taken = {*avoided, *(values for _, values in ever)}
        barred: dict[str, set[Values]] = {}
        keys = {draft.owner: _key(draft.owner, bool(self.wanted.exam)) for draft in waiting}
        for draft in waiting:
            owners = {draft.owner, draft.old.owner if draft.old else draft.owner}
            mine = {values for owner, values in ever if owner in owners}
            barred[keys[draft.owner]] = mine.union(own.get(draft.owner, ()))
        seed = own_seed(self.earlier.seed, self.issues[0])
        found = draw_class(problem, seed, list(keys.values()), taken, barred)
        return dict(zip(keys, found.draws, strict=True)), found.remarks

    def _ever(self, problem: Problem) -> Iterator[tuple[str, Values]]:
        """All sets of numbers of a template in the record or a draft, with the owner of each."""
        givens = [given.id for given in problem.template.givens]
        for edition in (*self.earlier.editions, *self.wanted.drafted.values()):
            for each in edition.draws:
                if each.template_id == problem.template.id and each.values.keys() >= set(givens):
                    yield edition.owner, tuple(each.values[id].value for id in givens)


def own_seed(seed: str, issue: Issue) -> str:
    """What an assignment's numbers are drawn from: the seed, mixed with course and title."""
    digest = blake2b(digest_size=16, person=b"assignment")
    for part in (seed, issue.set.course, issue.set.title):
        digest.update(len(part.encode()).to_bytes(8, "big") + part.encode())
    return digest.hexdigest()


def _number(student: Student) -> int:
    """The version of a paper that the class list asks for, 0 where it says nothing."""
    return int(student.version) if student.version.isdecimal() else 0


def _key(owner: str, exam: bool) -> str:
    return f"version {owner}" if exam else owner


def _had(old: Edition, problem: Problem) -> bool:
    return any(each.template_id == problem.template.id for each in old.draws)


def _old_draw(draft: Draft, problem: Problem) -> Draw | None:
    if draft.old is None or draft.fresh:
        return None
    own = (each for each in draft.old.draws if each.template_id == problem.template.id)
    earlier = next(own, None)
    return kept_draw(problem.template, earlier) if earlier else None


def _edition(draft: Draft, draws: tuple[Draw, ...]) -> Edition:
    code = draft.old.code if draft.same_paper and draft.old else ""
    return Edition(
        code, draft.owner, draws, draft.name, draft.section, draft.large, draft.version,
        draft.errata, draft.follows,
    )  # fmt: skip


def _require_other(editions: Sequence[tuple[Draft, Edition]], where: str) -> None:
    """Raises InputError where other numbers were asked for and there are no others."""
    faults = [
        Fault(where, f"{draft.name}, version", str(draft.version), "other numbers to give",
              "widen a range of the templates, or leave the version as it was")
        for draft, edition in editions
        if draft.fresh and draft.old and draft.old.draws == edition.draws
    ]  # fmt: skip
    if faults:
        raise InputError(faults)
