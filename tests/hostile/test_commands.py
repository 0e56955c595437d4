"""Texts and places given to commands that go on from a record."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from probgen.bank.bank import default_bank
from probgen.cli import main
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.record_file import write_record
from probgen.course.roster import Student
from probgen.draws.draw import draw
from tests.records import Column, record_of

Run = Callable[..., Result]
STUDENTS = (Student("Ada Quill", "7"), Student("Bo Ray", "8"))
CODES = ("ABCD-EFGH", "JKMN-PQRS")


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs a command line in a folder that holds the record of a class, in week/."""
    template = default_bank().read("seesaw-two-riders")
    draws = [draw(template, "spring", each.id) for each in STUDENTS]
    problem_set = ProblemSet("M", "W", "class.csv", (Assigned(template.id, 8),))
    column = Column(template.id, template.source, draws)
    (tmp_path / "week").mkdir()
    record = write_record(record_of(problem_set, STUDENTS, CODES, [column]))
    (tmp_path / "week" / "record.json").write_text(record, encoding="utf-8")
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
    (tmp_path / "class.csv").write_text("name,id\nAda Quill,7\nBo Ray,8\n")
    (tmp_path / "week.toml").write_text(
        'course = "M"\ntitle = "Anew"\nroster = "class.csv"\n'
        '[[problem]]\ntemplate = "seesaw-two-riders"\npoints = 8\n'
    )
    result = run("build", "week.toml", "--out", "week", "--correct", text)
    assert result.exit_code == 1
    assert "--correct\n" in result.output
    assert (tmp_path / "week" / "record.json").read_bytes() == before
