"""A class marked: verdicts, points, what is left to a person, and marks changed by hand."""

from __future__ import annotations

import csv
import sys
from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path

import pytest

from probgen.course.record_file import write_record
from probgen.input.fault import InputError
from probgen.input.workbook import read_sheets
from probgen.marking.again import Moved
from probgen.marking.folder import Done, mark_class
from probgen.marking.written import LIST
from tests.marking.lamps import record_of, table, tension
from tests.spreadsheets import xlsx

RECORD = record_of(8)


def marked(folder: Path, text: str) -> Done:
    (folder / "record.json").write_text(write_record(RECORD), encoding="utf-8")
    (folder / "answers.csv").write_text(text, encoding="utf-8")
    return mark_class(folder / "record.json", folder / "answers.csv", folder / "out")


def read(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def typed() -> dict[str, tuple[str, str]]:
    """What each student typed, from the hand-worked tension."""
    right = {str(n): tension(RECORD, str(n)) for n in range(1, 9)}
    return {
        "1": (f"{right['1']:.3g}", "N"),
        "2": (f"-{right['2']:.3g}", "N"),
        "3": (f"{right['3']:.3g}", "kN"),
        "4": (f"{right['4']:.3g} N", ""),
        "5": ("", ""),
        "6": ("1,234", "N"),
        "7": ("?", ""),
        "8": (f"{2 * right['8']:.4g}", "N"),  # all of the weight
    }


def test_verdicts_points_and_what_a_person_looks_at(tmp_path: Path) -> None:
    done = marked(tmp_path, table(RECORD, typed()))
    found = {row["id"]: (row["verdict"], row["points"]) for row in
             read(tmp_path / "out/answer-marks.csv")}  # fmt: skip
    assert found["1"] == found["4"] == ("right", "8")
    assert found["2"] == ("sign or side wrong", "4")
    assert found["3"] == ("unit wrong", "4")
    assert found["5"] == ("empty", "0")
    assert found["6"] == found["7"] == ("to be read by a person", "")
    assert found["8"][0] in ("a known slip", "wrong")
    assert {row["id"] for row in read(tmp_path / "out/look-at.csv")} == {"6", "7"}
    sums = {row["id"]: row for row in read(tmp_path / "out/marks.csv")}
    assert (sums["1"]["sum of 8"], sums["1"]["still open"]) == ("8", "0")
    assert (sums["6"]["sum of 8"], sums["6"]["still open"]) == ("0", "1")
    assert (done.papers, done.look_at) == (8, 2)
    (sheet,) = read_sheets((tmp_path / "out/marks.xlsx").read_bytes(), "marks")
    assert sheet.rows[1] == (RECORD.editions[0].code, "1", "Student 1", 8, 8, 0)
    names = {path.name for path in (tmp_path / "out").iterdir()}
    assert {"marks.xlsx", "statistics.csv", "spread.csv", "class.txt", "class.pdf"} <= names
    # 8 + 8 points for what is right, 4 each for unit, sign and slip, of 6 papers that are marked
    (item,) = read(tmp_path / "out/statistics.csv")
    assert (item["problem"], item["answer"], item["papers"]) == ("1", "T", "6")
    assert float(item["facility"]) == pytest.approx(28 / 48, abs=5e-4)
    verdicts = ("right", "carried", "unit", "sign", "slip", "wrong", "unread", "empty")
    assert [int(item[each]) for each in verdicts] == [2, 0, 1, 1, 1, 0, 2, 1]
    for given in ("m", "L"):
        halves = [row for row in read(tmp_path / "out/spread.csv") if row["by"] == given]
        assert [row["group"] for row in halves] == ["smaller half", "larger half"]
        assert sum(int(row["papers"]) for row in halves) == 6
        points = sum(int(row["papers"]) * float(row["mean"]) for row in halves)
        assert points == pytest.approx(28, abs=5e-3)
    told = (tmp_path / "out/class.txt").read_text(encoding="utf-8")
    assert "Two papers with answers that a person has to decide" in told
    assert "Problem 1, one paper: T taken to be the load W" in told


def change(path: Path, id: str, points: str) -> None:
    rows = read(path)
    for row in rows:
        if row["id"] == id:
            row["changed"] = points
    with path.open("w", encoding="utf-8-sig", newline="") as file:
        writer = csv.DictWriter(file, list(rows[0]))
        writer.writeheader()
        writer.writerows(rows)


def test_points_changed_by_hand_stay(tmp_path: Path) -> None:
    text = table(RECORD, typed())
    marked(tmp_path, text)
    change(tmp_path / "out/answer-marks.csv", "2", "7")
    change(tmp_path / "out/look-at.csv", "6", "2,5")
    for _ in range(2):
        done = marked(tmp_path, text)
        sums = {row["id"]: row["sum of 8"] for row in read(tmp_path / "out/marks.csv")}
        assert (sums["1"], sums["2"], sums["6"]) == ("8", "7", "2.5")
        assert (done.changed, done.look_at) == (2, 1)


def test_points_typed_into_workbooks_count_too(tmp_path: Path) -> None:
    """A person saves a table as .xlsx and types there; two that differ are told with both files."""
    marked(tmp_path, table(RECORD, typed()))
    for name, id, points in (("answer-marks", "2", "7"), ("look-at", "6", "2,5")):
        rows = read(tmp_path / f"out/{name}.csv")
        cells = [[*row.values()] for row in rows]
        for row in cells:
            row[11] = points if row[1] == id else ""
        book = xlsx({"A": [[*rows[0]], *cells]})
        (tmp_path / f"out/{name}.xlsx").write_bytes(book)
    for _ in range(2):
        done = marked(tmp_path, table(RECORD, typed()))
        sums = {row["id"]: row["sum of 8"] for row in read(tmp_path / "out/marks.csv")}
        assert (sums["2"], sums["6"], done.changed) == ("7", "2.5", 2)
    change(tmp_path / "out/answer-marks.csv", "2", "6")
    with pytest.raises(InputError, match=r"6, as told before in answer-marks.csv, line 3"):
        marked(tmp_path, table(RECORD, typed()))


@pytest.mark.parametrize("again", [range(1, 9), [1]], ids=["all", "others"])
def test_points_cleared_in_the_table_are_gone_though_a_workbook_keeps_them(
    tmp_path: Path, again: Sequence[int]
) -> None:
    """2 has 4 points by rule, 6 is open: where they are marked again, and where others are."""
    marked(tmp_path, table(RECORD, typed()))
    change(tmp_path / "out/answer-marks.csv", "2", "7")
    change(tmp_path / "out/look-at.csv", "6", "2,5")
    assert marked(tmp_path, table(RECORD, typed())).changed == 2
    written = read(tmp_path / "out/answer-marks.csv")
    book = xlsx({"A": [[*written[0]], *([*row.values()] for row in written)]})
    (tmp_path / "out/answer-marks.xlsx").write_bytes(book)
    for id in ("2", "6"):
        change(tmp_path / "out/answer-marks.csv", id, "")
    done = marked(tmp_path, table(RECORD, {str(n): typed()[str(n)] for n in again}))
    sums = {row["id"]: row for row in read(tmp_path / "out/marks.csv")}
    assert (sums["2"]["sum of 8"], sums["6"]["still open"], done.changed) == ("4", "1", 0)
    assert {row["id"] for row in read(tmp_path / "out/look-at.csv")} == {"6", "7"}
    (sheet,) = read_sheets((tmp_path / "out/answer-marks.xlsx").read_bytes(), "marks")
    assert {row[11] for row in sheet.rows[1:]} == {""}


def test_points_by_hand_are_for_what_was_typed_then(tmp_path: Path) -> None:
    """Open until somebody decides again; what was typed before brings its points back."""
    marked(tmp_path, table(RECORD, typed()))
    change(tmp_path / "out/answer-marks.csv", "2", "7")
    other = {**typed(), "2": (typed()["1"][0], "N")}
    for _ in range(2):
        done = marked(tmp_path, table(RECORD, other))
        (row,) = (row for row in read(tmp_path / "out/look-at.csv") if row["id"] == "2")
        assert (row["changed"], row["counts"], row["given"]) == ("", "", "7")
        assert row["given_for"].removeprefix("'") == f"{typed()['2'][0]} N"
        assert any("7 points were given by hand for" in each for each in done.remarks)
        assert done.changed == 0
    assert marked(tmp_path, table(RECORD, typed())).changed == 1
    marked(tmp_path, table(RECORD, other))
    change(tmp_path / "out/look-at.csv", "2", "3")
    done = marked(tmp_path, table(RECORD, other))
    assert (done.changed, done.remarks) == (1, ())
    assert {row["id"] for row in read(tmp_path / "out/look-at.csv")} == {"6", "7"}


def test_papers_that_are_not_in_this_table_keep_their_points(tmp_path: Path) -> None:
    """2 and 6 have points by hand, 5 was absent, 7 is open: only 1 and 3 are typed again."""
    marked(tmp_path, table(RECORD, typed()))
    change(tmp_path / "out/answer-marks.csv", "2", "7")
    change(tmp_path / "out/look-at.csv", "6", "2,5")
    fewer = {id: typed()[id] for id in ("1", "3")}
    for _ in range(2):
        done = marked(tmp_path, table(RECORD, fewer))
        sums = {row["id"]: row["sum of 8"] for row in read(tmp_path / "out/marks.csv")}
        assert list(sums) == ["1", "3", "2", "4", "5", "6", "7", "8"]
        assert [sums[id] for id in ("2", "5", "6", "7")] == ["7", "0", "2.5", "0"]
        assert [row["id"] for row in read(tmp_path / "out/look-at.csv")] == ["7"]
        assert (done.papers, done.changed, done.look_at) == (2, 2, 1)
        assert any("have no row: 6" in each for each in done.remarks)
    assert marked(tmp_path, table(RECORD, typed())).changed == 2


def test_nothing_is_written_where_a_changed_mark_is_none(tmp_path: Path) -> None:
    text = table(RECORD, typed())
    marked(tmp_path, text)
    change(tmp_path / "out/answer-marks.csv", "2", "9")
    before = {path: path.read_bytes() for path in (tmp_path / "out").iterdir()}
    with pytest.raises(InputError, match="points from 0 to 8"):
        marked(tmp_path, text)
    assert {path: path.read_bytes() for path in (tmp_path / "out").iterdir()} == before


def test_the_same_answers_give_the_same_bytes(tmp_path: Path) -> None:
    text = table(RECORD, typed())
    marked(tmp_path, text)
    tables = [path for path in (tmp_path / "out").iterdir() if path.name != LIST]
    before = {path: path.read_bytes() for path in tables}
    marked(tmp_path, text)
    assert {path: path.read_bytes() for path in before} == before
    assert read(tmp_path / "out/changes.csv") == []


def test_feedback_of_an_earlier_marking_is_told(tmp_path: Path) -> None:
    text = table(RECORD, typed())
    assert marked(tmp_path, text).stale is None
    (tmp_path / "out/feedback").mkdir()
    assert marked(tmp_path, text).stale == tmp_path / "out/feedback"


def test_a_table_without_papers_changes_nothing(tmp_path: Path) -> None:
    marked(tmp_path, table(RECORD, typed()))
    before = {path: path.read_bytes() for path in (tmp_path / "out").iterdir()}
    done = marked(tmp_path, table(RECORD, {}))
    assert (done.papers, done.look_at) == (0, 2)
    assert any("no paper is marked" in each for each in done.remarks)
    again = {path: path.read_bytes() for path in before}
    changed = {path.name for path in before if before[path] != again[path]}
    assert changed == {LIST}  # which names changes.csv now


def test_without_matplotlib_all_but_the_page_is_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "matplotlib", None)
    done = marked(tmp_path, table(RECORD, typed()))
    assert any("matplotlib is not installed" in remark for remark in done.remarks)
    assert (tmp_path / "out/class.txt").is_file()
    assert not (tmp_path / "out/class.pdf").exists()


