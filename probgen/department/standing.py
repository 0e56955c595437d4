"""What stands for a revision of a template, after all that was said of it.

Verdicts count for the text that was read, in the order of their dates, from its last proposal on;
of each person the last one.  Somebody else than who wrote or proposed it has to approve, unless
the bank allows it otherwise, and nobody may want changes still.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from probgen.bank.release import text_digest
from probgen.bank.reviews import Review, Verdict
from probgen.bank.template import Template

_BETWEEN: Final = re.compile(r"\s*(?:[;,&]|\band\b)\s*")
"""Names in a template's field of authors."""

ByRevision = Mapping[tuple[str, int], Sequence[Review]]


class Status(StrEnum):
    """Where a revision stands on its way into a release."""

    NOT_PROPOSED = "not proposed"
    PROPOSED = "proposed"
    CHANGES_WANTED = "changes wanted"
    APPROVED = "approved"
    WITHDRAWN = "withdrawn"


@dataclass(frozen=True, slots=True)
class Standing:
    """said: the verdicts that count, in order; outdated: those on an earlier text of it.

    not_counted: who has approved and may not, being its author.
    """

    status: Status
    said: tuple[Review, ...] = ()
    outdated: tuple[Review, ...] = ()
    not_counted: tuple[str, ...] = ()


def by_revision(reviews: Iterable[Review]) -> ByRevision:
    """Verdicts by the revision they are on, in the order of their dates."""
    found: dict[tuple[str, int], list[Review]] = {}
    for review in sorted(reviews, key=lambda each: each.date):
        found.setdefault((review.template, review.revision), []).append(review)
    return found


def standing(template: Template, reviews: ByRevision, own_approval: bool) -> Standing:
    """Where a template's revision stands; own_approval: whether authors may approve."""
    digest = text_digest(template.source)
    told = reviews.get((template.id, template.revision), ())
    own = [each for each in told if digest.startswith(each.text)]
    outdated = tuple(each for each in told if each not in own)
    proposed = [place for place, each in enumerate(own) if each.verdict is Verdict.PROPOSED]
    said = own[proposed[-1] :] if proposed else own
    last = {_name(each.person): each for each in said}
    verdicts = {each.verdict for each in last.values()}
    barred = set() if own_approval else writers(template, own)
    approving = [each for each in said if each.verdict is Verdict.APPROVED]
    not_counted = tuple(each.person for each in approving if _name(each.person) in barred)
    if Verdict.WITHDRAWN in verdicts:
        status = Status.WITHDRAWN
    elif Verdict.CHANGES_WANTED in verdicts:
        status = Status.CHANGES_WANTED
    elif any(each.verdict is Verdict.APPROVED and name not in barred
             for name, each in last.items()):  # fmt: skip
        status = Status.APPROVED
    else:
        status = Status.PROPOSED if said else Status.NOT_PROPOSED
    return Standing(status, tuple(said), outdated, not_counted)


def writers(template: Template, reviews: Iterable[Review]) -> set[str]:
    """Who wrote a revision: its authors, and who has proposed it; names as they are compared."""
    authors = template.origin.author
    named = {_name(each) for each in (authors, *_BETWEEN.split(authors))}
    proposing = {_name(each.person) for each in reviews if each.verdict is Verdict.PROPOSED}
    return (named | proposing) - {""}


def is_writer(person: str, template: Template, reviews: Iterable[Review]) -> bool:
    """Whether somebody is among those."""
    return _name(person) in writers(template, reviews)


def _name(person: str) -> str:
    return " ".join(person.split()).casefold()
