"""Cells of an OpenDocument spreadsheet that are made one: what its reader does not tell."""

from __future__ import annotations

import zipfile
from contextlib import suppress
from dataclasses import dataclass, field
from io import BytesIO
from typing import Final
from xml.parsers import expat

from probgen.input.csv import MOST_ROWS

Span = tuple[tuple[int, int], tuple[int, int]]
"""Row and column, from 0, of the first cell and of the last."""

_TABLE: Final = "urn:oasis:names:tc:opendocument:xmlns:table:1.0 "
_CELLS: Final = (f"{_TABLE}table-cell", f"{_TABLE}covered-table-cell")


def spans(content: bytes) -> dict[str, list[Span]]:
    """By sheet the cells that are one, as far as the file tells; of another kind of file none."""
    found = _Found()
    with suppress(KeyError, ValueError, zipfile.BadZipFile, expat.ExpatError):
        with zipfile.ZipFile(BytesIO(content)) as packed:
            text = packed.read("content.xml")
        parser = expat.ParserCreate(namespace_separator=" ")
        parser.StartElementHandler = found.begin
        parser.EndElementHandler = found.end
        parser.EntityDeclHandler = _no_entities
        parser.Parse(text, True)
    return found.sheets


def _no_entities(*declared: object) -> None:
    """No spreadsheet declares any: they are how a small file becomes a large one."""
    raise ValueError("an entity is declared")


@dataclass(slots=True)
class _Found:
    """What has been read: the place of the next cell, and how many rows the present one is."""

    sheets: dict[str, list[Span]] = field(default_factory=dict)
    sheet: str = ""
    row: int = 0
    column: int = 0
    rows: int = 1

    def begin(self, name: str, told: dict[str, str]) -> None:
        if name == f"{_TABLE}table":
            self.sheet, self.row = told.get(f"{_TABLE}name", ""), 0
        elif name == f"{_TABLE}table-row":
            self.column, self.rows = 0, _count(told, "number-rows-repeated")
        elif name in _CELLS:
            high, wide = (_count(told, f"number-{way}-spanned") for way in ("rows", "columns"))
            own = self.sheets.setdefault(self.sheet, [])
            if (high > 1 or wide > 1) and len(own) < MOST_ROWS:
                last = (self.row + high - 1, self.column + wide - 1)
                own.append(((self.row, self.column), last))
            self.column += _count(told, "number-columns-repeated")

    def end(self, name: str) -> None:
        if name == f"{_TABLE}table-row":
            self.row += self.rows


def _count(told: dict[str, str], name: str) -> int:
    return int(told.get(f"{_TABLE}{name}", "1"))
