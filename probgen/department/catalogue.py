"""A bank's catalogue: a card for each template, in chapters by family."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from probgen.bank.bank import Bank
from probgen.build.progress import Report
from probgen.department.card import UNUSED, Card, Use, card_of
from probgen.department.history import folder_of, history
from probgen.input.fault import Faults, InputError

_NO_USES: Mapping[str, Use] = MappingProxyType({})


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


def catalogue_of(bank: Bank, report: Report, uses: Mapping[str, Use] = _NO_USES) -> Catalogue:
    """Works every template of a bank; uses: what is known of them, by their ids.

    Raises InputError with the faults of all templates that cannot be read, worked or drawn.
    """
    templates = sorted(bank.read_all(), key=lambda each: (each.family, each.level, each.id))
    folder, faults = folder_of(bank), Faults(bank.id)
    cards: list[Card] = []
    for done, template in enumerate(templates):
        report("problems", done, len(templates))
        try:
            revisions = folder.revisions[template.id] if folder else {}
            past = history(revisions, template.revision)
            cards.append(card_of(template, past, uses.get(template.id, UNUSED)))
        except InputError as error:
            faults.take(error)
    faults.settle()
    released = bank.id if folder and bank.id in folder.releases else ""
    return Catalogue(bank.title, folder.keeper if folder else "", released, tuple(_chapters(cards)))


def _chapters(cards: list[Card]) -> Iterator[Chapter]:
    for family in dict.fromkeys(card.template.family for card in cards):
        yield Chapter(family, tuple(card for card in cards if card.template.family == family))
