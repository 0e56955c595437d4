"""What a record of format 2 must be besides its shape: whether its parts fit one another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Final

from probgen.course.method import gravity_bounds
from probgen.course.record_schema import EditionRow, IssueRow, PrintingRow, RecordFile
from probgen.input.fault import Faults
from probgen.quantities.unit import SI
from probgen.sheets.logo import flaw_of
from probgen.sheets.style import HouseStyle

_GONE: Final = "a text that the record holds"


def judge_record(file: RecordFile, faults: Faults, mend: str) -> None:
    """Notes what of a record does not fit the rest of it."""
    for place, issue in enumerate(file.issues):
        _judge_issue(issue, f"issues[{place}]", file, faults, mend)
    for place, printing in enumerate(file.printings):
        _judge_printing(printing, f"printings[{place}]", file, faults, mend)
    for place, avoided in enumerate(file.avoided):
        wanted = len(avoided.units)
        for inner, had in enumerate(avoided.had):
            if len(had.drawn) != wanted:
                field = f"avoided[{place}].had[{inner}].drawn"
                faults.add(field, len(had.drawn), f"{wanted} values, as there are units", mend)
    last = [each.template for each in file.issues[-1].templates]
    if file.copying and [each.template for each in file.copying] != last:
        found = ", ".join(each.template for each in file.copying)
        faults.add("copying", found, f"{', '.join(last)}, as in the last issue", mend)
    if not faults.found:
        _judge_codes(file, faults, mend)
        _judge_class(file, faults, mend)


def judge_house(style: HouseStyle | None, field: str, faults: Faults, mend: str) -> None:
    """Notes a logo that is no picture of its kind."""
    if style and (flaw := flaw_of(style.logo, style.logo_kind)):
        faults.add(field, f"{style.logo_kind}: {flaw}", "the content of such a picture", mend)


def _judge_issue(issue: IssueRow, field: str, file: RecordFile, faults: Faults, mend: str) -> None:
    texts = [(f"{field}.templates[{n}].text", each.text) for n, each in enumerate(issue.templates)]
    texts += [(f"{field}.layouts[{name}]", digest) for name, digest in issue.layouts.items()]
    for place, digest in texts:
        if digest not in file.texts:
            faults.add(place, digest, _GONE, mend)
    if len(issue.templates) != len(issue.set.problems):
        expected = f"{len(issue.set.problems)}, as in the set"
        faults.add(f"{field}.templates", f"{len(issue.templates)} templates", expected, mend)
    convention = issue.set.convention
    low, high = gravity_bounds(convention.units)
    if convention.units != SI and not low <= Decimal(convention.gravity) <= high:
        expected = f"a number from {low} to {high}"
        faults.add(f"{field}.set.method.gravity", convention.gravity, expected, mend)
    judge_house(issue.style, f"{field}.style.logo", faults, mend)
    if issue.set.exam is None and file.issues[0].set.exam is not None:
        faults.add(f"{field}.set.exam", None, "an exam, as at first", mend)
    if issue.draft and len(file.issues) > 1:
        faults.add(f"{field}.draft", True, "a draft alone, or none", mend)


def _judge_printing(
    printing: PrintingRow, field: str, file: RecordFile, faults: Faults, mend: str
) -> None:
    if printing.issue >= len(file.issues):
        expected = f"the place of an issue, from 0 to {len(file.issues) - 1}"
        faults.add(f"{field}.issue", printing.issue, expected, mend)
        return
    wanted = [len(each.units) for each in file.issues[printing.issue].templates]
    for place, edition in enumerate(printing.editions):
        found = [len(drawn) for drawn in edition.drawn]
        if found != wanted:
            inner = f"{field}.editions[{place}].drawn"
            faults.add(inner, found, f"as many values as there are quantities: {wanted}", mend)


def _judge_codes(file: RecordFile, faults: Faults, mend: str) -> None:
    """Whether a code stands for one paper, and each edition follows one that was there before."""
    known: dict[str, EditionRow] = {}
    for field, edition in _editions(file.printings):
        if edition.follows and edition.follows not in known:
            faults.add(f"{field}.follows", edition.follows, "the code of an earlier edition", mend)
        twin = known.setdefault(edition.code, edition)
        if (twin.owner, twin.drawn) != (edition.owner, edition.drawn):
            expected = "a code of its own, or the same paper in large print"
            faults.add(f"{field}.code", edition.code, expected, mend)


def _judge_class(file: RecordFile, faults: Faults, mend: str) -> None:
    """Whether everybody of the class has a paper of the last issue, or a version that has."""
    ids = [row.id for row in file.students]
    if len(set(ids)) < len(ids):
        faults.add("students", "an id twice", "an id for each student", mend)
    last = len(file.issues) - 1
    there = {edition.owner for p in file.printings if p.issue == last for edition in p.editions}
    if {p.issue for p in file.printings} != set(range(last + 1)):
        faults.add("issues", "an issue without a printing", "papers printed under each", mend)
    exam = file.issues[-1].set.exam
    wanted = list(exam.letters) if exam else ids
    if missing := [owner for owner in wanted if owner not in there]:
        faults.add("printings", None, f"a paper of the last issue for {missing[0]}", mend)
    letters = [row.letter for row in file.students]
    if any(letter not in (exam.letters if exam else ("",)) for letter in letters) or (
        exam and not all(letters)
    ):
        expected = f"one of {', '.join(exam.letters)}" if exam else "none"
        faults.add("students", "a version's letter", expected, mend)


def _editions(printings: Sequence[PrintingRow]) -> Iterator[tuple[str, EditionRow]]:
    for place, printing in enumerate(printings):
        for inner, edition in enumerate(printing.editions):
            yield f"printings[{place}].editions[{inner}]", edition
