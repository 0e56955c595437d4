"""What an author calls the things of a problem: the words that pass through any language.

Where an author said nothing there is what a language has words for (`probgen.bank.labels`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from probgen.bank.labels import Called, Coined, Labels, Lettered, Piece, Reason, Slipping, Sort
from probgen.statics.system import Body, Find, System
from probgen.working.convention import Turning


@dataclass(frozen=True, slots=True)
class Nouns:
    """The author's words, by the ids that facts hold; turning: the course's word."""

    system: System
    labels: Labels
    turning: Turning = "torque"

    def body(self, id: str) -> Called:
        """ "shelf", "your forearm"; pieces of a truss go by their letters."""
        pieces = {body.id: body for body in self.system.bodies if id not in self.labels.bodies}
        return _piece(pieces[id]) if pieces else self.labels.bodies[id]

    def element(self, id: str) -> Called:
        """ "cable"."""
        return self.labels.elements[id].name

    def couple(self, id: str) -> Called:
        """What exerts a couple: "motor"."""
        couple = next(couple for couple in self.system.couples if couple.id == id)
        return self.labels.source(couple)

    def quantity(self, id: str) -> Called:
        """ "shelf mass"; what no author names is the horizontal part of a cable's tension."""
        label = self.labels.quantities.get(id)
        return label.name if label else Coined(Sort.LEVEL_PART)

    def given(self, id: str) -> str:
        """What is drawn, and is therefore named by the author."""
        name = self.quantity(id)
        assert isinstance(name, str), id
        return name

    def limit(self, id: str) -> str | Slipping:
        """What happens beyond a limit: "the foot slips"."""
        return self.labels.limits[id]

    def reason(self, id: str) -> str | Reason:
        """Why a condition holds; "" of one that is no author's."""
        return self.labels.reasons.get(id, "")

    def asked(self, find: Find) -> str:
        """How the author asks for something; "" where that is left to us."""
        return self.labels.finds.get(find, "")


def _piece(body: Body) -> Lettered:
    """A body no author names is a joint of a truss, or what a section leaves."""
    if body.particle:
        return Lettered(Piece.JOINT, body.outline)
    return Lettered(Piece.PART, body.joints or body.outline)


NO_NOUNS: Final = Nouns(System({}, (), {}, (), (), (), (), (), ()), Labels())
"""For what is said of whole papers."""
