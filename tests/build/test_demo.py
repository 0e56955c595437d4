"""The demonstration's files: good input themselves, and never written over an edit."""

from pathlib import Path

from probgen.build.demo import invent_roster, write_demo
from probgen.course.roster import parse_roster, read_roster
from probgen.course.setfile import read_set
from probgen.problem.catalogue import read_catalogue
from probgen.working.convention import Convention


def test_the_set_file_says_what_is_usual(tmp_path: Path) -> None:
    problem_set = read_set(write_demo(tmp_path))
    assert problem_set.convention == Convention()
    assert len(problem_set.problems) == 4
    assert {p.template for p in problem_set.problems} <= {e.id for e in read_catalogue()}
    assert len(read_roster(tmp_path / problem_set.roster)) == 12


def test_the_invented_class_is_always_the_same() -> None:
    assert invent_roster(30) == invent_roster(30)
    students = parse_roster(invent_roster(30), "roster.csv")
    assert invent_roster(12) == "\n".join(invent_roster(30).split("\n")[:14]) + "\n"
    assert len({student.name for student in students}) > 25


def test_what_is_there_stays(tmp_path: Path) -> None:
    (tmp_path / "set.toml").write_text("mine")
    write_demo(tmp_path)
    assert (tmp_path / "set.toml").read_text() == "mine"
    assert (tmp_path / "roster.csv").exists()
