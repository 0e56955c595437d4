"""`probgen new`, and the first build of a course as it stands."""

import shlex
from pathlib import Path

from tests.cli.conftest import Run


def test_a_course_is_built_as_it_stands_by_the_line_that_new_tells(
    run: Run, tmp_path: Path
) -> None:
    made = run("new", "my course")
    assert made.exit_code == 0, made.output
    (line,) = [row for row in made.output.splitlines() if "--draft" in row]
    words = shlex.split(line)
    built = run(*words[words.index("build") :])
    assert built.exit_code == 0, built.output
    assert "is the invented class of a new course; put yours there" in built.output
    folder = tmp_path / "my course" / "week-1" / "output"
    assert len(list((folder / "sheets").glob("*.pdf"))) == 12
    roster = tmp_path / "my course" / "roster.csv"
    roster.write_text("name,id\nAda,1\n")
    again = run(*words[words.index("build") : -1])
    assert again.exit_code == 0, again.output
    assert "invented class" not in again.output
    assert [path.name[:3] for path in (folder / "sheets").glob("*.pdf")] == ["ada"]


def test_what_is_there_is_told_and_nothing_left_to_make_is_a_fault(run: Run) -> None:
    Path("course").mkdir()
    Path("course/house.toml").write_text('text = "sans"\n')
    assert "house.toml is there already" in run("new", "course").output
    again = run("new", "course")
    assert again.exit_code == 1
    assert "a folder that is no course yet" in again.output
