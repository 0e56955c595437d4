"""The record of a build: everything needed to make the same bytes again, and no clock.

One JSON file: the seed, the set with its method, the class with its codes (an exam's versions with
theirs), the house style and layouts, the templates as they were (their whole text), and the values
every student or version drew, as their printed digits.
"""

from __future__ import annotations

import json
from base64 import b64encode
from collections.abc import Collection, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

from probgen import __version__
from probgen.bank.template import Template
from probgen.course.assignment import ProblemSet
from probgen.course.method import gravity_bounds
from probgen.course.record_schema import RECORD_SCHEMA, ProblemRow, RecordFile, is_code
from probgen.course.roster import Student
from probgen.course.version import Version, versions_of_class, versions_of_exam
from probgen.draws.draw import Draw, completed
from probgen.input.fault import Fault, Faults, InputError, shown
from probgen.input.json import read_json
from probgen.input.remedy import TrustLayouts
from probgen.quantities.expression import Number
from probgen.quantities.unit import SI
from probgen.sheets.house import USUAL, House
from probgen.sheets.style import PLAIN, is_picture

RECORD: Final = "record.json"
"""The name of the record in a build's folder."""
_FORMAT: Final = 1
_MEND: Final = "take the record.json of a build, unchanged"


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
    """The record at a path.  Raises InputError when it is none, or not whole, all faults at once.

    What is in it is data; its templates' texts and its layouts are still to be read.
    """
    content = read_json(path, "record", _MEND)
    _require_format(content, str(path))
    file = RECORD_SCHEMA.read(content, RecordFile, str(path), _MEND)
    faults = Faults(str(path))
    record = _record(file)
    _judge_gravity(record, faults)
    _judge_class(record, file, faults)
    _judge_columns(record, file, faults)
    style = record.house.style
    if not is_picture(style.logo, style.logo_kind):
        faults.add("style.logo", style.logo_kind, "the content of such a picture", _MEND)
    faults.settle()
    return _with_draws(record, file)


def _require_format(content: object, where: str) -> None:
    """What another release has written gets one message, and not one for each field."""
    found = content.get("format", _FORMAT) if isinstance(content, dict) else _FORMAT
    if type(found) is not int or found != _FORMAT:
        expected = f"format {_FORMAT}, which this probgen reads"
        mend = "build it with the release of probgen that wrote it"
        raise InputError([Fault(where, "format", f"format {shown(found)}", expected, mend)])


def require_no_layouts(record: Record, where: str) -> None:
    """Raises InputError for a record that carries page layouts, which nobody has vouched for."""
    if record.house.layouts:
        found = ", ".join(name for name, _ in record.house.layouts)
        mend = "layouts decide what TeX does on this machine: read them, or ask whom they are from"
        expected = "a record without page layouts of its own"
        raise InputError([Fault(where, "layouts", found, expected, mend, TrustLayouts())])


def require_drawn_from(template: Template, assignment: Assignment, where: str) -> None:
    """Raises InputError where the draws kept are none that this template gives.

    where: names the template's text in messages.
    """
    faults = Faults(where)
    first = assignment.draws[0]
    if (template.id, template.revision) != (first.template_id, first.revision):
        found = f"{template.id}, revision {template.revision}"
        expected = f"{first.template_id}, revision {first.revision}"
        faults.add("source", found, expected, _MEND)
    units = {given.id: given.unit for given in template.givens}
    units |= {each.id: each.unit for each in template.derived}
    if {name: number.unit for name, number in first.values.items()} != units:
        found = ", ".join(first.values)
        faults.add("values", found, f"{', '.join(units)}, each in its unit", _MEND)
    faults.settle()
    choices = {given.id: frozenset(map(str, given.choices)) for given in template.givens}
    for place, draw in enumerate(assignment.draws):
        _judge_draw(template, draw, choices, place, faults)
    faults.settle()


def _judge_draw(
    template: Template,
    draw: Draw,
    choices: Mapping[str, Collection[str]],
    place: int,
    faults: Faults,
) -> None:
    drawn = {name: str(number.value) for name, number in draw.values.items()}
    strange = [name for name, listed in choices.items() if drawn[name] not in listed]
    if not strange:
        strange = _underivable(template, draw)
    for name in strange:
        faults.add(f"values.{name}.drawn[{place}]", drawn[name], "a value that can be drawn", _MEND)


def _underivable(template: Template, draw: Draw) -> list[str]:
    """The derived quantities that do not follow from the givens drawn."""
    given = {each.id: draw.values[each.id].value for each in template.givens}
    derived = [each.id for each in template.derived]
    try:
        values = completed(template, given).values
    except ArithmeticError:
        return derived
    return [id for id in derived if str(values[id].value) != str(draw.values[id].value)]


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


def _record(file: RecordFile) -> Record:
    """The record without its draws."""
    codes = file.versions.values() if file.set.exam else (row.code for row in file.students)
    return Record(
        seed=file.seed,
        set=file.set,
        students=tuple(row.student for row in file.students),
        codes=tuple(codes),
        assignments=(),
        house=House(file.style or PLAIN, tuple(file.layouts.items()), f"{RECORD}: layouts"),
        version=file.probgen,
    )


def _with_draws(record: Record, file: RecordFile) -> Record:
    return replace(record, assignments=tuple(_assignment(p, record.codes) for p in file.problems))


def _assignment(row: ProblemRow, codes: Sequence[str]) -> Assignment:
    columns = {
        name: [Number(digits, column.unit) for digits in column.drawn]
        for name, column in row.values.items()
    }
    draws = (
        Draw(row.template, row.revision, {name: column[i] for name, column in columns.items()})
        for i in range(len(codes))
    )
    return Assignment(row.template, row.source, tuple(draws))


def _judge_gravity(record: Record, faults: Faults) -> None:
    """Before release 0.2 a set in US customary had SI ranges, and g in m/s^2."""
    convention = record.set.convention
    low, high = gravity_bounds(convention.units)
    if convention.units != SI and not low <= Decimal(convention.gravity) <= high:
        expected = f"g in {convention.g.unit.plain if convention.g.unit else ''}"
        mend = "build it with the release of probgen that wrote it"
        faults.add("set.convention.gravity", convention.gravity, expected, mend)


def _judge_class(record: Record, file: RecordFile, faults: Faults) -> None:
    """Whether everybody, or every version of an exam, has a code of its own."""
    ids = [student.id for student in record.students]
    if len(set(ids)) < len(ids):
        faults.add("students", "an id twice", "an id for each student", _MEND)
    place = "versions" if record.set.exam else "students"
    letters = record.set.exam.letters if record.set.exam else ""
    if "".join(file.versions) != letters:
        found, expected = ", ".join(file.versions), ", ".join(letters) or "no versions"
        faults.add("versions", found, expected, _MEND)
    elif not all(map(is_code, record.codes)) or len(set(record.codes)) < len(record.codes):
        faults.add(place, "a code that is none, or twice", "a code for each", _MEND)


def _judge_columns(record: Record, file: RecordFile, faults: Faults) -> None:
    """Whether there is a draw for each code, of each problem of the set."""
    if len(file.problems) != len(file.set.problems):
        expected = f"{len(file.set.problems)}, as in the set"
        faults.add("problems", f"{len(file.problems)} problems", expected, _MEND)
    for place, row in enumerate(file.problems):
        for name, column in row.values.items():
            if len(column.drawn) != len(record.codes):
                found = f"{len(column.drawn)} values"
                expected = f"{len(record.codes)}, one for each code"
                faults.add(f"problems[{place}].values.{name}", found, expected, _MEND)
