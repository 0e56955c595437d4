"""Drafts of editions get numbers: those they keep, else new ones around all that was given."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from hashlib import blake2b
from typing import Final

from probgen.course.drafts import Draft
from probgen.course.edition import Edition
from probgen.course.issue import Issue
from probgen.course.numbers_had import Had, each_once, values_had
from probgen.course.record import Record
from probgen.course.wanted import Wanted
from probgen.draws.class_draws import ClassDraws, NoneLeftError, Values, values_of
from probgen.draws.draw import Draw
from probgen.draws.kept import kept_draw
from probgen.input.fault import Fault, InputError
from probgen.problem.problem import Problem, draw_class, fit

_LESS: Final = "widen a range of it, take another template, or leave a folder out of avoid"
_Sets = Mapping[str, set[Values]]
"""Sets of values of a template's givens, by their owner."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """Each draft as an edition without a code; whose numbers a correction lost; remarks.

    avoided: all that was ever drawn around.
    """

    editions: list[tuple[Draft, Edition]]
    redrawn: tuple[str, ...]
    remarks: tuple[str, ...]
    avoided: tuple[Had, ...]


@dataclass(frozen=True)
class Numbering:
    """earlier, wanted: as `succeed` has them; first: issue of the record that is to be."""

    earlier: Record
    wanted: Wanted
    first: Issue

    def of(self, made: Sequence[Draft]) -> Drawn:
        """Numbers for drafts.

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
            waiting = [draft for draft, draw in rows if draw is None]
            avoided = self._had if waiting else avoided
            fresh, told = self._fresh(place, waiting, barred)
            remarks += told
            columns.append(tuple(draw or fresh[draft.owner] for draft, draw in rows))
            lost |= {
                self._whose(draft): None
                for draft in waiting
                if draft.old and not draft.fresh and _had(draft.old, problem)
            }
        drawn = zip(made, zip(*columns, strict=True), strict=True)
        editions = [(draft, _edition(draft, draws)) for draft, draws in drawn]
        _require_other(editions, self.wanted.class_list)
        return Drawn(editions, tuple(lost), tuple(remarks), avoided)

    def _whose(self, draft: Draft) -> str:
        return f"version {draft.owner}" if self.wanted.exam else f"{draft.name} ({draft.owner})"

    @cached_property
    def _had(self) -> tuple[Had, ...]:
        return each_once((*self.earlier.avoided, *self.wanted.had))

    def _barred(self, problem: Problem, made: Sequence[Draft]) -> _Sets:
        """What each draft's owner, or for an exam anybody, had in other assignments."""
        had = values_had(self._had, problem.template)
        if self.wanted.exam:
            return dict.fromkeys((draft.owner for draft in made), set().union(*had.values()))
        return {
            draft.owner: set().union(*(had.get(each, ()) for each in _owners(draft)))
            for draft in made
        }

    def _kept_draws(
        self, problem: Problem, made: Sequence[Draft], barred: _Sets
    ) -> list[Draw | None]:
        """The draw that each draft keeps of a problem, None where it has or may have none."""
        kept = [_old_draw(draft, problem) for draft in made]
        kept = [
            None if each and self._is_unprinted(draft, each, problem, barred) else each
            for draft, each in zip(made, kept, strict=True)
        ]
        fits = iter(fit(problem, [draw for draw in kept if draw is not None]))
        return [draw if draw is not None and next(fits) else None for draw in kept]

    def _is_unprinted(self, draft: Draft, draw: Draw, problem: Problem, barred: _Sets) -> bool:
        """Whether numbers were in no paper handed out, and are now barred."""
        written = draft.old is self.wanted.drafted.get(draft.owner)
        return written and values_of(problem.template, draw) in barred[draft.owner]

    def _fresh(
        self, place: int, waiting: Sequence[Draft], barred: _Sets
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
        never = {draft.owner: barred[draft.owner] for draft in waiting}
        rather = {draft.owner: barred[draft.owner] | _given_to(draft, ever) for draft in waiting}
        try:
            found = self._draw(problem, taken, rather, had)
        except NoneLeftError:
            try:
                found = self._draw(problem, taken, never, had)
            except NoneLeftError as error:
                none = [draft for draft in waiting if _key(draft.owner, exam) in error.students]
                raise self._none_left(problem, none) from None
        if exam and any(barred.values()):
            self._require_apart(problem, found.draws, taken)
        return dict(zip(never, found.draws, strict=True)), found.remarks

    def _draw(
        self, problem: Problem, taken: set[Values], barred: _Sets, had: set[Values]
    ) -> ClassDraws:
        """Draws for the owners of what is barred."""
        exam = self.wanted.exam is not None
        keyed = {_key(owner, exam): sets for owner, sets in barred.items()}
        seed = own_seed(self.earlier.seed, self.first)
        return draw_class(problem, seed, list(keyed), taken, keyed, had)

    def _ever(self, problem: Problem) -> Iterator[tuple[str, Values]]:
        """All sets of numbers of a template in the record or a draft, with the owner of each."""
        editions = (*self.earlier.editions, *self.wanted.drafted.values())
        given = [Had(edition.owner, draw) for edition in editions for draw in edition.draws]
        for owner, sets in values_had(given, problem.template).items():
            yield from ((owner, values) for values in sets)

    def _none_left(self, problem: Problem, none: Sequence[Draft]) -> InputError:
        """There are no numbers for some, who have had all that there are."""
        if self.wanted.exam:
            return InputError([self._too_few(problem, 0, len(none))])
        expected = f"numbers of {problem.template.id} that they have not had: none are left"
        return InputError(
            Fault(self.wanted.where, "avoid", self._whose(draft), expected, _LESS) for draft in none
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


def own_seed(seed: str, issue: Issue) -> str:
    """What an assignment's numbers are drawn from: the seed, mixed with course and title."""
    digest = blake2b(digest_size=16, person=b"assignment")
    for part in (seed, issue.set.course, issue.set.title):
        digest.update(len(part.encode()).to_bytes(8, "big") + part.encode())
    return digest.hexdigest()


def _owners(draft: Draft) -> set[str]:
    """The ids that a draft's owner has or had, and that of what anybody had."""
    return {draft.owner, draft.replaces, draft.former, ""}


def _given_to(draft: Draft, ever: Sequence[tuple[str, Values]]) -> set[Values]:
    """What the owner of a draft was given in this assignment."""
    owners = {draft.owner, draft.old.owner if draft.old else draft.owner}
    return {values for owner, values in ever if owner in owners}


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
