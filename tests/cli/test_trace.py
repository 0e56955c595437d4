"""`probgen trace` and `probgen reprint`, from a code to what was printed under it."""

import json
from pathlib import Path

import pdfplumber
import pytest

from probgen.course.record_file import read_record
from tests.cli.conftest import Run


def text_of(path: Path) -> str:
    with pdfplumber.open(path) as pdf:
        return " ".join(page.extract_text() for page in pdf.pages)


def squeezed(text: str) -> str:
    """Without the spaces, which a PDF has by its looks."""
    return "".join(text.split()).replace("◦", "°").replace("∘", "°")


@pytest.fixture
def built(run: Run, assignment: Path) -> Path:
    """A class of two, built, with the first one's numbers changed on request afterwards."""
    assert run("build", assignment, "--out", "week").exit_code == 0
    done = run("build", assignment, "--out", "week", "--another", "s_7")
    assert done.exit_code == 0, done.stderr
    assert "other numbers, version 2" in done.stdout
    return assignment.parent / "week"


def test_a_paper_is_traced_and_printed_again(run: Run, built: Path) -> None:
    record = read_record(built / "record.json")
    first, other, second = record.editions
    assert (first.owner, second.owner, second.follows) == ("s_7", "s_7", first.code)

    told = run("trace", first.code)
    assert told.exit_code == 0, told.stderr
    assert f"{second.code} has taken its place" in told.stdout
    assert "seesaw-two-riders" in told.stdout

    found = json.loads(run("trace", other.code.lower(), built, "--json").stdout)
    (paper,) = found["papers"]
    key, table = text_of(built / paper["key"]["file"]), built / paper["key"]["pile"]
    assert other.code in key
    with pdfplumber.open(table) as pdf:
        assert other.code in pdf.pages[paper["key"]["page"] - 1].extract_text()
    for problem in paper["problems"]:
        for value in problem["values"].values():
            assert squeezed(value["printed"]) in squeezed(key)
        for answer in problem["answers"]:
            assert squeezed(answer["printed"].split(",")[0]) in squeezed(key)

    assert run("trace", second.code, built, "--key", "key.pdf").exit_code == 0
    assert text_of(built.parent / "key.pdf") == text_of(built / f"keys/{name_of(built, second)}")

    again = run("reprint", built, "s_8", "--out", "lost")
    assert again.exit_code == 0, again.stderr
    name = name_of(built, other)
    assert text_of(built.parent / "lost" / name) == text_of(built / "sheets" / name)
    old = run("reprint", built / "record.json", first.code, "--out", "lost")
    assert f"{second.code} has taken the place" in old.stderr
    (path,) = (built.parent / "lost").glob(f"*{first.code}.pdf")
    assert str(first.draws[0].values["mass_1"].value) in text_of(path)


def name_of(built: Path, edition: object) -> str:
    code = getattr(edition, "code", "")
    (path,) = (built / "sheets").glob(f"*{code}.pdf")
    return path.name


def test_what_is_not_there(run: Run, built: Path) -> None:
    code = read_record(built / "record.json").editions[0].code
    slip = run("trace", code[:-1] + ("2" if code[-1] != "2" else "3"), built)
    assert slip.exit_code == 1
    assert "mistyped" in slip.stderr
    assert run("reprint", built, "nobody").exit_code == 1
    other = run("build", "week-3.toml", "--out", "week", "--another", "s_9")
    assert other.exit_code == 1
    assert "newcomers get numbers of their own" in other.stderr
