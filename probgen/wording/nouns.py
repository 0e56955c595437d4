"""What an author calls the things of a problem: the words that pass through any language."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.bank.labels import Labels
from probgen.statics.system import Find, System


@dataclass(frozen=True, slots=True)
class Nouns:
    """The author's words, by the ids that facts hold."""

    system: System
    labels: Labels

    def body(self, id: str) -> str:
        """ "shelf", without an article."""
        return self.labels.bodies[id]

    def element(self, id: str) -> str:
        """ "the cable"."""
        return self.labels.elements[id].name

    def couple(self, id: str) -> str:
        """What exerts a couple: "the motor"."""
        couple = next(couple for couple in self.system.couples if couple.id == id)
        return self.labels.source(couple)

    def quantity(self, id: str) -> str:
        """ "shelf mass"."""
        return self.labels.quantities[id].name

    def limit(self, id: str) -> str:
        """What happens beyond a limit: "the foot slips"."""
        return self.labels.limits[id]

    def reason(self, id: str) -> str:
        """Why a condition holds; "" where its author does not say."""
        return self.labels.reasons.get(id, "")

    def asked(self, find: Find) -> str:
        """How the author asks for something; "" where that is left to us."""
        return self.labels.finds.get(find, "")


NO_NOUNS: Final = Nouns(System({}, (), {}, (), (), (), (), (), ()), Labels())
"""For what is said of whole papers."""
