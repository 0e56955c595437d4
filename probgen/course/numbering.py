"""Editions to come get numbers: those they keep, else new ones around all that was given."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from hashlib import blake2b
from typing import Final

from probgen.course.edition import Edition
from probgen.course.issue import Issue
from probgen.course.next_edition import NextEdition
from probgen.course.numbers_had import Had, each_once, values_had
from probgen.course.record import Record
from probgen.course.seating import beside
from probgen.course.wanted import Wanted
from probgen.draws.class_draws import ClassDraws, NoneLeftError
from probgen.draws.classroom import Classmates
from probgen.draws.draw import Draw, Values, values_of
from probgen.draws.kept import kept_draw
from probgen.input.fault import Fault, InputError
from probgen.problem.problem import Problem, draw_class, fit

_LESS: Final = "widen a range of it, take another template, or leave a folder out of avoid"
_Sets = Mapping[str, set[Values]]
"""Sets of values of a template's givens, by their owner."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """Each one with its numbers, and without a code; whose numbers a correction lost; remarks.

    avoided: all that was ever drawn around.
    """

    editions: list[tuple[NextEdition, Edition]]
    redrawn: tuple[str, ...]
    remarks: tuple[str, ...]
    avoided: tuple[Had, ...]


@dataclass(frozen=True)
class Numbering:
    """earlier, wanted: as `succeed` has them; first: issue of the record that is to be."""

    earlier: Record
    wanted: Wanted
    first: Issue

    def of(self, made: Sequence[NextEdition]) -> Drawn:
        """Numbers for the papers that are to be made.

        Raises InputError where a template has none to give.
        """
        columns: list[tuple[Draw, ...]] = []
        lost: dict[str, None] = {}
        remarks: list[str] = []
        avoided = self.earlier.avoided
        for place, problem in enumerate(self.wanted.problems):
            barred = self._barred(problem, made)
            kept = self._kept_draws(problem, made, barred)
            rows = list(zip(made, kept, strict=True))
            waiting = [paper for paper, draw in rows if draw is None]
            avoided = self._had if waiting else avoided
            there = {p.owner: draw for p, draw in rows if draw is not None}
            fresh, told = self._fresh(place, waiting, barred, self._classmates(place, made, there))
            remarks += told
            columns.append(tuple(draw or fresh[paper.owner] for paper, draw in rows))
            lost |= {
                self._whose(paper): None
                for paper in waiting
                if paper.old and not paper.fresh and _has(paper.old, problem)
            }
        drawn = zip(made, zip(*columns, strict=True), strict=True)
        editions = [(paper, _edition(paper, draws)) for paper, draws in drawn]
        _require_other(editions, self.wanted.class_list)
        return Drawn(editions, tuple(lost), tuple(remarks), avoided)

    def _whose(self, paper: NextEdition) -> str:
        return f"version {paper.owner}" if self.wanted.exam else f"{paper.name} ({paper.owner})"

    @cached_property
    def _had(self) -> tuple[Had, ...]:
        return each_once((*self.earlier.avoided, *self.wanted.had))

    def _barred(self, problem: Problem, made: Sequence[NextEdition]) -> _Sets:
        """What the owner of each one, or for an exam anybody, had in other assignments."""
        had = values_had(self._had, problem.template)
        if self.wanted.exam:
            return dict.fromkeys((paper.owner for paper in made), set().union(*had.values()))
        return {
            paper.owner: set().union(*(had.get(each, ()) for each in _owners(paper)))
            for paper in made
        }

    def _kept_draws(
        self, problem: Problem, made: Sequence[NextEdition], barred: _Sets
    ) -> list[Draw | None]:
        """The draw that each one keeps of a problem, None where it has or may have none."""
        kept = [_old_draw(paper, problem) for paper in made]
        kept = [
            None if each and self._is_unprinted(paper, each, problem, barred) else each
            for paper, each in zip(made, kept, strict=True)
        ]
        fits = iter(fit(problem, [draw for draw in kept if draw is not None]))
        return [draw if draw is not None and next(fits) else None for draw in kept]

    def _is_unprinted(
        self, paper: NextEdition, draw: Draw, problem: Problem, barred: _Sets
    ) -> bool:
        """Whether numbers were in no paper handed out, and are now barred."""
        written = paper.old is self.wanted.drafted.get(paper.owner)
        return written and values_of(problem.template, draw) in barred[paper.owner]

    def _classmates(
        self, place: int, made: Sequence[NextEdition], there: Mapping[str, Draw]
    ) -> Classmates:
        """The class, with the numbers of a problem that stay; there: of papers that are made."""
        exam = self.wanted.exam is not None
        coming = {paper.owner for paper in made}
        held = ((owner, self.earlier.held.get((owner, False))) for owner in self._beside)
        stay = {each: own.draws[place] for each, own in held if own and each not in coming}
        draws = {_key(owner, exam): draw for owner, draw in {**stay, **there}.items()}
        beside = {
            _key(owner, exam): [_key(other, exam) for other in others]
            for owner, others in self._beside.items()
        }
        return Classmates(beside, draws)

    @cached_property
    def _beside(self) -> Mapping[str, Collection[str]]:
        """Whose papers each owner can see; of an exam's versions any may lie beside any."""
        if self.wanted.exam:
            letters = self.wanted.exam.letters
            return {letter: letters.replace(letter, "") for letter in letters}
        return beside(self.wanted.students)

    def _fresh(
        self, place: int, waiting: Sequence[NextEdition], barred: _Sets, among: Classmates
    ) -> tuple[dict[str, Draw], tuple[str, ...]]:
        """New draws, around all that this record has ever given, by owner; and remarks."""
        if not waiting:
            return {}, ()
        problem, exam = self.wanted.problems[place], self.wanted.exam is not None
        ever = list(self._ever(problem))
        taken = {values for _, values in ever}
        had: set[Values] = set()
        if not exam:
            had = had.union(*values_had(self._had, problem.template).values())
        never = {paper.owner: barred[paper.owner] for paper in waiting}
        rather = {paper.owner: barred[paper.owner] | _given_to(paper, ever) for paper in waiting}
        try:
            found = self._draw(problem, taken, rather, had, among)
        except NoneLeftError:
            try:
                found = self._draw(problem, taken, never, had, among)
            except NoneLeftError as error:
                none = [paper for paper in waiting if _key(paper.owner, exam) in error.students]
                raise self._none_left(problem, none) from None
        if exam and any(barred.values()):
            self._require_apart(problem, found.draws, taken)
        return dict(zip(never, found.draws, strict=True)), found.remarks

    def _draw(
        self,
        problem: Problem,
        taken: set[Values],
        barred: _Sets,
        had: set[Values],
        among: Classmates,
    ) -> ClassDraws:
        """Draws for the owners of what is barred."""
        exam = self.wanted.exam is not None
        keyed = {_key(owner, exam): sets for owner, sets in barred.items()}
        seed = own_seed(self.earlier.seed, self.first)
        return draw_class(problem, seed, list(keyed), taken, keyed, had, among)

    def _ever(self, problem: Problem) -> Iterator[tuple[str, Values]]:
        """All sets of numbers of a template in the record or a draft, with the owner of each."""
        editions = (*self.earlier.editions, *self.wanted.drafted.values())
        given = [Had(edition.owner, draw) for edition in editions for draw in edition.draws]
        for owner, sets in values_had(given, problem.template).items():
            yield from ((owner, values) for values in sets)

    def _none_left(self, problem: Problem, none: Sequence[NextEdition]) -> InputError:
        """There are no numbers for some, who have had all that there are."""
        if self.wanted.exam:
            return InputError([self._too_few(problem, 0, len(none))])
        expected = f"numbers of {problem.template.id} that they have not had: none are left"
        return InputError(
            Fault(self.wanted.where, "avoid", self._whose(paper), expected, _LESS) for paper in none
        )

    def _require_apart(self, problem: Problem, draws: Sequence[Draw], taken: set[Values]) -> None:
        """Raises InputError where too few are free for the versions of an exam."""
        free = {values_of(problem.template, each) for each in draws} - taken
        if len(free) < len(draws):
            raise InputError([self._too_few(problem, len(free), len(draws))])

    def _too_few(self, problem: Problem, free: int, versions: int) -> Fault:
        found = f"{free} free sets of numbers of {problem.template.id}"
        expected = f"{versions} that nobody of the class had, one for each version"
        return Fault(self.wanted.where, "avoid", found, expected, _LESS)


