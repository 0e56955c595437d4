"""Drafts: built freely, marked on every page, and replaced by what is handed out."""

import csv
import json
from pathlib import Path

import pdfplumber
import pytest

from tests.cli.conftest import Run
from tests.terms import lamp


def rows_of(folder: Path) -> list[dict[str, str]]:
    with (folder / "answers.csv").open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


def numbers(folder: Path) -> dict[tuple[str, str], str]:
    return {(row["id"], row["answer"]): row["value"] for row in rows_of(folder)}


def values(folder: Path) -> list[str]:
    """What is asked of the papers, in their order."""
    return [row["value"] for row in rows_of(folder)]


def build(run: Run, assignment: Path, *words: object, points: int = 8) -> Path:
    text = assignment.read_text(encoding="utf-8").replace("points = 8", f"points = {points}")
    assignment.write_text(text, encoding="utf-8")
    result = run("build", assignment, "--out", "out", "--workers", 1, *words)
    assert result.exit_code == 0, result.stderr
    assert ("a draft" in result.stdout) == ("--draft" in words)
    assert ("to look at" in result.stdout) == ("--draft" in words)
    assert ("  to hand out" in result.stdout) != ("--draft" in words)
    return assignment.parent / "out"


@pytest.fixture
def draft(run: Run, assignment: Path) -> Path:
    """The folder of a draft."""
    return build(run, assignment, "--draft")


def test_every_page_of_a_draft_says_so(draft: Path) -> None:
    for kind in ("sheets", "keys"):
        for path in (draft / kind).iterdir():
            assert "draft-" in path.name.casefold()
            with pdfplumber.open(path) as opened:
                pages = [page.extract_text() for page in opened.pages]
            head = pages[0].replace("DRAFT-", "").split("\n")[:4]
            assert any("DRAFT" in line for line in head), "a mark of its own"
            assert all("DRAFT-" in page for page in pages)
    assert {row["code"][:6] for row in rows_of(draft)} == {"DRAFT-"}


def test_a_draft_is_built_again_and_replaced_whatever_has_changed(
    run: Run, assignment: Path, draft: Path
) -> None:
    before, codes = numbers(draft), {row["code"] for row in rows_of(draft)}
    build(run, assignment, "--draft", points=9)
    assert numbers(draft) == before
    build(run, assignment)
    assert numbers(draft) == before
    after = {row["code"] for row in rows_of(draft)}
    assert not any("DRAFT" in code for code in after)
    assert not after & codes
    assert len(json.loads((draft / "record.json").read_text("utf-8"))["printings"]) == 1
    again = run("build", assignment, "--out", "out", "--draft", "--workers", 1)
    assert again.exit_code == 1
    assert "papers that were handed out" in again.stderr
    assert "--draft --replace" in again.stderr
    assignment.write_text(assignment.read_text("utf-8").replace("points = 9", "points = 10"))
    refused = run("build", assignment, "--out", "out", "--workers", 1)
    assert refused.exit_code == 1
    assert "write on with --draft --replace" in refused.stderr


def test_a_draft_is_drawn_anew_by_another_seed_which_papers_in_hand_are_not(
    run: Run, assignment: Path, draft: Path
) -> None:
    before = numbers(draft)
    build(run, assignment, "--draft", "--seed", "a" * 16)
    other = numbers(draft)
    assert other.keys() == before.keys()
    assert other != before
    build(run, assignment, "--seed", "a" * 16)
    assert numbers(draft) == other
    for seed, told in (("a" * 16, False), ("b" * 16, True)):
        again = run("build", assignment, "--out", "out", "--seed", seed, "--workers", 1)
        assert again.exit_code == 0
        assert ("the seed stays that of" in again.stderr) is told
        assert numbers(draft) == other


@pytest.mark.parametrize("exam", [False, True])
def test_numbers_of_a_draft_stay_where_ranges_widen_but_an_exam_has_its_own(
    run: Run, assignment: Path, exam: bool
) -> None:
    """The version A of the exam is not the paper of the student A."""
    (assignment.parent / "class.csv").write_text("Name,ID\nAda,A\nBo,B\n", encoding="utf-8")
    text = 'course = "M"\ntitle = "W"\nroster = "class.csv"\nseed = "spring term, section 2"\n'
    problem = '[[problem]]\ntemplate = "lamp.toml"\npoints = 8\n'
    assignment.write_text(text + problem, encoding="utf-8")
    (assignment.parent / "lamp.toml").write_text(lamp(), encoding="utf-8")
    before = values(build(run, assignment, "--draft"))
    assert len({*before}) == 2
    (assignment.parent / "lamp.toml").write_text(lamp(low="1.0", high="9.0"), encoding="utf-8")
    if exam:
        assignment.write_text(f"{text}exam = {{ versions = 2 }}\n{problem}", encoding="utf-8")
    after = values(build(run, assignment, "--draft"))
    assert (after == before) is not exam


def test_trace_of_a_drafts_code_says_that_it_is_one(run: Run, draft: Path) -> None:
    code = rows_of(draft)[0]["code"]
    result = run("trace", code.lower(), draft)
    assert result.exit_code == 0, result.stderr
    assert "not handed out" in result.stdout
    (paper,) = json.loads(run("trace", code, draft, "--json").stdout)["papers"]
    assert paper["draft"] is True


def test_a_record_is_no_place_for_the_option(run: Run, tmp_path: Path) -> None:
    (tmp_path / "record.json").write_text("{}")
    assert run("build", "record.json", "--draft").exit_code == 2