def test_a_departments_rules_and_headings(tmp_path: Path) -> None:
    rules = tmp_path / "rules.toml"
    rules.write_text(
        '[marking]\nsign = 0.25\n[marking.columns]\n"Id" = "id"\n"=Week 1" = "sum"\n',
        encoding="utf-8",
    )
    marked(tmp_path, table(RECORD, typed()))
    mark_class(tmp_path / "record.json", tmp_path / "answers.csv", tmp_path / "own", rules)
    sums = {row["Id"]: row["'=Week 1"] for row in read(tmp_path / "own/marks.csv")}
    assert (sums["1"], sums["2"]) == ("8", "2")
    (sheet,) = read_sheets((tmp_path / "own/marks.xlsx").read_bytes(), "marks")
    assert sheet.rows[:2] == (("Id", "=Week 1"), ("1", 8.0))


def test_another_tolerance_changes_who_is_near(tmp_path: Path) -> None:
    """The first number is 3 % too large: right within 5 %, not within the usual 2 %."""
    near = {**typed(), "1": (f"{1.03 * tension(RECORD, '1'):.4g}", "N")}
    first = marked(tmp_path, table(RECORD, near))
    assert first.moved is None
    assert not (tmp_path / "out/changes.csv").exists()
    change(tmp_path / "out/answer-marks.csv", "2", "7")
    rules = tmp_path / "rules.toml"
    rules.write_text("[marking]\ntolerance = 0.05\n", encoding="utf-8")
    files = (tmp_path / "record.json", tmp_path / "answers.csv", tmp_path / "out")
    done = mark_class(*files, rules)
    (own,) = read(tmp_path / "out/changes.csv")
    assert (own["id"], own["verdict"], own["counts"]) == ("1", "right", "8")
    assert done.moved is not None
    assert (done.moved.papers, done.moved.most) == (1, Decimal(own["by"]))
    assert mark_class(*files, rules).moved == Moved(0, Decimal(0), Decimal(0))
