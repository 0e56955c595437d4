"""What a build tells in a terminal, and what it says when something is missing."""

from dataclasses import replace
from pathlib import Path

import click
import pytest

from probgen.build.build import Built
from probgen.cli.summary import show_built
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.roster import Student
from probgen.draws.draw import Draw
from probgen.papers.chunk import Loss
from probgen.papers.typesetter import Kind
from tests.records import Column, record_of

OTHER = Loss(Kind.SHEETS, "02-bo", "Bo (2)", 1, "shelf", "TeX: a complaint")
LOSS = Loss(Kind.KEYS, "01-ada", "Ada (1)", 1, "shelf", "TeX: a complaint")


def built(folder: Path, files: list[str], exam: Exam | None = None, *losses: Loss) -> Built:
    for name in files:
        (folder / name).touch()
    problem_set = ProblemSet("M", "W", "class.csv", (Assigned("shelf", 1),), exam=exam)
    students = (Student("Ada", "1"), Student("Bo", "2"))
    codes = exam.letters if exam else "AB"
    column = Column("shelf", "", [Draw("shelf", 1, {})] * len(codes))
    record = record_of(problem_set, students, codes, [column])
    return Built(folder, record, ("numbers are shared",), losses)


def test_where_everything_is(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    files = ["all-sheets-01.pdf", "all-sheets-02.pdf", "all-sheets-03.pdf", "all-keys.pdf"]
    files += ["answers.csv", "codes.csv"]
    show_built(built(tmp_path, files), quiet=False)
    told = capsys.readouterr()
    assert told.out.replace(f"{tmp_path}/", "") == (
        f"2 students x 1 problem in {tmp_path}\n"
        "  to hand out   all-sheets-01.pdf to all-sheets-03.pdf, one by one in sheets/\n"
        "  to mark with  all-keys.pdf, one by one in keys/\n"
        "  all answers   answers.csv\n"
        "  all codes     codes.csv\n"
        "  to keep       record.json\n"
    )
    assert told.err == "remark: numbers are shared\n"


def test_an_exam_and_its_lists(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    files = ["all-sheets.pdf", "all-keys.pdf", "answers.csv", "answers.pdf", "answers.xlsx"]
    files += ["versions.csv", "versions.pdf"]
    show_built(built(tmp_path, files, Exam(4)), quiet=False)
    told = capsys.readouterr().out.replace(f"{tmp_path}/", "")
    assert told.startswith("4 versions for 2 students x 1 problem in")
    assert "all answers   answers.csv, answers.xlsx, answers.pdf\n" in told
    assert "who has which versions.csv, versions.pdf\n" in told


def test_a_table_that_was_edited_is_told_beside_what_was_built(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    show_built(replace(built(tmp_path, []), left=("codes.csv",)), quiet=True)
    told = capsys.readouterr()
    assert told.out == ""
    assert told.err.endswith(f"remark: {tmp_path}/codes.csv has been edited, and stays as it is\n")


@pytest.mark.parametrize(
    ("losses", "told_first"),
    [([LOSS], "1 document is missing"), ([LOSS, OTHER], "2 documents are missing")],
)
def test_what_is_missing_is_told_also_when_quiet(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], losses: list[Loss], told_first: str
) -> None:
    with pytest.raises(click.exceptions.Exit) as ended:
        show_built(built(tmp_path, [], None, *losses), quiet=True)
    assert ended.value.exit_code == 3
    told = capsys.readouterr()
    assert told.out == ""
    assert told_first in told.err
    assert all(str(loss) in told.err for loss in losses)
    assert "everybody keeps their numbers" in told.err


def test_where_nothing_could_be_printed_no_pdf_is_named(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(click.exceptions.Exit):
        show_built(built(tmp_path, ["all-sheets.pdf"], None, LOSS), quiet=False)
    told = capsys.readouterr().out
    assert "to hand out   " + str(tmp_path / "all-sheets.pdf") in told
    assert "to mark with  no keys, for none could be printed" in told
