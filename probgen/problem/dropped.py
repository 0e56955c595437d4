"""Which requirement drops how many draws, and why: said to the author who stated it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Requirement, Template
from probgen.draws.requirement import each_requirement
from probgen.problem.flaw_words import flaws_told
from probgen.quantities.expression import Values
from probgen.quantities.printing import plain
from probgen.statics.flaw import Flaw
from probgen.statics.proof import Proof

_RELATIONS: Final = {"<": "<", ">": ">", "<=": "≤", ">=": "≥"}
_MOST_SAID: Final = 4


@dataclass(frozen=True, slots=True)
class Dropped:
    """What drops draws, in words, and the share of all draws that it drops (0 to 1)."""

    by: str
    share: float

    def __str__(self) -> str:
        return f"{percent(self.share)} by {self.by}"


def percent(share: float) -> str:
    """A share in per cent, with a decimal place where it is small: "12 %", "0.4 %"."""
    figures = 0 if share >= 0.0995 else 1
    return f"{100.0 * share:.{figures}f} %" if share >= 0.0005 else "under 0.1 %"


def requirement_told(requirement: Requirement) -> str:
    """A requirement as its author states it, with the reason."""
    sides = plain(requirement.left), plain(requirement.right)
    relation = _RELATIONS[requirement.relation]
    return f"{sides[0]} {relation} {sides[1]} ({requirement.because})"


def why_refused(template: Template, solved: Values, proof: Proof) -> tuple[Dropped, ...]:
    """What turns draws away, the most frequent first: requirements, and flaws of their solutions.

    A draw counts for every requirement it misses, and for its first flaw where it misses none; a
    flaw is told with the value of the first draw that has it.
    """
    draws = len(proof.max_residual)
    missed = misses(template, solved)
    found = Counter({told: int(wrong.sum()) for told, wrong in missed.items()})
    fit = ~np.any([np.zeros(draws, dtype=np.bool_), *missed.values()], axis=0)
    said: dict[Flaw, str] = {}
    for place in np.flatnonzero(fit):
        for flaw in proof.faults[place][:1]:
            kind = replace(flaw, value=0.0)
            found[said.setdefault(kind, flaws_told(template, [flaw]))] += 1
    most = [(by, count) for by, count in found.most_common(_MOST_SAID) if count]
    return tuple(Dropped(by, count / draws) for by, count in most)


def misses(template: Template, solved: Values) -> Mapping[str, NDArray[np.bool_]]:
    """For every requirement, as it is told, which draws do not meet it."""
    found: dict[str, NDArray[np.bool_]] = {}
    for requirement, held in each_requirement(template, solved):
        told = requirement_told(requirement)
        found[told] = found.get(told, np.zeros(held.shape, dtype=np.bool_)) | ~held
    return found
