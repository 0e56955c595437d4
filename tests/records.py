"""Records as tests need them: one issue, one printing, codes as they are given."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from typing import Any, NamedTuple

from probgen.course.assignment import ProblemSet
from probgen.course.edition import Edition, Printing
from probgen.course.exam import letters_for
from probgen.course.issue import FrozenTemplate, Issue
from probgen.course.record import Record, large_letters
from probgen.course.roster import Student
from probgen.draws.draw import Draw
from probgen.sheets.house import USUAL, House

SECRET = "0123456789abcdef" * 2
SEED = "a seed that nobody guesses"


class Column(NamedTuple):
    """One problem of a class: its template, and the draw of each student or version."""

    template_id: str
    source: str
    draws: Sequence[Draw]


def record_of(
    problem_set: ProblemSet,
    students: Sequence[Student],
    codes: Sequence[str],
    columns: Sequence[Column],
    house: House = USUAL,
) -> Record:
    """A class that was printed once."""
    templates = tuple(
        FrozenTemplate(each.template_id, each.draws[0].revision, each.source) for each in columns
    )
    exam, own = problem_set.exam, tuple(students)
    rows = list(zip(*(column.draws for column in columns), strict=True))
    letters: tuple[str, ...] = ()
    if exam:
        letters = letters_for(exam, own, {})
        rows = rows[: exam.versions]
        large = large_letters(own, letters)
        cases = list(zip(exam.letters, codes, rows, strict=False))
        editions = [Edition(code, letter, draws) for letter, code, draws in cases]
        editions += [
            Edition(code, letter, draws, large=True)
            for letter, code, draws in cases
            if letter in large
        ]
    else:
        editions = [
            Edition(code, each.id, draws, each.name, each.section, each.large)
            for each, code, draws in zip(own, codes, rows, strict=True)
        ]
    issue = Issue(problem_set, templates, house)
    return Record(SEED, SECRET, (issue,), (Printing(0, tuple(editions)),), own, letters)


def first_format(
    problem_set: ProblemSet,
    students: Sequence[Student],
    codes: Sequence[str],
    column: Column,
) -> dict[str, Any]:
    """A record of one problem as version 0.1 wrote it, as data."""
    chosen = {k: v for k, v in asdict(problem_set).items() if k != "exam" or v}
    chosen["convention"]["units"] = problem_set.convention.units.name
    rows = [{k: getattr(each, k) for k in ("name", "id", "section", "seat", "large")}
            for each in students]  # fmt: skip
    whose: dict[str, Any] = {"students": rows}
    if problem_set.exam:
        whose["versions"] = dict(zip(problem_set.exam.letters, codes, strict=True))
    else:
        whose["students"] = [{**r, "code": c} for r, c in zip(rows, codes, strict=True)]
    first = column.draws[0]
    values = {
        name: {
            "unit": number.unit.name if number.unit else "1",
            "drawn": [str(draw.values[name].value) for draw in column.draws],
        }
        for name, number in first.values.items()
    }
    problem = {"template": column.template_id, "revision": first.revision, "values": values,
               "source": column.source}  # fmt: skip
    return {"format": 1, "probgen": "0.1.0", "seed": "spring", "set": chosen, **whose,
            "problems": [problem]}  # fmt: skip
