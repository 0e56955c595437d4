"""Many draws of a template in one go, for its check or a class: arrays in place of single draws.

Every set of values is as likely as with single draws; the numbers follow from a digest (SHAKE-256,
FIPS 202), so that a check draws the same everywhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from hashlib import shake_256

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Derived, Given, Template
from probgen.draws.draw import Draw, completed
from probgen.draws.keyed_choice import keyed_numbers
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


def sample(template: Template, draws: int, part: int = 0) -> Sample:
    """So many draws, the same every time; without those whose derived quantities have no value.

    part: others for each number of it, so that very many can be had one part after the other.
    """
    chosen = np.stack([_chosen(template, given, draws, part) for given in template.givens])
    made = _valued(template, chosen)
    whole = np.all([np.isfinite(value) for value in made.values.values()], axis=0)
    values = {id: value[whole] for id, value in made.values.items()}
    return Sample(template, chosen[:, whole], values)


def candidates(
    template: Template, seed: str, students: Sequence[str], each: int, turn: int = 0
) -> Sample:
    """So many draws for each student to choose from, in the order of the students.

    A student's follow from seed, id, template and turn; what a derived quantity has no value for is
    not finite.
    """
    rows = len(template.givens)
    chosen = np.empty((rows, len(students), each), dtype=np.int64)
    choices = np.array([len(given.choices) for given in template.givens], dtype=np.uint64)
    for place, student in enumerate(students):
        key = (seed, student, template.id, template.revision, "candidates", turn)
        numbers = keyed_numbers(rows * each, *key).reshape(rows, each)
        chosen[:, place] = numbers % choices[:, None]
    return _valued(template, chosen.reshape(rows, -1))


def _valued(template: Template, chosen: _Places) -> Sample:
    values = {
        given.id: _coherent(given)[places]
        for given, places in zip(template.givens, chosen, strict=True)
    }
    return Sample(template, chosen, values | dict(_derived(template, chosen)))


def _chosen(template: Template, given: Given, draws: int, part: int) -> _Places:
    """A choice for each draw; 64 bits leave no choice noticeably likelier than another."""
    key = f"{template.id} {template.units.name} {given.id}{f' {part}' if part else ''}"
    numbers = np.frombuffer(shake_256(key.encode()).digest(8 * draws), dtype="<u8")
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