def _require_other(editions: Sequence[tuple[NextEdition, Edition]], where: str) -> None:
    """Raises InputError where other numbers were asked for and there are no others."""
    faults = [
        Fault(where, f"{paper.name}, version", str(paper.version), "other numbers to give",
              "widen a range of the templates, or leave the version as it was")
        for paper, edition in editions
        if paper.fresh and paper.old and paper.old.draws == edition.draws
    ]  # fmt: skip
    if faults:
        raise InputError(faults)


def own_seed(seed: str, issue: Issue) -> str:
    """What an assignment's numbers are drawn from: the seed, mixed with course and title."""
    digest = blake2b(digest_size=16, person=b"assignment")
    for part in (seed, issue.set.course, issue.set.title):
        digest.update(len(part.encode()).to_bytes(8, "big") + part.encode())
    return digest.hexdigest()


def _owners(paper: NextEdition) -> set[str]:
    """The ids that the owner of one to come has or had, and that of what anybody had."""
    return {paper.owner, paper.replaces, paper.former, ""}


def _given_to(paper: NextEdition, ever: Sequence[tuple[str, Values]]) -> set[Values]:
    """What the owner of one to come was given in this assignment."""
    owners = {paper.owner, paper.old.owner if paper.old else paper.owner}
    return {values for owner, values in ever if owner in owners}


def _key(owner: str, exam: bool) -> str:
    return f"version {owner}" if exam else owner


def _has(old: Edition, problem: Problem) -> bool:
    return any(each.template_id == problem.template.id for each in old.draws)


def _old_draw(paper: NextEdition, problem: Problem) -> Draw | None:
    if paper.old is None or paper.fresh:
        return None
    own = (each for each in paper.old.draws if each.template_id == problem.template.id)
    earlier = next(own, None)
    return kept_draw(problem.template, earlier) if earlier else None


def _edition(paper: NextEdition, draws: tuple[Draw, ...]) -> Edition:
    code = paper.old.code if paper.same_paper and paper.old else ""
    return Edition(
        code, paper.owner, draws, paper.name, paper.section, paper.large, paper.version,
        paper.errata, paper.follows,
    )  # fmt: skip
