"""The record of a build: everything needed to make the same bytes again, and no clock.

One JSON file: the seed, the set with its method, the class with its codes (an exam's versions with
theirs), the house style and layouts, the templates as they were (their whole text), and the values
every student or version drew, as their printed digits.
"""

from __future__ import annotations

import json
from base64 import b64decode, b64encode
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

from probgen import __version__
from probgen.course.exam import Exam
from probgen.course.print_run import PrintRun
from probgen.course.roster import Student
from probgen.course.setfile import Assigned, ProblemSet, unit_system_named
from probgen.course.version import Version, versions_of_class, versions_of_exam
from probgen.draws.draw import Draw
from probgen.input.fault import Fault, InputError
from probgen.input.json import read_json
from probgen.quantities.expression import Number
from probgen.quantities.unit import unit_named
from probgen.sheets.house import USUAL, House
from probgen.sheets.style import PLAIN, HouseStyle
from probgen.working.convention import Convention

RECORD: Final = "record.json"
"""The name of the record in a build's folder."""
_FORMAT: Final = 1


@dataclass(frozen=True, slots=True)
class Assignment:
    """One problem of the class: the template's text, and the draw of each student or version."""

    template_id: str
    source: str
    draws: tuple[Draw, ...]


@dataclass(frozen=True, slots=True)
class Record:
    """A class ready to be worked and printed.

    codes: the version code of each student, or of each version of an exam.
    assignments: one for each problem of the set, with a draw for each code.
    version: of probgen, when the draws were made.
    """

    seed: str
    set: ProblemSet
    students: tuple[Student, ...]
    codes: tuple[str, ...]
    assignments: tuple[Assignment, ...]
    house: House = USUAL
    version: str = __version__

    @property
    def versions(self) -> tuple[Version, ...]:
        """What is printed once each, in the order of the files."""
        if self.set.exam:
            return versions_of_exam(self.set.exam, self.students, self.codes)
        return versions_of_class(self.students, self.codes)


def write_record(record: Record) -> str:
    """The record as JSON text; the same record gives the same text."""
    content = {
        "format": _FORMAT,
        "probgen": record.version,
        "seed": record.seed,
        "set": _set_as_data(record.set),
        **_house_as_data(record.house),
        **_class_as_data(record),
        "problems": [_assignment_as_data(assignment) for assignment in record.assignments],
    }
    return json.dumps(content, ensure_ascii=False, indent=1) + "\n"


def read_record(path: Path) -> Record:
    """The record at a path.  Raises InputError when it is none, or not whole."""
    mend = "take the record.json of a build, unchanged"
    content = read_json(path, "record", mend)
    try:
        return _from_data(content)
    except (ValueError, LookupError, TypeError, AttributeError, ArithmeticError) as error:
        found = f"{type(error).__name__}: {error}"
        raise InputError([Fault(str(path), "", found, "a record of probgen", mend)]) from None


def _class_as_data(record: Record) -> dict[str, Any]:
    """The students with their codes, or with the versions that an exam has for them."""
    students = [asdict(student) for student in record.students]
    if record.set.exam:
        codes = dict(zip(record.set.exam.letters, record.codes, strict=True))
        return {"versions": codes, "students": students}
    rows = zip(students, record.codes, strict=True)
    return {"students": [{**student, "code": code} for student, code in rows]}


def _house_as_data(house: House) -> dict[str, Any]:
    """What the pages need besides the package; nothing for the usual pages."""
    data: dict[str, Any] = {}
    if house.style != PLAIN:
        logo = b64encode(house.style.logo).decode()
        data["style"] = {**asdict(house.style), "logo": logo}
    if house.layouts:
        data["layouts"] = dict(house.layouts)
    return data


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
    problem_set = _set_from_data(content["set"])
    students = [dict(student) for student in content["students"]]
    own = [student.pop("code", "") for student in students]
    codes = tuple(content["versions"].values()) if problem_set.exam else tuple(own)
    return Record(
        seed=content["seed"],
        set=problem_set,
        students=tuple(_student_from_data(student) for student in students),
        codes=codes,
        assignments=tuple(_assignment_from_data(each, len(codes)) for each in content["problems"]),
        house=_house_from_data(content),
        version=content["probgen"],
    )


def _student_from_data(data: Mapping[str, Any]) -> Student:
    """A student; the e-mail address that records of version 0.1 held is left where it is."""
    return Student(**{name: value for name, value in data.items() if name != "email"})


def _house_from_data(content: Mapping[str, Any]) -> House:
    style = PLAIN
    if "style" in content:
        logo = b64decode(content["style"]["logo"], validate=True)
        style = HouseStyle(**{**content["style"], "logo": logo})
    return House(style, tuple(content.get("layouts", {}).items()), f"{RECORD}: layouts")


def _set_from_data(data: Mapping[str, Any]) -> ProblemSet:
    method = dict(data["convention"])
    method["units"] = unit_system_named(method["units"])
    whole = {
        **data,
        "convention": Convention(**method),
        "problems": tuple(Assigned(**problem) for problem in data["problems"]),
    }
    if "run" in data:
        whole["run"] = PrintRun(**data["run"])
    if exam := data.get("exam"):
        whole["exam"] = Exam(**{**exam, "notes": tuple(exam["notes"])})
    return ProblemSet(**whole)


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
