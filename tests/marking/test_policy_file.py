"""A department's own rules: what a file may say, and every fault of one."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.marking.finding import Finding
from probgen.marking.policy import Policy
from probgen.marking.policy_file import read_policy

ALL = """
[marking]
unit = 0.75
slip = 0
figures = 0.1
tolerance = 0.03
[marking.columns]
"Id number" = "id"
"Week 1" = "sum"
"First" = "problem 1"
"""


def read(folder: Path, text: str) -> Policy:
    path = folder / "rules.toml"
    path.write_text(text, encoding="utf-8")
    return read_policy(path, 2)


def test_what_is_said_counts_and_all_else_is_as_usual(tmp_path: Path) -> None:
    found = read(tmp_path, ALL)
    usual = Policy()
    assert found.parts[Finding.UNIT] == Decimal("0.75")
    assert found.parts[Finding.SLIP] == 0
    assert found.parts[Finding.SIGN] == usual.parts[Finding.SIGN]
    assert (found.figures, found.tolerance) == (Decimal("0.1"), 0.03)
    assert found.columns == (("Id number", "id"), ("Week 1", "sum"), ("First", "problem 1"))
    assert read(tmp_path, "[marking]\n") == usual


FAULTS = {
    "no table": ("unit = 0.5\n", ["", "unit"]),
    "too much": ("[marking]\nunit = 2\n", ["marking.unit"]),
    "a misspelt field": ("[marking]\nunits = 0.5\n", ["marking.units"]),
    "right answers are right": ("[marking]\nright = 0.5\n", ["marking.right"]),
    "no source": (ALL.replace('"sum"', '"total"'), ["marking.columns.Week 1"]),
    "a problem there is not": (ALL.replace("problem 1", "problem 3"), ["marking.columns.First"]),
    "two at once": ("[marking]\nsign = -1\ntolerance = 0.9\n", ["marking.sign",
                                                                "marking.tolerance"]),
}  # fmt: skip


@pytest.mark.parametrize(("text", "fields"), FAULTS.values(), ids=FAULTS)
def test_every_fault_is_told(tmp_path: Path, text: str, fields: list[str]) -> None:
    with pytest.raises(InputError) as raised:
        read(tmp_path, text)
    assert [fault.field for fault in raised.value.faults] == fields
