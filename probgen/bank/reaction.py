"""The equal and opposite of what acts between two bodies."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from probgen.bank.direction import turned
from probgen.bank.labels import Called, Label
from probgen.quantities.expression import negative
from probgen.statics.quantity_id import back_id
from probgen.statics.system import Couple, Element, Force


@dataclass(frozen=True, slots=True)
class Reaction:
    """How an element acts back: on which body, at which point, and what it is called there.

    toward: the point a cable runs to, seen from the other body, "" if none.
    """

    body: str
    at: str
    name: Called
    toward: str = ""

    def force(self, action: Force) -> Force:
        """The same magnitude the opposite way."""
        return replace(
            action,
            id=back_id(action.id),
            body=self.body,
            point=self.at,
            direction=turned(action.direction, 180),
            element=back_id(action.element),
            pair=action.id,
        )

    def label(self, action: Label) -> Label:
        """What acts back, by the letter of the action."""
        return Label(action.symbol, self.name)

    def couple(self, action: Couple) -> Couple:
        """The same moment the opposite way."""
        return replace(
            action,
            id=back_id(action.id),
            body=self.body,
            point=self.at,
            moment=negative(action.moment),
            element=back_id(action.element),
            pair=action.id,
        )

    def element(self, action: Element, forces: Sequence[Force]) -> Element:
        """The entry as the other body has it, with the forces that act back."""
        return replace(
            action,
            id=back_id(action.id),
            of=action.id,
            body=self.body,
            at=self.at,
            forces=tuple(force.id for force in forces),
            toward=self.toward,
            surface=None if action.surface is None else turned(action.surface, 180),
        )
