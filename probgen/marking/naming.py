"""The slip named: which wrong working gives the number a student typed.

A number is compared with what each slip, and each two slips together, lead to with that student's
values, within half a unit of the last figure typed.  Precision comes before reach: the likeliest
are looked at first, and no more of them than a number typed at random would meet once in
1/`CHANCE` times; where figures are few, or numbers lie close, little can be named, and what cannot
be told from chance is not named.  The two or three slips that the paper's own key tells of are no
chance: they are named wherever a number has the figures asked for.  Where one of the likeliest
leads there, all that do are named: which of them it was, the number does not tell.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from probgen.marking.asked import Asked, earning
from probgen.marking.follow import Columns
from probgen.marking.stated import Reading
from probgen.mistakes.belief import possible
from probgen.mistakes.rules import missteps
from probgen.mistakes.variant import Misstep, cut
from probgen.mistakes.wrong_working import Missteps, wrong_workings
from probgen.quantities.expression import Value, evaluate
from probgen.quantities.unit import UnitSystem
from probgen.statics.line import in_full
from probgen.statics.plan import Plan, Probe
from probgen.statics.rerun import rerun
from probgen.working.case import Case

CHANCE: Final = 0.005
"""How often a number typed at random may be given a name; measured by `make bench`."""
MOST: Final = 6
"""Ways that are named together; what may come from more is not told by its number."""
_WINDOW: Final = 3.0
"""Numbers at random are thought of as within so many times the one typed, evenly by ratio."""


Keys = frozenset[tuple[str, str, str]]


@dataclass(frozen=True, slots=True)
class WrongWay:
    """A working with one slip, or with two: the last one's plan has both in it.

    keys: what tells its slips from others, whatever working they are made in.
    """

    slips: tuple[Misstep, ...]
    keys: Keys = field(init=False, compare=False, repr=False)  # asked for paper by paper

    def __post_init__(self) -> None:
        keys = frozenset((each.slip, each.way, repr(each.parts)) for each in self.slips)
        object.__setattr__(self, "keys", keys)

    @property
    def plan(self) -> Plan:
        return self.slips[-1].plan

    @property
    def figures(self) -> int:
        return max(each.figures for each in self.slips)

    @property
    def ids(self) -> tuple[str, ...]:
        return tuple(each.slip for each in self.slips)

    def made_by(self, case: Case) -> bool:
        """Whether anybody would make it with these values."""
        conditions = (each.only_if for each in self.slips)
        return all(e is None or evaluate(e, case.values) > 0.0 for e in conditions)


Ways = tuple[WrongWay, ...]
Table = Mapping[str, NDArray[np.float64]]
"""By answer what each way leads to, a row a way, an entry a paper; coherent units."""


def ways_of(made: Missteps, probe: Probe, units: UnitSystem, figures: int) -> Ways:
    """Each slip, the likeliest first, then every two of them, in the same order.

    probe, units, figures: as for `missteps`.  Where limits are compared, single slips alone.
    """
    if len(made) > 1:
        return ()
    (own,) = made
    single = [WrongWay((each,)) for each in own]
    return (*single, *_pairs(own, probe, units, figures))


def _pairs(
    own: Sequence[Misstep], probe: Probe, units: UnitSystem, figures: int
) -> Iterator[WrongWay]:
    """The second slip is looked for in the working that has the first."""
    rank = {each.slip: place for place, each in reversed(list(enumerate(own)))}
    later = {slip: {other for other in rank if rank[other] > rank[slip]} for slip in rank}
    found = [
        (rank[first.slip] + rank[second.slip], at, WrongWay((first, second)))
        for at, first in enumerate(own)
        for second in missteps(first.plan, probe, units, figures, later[first.slip])
    ]
    return (way for _, _, way in sorted(found, key=lambda each: each[:2]))


def table(ways: Ways, given: Columns, stated: Columns, count: int, ids: Sequence[str]) -> Table:
    """What the ways lead to on some papers, whose students state some earlier answers alike."""
    rows = {id: np.full((len(ways), count), np.nan) for id in ids}
    for place, way in enumerate(ways):
        carry = partial(cut, figures=way.figures) if way.figures else in_full
        reached = rerun(way.plan, given, stated, carry, ids)
        for id in reached.keys() & rows.keys():
            rows[id][place] = reached[id]
    return rows


def limit_table(cases: Sequence[Case], made: Missteps, ids: Sequence[str]) -> tuple[Ways, Table]:
    """The same where limits are compared: each slip on the way to all of them."""
    workings = wrong_workings(cases, made)
    nothing = np.full(len(cases), np.nan)
    rows = {id: np.array([each.values.get(id, nothing) for each in workings]) for id in ids}
    return tuple(WrongWay((each.misstep,)) for each in workings), rows


class Fit(NamedTuple):
    """Ways that lead to what was typed.

    places: of all of them; alone: of those it is put down to whatever the key tells of, none where
    that may be chance.  full: whether it has the figures asked for.
    """

    places: tuple[int, ...] = ()
    alone: tuple[int, ...] = ()
    full: bool = False

    @property
    def asks_key(self) -> bool:
        """Whether it matters which slips the paper's key tells of."""
        return self.full and bool(self.places) and not self.alone


