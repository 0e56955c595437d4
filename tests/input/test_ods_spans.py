"""Cells made one in OpenDocument spreadsheets, by their places."""

from __future__ import annotations

import pytest

from probgen.input import ods_spans
from probgen.input.ods_spans import Span, spans
from probgen.input.workbook_reader import sheets
from tests.spreadsheets import ods_of, packed, xlsx

CELL = "<table:table-cell/>"
WIDE = '<table:table-cell table:number-columns-spanned="3" table:number-rows-spanned="1"/>'
HIGH = '<table:table-cell table:number-columns-spanned="1" table:number-rows-spanned="2"/>'
COVERED = '<table:covered-table-cell table:number-columns-repeated="2"/>'


def row(*cells: str, times: int = 1) -> str:
    repeated = f' table:number-rows-repeated="{times}"' if times > 1 else ""
    return f"<table:table-row{repeated}>{''.join(cells)}</table:table-row>"


PLACES: dict[str, tuple[str, list[Span]]] = {
    "none": (row(CELL, CELL), []),
    "beside": (row(CELL, WIDE, COVERED), [((0, 1), (0, 3))]),
    "below, and behind others that are": (
        row(WIDE, COVERED, HIGH),
        [((0, 0), (0, 2)), ((0, 3), (1, 3))],
    ),
    "after rows that are alike": (row(CELL, times=7) + row(CELL) + row(HIGH), [((8, 0), (9, 0))]),
    "among rows of a heading": (
        f"<table:table-header-rows>{row(CELL)}</table:table-header-rows>{row(HIGH)}",
        [((1, 0), (2, 0))],
    ),
    "after cells that are alike": (
        row('<table:table-cell table:number-columns-repeated="5"/>', HIGH),
        [((0, 5), (1, 5))],
    ),
}  # fmt: skip


@pytest.mark.parametrize(("table", "expected"), PLACES.values(), ids=PLACES)
def test_places(table: str, expected: list[Span]) -> None:
    assert spans(ods_of(table)) == {"Class": expected}


def test_no_more_are_told_than_a_table_has_rows(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(ods_spans, "MOST_ROWS", 3)
    assert len(spans(ods_of(row(HIGH) * 5))["Class"]) == 3


def test_they_are_told_with_the_sheet_they_are_on() -> None:
    text = '<table:table-cell office:value-type="string"><text:p>x</text:p></table:table-cell>'
    (sheet,) = sheets(ods_of(row(text) + row(text, HIGH)))["sheets"]
    assert sheet["merged"] == [((1, 1), (2, 1))]
    assert sheet["rows"] == [["x"], ["x"]]


BOMB = '<!DOCTYPE x [<!ENTITY a "a"><!ENTITY b "&a;&a;">]><x>&b;</x>'
OTHERS = {
    "a workbook": xlsx({"A": [["x"]]}),
    "no packed file": b"PK\x03\x04",
    "broken": packed({"content.xml": "<x>"}),
    "entities": packed({"content.xml": BOMB}),
    "a number that is none": ods_of(row(WIDE.replace("3", "three"))),
}


@pytest.mark.parametrize("content", OTHERS.values(), ids=OTHERS)
def test_of_what_is_no_such_file_there_are_none(content: bytes) -> None:
    assert not any(spans(content).values())
