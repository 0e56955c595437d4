"""Places: nobody's file is lost to a command, and what cannot be done is told before the work."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from probgen.bank.supplied import supplied
from probgen.build.manifest import write_manifest
from probgen.cli import main
from probgen.course.record import RECORD
from probgen.course.record_file import write_record
from tests.terms import begun, class_of

TEMPLATE = supplied("templates") / "levers" / "seesaw-two-riders.toml"

Run = Callable[..., Result]


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    monkeypatch.chdir(tmp_path)

    def invoke(*words: str) -> Result:
        result = CliRunner().invoke(main, list(words))
        assert result.exception is None or isinstance(result.exception, SystemExit), result
        return result

    return invoke


@pytest.mark.parametrize("option", ["--pdf", "--html"])
@pytest.mark.parametrize("name", ["own.toml", "thesis.pdf", "page.html"])
def test_a_worked_problem_is_written_over_nobody_s_file(
    option: str, name: str, run: Run, tmp_path: Path
) -> None:
    path = tmp_path / name
    content = TEMPLATE.read_bytes() if name == "own.toml" else b"%PDF-1.5 years of work"
    path.write_bytes(content)
    result = run("work", name if path.suffix == ".toml" else "forearm-load", option, name)
    assert result.exit_code == 1
    assert f"{name}\n    found     a file that probgen has not written" in result.output
    assert "mend      name another file" in result.output
    assert path.read_bytes() == content


def test_figures_are_written_over_nobody_s_file(run: Run, tmp_path: Path) -> None:
    (folder := tmp_path / "figures").mkdir()
    (folder / "situation.svg").write_text("mine")
    result = run("work", "forearm-load", "--figures", "figures")
    assert result.exit_code == 1
    assert "situation.svg" in result.output
    assert [path.name for path in folder.iterdir()] == ["situation.svg"]
    assert (folder / "situation.svg").read_text() == "mine"


def test_a_worked_problem_is_written_again(run: Run, tmp_path: Path) -> None:
    for draw in "12":
        options = ("--draw", draw, "--html", "x.html", "--figures", "figures")
        assert run("work", "forearm-load", *options).exit_code == 0
    assert {path.name for path in tmp_path.iterdir()} == {"x.html", "figures"}


UNFIT = {
    ("--pdf", "/dev/null"): (1, "a device"),
    ("--html", "."): (1, "a folder"),
    ("--pdf", "file/x.pdf"): (1, "not a directory"),
    ("--figures", "file"): (1, "no folder"),
    ("--pdf", "n" * 300): (1, "name too long"),
    ("--pdf", "/proc/none/x.pdf"): (3, "/proc"),
}


@pytest.mark.parametrize(("option", "path"), UNFIT)
def test_a_place_where_nothing_can_be_put_is_told_before_the_work(
    option: str, path: str, run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def worked(*words: object, **more: object) -> None:
        raise AssertionError

    if path != "/proc/none/x.pdf":  # what root may do there, the system tells
        monkeypatch.setattr("probgen.problem.single.work_single", worked)
    (tmp_path / "file").write_text("mine")
    code, told = UNFIT[option, path]
    result = run("work", "forearm-load", option, path)
    assert (result.exit_code, "Traceback" in result.output) == (code, False)
    assert told in result.output
    assert (tmp_path / "file").read_text() == "mine"


def test_a_build_whose_record_is_gone_is_not_taken_for_a_new_one(run: Run, tmp_path: Path) -> None:
    """Everybody would get other numbers, and the papers in hand could be traced no more."""
    (folder := tmp_path / "week").mkdir()
    for name in (RECORD, "all-sheets.pdf"):
        (folder / name).write_text("built")
    write_manifest(folder)
    (folder / RECORD).unlink()
    (tmp_path / "class.csv").write_text("name,id\nAda,1\n")
    (tmp_path / "week.toml").write_text(
        'course = "M"\ntitle = "W"\nroster = "class.csv"\n'
        '[[problem]]\ntemplate = "seesaw-two-riders"\npoints = 8\n'
    )
    (tmp_path / "older.json").write_text(write_record(begun(class_of(2))), encoding="utf-8")
    for source in ("week.toml", "older.json"):
        result = run("build", source, "--out", "week")
        assert result.exit_code == 1
        assert "expected  the record of the papers that were built here" in result.output
        assert "put a copy of it back" in result.output
        assert "--replace" in result.output
    assert (folder / "all-sheets.pdf").read_text() == "built"
    assert run("build", "week.toml", "--out", "week", "--replace").exit_code == 0
    assert (folder / RECORD).is_file()
    assert (tmp_path / "week.replaced-1" / "all-sheets.pdf").read_text() == "built"
