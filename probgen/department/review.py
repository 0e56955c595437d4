"""Revisions of a bank's templates reviewed: what waits for it, and the verdicts of those who do."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from probgen.bank.bank_folder import BankFolder
from probgen.bank.release import text_digest
from probgen.bank.reviews import Review, Verdict, add_reviews, read_reviews, text_mark
from probgen.bank.template import Template
from probgen.course.typed_texts import judge_typed
from probgen.department.change import Change
from probgen.department.comparison import compare
from probgen.department.standing import (
    ByRevision,
    Standing,
    Status,
    by_revision,
    is_writer,
    standing,
)
from probgen.input.fault import Faults, InputError, nearest, one_of


@dataclass(frozen=True, slots=True)
class Reviewed:
    """A revision with what was said of it; before: the revision before, None for the first."""

    template: Template
    standing: Standing
    before: Template | None

    @property
    def change(self) -> Change | None:
        """What is other in it than in the revision before."""
        return compare(self.before, self.template) if self.before else None

    @property
    def waits(self) -> bool:
        """Whether it goes into no release as it stands."""
        return self.standing.status not in (Status.APPROVED, Status.WITHDRAWN)


def reviewed(
    bank: BankFolder, ids: Sequence[str] = (), revision: int | None = None
) -> Iterator[Reviewed]:
    """Each template's newest revision, or the one of a number; of all templates without ids.

    Raises InputError for ids and revisions that are not there, and where one cannot be read.
    """
    reviews = by_revision(read_reviews(bank))
    faults = Faults(str(bank.path))
    pairs: list[tuple[Template, Template | None]] = []
    for id, number in _wanted(bank, ids or tuple(bank.revisions), revision):
        before = max((each for each in bank.revisions[id] if each < number), default=0)
        try:
            pairs.append((bank.read(id, number), bank.read(id, before) if before else None))
        except InputError as error:
            faults.take(error)
    faults.settle()
    for template, old in pairs:
        yield Reviewed(template, standing(template, reviews, bank.own_approval), old)


def give_verdict(
    bank: BankFolder, ids: Sequence[str], revision: int | None, said: Review
) -> tuple[Reviewed, ...]:
    """Adds a verdict on templates to the bank's reviews; nothing where one of them is wrong.

    said: person, date, verdict and note, which are those of every row.
    Raises InputError with every fault, among them an approval by who wrote the template.
    """
    faults = Faults(str(bank.path))
    judge_typed(said.person, "person", faults)
    if said.note:
        judge_typed(said.note, "note", faults)
    found = list(reviewed(bank, ids, revision))
    if said.verdict is Verdict.APPROVED and not bank.own_approval:
        _require_another(said.person, found, by_revision(read_reviews(bank)), faults)
    faults.settle()
    add_reviews(bank, [_row(each.template, said) for each in found])
    return tuple(reviewed(bank, ids, revision))


def _require_another(
    person: str, found: Sequence[Reviewed], reviews: ByRevision, faults: Faults
) -> None:
    mend = (
        "have somebody else read it; a bank that one person keeps alone says own_approval = true "
        "in its bank.toml"
    )
    for each in found:
        id, revision = each.template.id, each.template.revision
        if is_writer(person, each.template, reviews.get((id, revision), ())):
            expected = "somebody who neither wrote nor proposed it"
            faults.add(f"{id} r{revision}", person, expected, mend)


def _row(template: Template, said: Review) -> Review:
    mark = text_mark(text_digest(template.source))
    person = " ".join(said.person.split())
    return Review(template.id, template.revision, mark, person, said.date, said.verdict, said.note)


def _wanted(bank: BankFolder, ids: Sequence[str], revision: int | None) -> list[tuple[str, int]]:
    faults = Faults(str(bank.path))
    wanted = []
    for id in dict.fromkeys(ids):
        own = bank.revisions.get(id, {})
        if not own:
            faults.add("template", id, "a template of the bank", nearest(id, bank.revisions))
        elif revision is None:
            wanted.append((id, max(own)))
        elif revision in own:
            wanted.append((id, revision))
        else:
            faults.add(id, f"revision {revision}", one_of(map(str, own), "its revisions "))
    faults.settle()
    return wanted
