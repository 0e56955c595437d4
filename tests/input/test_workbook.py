"""Workbooks are read cell by cell, and no file takes more than its bounds."""

from __future__ import annotations

import subprocess
import zipfile
from io import BytesIO

import pytest

from probgen.input import workbook
from probgen.input.fault import InputError
from probgen.input.workbook import Sheet, is_workbook, read_sheets
from tests.spreadsheets import ods, ods_of, packed, xlsx

ROWS: list[list[object]] = [["Name", "ID"], ["Ada Quill", "0071"], ["李 明", 72]]
READ = (("Name", "ID"), ("Ada Quill", "0071"), ("李 明", 72.0))


@pytest.mark.parametrize("content", [xlsx({"Class": ROWS}), ods(ROWS)], ids=["xlsx", "ods"])
def test_texts_stay_texts_and_numbers_numbers(content: bytes) -> None:
    assert is_workbook(content)
    assert read_sheets(content, "class") == (Sheet("Class", False, READ),)


def test_hidden_and_empty_sheets() -> None:
    content = xlsx({"A": ROWS, "Old": [["x"]], "None": []}, hidden=["Old"])
    assert [(each.name, each.hidden) for each in read_sheets(content, "class")] == [
        ("A", False), ("Old", True),
    ]  # fmt: skip


def test_rows_keep_their_numbers_and_lose_their_empty_ends() -> None:
    (sheet,) = read_sheets(xlsx({"A": [[], ["", "x", ""], [], ["y"]]}), "class")
    assert sheet.rows == ((), ("", "x"), (), ("y",))


REPEATED = (
    '<table:table-row table:number-rows-repeated="{rows}"><table:table-cell '
    'office:value-type="string" table:number-columns-repeated="{columns}"><text:p>x</text:p>'
    "</table:table-cell></table:table-row>"
)


def spoilt(content: bytes, member: str, old: bytes, new: bytes) -> bytes:
    with zipfile.ZipFile(BytesIO(content)) as archive:
        members = {name: archive.read(name) for name in archive.namelist()}
    (name,) = (name for name in members if name.endswith(member))
    assert old in members[name]
    return packed({**members, name: members[name].replace(old, new)})


REFUSED = {
    "broken": b"PK\x03\x04\0\0workbook",
    "no workbook": packed({"letter.xml": "<a/>"}),
    "old": b"\xd0\xcf\x11\xe0 and so on",
    "many members": packed({f"{n}.xml": "" for n in range(1200)}),
    "bomb": packed({"content.xml": b" " * (workbook.MOST_UNPACKED + 1)}),
    "a cell far away": spoilt(xlsx({"A": [["x"]]}), "sheet1.xml", b'r="A1"', b'r="XFD1048576"'),
    "a row repeated": ods_of(REPEATED.format(rows=10**6, columns=10**4)),
    "no cell": spoilt(xlsx({"A": [["x"]]}), "sheet1.xml", b'r="A1"', b'r="1?"'),
}


@pytest.mark.parametrize("content", REFUSED.values(), ids=REFUSED)
def test_what_is_too_large_or_none_is_refused_with_a_mend(content: bytes) -> None:
    with pytest.raises(InputError) as caught:
        read_sheets(content, "class.xlsx")
    (fault,) = caught.value.faults
    assert fault.found
    assert fault.mend
    assert "a table of at most" in fault.expected


def test_sizes_are_counted_and_not_believed() -> None:
    content = packed({"content.xml": b" " * (workbook.MOST_UNPACKED + 2**20)})
    size = (workbook.MOST_UNPACKED + 2**20).to_bytes(4, "little")
    assert content.count(size) == 2
    with pytest.raises(InputError):
        read_sheets(content.replace(size, b"\1\0\0\0"), "class.xlsx")


def test_a_reader_that_hangs_is_ended(monkeypatch: pytest.MonkeyPatch) -> None:
    def hang(words: list[str], **options: object) -> None:
        raise subprocess.TimeoutExpired(words, 30)

    monkeypatch.setattr(subprocess, "run", hang)
    with pytest.raises(InputError, match="30 s"):
        read_sheets(xlsx({"A": ROWS}), "class.xlsx")
