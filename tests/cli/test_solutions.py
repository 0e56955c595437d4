"""`probgen solutions`: what students may see, and nothing else; a record for another class list."""

import csv
import json
from pathlib import Path

import pdfplumber
import pytest

from probgen.build.file_digest import file_digest
from probgen.build.manifest import MANIFEST
from probgen.course.record_file import read_record
from tests.cli.conftest import FilesIn, Run

FOR_GRADERS = ("Marks", "full marks", "What goes wrong", "Worked key", "Key ")


def pages_of(path: Path) -> list[str]:
    with pdfplumber.open(path) as pdf:
        return [page.extract_text() for page in pdf.pages]


@pytest.fixture
def built(run: Run, assignment: Path) -> Path:
    assert run("build", assignment, "--out", "week").exit_code == 0
    return assignment.parent / "week"


def test_students_see_the_working_and_no_marks(run: Run, built: Path, files_in: FilesIn) -> None:
    assert not any("solution" in name for name in files_in(built))
    made = run("solutions", built, "--workers", 1)
    assert made.exit_code == 0, made.stderr
    folder = built.with_name("week-solutions")
    record = read_record(built / "record.json")
    names = {f"{version.name}.pdf" for version in record.versions}
    assert set(files_in(folder)) == {*names, "all-solutions.pdf", ".made.json"}
    rows = list(csv.DictReader((built / "answers.csv").read_text("utf-8-sig").splitlines()))
    for edition in record.current:
        (path,) = folder.glob(f"*{edition.code}.pdf")
        text = "\n".join(pages_of(path))
        assert "Solutions" in text
        assert "Released after the due date." in text
        assert [word for word in FOR_GRADERS if word in text] == []
        squeezed = "".join(text.split())
        for row in rows:
            if row["code"] == edition.code and not row["angle_from_x"]:
                assert "".join(row["printed"].split()) in squeezed
    whole = pages_of(folder / "all-solutions.pdf")
    firsts = [number for number, text in enumerate(whole) if "page 1 of" in text]
    assert [next(e.code for e in record.current if e.code in whole[n]) for n in firsts] == [
        edition.code for edition in record.current
    ]
    assert all(number % 2 == 0 for number in firsts)  # on right-hand pages

    again = run("solutions", built / "record.json", "--out", folder, "--note", "Since 12 March.")
    assert again.exit_code == 0, again.stderr
    assert "Since 12 March." in pages_of(folder / "all-solutions.pdf")[0]
    assert "is kept in" not in again.stdout
    assert set(files_in(folder)) == {*names, "all-solutions.pdf", ".made.json"}


def test_solutions_of_somebody_else_are_kept_beside(run: Run, built: Path) -> None:
    folder = built.with_name("week-solutions")
    assert run("solutions", built).exit_code == 0
    (folder / "letter.tex").write_text("mine", encoding="utf-8")
    listed = json.loads((folder / MANIFEST).read_text(encoding="utf-8"))
    listed["letter.tex"] = file_digest(folder / "letter.tex")
    (folder / MANIFEST).write_text(json.dumps(listed), encoding="utf-8")
    again = run("solutions", built)
    assert again.exit_code == 0, again.stderr
    kept = folder.with_name("week-solutions.replaced-1")
    assert f"what was there is kept in {kept}\n" in again.stdout
    assert (kept / "letter.tex").read_text(encoding="utf-8") == "mine"


def test_no_page_says_that_a_day_is_past_which_lies_ahead(run: Run, assignment: Path) -> None:
    text = assignment.read_text(encoding="utf-8")
    assignment.write_text(f"due = 9999-03-05\n{text}", encoding="utf-8")
    assert run("build", assignment, "--out", "week").exit_code == 0
    refused = run("solutions", "week")
    assert refused.exit_code == 1
    assert "found     5 March 9999" in refused.stderr
    assert "--note" in refused.stderr
    folder = assignment.with_name("week-solutions")
    assert not folder.exists()
    assert run("solutions", "week", "--note", "Released early.").exit_code == 0
    assert "Released early." in pages_of(folder / "all-solutions.pdf")[0]


def test_a_record_takes_another_class_list(run: Run, built: Path, assignment: Path) -> None:
    before = read_record(built / "record.json")
    (assignment.parent / "later.csv").write_text("Name,ID\nNew Comer,s_9\nZoë Müller-Łukasz,s_8\n")
    for name in ("week-3.toml", "class.csv"):
        (assignment.parent / name).unlink()
    made = run("build", built / "record.json", "--roster", "later.csv", "--out", "week")
    assert made.exit_code == 0, made.stderr
    assert "1 added, 0 moved, 1 left" in made.stdout
    after = read_record(built / "record.json")
    assert after.printings[0] == before.printings[0]
    assert [edition.owner for edition in after.current] == ["s_9", "s_8"]
    assert len(list((built / "sheets").iterdir())) == 2
    wrong = run("build", "other.toml", "--roster", "later.csv")
    assert wrong.exit_code == 2
    assert "--roster is for a record.json" in wrong.stderr
