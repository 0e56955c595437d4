"""Written tables open in a spreadsheet with every letter, number and sign as it was."""

import csv
import errno
import os
import re
import time
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import NoReturn

import pytest

from probgen.build.tables import csv_content, workbook_content, write_csv, write_workbook
from probgen.input.workbook import read_sheets

HEADS = ("code", "name", "value")
ROWS = [("7K3M", "Zoë =1+1", "-4.9"), ("0071", "=1+1", ""), ("@x", "李 明", "1e-05")]


def test_a_workbook_has_texts_and_numbers(tmp_path: Path) -> None:
    write_workbook(tmp_path / "a.xlsx", HEADS, ROWS, ["value"])
    (sheet,) = read_sheets((tmp_path / "a.xlsx").read_bytes(), "a.xlsx")
    assert sheet.rows == (
        HEADS, ("7K3M", "Zoë =1+1", -4.9), ("0071", "=1+1"), ("@x", "李 明", 1e-5),
    )  # fmt: skip


def test_the_heads_of_a_workbook_stay_in_sight(tmp_path: Path) -> None:
    write_workbook(tmp_path / "a.xlsx", HEADS, ROWS, ["value"])
    with zipfile.ZipFile(tmp_path / "a.xlsx") as content:
        sheet = content.read("xl/worksheets/sheet1.xml").decode()
    pane = re.search(r"<pane [^>]*>", sheet)
    assert pane is not None
    assert 'ySplit="1" topLeftCell="A2"' in pane[0]
    assert "xSplit" not in pane[0]


def test_the_same_rows_are_the_same_bytes(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_workbook(tmp_path / "a.xlsx", HEADS, ROWS, ["value"])
    monkeypatch.setenv("TZ", "Asia/Tokyo")
    time.sleep(2.1)  # a zip file counts in twos of seconds
    write_workbook(tmp_path / "b.xlsx", HEADS, ROWS, ["value"])
    first, second = ((tmp_path / f"{name}.xlsx").read_bytes() for name in "ab")
    assert first == second
    assert not [name for name in os.listdir(tmp_path) if name not in {"a.xlsx", "b.xlsx"}]


def test_csv_has_the_mark_of_its_encoding(tmp_path: Path) -> None:
    write_csv(tmp_path / "a.csv", HEADS, ROWS)
    assert (tmp_path / "a.csv").read_bytes().startswith(b"\xef\xbb\xbfcode,")
    with (tmp_path / "a.csv").open(encoding="utf-8-sig", newline="") as file:
        assert [row[1] for row in csv.reader(file)] == ["name", "Zoë =1+1", "'=1+1", "李 明"]


@pytest.mark.parametrize("write", [write_csv, write_workbook])
def test_a_disk_that_is_full_is_named(
    write: Callable[..., None], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(self: Path, *words: object, **more: object) -> NoReturn:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    for name in ("open", "write_bytes"):
        monkeypatch.setattr(Path, name, full)
    with pytest.raises(OSError, match="No space left") as caught:
        write(tmp_path / "a", HEADS, ROWS)
    assert caught.value.filename == str(tmp_path / "a")


def test_contents_are_those_of_the_files(tmp_path: Path) -> None:
    write_csv(tmp_path / "a.csv", HEADS, ROWS)
    write_workbook(tmp_path / "a.xlsx", HEADS, ROWS, ["value"])
    assert csv_content(HEADS, ROWS) == (tmp_path / "a.csv").read_bytes()
    assert workbook_content(HEADS, ROWS, ["value"]) == (tmp_path / "a.xlsx").read_bytes()
