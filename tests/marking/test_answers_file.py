"""Tables of answers that cannot be taken: every fault at once, each with its place and mend."""

from __future__ import annotations

from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.marking.answers_file import Typed, read_answers
from probgen.marking.form import Place, columns
from tests.marking.lamps import HEADS, record_of
from tests.spreadsheets import ods, packed, xlsx
from tests.terms import lamp, problem_of

RECORD = record_of(3)
CODES = {edition.owner: edition.code for edition in RECORD.editions}
ASKED = columns([problem_of(lamp(), RECORD.set.convention)])


def read(folder: Path, content: str | bytes, remarks: list[str] | None = None) -> tuple[Typed, ...]:
    path = folder / "answers"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return read_answers(path, RECORD, ASKED, [] if remarks is None else remarks)


def test_rows_are_found_by_code_or_id_in_every_kind_of_file(tmp_path: Path) -> None:
    rows = [HEADS.split(","), [CODES["1"].lower(), "", "", "12.3", "N"], ["", "2", "", "9", ""]]
    text = "\n".join(",".join(row) for row in rows)
    for content in (text, text.replace(",", ";"), xlsx({"A": rows}), ods(rows)):
        remarks: list[str] = []
        found = read(tmp_path, content, remarks)
        assert [row.paper.id for row in found] == ["1", "2"]
        assert found[0].cells[1, "T"] == {Place.NUMBER: "12.3", Place.UNIT: "N"}
        assert any("1 of 3 papers have no row" in remark for remark in remarks)


def mistyped(code: str) -> str:
    """The code with its first sign another one."""
    return ("2" if code[0] != "2" else "3") + code[1:]


FAULTS = {
    "a wrong check sign": (f"{HEADS}\n{mistyped(CODES['1'])},,,5,N", "mistyped"),
    "a code of another record": (f"{HEADS}\n00000-00000,,,5,N", "a code of this record"),
    "an unknown student": (f"{HEADS}\n,77,,5,N", "an id of this class"),
    "another's code": (f"{HEADS}\n{CODES['1']},2,,5,N", "the paper of 2"),
    "double rows": (f"{HEADS}\n,1,,5,N\n,1,,6,N", "one row a paper"),
    "nobody's row": (f"{HEADS}\n,,,5,N", "a code or an id"),
    "a missing column": ("code,id,1 T unit\n,1,N", 'a column "1 T"'),
    "no column of ids": ("name,1 T,1 T unit\nAda,5,N", "a column code or id"),
    "another set": (f"{HEADS},2 R.x\n,1,,5,N,4", "answers of another set"),
    "no table of answers": ("who;birthday\nAda;1815", "a line of headings"),
    "a date": (f"{HEADS}\n,1,,2026-04-09,N", "made it a date"),
    "ten megabytes": (f"{HEADS}\n,1,,{'9' * 10_000_000},N", "cells between separators"),
    "a long cell": (f"{HEADS}\n,1,,{'9' * 5000},N", "at most 1000 characters"),
    "a zip bomb": (packed({"xl/big.xml": b"0" * (65 * 2**20)}), "MB when unpacked"),
    "a double column": (f"{HEADS},1 T\n,1,,5,N,5", "each heading once"),
}


@pytest.mark.parametrize(("content", "said"), FAULTS.values(), ids=FAULTS)
def test_what_cannot_be_taken_is_told(tmp_path: Path, content: str | bytes, said: str) -> None:
    with pytest.raises(InputError, match=said):
        read(tmp_path, content)


def test_all_faults_are_told_at_once(tmp_path: Path) -> None:
    rows = f"{mistyped(CODES['1'])},,,5,N\n,77,,5,N\n,2,,2026-04-09,N"
    with pytest.raises(InputError) as raised:
        read(tmp_path, f"{HEADS}\n{rows}")
    assert [fault.field for fault in raised.value.faults] == [
        "line 2, code", "line 3, id", "line 4, 1 T",
    ]  # fmt: skip
