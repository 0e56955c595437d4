"""A department's own rules for marking: a file with a table [marking]."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from probgen.input.fault import Faults, one_of
from probgen.input.table import Table
from probgen.input.toml import read_toml
from probgen.marking.finding import Finding
from probgen.marking.gradebook import SOURCES, is_source
from probgen.marking.policy import Policy

_CHOSEN: Final = (Finding.CARRIED, Finding.UNIT, Finding.SIGN, Finding.SLIP)
"""Verdicts whose part of the points is a matter of choice."""
_MOST_COLUMNS: Final = 100


def read_policy(path: Path, problems: int) -> Policy:
    """The rules in a file, the usual ones where it says nothing.

    problems: how many the set has.  Raises InputError with every fault.
    """
    faults = Faults(str(path))
    whole = Table(read_toml(path, "file with a table [marking]"), "", faults)
    table, usual = whole.table("marking"), Policy()
    if "marking" not in whole.content:
        faults.add("", None, "a table [marking]", "write [marking] above what the file says")
    parts = {
        **usual.parts,
        **{each: table.number(each, float(usual.parts[each]), "0", "1") for each in _CHOSEN},
    }
    figures = table.number("figures", float(usual.figures), "0", "1")
    tolerance = table.number("tolerance", 0, "0", "0.5") if table.has("tolerance") else None
    columns = _read_columns(table.table("columns"), problems)
    table.close()
    whole.close()
    faults.settle()
    return Policy(parts, figures, None if tolerance is None else float(tolerance), columns)


def _read_columns(table: Table, problems: int) -> tuple[tuple[str, str], ...]:
    """A gradebook's headings, each with what stands below it."""
    if len(table.content) > _MOST_COLUMNS:
        found = f"{len(table.content)} columns"
        table.faults.add(table.path, found, f"at most {_MOST_COLUMNS} columns")
        return ()
    expected = one_of((*SOURCES, f"problem 1 to problem {problems}", "nothing"))
    columns = []
    for heading in table.content:
        source = table.text(heading, "", expected)
        if not is_source(source, problems):
            table.fault(heading, source, expected)
        columns.append((heading, source))
    return tuple(columns)
