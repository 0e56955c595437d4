"""Which revision of each template a release may take: the newest that is approved."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from probgen.bank.bank_folder import BankFolder
from probgen.bank.template import Template
from probgen.department.standing import ByRevision, Status, standing
from probgen.input.fault import Faults, InputError


@dataclass(frozen=True, slots=True)
class Candidate:
    """template: the newest approved revision, None where there is none, or it was withdrawn.

    newest: the number of the newest revision; status: what stands for that one.
    """

    id: str
    template: Template | None
    newest: int
    status: Status

    @property
    def waits(self) -> bool:
        """Whether a newer revision is there than can be released, or none can."""
        return self.status not in (Status.APPROVED, Status.WITHDRAWN)


def candidates(
    bank: BankFolder, ids: Iterable[str], reviews: ByRevision, faults: Faults
) -> tuple[Candidate, ...]:
    """What may be released of templates; adds to the faults what cannot be read."""
    found = []
    for id in ids:
        try:
            found.append(_candidate(bank, id, reviews))
        except InputError as error:
            faults.take(error)
    return tuple(found)


def _candidate(bank: BankFolder, id: str, reviews: ByRevision) -> Candidate:
    newest: Status | None = None
    for revision in sorted(bank.revisions[id], reverse=True):
        template = bank.read(id, revision)
        status = standing(template, reviews, bank.own_approval).status
        newest = newest or status
        if status is Status.APPROVED:
            return Candidate(id, template, max(bank.revisions[id]), newest)
        if status is Status.WITHDRAWN:
            break
    return Candidate(id, None, max(bank.revisions[id]), newest or Status.NOT_PROPOSED)
