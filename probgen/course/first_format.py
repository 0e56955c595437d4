"""Records of format 1, which version 0.1 wrote: one issue, one printing, and no secret.

Their codes follow from seed and id, and stay as they were printed.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from probgen.course.edition import Edition, Printing
from probgen.course.exam import letters_for
from probgen.course.issue import FrozenTemplate, Issue
from probgen.course.method import gravity_bounds
from probgen.course.record import RECORD, Record, large_letters
from probgen.course.record_judge import judge_house
from probgen.course.record_schema import FIRST_SCHEMA, FirstFile, ProblemRow, is_code
from probgen.draws.draw import Draw
from probgen.input.fault import Faults
from probgen.quantities.expression import Number
from probgen.quantities.unit import SI
from probgen.sheets.house import House
from probgen.sheets.style import PLAIN


def read_first(content: object, where: str, mend: str) -> Record:
    """The record that data of format 1 describe.  Raises InputError with every fault."""
    file = FIRST_SCHEMA.read(content, FirstFile, where, mend)
    faults = Faults(where)
    _judge_gravity(file, faults)
    codes = _codes(file)
    _judge_class(file, codes, faults, mend)
    _judge_columns(file, codes, faults, mend)
    judge_house(file.style, "style.logo", faults, mend)
    faults.settle()
    return _record(file, codes)


def _codes(file: FirstFile) -> tuple[str, ...]:
    return tuple(file.versions.values()) if file.set.exam else tuple(s.code for s in file.students)


def _record(file: FirstFile, codes: Sequence[str]) -> Record:
    students = tuple(row.student for row in file.students)
    templates = tuple(FrozenTemplate(p.template, p.revision, p.source) for p in file.problems)
    layouts = tuple(file.layouts.items())
    house = House(file.style or PLAIN, layouts, f"{RECORD}: layouts" if layouts else "")
    draws = list(zip(*(_draws(row, len(codes)) for row in file.problems), strict=True))
    letters: tuple[str, ...] = ()
    if exam := file.set.exam:
        letters = letters_for(exam, students, {})
        rows = zip(exam.letters, codes, draws, strict=True)
        editions = [Edition(code, letter, own) for letter, code, own in rows]
        large = large_letters(students, letters)
        editions += [
            Edition(each.code, each.owner, each.draws, large=True)
            for each in editions
            if each.owner in large
        ]
    else:
        editions = [
            Edition(code, each.id, own, each.name, each.section, each.large)
            for each, code, own in zip(students, codes, draws, strict=True)
        ]
    issue = Issue(file.set, templates, house, None, file.probgen)
    printing = Printing(0, tuple(editions))
    return Record(file.seed, "", (issue,), (printing,), students, letters, file.probgen)


def _draws(row: ProblemRow, count: int) -> tuple[Draw, ...]:
    columns = {
        name: [Number(digits, column.unit) for digits in column.drawn]
        for name, column in row.values.items()
    }
    return tuple(
        Draw(row.template, row.revision, {name: column[i] for name, column in columns.items()})
        for i in range(count)
    )


def _judge_gravity(file: FirstFile, faults: Faults) -> None:
    """Before release 0.2 a set in US customary had SI ranges, and g in m/s^2."""
    convention = file.set.convention
    low, high = gravity_bounds(convention.units)
    if convention.units != SI and not low <= Decimal(convention.gravity) <= high:
        expected = f"g in {convention.g.unit.plain if convention.g.unit else ''}"
        mend = "build it with the release of probgen that wrote it"
        faults.add("set.convention.gravity", convention.gravity, expected, mend)


def _judge_class(file: FirstFile, codes: Sequence[str], faults: Faults, mend: str) -> None:
    """Whether everybody, or every version of an exam, has a code of its own."""
    ids = [student.id for student in file.students]
    if len(set(ids)) < len(ids):
        faults.add("students", "an id twice", "an id for each student", mend)
    place = "versions" if file.set.exam else "students"
    letters = file.set.exam.letters if file.set.exam else ""
    if "".join(file.versions) != letters:
        found, expected = ", ".join(file.versions), ", ".join(letters) or "no versions"
        faults.add("versions", found, expected, mend)
    elif not all(map(is_code, codes)) or len(set(codes)) < len(codes):
        faults.add(place, "a code that is none, or twice", "a code for each", mend)


def _judge_columns(file: FirstFile, codes: Sequence[str], faults: Faults, mend: str) -> None:
    """Whether there is a draw for each code, of each problem of the set."""
    if len(file.problems) != len(file.set.problems):
        expected = f"{len(file.set.problems)}, as in the set"
        faults.add("problems", f"{len(file.problems)} problems", expected, mend)
    for place, row in enumerate(file.problems):
        for name, column in row.values.items():
            if len(column.drawn) != len(codes):
                found = f"{len(column.drawn)} values"
                expected = f"{len(codes)}, one for each code"
                faults.add(f"problems[{place}].values.{name}", found, expected, mend)
