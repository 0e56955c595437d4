"""Tables: read within bounds, and written without formulas."""

import csv
from io import StringIO

import pytest

from probgen.input.csv import LONGEST_CELL, MOST_COLUMNS, csv_lines, read_rows, safe_cell
from probgen.input.fault import Faults


def rows(text: str, faults: Faults) -> list[tuple[int, list[str]]]:
    return list(read_rows(text, ",", faults))


def test_rows_know_their_first_line() -> None:
    faults = Faults("a.csv")
    read = rows('a,b\n"c\nd",e\nf,g\n', faults)
    assert read == [(1, ["a", "b"]), (2, ["c\nd", "e"]), (4, ["f", "g"])]
    assert not faults.found


BEYOND = {
    "an open quote": 'a\n"b',
    "a long cell": f"a\n{'x' * (LONGEST_CELL + 1)}",
    "a cell beyond the library's bound": f"a\n{'x' * 200_000}",
    "many cells": f"a\n{',' * MOST_COLUMNS}",
}


@pytest.mark.parametrize("text", BEYOND.values(), ids=BEYOND)
def test_what_is_beyond_a_bound_is_one_fault_of_its_line(text: str) -> None:
    faults = Faults("a.csv")
    assert rows(f"{text}\nc,d", faults) == [(1, ["a"])]
    assert [fault.field for fault in faults.found] == ["line 2"]


def test_rows_are_counted(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("probgen.input.csv.MOST_ROWS", 2)
    faults = Faults("a.csv")
    assert len(rows("a\nb\nc\nd", faults)) == 2
    assert len(faults.found) == 1


FORMULAS = [
    "=1+1", "+1+1", "-1+cmd|' /C calc'!A0", "@SUM(A1)", "\t=1", "\t", " =1", "＝1+1",
    "-", "=", "--1", "+49 1234", "\u00a0=1", "-e1",
]  # fmt: skip
BROKEN = ["\r=1", "\n=1", "\0=1"]
PLAIN = ["-4.9", "+3", "-1.2e-05", "-.5", "4.", "", "Zoë", "a=b", "O'Hara-Lee", "12.3° above"]


@pytest.mark.parametrize("text", FORMULAS)
def test_no_cell_is_a_formula(text: str) -> None:
    assert safe_cell(text) == f"'{text}"


PARTS = {
    "Smith;=1+1": "Smith;'=1+1", "a|@x": "a|'@x", "a\t-1": "a\t'-1", "a, =1": "a,' =1",
    'a;"=1"': "a;'\"=1\"", "a;\u00a0=1;+2": "a;'\u00a0=1;'+2", "a;b": "a;b", "=1;=2": "'=1;'=2",
}  # fmt: skip


@pytest.mark.parametrize(("text", "safe"), PARTS.items())
def test_no_part_of_a_cell_is_a_formula(text: str, safe: str) -> None:
    assert safe_cell(text) == safe


@pytest.mark.parametrize("text", BROKEN)
def test_a_cell_has_one_line(text: str) -> None:
    assert safe_cell(text) == "' =1"


@pytest.mark.parametrize("text", PLAIN)
def test_numbers_and_texts_stay(text: str) -> None:
    assert safe_cell(text) == text


def test_tables_are_written() -> None:
    written = "".join(csv_lines([("a", "b"), (-4.9, '=2,"x"')]))
    assert list(csv.reader(StringIO(written))) == [["a", "b"], ["-4.9", '\'=2,"x"']]
