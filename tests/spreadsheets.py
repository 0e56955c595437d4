"""Workbooks made for tests: .xlsx by XlsxWriter, .ods by hand."""

from __future__ import annotations

import zipfile
from collections.abc import Iterable, Mapping, Sequence
from io import BytesIO
from typing import Any
from xml.sax.saxutils import escape

from xlsxwriter import Workbook

Rows = Iterable[Sequence[Any]]


def xlsx(sheets: Mapping[str, Rows], hidden: Sequence[str] = ()) -> bytes:
    """A workbook with these sheets; texts are kept as texts, numbers as numbers."""
    made = BytesIO()
    with Workbook(made, {"in_memory": True, "strings_to_numbers": False}) as book:
        for name, rows in sheets.items():
            sheet = book.add_worksheet(name)
            for number, row in enumerate(rows):
                for place, cell in enumerate(row):
                    sheet.write(number, place, cell)
            if name in hidden:
                sheet.hide()
    return made.getvalue()


def ods(rows: Rows) -> bytes:
    """An OpenDocument spreadsheet of one sheet, as small as it may be."""
    return ods_of("".join(map(_ods_row, rows)))


def packed(members: Mapping[str, str | bytes]) -> bytes:
    """A zip file of these members."""
    made = BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in members.items():
            archive.writestr(name, content)
    return made.getvalue()


_SPACE = "urn:oasis:names:tc:opendocument:xmlns"
_MIME = "application/vnd.oasis.opendocument.spreadsheet"


def ods_of(table: str) -> bytes:
    """A sheet with this XML for its rows."""
    manifest = f'<manifest:manifest xmlns:manifest="{_SPACE}:manifest:1.0"/>'
    members = {"mimetype": _MIME, "META-INF/manifest.xml": manifest, "content.xml": _content(table)}
    return packed(members)


def _content(rows: str) -> str:
    spaces = " ".join(f'xmlns:{name}="{_SPACE}:{name}:1.0"' for name in ("office", "table", "text"))
    return (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content {spaces}><office:body>'
        f'<office:spreadsheet><table:table table:name="Class">{rows}</table:table>'
        "</office:spreadsheet></office:body></office:document-content>"
    )


def _ods_row(row: Sequence[object]) -> str:
    cells = "".join(
        f'<table:table-cell office:value-type="float" office:value="{cell}"/>'
        if isinstance(cell, int | float)
        else '<table:table-cell office:value-type="string">'
        f"<text:p>{escape(str(cell))}</text:p></table:table-cell>"
        for cell in row
    )
    return f"<table:table-row>{cells}</table:table-row>"
