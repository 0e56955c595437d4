"""Rules of an assignment file."""

import pytest

from probgen.course.rule import Rule, read_rule
from probgen.input.fault import Faults
from probgen.input.table import Table
from probgen.input.toml import parse_toml

CASES = {
    'template = "forearm-load"': None,
    "points = 3": None,
    'family = "limbs"': Rule(family="limbs"),
    'goals = ["hinge", "sign"]\nlevel = 2': Rule(goals=("hinge", "sign"), level=2),
    "count = 50": Rule(count=50),
    "not_used_since = 2026-01-31": Rule(not_used_since="2026-01-31"),
}
FAULTS = {
    'family = "limbs"\ntemplate = "forearm-load"': "template",
    "level = 6": "level",
    "count = 0": "count",
    "count = 51": "count",
    'not_used_since = "2026-01-31"': "not_used_since",
    "not_used_since = 2026-01-31T10:00:00": "not_used_since",
    "goals = []": "goals",
    "family = 3": "family",
}


@pytest.mark.parametrize("text", CASES)
def test_what_is_said(text: str) -> None:
    faults = Faults("")
    assert read_rule(Table(parse_toml(text, ""), "", faults)) == CASES[text]
    assert faults.found == []


@pytest.mark.parametrize("text", FAULTS)
def test_faults(text: str) -> None:
    faults = Faults("")
    read_rule(Table(parse_toml(text, ""), "", faults))
    assert [fault.field for fault in faults.found] == [FAULTS[text]]