class Sought(NamedTuple):
    """A wrong answer whose slip is sought, with the values its student has."""

    typed: Reading
    asked: Asked
    case: Case


def fitting(answers: Sequence[Sought], values: NDArray[np.float64], ways: Ways) -> Iterator[Fit]:
    """For each answer the ways that a student may have gone to what was typed.

    answers: one that is asked, of several papers; values: what the ways lead to, a row a way, an
    entry a paper.
    """
    with np.errstate(all="ignore"):
        met = _met(answers, values)
    for at, each in enumerate(answers):
        reached = np.flatnonzero(met[:, at]).tolist()
        places = tuple(place for place in reached if ways[place].made_by(each.case))
        yield _fit(each, values[:, at], ways, places)


def _met(answers: Sequence[Sought], values: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which ways lead to what was typed, with an answer that is wrong and could be right."""
    asked, system = answers[0].asked, answers[0].case.system
    typed, half = np.array([(each.typed.value, each.typed.half) for each in answers]).T
    right = np.array([each.case.values[asked.id] for each in answers])
    near = apart(asked, values, typed) <= half * (1.0 + 1e-9) + 1e-12 * np.abs(typed)
    earned = earning([each.asked for each in answers], values)
    met: NDArray[np.bool_] = near & ~earned & possible(system, asked.id, right, values)
    return met


def _fit(own: Sought, values: NDArray[np.float64], ways: Ways, places: tuple[int, ...]) -> Fit:
    if not places:
        return Fit()
    typed, asked = own.typed, own.asked
    full = asked.is_direction or typed.figures[1] >= asked.figures
    if _chance(typed, asked, values[: places[0] + 1]) > CHANCE:
        return Fit(places, (), full)
    found = tuple(_once(ways, places))
    return Fit(places, found if len(found) <= MOST else (), full)


def named(fit: Fit, ways: Ways, in_key: Collection[Keys] = ()) -> tuple[int, ...]:
    """The places of the ways that a number is put down to; none where that may be chance.

    in_key: slips that the paper's key tells of.
    """
    if fit.alone or not fit.full:
        return fit.alone
    told = tuple(place for place in fit.places if ways[place].keys in in_key)
    found = tuple(_once(ways, fit.places)) if told else ()
    return found if len(found) <= MOST else told


def _once(ways: Ways, places: Iterable[int]) -> Iterator[int]:
    """Of ways with the same slips the first; two together say nothing where one alone does."""
    seen: list[Keys] = []
    for place in places:
        keys = ways[place].keys
        if not any(other <= keys for other in seen):
            seen.append(keys)
            yield place


def _chance(typed: Reading, asked: Asked, values: NDArray[np.float64]) -> float:
    """How likely a random number is to meet one of some values; those that are alike count once."""
    half = max(typed.half, 1e-12 * abs(typed.value), 1e-300)
    if asked.is_direction:
        near, width = np.isfinite(values), np.full(len(values), 2.0 * half / 360.0)
    else:
        with np.errstate(all="ignore"):
            ratio = np.abs(values / typed.value) if typed.value else np.full(len(values), np.nan)
            near = (ratio < _WINDOW) & (ratio > 1.0 / _WINDOW)
            width = 2.0 * half / np.abs(values) / (2.0 * math.log(_WINDOW))
    cells = np.round(values[near] / (2.0 * half))
    return sum(dict(zip(cells[::-1].tolist(), width[near][::-1].tolist(), strict=True)).values())


def apart(asked: Asked, values: NDArray[np.float64], value: Value) -> NDArray[np.float64]:
    """How far values of an answer are from one, directions the short way round."""
    gaps = np.abs(values - value)
    return np.abs((gaps + 180.0) % 360.0 - 180.0) if asked.is_direction else gaps
