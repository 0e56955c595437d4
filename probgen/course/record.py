"""The record of a build: everything needed to make the same bytes again, and no clock.

One JSON file: the seed, the set with its method, the class with its codes, the templates as they
were (their whole text), and the values every student drew, as their printed digits.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

from probgen import __version__
from probgen.bank.fault import Fault, InputError
from probgen.course.reading import read_text
from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet, unit_system_named
from probgen.draws.draw import Draw
from probgen.quantities.expression import Number
from probgen.quantities.unit import unit_named
from probgen.wording.convention import Convention

_FORMAT: Final = 1


@dataclass(frozen=True, slots=True)
class Assignment:
    """One problem of the class: the template's text, and each student's draw in roster order."""

    template_id: str
    source: str
    draws: tuple[Draw, ...]


@dataclass(frozen=True, slots=True)
class Record:
    """A class ready to be worked and printed.

    codes: the version code of each student; assignments: one for each problem of the set.
    version: of probgen, when the draws were made.
    """

    seed: str
    set: ProblemSet
    students: tuple[Student, ...]
    codes: tuple[str, ...]
    assignments: tuple[Assignment, ...]
    version: str = __version__


def write_record(record: Record) -> str:
    """The record as JSON text; the same record gives the same text."""
    content = {
        "format": _FORMAT,
        "probgen": record.version,
        "seed": record.seed,
        "set": _set_as_data(record.set),
        "students": [
            {**asdict(student), "code": code}
            for student, code in zip(record.students, record.codes, strict=True)
        ],
        "problems": [_assignment_as_data(assignment) for assignment in record.assignments],
    }
    return json.dumps(content, ensure_ascii=False, indent=1) + "\n"


def read_record(path: Path) -> Record:
    """The record at a path.  Raises InputError when it is none, or not whole."""
    text = read_text(path, "record")
    try:
        return _from_data(json.loads(text))
    except (ValueError, LookupError, TypeError, AttributeError, ArithmeticError) as error:
        found = f"{type(error).__name__}: {error}"
        mend = "take the record.json of a build, unchanged"
        raise InputError([Fault(str(path), "", found, "a record of probgen", mend)]) from None


def _set_as_data(problem_set: ProblemSet) -> dict[str, Any]:
    data = asdict(problem_set)
    data["convention"]["units"] = problem_set.convention.units.name
    return data


def _assignment_as_data(assignment: Assignment) -> dict[str, Any]:
    """Values by name, one entry a student: a class of thousands stays readable."""
    first = assignment.draws[0]
    return {
        "template": assignment.template_id,
        "revision": first.revision,
        "values": {
            name: {
                "unit": number.unit.name if number.unit else "1",
                "drawn": [str(draw.values[name].value) for draw in assignment.draws],
            }
            for name, number in first.values.items()
        },
        "source": assignment.source,
    }


def _from_data(content: Mapping[str, Any]) -> Record:
    if content["format"] != _FORMAT:
        raise ValueError(f"format {content['format']}, where this probgen reads {_FORMAT}")
    students = content["students"]
    return Record(
        seed=content["seed"],
        set=_set_from_data(content["set"]),
        students=tuple(Student(s["name"], s["id"], s["section"], s["email"]) for s in students),
        codes=tuple(student["code"] for student in students),
        assignments=tuple(
            _assignment_from_data(problem, len(students)) for problem in content["problems"]
        ),
        version=content["probgen"],
    )


def _set_from_data(data: Mapping[str, Any]) -> ProblemSet:
    method = dict(data["convention"])
    method["units"] = unit_system_named(method["units"])
    problems = tuple(Assigned(**problem) for problem in data["problems"])
    return ProblemSet(**{**data, "convention": Convention(**method), "problems": problems})


def _assignment_from_data(data: Mapping[str, Any], size: int) -> Assignment:
    columns = {
        name: [Number(Decimal(digits), unit_named(column["unit"])) for digits in column["drawn"]]
        for name, column in data["values"].items()
    }
    draws = tuple(
        Draw(data["template"], data["revision"], {name: c[place] for name, c in columns.items()})
        for place in range(size)
    )
    return Assignment(data["template"], data["source"], draws)
