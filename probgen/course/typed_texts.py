"""What people have typed for an assignment's pages, and what of it no page can show."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.course.record import Record
from probgen.input.fault import Fault, Faults, shown
from probgen.input.text import LONGEST_TEXT, is_seen, unfit
from probgen.input.toml import parse_toml
from probgen.sheets.latex.remark import remarks_on_text


def judge_typed(text: str, name: str, faults: Faults) -> None:
    """Notes a text that was typed with a task, if no record can hold it or nobody would see it.

    name: what the task calls it ("note").
    """
    expected = f"a text of at most {LONGEST_TEXT} characters"
    if found := unfit(text):
        mend = "take it out, or say it shorter"
        faults.found.append(Fault("", name, found, expected, mend, asked=True))
    elif not is_seen(text):
        mend = "say it in words, or leave it out"
        expected = "a text that can be seen"
        faults.found.append(Fault("", name, shown(text), expected, mend, asked=True))


def remarks_on_texts(record: Record) -> tuple[str, ...]:
    """A remark for each text of the record's papers that is not printed as it was typed."""
    told = [remark for text in _texts(record) for remark in remarks_on_text(text)]
    for frozen in record.issue.templates:
        told += remarks_on_template(frozen.template_id, frozen.source)
    return tuple(dict.fromkeys(told))


def remarks_on_template(name: str, source: str) -> Iterator[str]:
    """The same for the texts of a template, by its id and their fields."""
    waiting: list[tuple[str, object]] = [("", parse_toml(source, name))]
    while waiting:
        field, value = waiting.pop(0)
        if isinstance(value, str):
            yield from remarks_on_text(value, f"{name}, {field}")
        elif isinstance(value, dict):
            waiting += [(".".join(filter(None, (field, key))), each) for key, each in value.items()]
        elif isinstance(value, list):
            waiting += [(f"{field}[{place}]", each) for place, each in enumerate(value)]


def _texts(record: Record) -> Iterator[str]:
    problem_set = record.set
    yield from (problem_set.course, problem_set.title, problem_set.due, record.house.style.header)
    yield from (text for each in problem_set.due_in for text in (each.section, each.due))
    if problem_set.exam:
        yield from problem_set.exam.notes
    yield from (issue.erratum.what for issue in record.issues if issue.erratum)
    for version in record.versions:
        yield from (version.student.name, version.student.id, version.student.section)
    for student in record.students:
        yield from (student.name, student.id, student.section, student.seat, student.needs)
