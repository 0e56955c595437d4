"""What the things of a system are called: letters, nouns and reasons, by id.

The system itself knows none of this, so that the same physics may be told in other words.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from probgen.quantities.expression import Name
from probgen.statics.system import Couple, Find, Force


@dataclass(frozen=True, slots=True)
class Label:
    """What a quantity, or an element, is called.

    symbol: its printed letter in the author's short notation, "m_1", "theta", "R_x"; "R" for the
    whole of a hinge.
    name: in words: "shelf mass" for a quantity; "the cable" for what exerts a force.
    measured: how an angle or a distance is measured, in words ("from the shelf"), or "".
    """

    symbol: str
    name: str
    measured: str = ""


@dataclass(frozen=True, slots=True)
class Labels:
    """The words that go with a system.

    quantities, elements: by id of a variable, of an element.
    bodies: the noun a body goes by, "shelf"; limits: what happens beyond one, "the foot slips".
    reasons: why a condition holds; finds: the author's own words for what is asked, where any.
    """

    quantities: Mapping[str, Label] = field(default_factory=dict)
    elements: Mapping[str, Label] = field(default_factory=dict)
    bodies: Mapping[str, str] = field(default_factory=dict)
    limits: Mapping[str, str] = field(default_factory=dict)
    reasons: Mapping[str, str] = field(default_factory=dict)
    finds: Mapping[Find, str] = field(default_factory=dict)

    def __hash__(self) -> int:
        return hash(frozenset(self.quantities))

    def letter(self, quantity: str) -> Name:
        """A quantity's letter, for formulas."""
        return Name(quantity, self.quantities[quantity].symbol)

    def whole(self, element: str) -> Name:
        """The letter of an element as a whole: R where R_x and R_y are its components."""
        return Name(element, self.elements[element].symbol)

    def source(self, acting: Force | Couple) -> str:
        """What exerts a force or a couple, with its article: "the cable"."""
        return self.elements[acting.element].name
