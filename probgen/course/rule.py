"""What an assignment file may say of a problem in place of a template's id: a rule to choose by."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Final

from probgen.input.table import Table

FIELDS: Final = ("family", "goals", "level", "count", "not_used_since")
_MOST: Final = 50


@dataclass(frozen=True, slots=True)
class Rule:
    """Which templates may be taken; "", 0 and () where anything will do.

    goals: each a part of one that the template has; count: how many are taken.
    not_used_since: "2027-01-31", a day on or after which the template was not set.
    """

    family: str = ""
    goals: tuple[str, ...] = ()
    level: int = 0
    count: int = 1
    not_used_since: str = ""


@dataclass(frozen=True, slots=True)
class Chosen:
    """Why a template was taken: by which rule, of how many; last: the day of its use before."""

    rule: Rule
    of: int
    last: str = ""


def read_rule(entry: Table) -> Rule | None:
    """The rule of a [[problem]]; None where it names a template instead."""
    if not any(entry.has(field) for field in FIELDS):
        return None
    if entry.has("template"):
        mend = "leave the rule out, or the template"
        entry.fault(
            "template", entry.content["template"], "a template, or a rule to choose by", mend
        )
    return Rule(
        family=entry.text("family", ""),
        goals=entry.texts("goals"),
        level=entry.whole("level", 1, 5, default=0),
        count=entry.whole("count", 1, _MOST, default=1),
        not_used_since=_read_day(entry),
    )


def _read_day(entry: Table) -> str:
    day = entry.value("not_used_since", "a date such as 2027-01-31", required=False)
    if day is None:
        return ""
    if type(day) is not date:
        expected = "a date such as 2027-01-31, without quotes"
        entry.fault("not_used_since", day, expected)
        return ""
    return day.isoformat()
