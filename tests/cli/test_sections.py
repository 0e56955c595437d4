"""A class of two sections, from the files to the papers: problems, days, piles, late students."""

import csv
import re
from pathlib import Path

import pdfplumber
import pytest

from tests.cli.conftest import FilesIn, Run

SET = """
course = "Mechanics"
title = "Week 5"
roster = "class.csv"
due = "5 May"
[due_in]
B = "6 May"
[[problem]]
template = "seesaw-two-riders"
points = 8
[[problem]]
template = "forearm-load"
points = 12
sections = ["B"]
[print]
by_section = true
pad_keys = false
answers = true
pile_cover = true
"""
ROSTER = """Name,ID,Section,Accommodations
Ada Quill,s1,A,extra time 25%
Bea Ostrander,s2,B,
Cid Marlow,s3,A,
"""
LATE = "Dana Pell,s4,B,\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "class.csv").write_text(ROSTER, encoding="utf-8")
    (tmp_path / "assignment.toml").write_text(SET, encoding="utf-8")
    return tmp_path


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def texts(path: Path) -> list[str]:
    with pdfplumber.open(path) as opened:
        return [page.extract_text() for page in opened.pages]


def built(run: Run, *words: object) -> str:
    result = run("build", "assignment.toml", "--out", "out", "--workers", 1, *words)
    assert result.exit_code == 0, result.stderr
    return str(result.stdout)


def test_each_section_has_its_problems_its_day_its_piles_and_its_tables(
    run: Run, folder: Path, files_in: FilesIn
) -> None:
    told = built(run)
    assert "3 students x 1 to 2 problems" in told
    assert re.search(r"by section +a/, b/ in \S*out/sections", told)
    assert "Ada Quill (s1): extra time 25%" in told
    out = folder / "out"
    codes = {row["id"]: row for row in rows_of(out / "codes.csv")}
    assert [codes[id]["section"] for id in ("s1", "s2", "s3")] == ["A", "B", "A"]
    assert [codes[id]["needs"] for id in ("s1", "s2", "s3")] == ["extra time 25%", "", ""]
    for id, day, points in (("s1", "5 May", "Points /8"), ("s2", "6 May", "Points /20")):
        for kind in ("sheet", "key"):
            page = texts(out / codes[id][kind])[0]
            assert day in page
        assert points in " ".join(texts(out / codes[id]["sheet"]))
    problems = {(row["id"], row["problem"]) for row in rows_of(out / "answers.csv")}
    assert problems == {("s1", "1"), ("s2", "1"), ("s2", "2"), ("s3", "1")}
    for section, ids in (("a", {"s1", "s3"}), ("b", {"s2"})):
        own = out / "sections" / section
        assert {row["id"] for row in rows_of(own / "codes.csv")} == ids
        assert {row["id"] for row in rows_of(own / "answers.csv")} == ids
        assert all((own / row["key"]).resolve().is_file() for row in rows_of(own / "codes.csv"))
        pages = " ".join(texts(own / "all-sheets.pdf"))
        assert {id for id, row in codes.items() if row["code"] in pages} == ids
    assert "" not in texts(out / "all-keys.pdf"), "keys follow one another"
    assert "" in texts(out / "all-sheets.pdf"), "sheets begin on right-hand pages"
    cover = texts(out / "all-sheets.pdf")[0]
    assert "B: 6 May" in cover
    for row in codes.values():
        keys = texts(out / row["key_pile"])
        assert row["code"] in keys[int(row["key_page"]) - 1]
    again = run("build", "out/record.json", "--out", "again")
    assert again.exit_code == 0, again.stderr
    assert files_in(folder / "again") == files_in(out)


def test_a_late_student_of_a_section_and_a_correction(
    run: Run, folder: Path, files_in: FilesIn
) -> None:
    built(run)
    out = folder / "out"
    before = {row["id"]: row for row in rows_of(out / "codes.csv")}
    (folder / "class.csv").write_text(ROSTER + LATE, encoding="utf-8")
    assert "1 added, 0 moved, 0 left" in built(run)
    after = {row["id"]: row for row in rows_of(out / "codes.csv")}
    assert all(after[id]["code"] == before[id]["code"] for id in before)
    (new,) = [row for row in after.values() if row["id"] not in before]
    assert (out / "new-keys.pdf").exists()
    assert new["key_pile"] == "all-keys.pdf", "the next build has other new ones"
    fresh = " ".join(texts(out / "sections" / "b" / "new-sheets.pdf"))
    assert (new["section"], new["code"] in fresh) == ("B", True)
    assert before["s2"]["code"] not in fresh
    assert not (out / "sections" / "a" / "new-sheets.pdf").exists()
    (folder / "assignment.toml").write_text(SET.replace("6 May", "7 May"), encoding="utf-8")
    refused = run("build", "assignment.toml", "--out", "out", "--workers", 1)
    assert refused.exit_code == 1
    assert "B: 7 May" in refused.stderr
    built(run, "--correct", "section B has another day")
    rows = [row for row in rows_of(out / "codes.csv") if row["sheet"]]
    days = {row["id"]: texts(out / row["sheet"])[0] for row in rows}
    assert "7 May" in days["s2"]
    assert "7 May" in days["s4"]
    assert not {row["code"] for row in rows} & {row["code"] for row in after.values()}
    again = run("build", "out/record.json", "--out", "again")
    assert again.exit_code == 0, again.stderr
    assert files_in(folder / "again") == files_in(out)
    traced = run("trace", after["s1"]["code"], "out", "--json")
    assert traced.exit_code == 0, traced.stderr
    assert "forearm" not in traced.stdout


def test_who_changes_sections_is_told_what_the_paper_lacks(run: Run, folder: Path) -> None:
    built(run)
    moved = ROSTER.replace("s1,A", "s1,B").replace("s3,A", "s3,B")
    (folder / "class.csv").write_text(moved, encoding="utf-8")
    done = run("build", "assignment.toml", "--out", "out", "--workers", 1)
    lacking = "section B has forearm-load besides, another due date, 6 May"
    assert f"says Ada Quill, A, and stays as it is; {lacking}" in done.stderr
    assert "Ada Quill (s1), Cid Marlow (s3); --correct" in done.stdout
    built(run, "--another", "s1")
    told = built(run, "--correct", "your section is B")
    assert "--correct" not in told
    rows = {row["id"]: row for row in rows_of(folder / "out/codes.csv") if row["sheet"]}
    for id, corrected in (("s1", False), ("s3", True)):
        pages = " ".join(texts(folder / "out" / rows[id]["sheet"]))
        assert (rows[id]["section"], "6 May" in pages) == ("B", True)
        assert "Points /20" in pages
        assert ("your section is B" in pages) == corrected


def test_sections_that_there_are_not_stop_a_build(run: Run, folder: Path) -> None:
    wrong = SET.replace('["B"]', '["b"]').replace("B = ", "C = ")
    (folder / "assignment.toml").write_text(wrong, encoding="utf-8")
    result = run("build", "assignment.toml", "--out", "out")
    assert result.exit_code == 1
    assert all(words in result.stderr for words in ("problem 2", "due_in.C", 'did you mean "B"'))
    assert not (folder / "out").exists()
