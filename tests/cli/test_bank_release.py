"""A bank from its first day to a release, and assignments built from that for ever after."""

import json
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from probgen.course.secret import write_secret
from tests.banks import make_ready, put, put_ready, ready_text, template_text, without_origin
from tests.cli.conftest import FilesIn, Run

ARM, SEESAW = "forearm-load", "seesaw-two-riders"
SET = """
course = "Mechanics"
title = "Week 3"
roster = "class.csv"
bank = "statics-2027.1"
seed = "spring term, section 2"
[[problem]]
template = "forearm-load"
points = 10
"""


def fill_in(path: Path) -> None:
    """What an author adds to a template that was taken in."""
    goals = 'goals = ["torque balance about a joint"]'
    text = re.sub(r"(?ms)^goals = \[.*?\]$", goals, path.read_text())
    path.write_text(re.sub(r"(?m)^author = .*$", 'author = "Ada Quill"', text))


def release(run: Run, name: str, day: str, *more: str) -> str:
    words = ("bank", "release", "statics", name, "--by", "A. Keeper", "--date", day)
    made = run(*words, "--draws", "50", *more)
    assert made.exit_code == 0, made.output
    return made.output


def approve(run: Run, *ids: str) -> None:
    words = ("--verdict", "approved", "--by", "A. Reader", "--date", "2027-08-01")
    given = run("bank", "review", "statics", *ids, *words)
    assert given.exit_code == 0, given.output


def test_an_assignment_gets_the_release_it_names_for_ever(
    run: Run, files_in: FilesIn, tmp_path: Path
) -> None:
    run("bank", "new", "statics")
    run("bank", "import", "statics", SEESAW)
    bank = tmp_path / "statics"
    put(bank, ARM)
    for path in bank.rglob("r1.toml"):
        fill_in(path)
    approve(run, ARM, SEESAW)
    draft = release(run, "statics-2027.1", "2027-08-15", "--draft")
    assert f"    {ARM} r1" in draft
    assert not (bank / "releases").exists()
    release(run, "statics-2027.1", "2027-08-15")
    course = tmp_path / "course"
    course.mkdir()
    (course / "class.csv").write_text("Name,ID\nAda Quill,s_7\n")
    (course / "week-3.toml").write_text(SET)
    write_secret(course)
    assert run("build", "course/week-3.toml", "--out", "one").exit_code == 0
    text = (
        (bank / "templates" / ARM / "r1.toml").read_text().replace("revision = 1", "revision = 2")
    )
    put(bank, ARM, 2, text.replace("90 + muscle_angle", "90 - muscle_angle"))
    approve(run, ARM)
    told = release(run, "statics-2027.2", "2027-09-15")
    assert f"other physics: {ARM} (r1 -> r2)" in told
    assert run("build", "course/week-3.toml", "--out", "two").exit_code == 0
    assert files_in(tmp_path / "one") == files_in(tmp_path / "two")
    (course / "class.csv").write_text("Name,ID\nBen Stone,s_8\n")
    revisions = []
    for name, out in (("2027.1", "three"), ("2027.2", "four")):
        (course / "week-3.toml").write_text(SET.replace("2027.1", name))
        built = run("build", "course/week-3.toml", "--out", out)
        assert built.exit_code == 0, built.output
        record = (tmp_path / out / "record.json").read_text("utf-8")
        assert ("90 - muscle_angle" in record) == (name == "2027.2")
        (paper,) = json.loads(run("trace", "s_8", out, "--json").output)["papers"]
        revisions.append(paper["problems"][0]["revision"])
    assert revisions == [1, 2]


def no_bank(bank: Path) -> None:
    (bank / "bank.toml").unlink()


def half_merged_bank(bank: Path) -> None:
    (bank / "bank.toml").write_text("<<<<<<< mine\n" + (bank / "bank.toml").read_text())


def half_merged_reviews(bank: Path) -> None:
    (bank / "reviews.csv").write_text("<<<<<<< mine\n" + (bank / "reviews.csv").read_text())


def half_merged_template(bank: Path) -> None:
    put_ready(bank, ARM, 2, "<<<<<<< mine\n" + ready_text(ARM, 2))


def two_r3(bank: Path) -> None:
    put(bank, ARM, 3)
    (bank / "templates" / ARM / "r3 (1).toml").write_text(ready_text(ARM, 3))


def two_files_say_r3(bank: Path) -> None:
    put(bank, ARM, 3, ready_text(ARM, 3))
    put(bank, ARM, 4, ready_text(ARM, 3))


def edited_release(bank: Path) -> None:
    path = bank / "releases" / "statics-2027.1.toml"
    path.write_text(path.read_text().replace("A. Keeper", "A. Cook"))


def unreadable_day(bank: Path) -> None:
    path = bank / "reviews.csv"
    path.write_text(path.read_text().replace("2027-05-03", "3.5.27", 1))


SPOILT: list[tuple[Callable[[Path], None], str]] = [
    (no_bank, "probgen bank new statics"),
    (half_merged_bank, "two changes of the same lines were not merged"),
    (half_merged_reviews, "two changes of the same lines were not merged"),
    (half_merged_template, "two changes of the same lines were not merged"),
    (two_r3, "r1.toml, r2.toml and so on"),
    (two_files_say_r3, "revision 4, as the bank statics has it"),
    (edited_release, "a release that was edited"),
    (unreadable_day, "line 2, date"),
]


@pytest.mark.parametrize(("spoil", "said"), SPOILT, ids=lambda case: getattr(case, "__name__", ""))
def test_a_spoilt_bank_gets_one_clear_message(
    run: Run, files_in: FilesIn, spoil: Callable[[Path], None], said: str
) -> None:
    bank = make_ready(Path("statics"))
    release(run, "statics-2027.1", "2027-08-15")
    spoil(bank)
    before = files_in(bank)
    refused = run("bank", "release", "statics", "statics-2027.2", "--by", "A. Keeper",
                  "--date", "2027-09-15", "--draws", "50")  # fmt: skip
    assert refused.exit_code == 1
    assert refused.stderr.startswith("1 problem:")
    assert said in refused.stderr
    assert files_in(bank) == before


def test_a_release_is_refused_with_every_reason(run: Run) -> None:
    run("bank", "new", "statics")
    Path("own.toml").write_text(without_origin(template_text(ARM)), "utf-8")
    run("bank", "import", "statics", "own.toml", SEESAW)
    approve(run, ARM)
    refused = run("bank", "release", "statics", "2027", "--by", "A. Keeper", "--draft")
    assert refused.exit_code == 1
    assert f"not taken: {SEESAW} r1, not proposed" in refused.stdout
    for said in ("statics: release", "origin.licence", "goals 2"):
        assert said in refused.stderr
    assert run("bank", "release", "statics", "2027").exit_code == 2
