"""What stands on one paper, as a text that two papers share only where they say the same.

Whose it is goes by its id, so that a name spelled better keeps its code; so do looks: the paper's
size, the room for the working, the house's style.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import asdict
from hashlib import blake2b
from typing import Any, Protocol

from probgen.course.assignment import ProblemSet
from probgen.draws.draw import Draw


class Assigned(Protocol):
    """One problem of a class: its template's whole text, and a draw for each owner."""

    @property
    def source(self) -> str: ...
    @property
    def draws(self) -> tuple[Draw, ...]: ...


def papers(
    problem_set: ProblemSet, owners: Iterable[str], assigned: Iterable[Assigned]
) -> dict[str, str]:
    """The paper of each owner, in their order, which is that of the draws."""
    rows = [(_digest(each.source), each.draws) for each in assigned]
    said = _said(problem_set)
    return {
        owner: json.dumps(
            {**said, "problems": [[text, _values(draws[place])] for text, draws in rows]},
            sort_keys=True,
        )
        for place, owner in enumerate(owners)
    }


def _said(problem_set: ProblemSet) -> dict[str, Any]:
    """What all papers of a set say, and the method of their keys."""
    exam = problem_set.exam
    method = asdict(problem_set.convention)
    return {
        "course": problem_set.course,
        "title": problem_set.title,
        "due": problem_set.due,
        "points": [each.points for each in problem_set.problems],
        "pivots": [each.pivot for each in problem_set.problems],
        "formulas": problem_set.formulas,
        "caution": problem_set.caution,
        "notes": list(exam.notes) if exam else [],
        "method": {**method, "units": problem_set.convention.units.name},
    }


def _values(draw: Draw) -> dict[str, str]:
    return {
        id: f"{number.value} {number.unit.name if number.unit else '1'}"
        for id, number in draw.values.items()
    }


def _digest(text: str) -> str:
    return blake2b(text.encode(), digest_size=16).hexdigest()
