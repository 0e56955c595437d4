"""A bank's catalogue: a card for each template, in chapters by family."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from probgen.bank.bank import Bank
from probgen.bank.bank_folder import BankFolder
from probgen.bank.reviews import read_reviews
from probgen.bank.template import Template
from probgen.bank.uses import by_template, read_uses
from probgen.build.progress import Report
from probgen.build.workers import Crew
from probgen.department.card import Card, card_of
from probgen.department.history import folder_of, history
from probgen.department.standing import Status, by_revision, standing
from probgen.input.fault import Fault, Faults, InputError

_STAGE: Final = "problems"
_AT_ONCE: Final = 8
"""Templates that one process takes; a few are sooner worked than a second process is begun."""


@dataclass(frozen=True, slots=True)
class Chapter:
    """The cards of one family, by level and id."""

    family: str
    cards: tuple[Card, ...]


@dataclass(frozen=True, slots=True)
class Catalogue:
    """keeper: of the bank, "" for none; release: its name where the templates are those of one."""

    title: str
    keeper: str
    release: str
    chapters: tuple[Chapter, ...]

    @property
    def cards(self) -> tuple[Card, ...]:
        return tuple(card for chapter in self.chapters for card in chapter.cards)

    @property
    def levels(self) -> tuple[int, ...]:
        return tuple(sorted({card.template.level for card in self.cards}))

    @property
    def goals(self) -> tuple[str, ...]:
        """Every goal that a template has, by the alphabet."""
        return tuple(sorted({goal for card in self.cards for goal in card.template.goals}))

    @property
    def cautions(self) -> frozenset[str]:
        """What the problems touch that a teacher may want to know."""
        return frozenset(kind for card in self.cards for kind in card.template.cautions)


class _Past:
    """What a bank's folder keeps of its templates.  Raises InputError with every fault of it."""

    def __init__(self, folder: BankFolder) -> None:
        self._folder = folder
        self._uses = by_template(read_uses(folder.path))
        self._reviews = by_revision(read_reviews(folder))

    def revisions(self, template: Template) -> Mapping[int, Path]:
        return self._folder.revisions[template.id]

    def told(self, card: Card) -> Card:
        """A card with what was said of its revision, and when its template was set."""
        stands = standing(card.template, self._reviews, self._folder.own_approval)
        status = None if stands.status is Status.NOT_PROPOSED else stands.status
        uses = tuple(reversed(self._uses.get(card.id, ())))
        return replace(card, uses=uses, status=status)


def catalogue_of(bank: Bank, crew: Crew, report: Report) -> Catalogue:
    """Works every template of a bank, and reads what its folder keeps of their past.

    Raises InputError with the faults of all templates that cannot be read, worked or drawn.
    """
    templates, folder = bank.read_all(), folder_of(bank)
    past = _Past(folder) if folder else None
    wanted = [(each, past.revisions(each) if past else {}) for each in templates]
    tasks = [(wanted[start : start + _AT_ONCE],) for start in range(0, len(wanted), _AT_ONCE)]
    cards: list[Card] = []
    faults = Faults(bank.id)
    report(_STAGE, 0, len(wanted))
    for made, found in crew.each(_work, tasks, len(tasks)):
        cards += (past.told(card) if past else card for card in made)
        faults.found += found
        report(_STAGE, len(cards), len(wanted))
    faults.settle()
    cards.sort(key=lambda card: (card.template.family, card.template.level, card.id))
    released = bank.id if folder and bank.id in folder.releases else ""
    return Catalogue(bank.title, folder.keeper if folder else "", released, tuple(_chapters(cards)))


def _work(
    wanted: Sequence[tuple[Template, Mapping[int, Path]]],
) -> tuple[list[Card], list[Fault]]:
    """The cards of templates with their revisions' files, and what is wrong with the others."""
    cards: list[Card] = []
    faults = Faults("")
    for template, revisions in wanted:
        try:
            past = history(revisions, template.revision)
            cards.append(replace(card_of(template), history=past))
        except InputError as error:
            faults.take(error)
    return cards, faults.found


def _chapters(cards: list[Card]) -> Iterator[Chapter]:
    for family in dict.fromkeys(card.template.family for card in cards):
        yield Chapter(family, tuple(card for card in cards if card.template.family == family))
