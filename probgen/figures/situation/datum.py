"""What a quantity is labelled with: symbol and number where it is given, else its symbol alone."""

from __future__ import annotations

from collections.abc import Mapping

from probgen.figures.paper.scene import Stated
from probgen.quantities.expression import Name, Number

Datum = Name | Number | Stated


def datum_of(quantity: Name | Number, givens: Mapping[str, Number]) -> Datum:
    """A given by its symbol and its number, so that a key's symbols are found in the figure."""
    if isinstance(quantity, Name) and quantity.id in givens:
        return Stated(quantity, givens[quantity.id])
    return quantity
