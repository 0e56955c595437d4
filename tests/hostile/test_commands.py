"""Texts and places given to commands that go on from a record."""

import errno
import os
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from probgen.cli import main
from probgen.course.record_file import write_record
from tests.terms import begun, class_of

Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs a command line in a folder that holds the record of a class, in week/."""
    (tmp_path / "week").mkdir()
    (tmp_path / "week" / "record.json").write_text(write_record(begun(class_of(2))), "utf-8")
    monkeypatch.chdir(tmp_path)

    def invoke(*words: str) -> Result:
        result = CliRunner().invoke(main, list(words))
        assert result.exception is None or isinstance(result.exception, SystemExit), result
        return result

    return invoke


UNFIT = {"a command to a terminal": "\x1b[2J", "half a character": "\udcff", "blank": "\u200b "}


@pytest.mark.parametrize("text", [*UNFIT.values(), "long " * 300], ids=[*UNFIT, "long"])
def test_a_note_on_solutions_is_a_text(text: str, run: Run, tmp_path: Path) -> None:
    result = run("solutions", "week", "--note", text)
    assert result.exit_code == 1
    assert "--note\n" in result.output
    assert "mend" in result.output
    assert not (tmp_path / "week-solutions").exists()


@pytest.mark.parametrize("text", [*UNFIT.values(), "long " * 300], ids=[*UNFIT, "long"])
def test_a_correction_is_a_text(text: str, run: Run, tmp_path: Path) -> None:
    """It is kept in the record, which nobody could read afterwards."""
    before = (tmp_path / "week" / "record.json").read_bytes()
    (tmp_path / "class.csv").write_text("name,id\nStudent 1,1\nStudent 2,2\n")
    (tmp_path / "week.toml").write_text(
        'course = "M"\ntitle = "Anew"\nroster = "class.csv"\n'
        '[[problem]]\ntemplate = "seesaw-two-riders"\npoints = 8\n'
    )
    result = run("build", "week.toml", "--out", "week", "--correct", text)
    assert result.exit_code == 1
    assert "--correct\n" in result.output
    assert (tmp_path / "week" / "record.json").read_bytes() == before


def test_papers_and_keys_are_printed_over_nobody_s_file(run: Run, tmp_path: Path) -> None:
    """The class list, the record, a sheet with somebody's marks on it."""
    (tmp_path / "class.csv").write_text("name,id")
    for path in ("class.csv", "week/record.json"):
        before = (tmp_path / path).read_bytes()
        result = run("trace", "1", "week", "--key", path)
        assert result.exit_code == 1
        assert "a file that probgen has not written" in result.output
        assert (tmp_path / path).read_bytes() == before
    for command in (("reprint", "week", "1"), ("trace", "1", "week", "--key", "key.pdf")):
        assert run(*command).exit_code == 0
        (sheet,) = (path for path in tmp_path.glob("*.pdf") if command[0] != "trace"
                    or path.name == "key.pdf")  # fmt: skip
        assert run(*command).exit_code == 0  # as it was written
        sheet.write_bytes(marked := sheet.read_bytes() + b"% marked")
        result = run(*command)
        assert result.exit_code == 1
        assert "changed since" in result.output
        assert sheet.read_bytes() == marked
        sheet.unlink()


def test_the_form_is_written_through_no_link_and_whole(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "linked").mkdir()
    (tmp_path / "linked" / "answer-form.csv").symlink_to(tmp_path / "elsewhere")
    assert run("form", "week", "--out", "linked").exit_code == 1
    assert not (tmp_path / "elsewhere").exists()
    (tmp_path / "file").write_text("mine")
    assert run("form", "week", "--out", "file").exit_code == 1

    def full(self: Path, target: Path) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", full)
        result = run("form", "week", "--out", "form")
    assert result.exit_code == 3
    assert "answer-form.csv" in result.output
    assert list((tmp_path / "form").iterdir()) == []
    assert run("form", "week", "--out", "form").exit_code == 0


def test_marks_are_written_over_nobody_s_file(run: Run, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text("the term's marks")
    (tmp_path / "class.txt").write_text("notes on the class")
    assert run("form", "week").exit_code == 0
    result = run("mark", "week", "answer-form.csv", "--out", ".")
    assert result.exit_code == 1
    assert result.output.count("a file that no marking has written") == 2
    assert (tmp_path / "marks.csv").read_text() == "the term's marks"
    assert not (tmp_path / "answer-marks.csv").exists()
    for _ in range(2):
        assert run("mark", "week", "answer-form.csv", "--out", "marks").exit_code == 0
