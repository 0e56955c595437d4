"""What an author calls the things of a problem: the words that pass through any language."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.statics.system import Find, System


@dataclass(frozen=True, slots=True)
class Nouns:
    """The author's words, by the ids that facts hold."""

    system: System

    def body(self, id: str) -> str:
        """ "shelf", without an article."""
        return self.system.body(id).name

    def element(self, id: str) -> str:
        """ "the cable"."""
        return self.system.element(id).name

    def couple(self, id: str) -> str:
        """What exerts a couple: "the motor"."""
        return next(couple.source for couple in self.system.couples if couple.id == id)

    def quantity(self, id: str) -> str:
        """ "shelf mass"."""
        return self.system.variables[id].name

    def limit(self, id: str) -> str:
        """What happens beyond a limit: "the foot slips"."""
        return next(limit.name for limit in self.system.limits if limit.id == id)

    def reason(self, id: str) -> str:
        """Why a condition holds; "" where its author does not say."""
        return next(each.reason for each in self.system.conditions if each.id == id)

    def asked(self, find: Find) -> str:
        """How the author asks for something; "" where that is left to us."""
        return find.wording


NO_NOUNS: Final = Nouns(System({}, (), {}, (), (), (), (), (), ()))
"""For what is said of whole papers."""
