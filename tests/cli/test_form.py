"""`probgen form`, as a user runs it."""

from pathlib import Path

from probgen.course.record_file import write_record
from probgen.input.workbook import read_sheets
from tests.cli.conftest import Run
from tests.terms import begun, class_of


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
