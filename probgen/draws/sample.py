"""Many draws of a template in one go, for its check: arrays in place of single draws.

Every set of values is as likely as with single draws; the numbers follow from a digest (SHAKE-256,
FIPS 202), so that a check draws the same everywhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from hashlib import shake_256

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Derived, Given, Template
from probgen.draws.draw import Draw, completed
from probgen.quantities.expression import names_in

_Places = NDArray[np.int64]
_Values = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Sample:
    """Draws of a template.

    places: which of its choices each given has, shape (givens, draws).
    values: coherent values of givens and derived quantities, one entry a draw.
    """

    template: Template
    places: _Places
    values: Mapping[str, _Values]

    def __len__(self) -> int:
        return int(self.places.shape[1])

    def draw(self, place: int) -> Draw:
        """One of the draws, with its printed digits."""
        return _draw(self.template, self.places[:, place])


def sample(template: Template, draws: int) -> Sample:
    """So many draws, the same every time; without those whose derived quantities have no value."""
    chosen = np.stack([_chosen(template, given, draws) for given in template.givens])
    values = {
        given.id: _coherent(given)[places]
        for given, places in zip(template.givens, chosen, strict=True)
    }
    values |= dict(_derived(template, chosen))
    whole = np.all([np.isfinite(value) for value in values.values()], axis=0)
    return Sample(template, chosen[:, whole], {id: value[whole] for id, value in values.items()})


def _chosen(template: Template, given: Given, draws: int) -> _Places:
    """A choice for each draw; 64 bits leave no choice noticeably likelier than another."""
    key = f"{template.id} {template.units.name} {given.id}".encode()
    numbers = np.frombuffer(shake_256(key).digest(8 * draws), dtype="<u8")
    return (numbers % len(given.choices)).astype(np.int64)


def _coherent(given: Given) -> _Values:
    return np.array([float(Fraction(choice) * given.unit.size) for choice in given.choices])


def _derived(template: Template, chosen: _Places) -> Iterator[tuple[str, _Values]]:
    """Every derived quantity, worked out once for each set of the givens it depends on."""
    rows = {given.id: {row} for row, given in enumerate(template.givens)}
    for each in template.derived:
        rows[each.id] = set().union(*(rows[name] for name in names_in(each.expression)))
        own = chosen[sorted(rows[each.id])]
        _, first, back = np.unique(own, axis=1, return_index=True, return_inverse=True)
        sets = np.array([_value(template, each, chosen[:, place]) for place in first])
        yield each.id, sets[np.reshape(back, -1)]


def _value(template: Template, derived: Derived, places: _Places) -> float:
    """Its coherent value with these choices; nan where it has none."""
    try:
        return _draw(template, places).coherent()[derived.id]
    except ArithmeticError:
        return float("nan")


def _draw(template: Template, places: _Places) -> Draw:
    pairs = zip(template.givens, places, strict=True)
    return completed(template, {given.id: given.choices[place] for given, place in pairs})
