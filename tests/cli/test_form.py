"""`probgen form`, as a user runs it."""

from pathlib import Path

from probgen.course.record_file import write_record
from probgen.input.workbook import read_sheets
from tests.cli.conftest import Run
from tests.terms import begun, class_of, masses


def test_the_form_is_written_twice_and_never_over_another(run: Run, tmp_path: Path) -> None:
    record = begun(class_of(2))
    (tmp_path / "record.json").write_text(write_record(record), encoding="utf-8")
    done = run("form", ".", "--out", "form")
    assert done.exit_code == 0, done.stderr
    lines = (tmp_path / "form/answer-form.csv").read_text(encoding="utf-8-sig").splitlines()
    assert lines[0] == "code,id,name,1 T,1 T unit"
    assert lines[1] == f"{record.editions[0].code},1,Student 1,,"
    (sheet,) = read_sheets((tmp_path / "form/answer-form.xlsx").read_bytes(), "form")
    assert sheet.rows[1] == (record.editions[0].code, "1", "Student 1")

    (tmp_path / "form/answer-form.csv").write_text("typed already", encoding="utf-8")
    again = run("form", "record.json", "--out", "form")
    assert again.exit_code == 1
    assert "somebody may have typed into it" in again.stderr
    assert (tmp_path / "form/answer-form.csv").read_text(encoding="utf-8") == "typed already"


def test_a_filled_form_is_marked_and_what_is_wrong_with_one_is_told(
    run: Run, tmp_path: Path
) -> None:
    record = begun(class_of(2))
    (tmp_path / "record.json").write_text(write_record(record), encoding="utf-8")
    weight = float(masses(record)["1"]) * 9.8
    rows = f"code,id,name,1 T,1 T unit\n,1,,{weight / 2:.3g},N\n,2,,1 or 2,N\n"
    (tmp_path / "typed.csv").write_text(rows, encoding="utf-8")
    done = run("mark", ".", "typed.csv", "--out", "marks")
    assert done.exit_code == 0, done.stderr
    assert "2 papers marked in marks" in done.stdout
    assert "1  right" in done.stdout
    assert "to look at: 1 answer in marks/look-at.csv" in done.stdout
    assert "by hand" not in done.stdout

    marks = tmp_path / "marks/answer-marks.csv"
    head, *lines = marks.read_text(encoding="utf-8-sig").splitlines()
    column = head.split(",").index("changed")
    first = lines[0].split(",")
    lines[0] = ",".join([*first[:column], "1.5", *first[column + 1 :]])
    marks.write_text("\n".join([head, *lines]), encoding="utf-8-sig")
    again = run("mark", ".", "typed.csv", "--out", "marks")
    assert again.exit_code == 0, again.stderr
    assert " 1  points changed by hand\n" in again.stdout

    (tmp_path / "typed.csv").write_text(rows.replace(",2,", ",1,"), encoding="utf-8")
    refused = run("mark", ".", "typed.csv", "--out", "other")
    assert refused.exit_code == 1
    assert "one row a paper" in refused.stderr
    assert not (tmp_path / "other").exists()
