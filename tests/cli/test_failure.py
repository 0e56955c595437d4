"""What fails outside, or for one student only: a clear message, exit code 3, nothing half-written.

Builds run in the test's own process (one worker), so that failures can be put into it.
"""

import errno
import os
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from probgen.build import delivery
from probgen.build.folder import Delivery, delivered
from probgen.course.record_file import read_record
from probgen.course.secret import SECRET
from probgen.draws.draw import Draw
from probgen.input.fault import Fault, InputError
from probgen.papers import chunk, page
from probgen.papers.page import Copy
from probgen.papers.typesetter import Kind, Typesetter
from probgen.press.batch import Document
from probgen.problem.problem import Problem, Worked, tell_steps, work
from probgen.wording.block import Section
from tests.cli.conftest import FilesIn, Run

ALONE = ("--workers", 1)


@pytest.fixture(autouse=True)
def _small_chunks(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(delivery, "_LEAST", 1)


def entries(folder: Path) -> set[str]:
    return {entry.name for entry in folder.iterdir()} - {SECRET}


@pytest.fixture
def undisturbed(run: Run, assignment: Path, files_in: FilesIn) -> dict[str, bytes]:
    assert run("build", assignment, "--out", "undisturbed", *ALONE).exit_code == 0
    return files_in(assignment.parent / "undisturbed")


def papers(built: dict[str, bytes]) -> list[str]:
    """The names of the two students' papers, in alphabetical order."""
    return [name.removeprefix("sheets/") for name in built if name.startswith("sheets/")]


def whose(built: dict[str, bytes], kind: str) -> list[str]:
    """The names of the papers of one kind, without their codes."""
    names = [name.removeprefix(f"{kind}/") for name in built if name.startswith(f"{kind}/")]
    return sorted(name.rsplit("-", 2)[0] for name in names)


def break_keys(monkeypatch: pytest.MonkeyPatch, students: set[str], template: str) -> None:
    """TeX meets an unknown command in these students' keys wherever that problem is worked."""
    write = Typesetter.document

    def broken(self: Typesetter, kind: Kind, copy: Copy) -> Document:
        document = write(self, kind, copy)
        ids = {problem.template.id for problem in copy.problems}
        if kind is Kind.KEYS and copy.version.student.id in students and template in ids:
            return replace(document, body=document.body + r"\oops ")
        return document

    monkeypatch.setattr(Typesetter, "document", broken)


def lost_key(files: dict[str, bytes]) -> str:
    """The key of the second student, which the tests below lose."""
    (name,) = (name for name in files if name.startswith("keys/") and "-s_8-" in name)
    return name


def test_one_key_that_tex_cannot_set_costs_that_key_only(
    run: Run,
    assignment: Path,
    files_in: FilesIn,
    undisturbed: dict[str, bytes],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    break_keys(monkeypatch, {"s_8"}, "forearm-load")
    result = run("build", assignment, *ALONE)
    assert result.exit_code == 3
    ada, zoe = papers(undisturbed)
    told = f"keys/{zoe}: Zoë Müller-Łukasz (s_8), problem 2 (forearm-load)"
    assert told in result.stderr
    assert "TeX: Undefined control sequence. (at: " in result.stderr
    assert "1 document is missing" in result.stderr
    built = files_in(assignment.parent / "week-3")
    assert told in built["missing.txt"].decode()
    assert undisturbed.keys() - built.keys() == {f"keys/{zoe}"}
    others = (f"sheets/{ada}", f"keys/{ada}")
    for name in ("answers.csv", "record.json", *others):
        assert built[name] == undisturbed[name]


def test_a_key_whose_working_cannot_be_told_costs_that_key_only(
    run: Run,
    assignment: Path,
    files_in: FilesIn,
    undisturbed: dict[str, bytes],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def untold(problem: Problem, own: Worked) -> tuple[Section, ...]:
        if (problem.template.id, own.draw) == ("forearm-load", drawn[1]):
            raise InputError([Fault("x.toml", "", "B = 0 N", "values that can be printed", "")])
        return tell_steps(problem, own)

    record = read_record(assignment.parent / "undisturbed" / "record.json")
    drawn = [edition.draws[1] for edition in record.editions]
    monkeypatch.setattr(page, "tell_steps", untold)
    result = run("build", assignment, "--out", "class", *ALONE)
    assert result.exit_code == 3
    _, zoe = papers(undisturbed)
    assert f"{zoe}: Zoë Müller-Łukasz (s_8), problem 2 (forearm-load)" in result.stderr
    assert "values that can be printed" in result.stderr
    built = files_in(assignment.parent / "class")
    assert undisturbed.keys() - built.keys() == {f"keys/{zoe}"}
    assert built[f"sheets/{zoe}"]


def test_a_complete_build_later_takes_the_list_of_what_is_missing_away(
    run: Run, assignment: Path, files_in: FilesIn, undisturbed: dict[str, bytes]
) -> None:
    with pytest.MonkeyPatch.context() as patch:
        break_keys(patch, {"s_8"}, "forearm-load")
        assert run("build", assignment, "--out", "class", *ALONE).exit_code == 3
    assert run("build", assignment, "--out", "class", *ALONE).exit_code == 0
    assert files_in(assignment.parent / "class") == undisturbed


def test_a_whole_chunk_that_cannot_be_set_costs_no_other(
    run: Run, assignment: Path, files_in: FilesIn, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two bad names in a short last chunk once stopped the class."""
    monkeypatch.setattr(delivery, "_LEAST", 2)
    roster = "Name;ID\n" + "".join(f"Student {n};s_{n}\n" for n in range(1, 5))
    (assignment.parent / "class.csv").write_text(roster)
    break_keys(monkeypatch, {"s_3", "s_4"}, "forearm-load")
    result = run("build", assignment, "--out", "class", *ALONE)
    assert result.exit_code == 3
    assert "2 documents are missing" in result.stderr
    built = files_in(assignment.parent / "class")
    assert whose(built, "keys") == ["student-1-s_1", "student-2-s_2"]
    assert "all-keys.pdf" in built
    assert len([name for name in built if name.startswith("sheets/")]) == 4


def test_sheets_are_delivered_also_where_no_key_can_be_set(
    run: Run, assignment: Path, files_in: FilesIn, monkeypatch: pytest.MonkeyPatch
) -> None:
    break_keys(monkeypatch, {"s_7", "s_8"}, "forearm-load")
    result = run("build", assignment, "--out", "class", *ALONE)
    assert result.exit_code == 3
    assert "no keys, for none could be printed" in result.stdout
    built = files_in(assignment.parent / "class")
    assert whose(built, "keys") == []
    assert "all-keys.pdf" not in built
    assert whose(built, "sheets") == ["ada-1-quill-jr-s_7", "zoë-müller-łukasz-s_8"]


def test_a_defect_of_the_program_costs_one_page(
    run: Run, assignment: Path, files_in: FilesIn, monkeypatch: pytest.MonkeyPatch
) -> None:
    write = Typesetter.document

    def broken(self: Typesetter, kind: Kind, copy: Copy) -> Document:
        if kind is Kind.KEYS and copy.version.student.id == "s_7":
            raise ZeroDivisionError("division by zero")
        return write(self, kind, copy)

    monkeypatch.setattr(Typesetter, "document", broken)
    result = run("build", assignment, "--out", "class", *ALONE)
    assert result.exit_code == 3
    assert "a defect of probgen, at line" in result.stderr
    assert "Traceback" not in result.stderr
    assert len([name for name in files_in(assignment.parent / "class") if name[0] in "sk"]) == 3


def test_when_nothing_can_be_set_nothing_is_delivered(
    run: Run, assignment: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write = Typesetter.document
    monkeypatch.setattr(
        Typesetter, "document", lambda *words: replace(write(*words), body=r"\oops")
    )
    result = run("build", assignment, "--out", "class", *ALONE)
    assert result.exit_code == 3
    assert "no sheet could be printed" in result.stderr
    assert "Undefined control sequence" in result.stderr
    assert "class" not in entries(assignment.parent)


def test_a_full_disk_loses_nothing_that_is_printed(
    run: Run,
    assignment: Path,
    files_in: FilesIn,
    undisturbed: dict[str, bytes],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    write = Path.write_bytes

    def full(path: Path, content: bytes) -> int:
        if path.name.startswith("zoë"):
            write(path, content[:100])
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), str(path))
        return write(path, content)

    with monkeypatch.context() as patch:
        patch.setattr(Path, "write_bytes", full)
        result = run("build", assignment, "--out", "class", *ALONE)
    assert result.exit_code == 3
    assert "No space left on device" in result.stderr
    assert "make room on the disk" in result.stderr
    assert "1 of 2 students are printed and kept; the same command goes on" in result.stderr
    assert "class" not in entries(assignment.parent)
    with monkeypatch.context() as patch:  # what is kept is not printed again
        patch.setattr(chunk, "work", worked_only(1))
        assert run("build", assignment, "--out", "class", *ALONE).exit_code == 0
    assert files_in(assignment.parent / "class") == undisturbed


def worked_only(students: int) -> Callable[[Problem, Sequence[Draw]], tuple[Worked, ...]]:
    """`work` that accepts so many students in all for each problem."""
    seen: dict[str, int] = {}

    def counted(problem: Problem, draws: Sequence[Draw]) -> tuple[Worked, ...]:
        id = problem.template.id
        seen[id] = seen.get(id, 0) + len(draws)
        assert seen[id] <= students, "printed again"
        return work(problem, draws)

    return counted


def test_two_builds_into_one_folder(run: Run, assignment: Path) -> None:
    with delivered(assignment.parent / "class", Delivery("{}")):
        before = entries(assignment.parent)
        result = run("build", assignment, "--out", "class", *ALONE)
        assert result.exit_code == 3
        assert "another build is writing to this folder" in result.stderr
        assert entries(assignment.parent) == before


@pytest.mark.skipif(not Path("/sys/kernel").is_dir(), reason="needs a folder closed even to root")
def test_a_folder_nobody_may_write_to(run: Run, assignment: Path) -> None:
    result = run("build", assignment, "--out", "/sys/kernel/class", *ALONE)
    assert result.exit_code == 3
    assert "name a folder you may write to with --out" in result.stderr
    assert entries(assignment.parent) == {"class.csv", "week-3.toml"}


@pytest.mark.parametrize(
    ("script", "told"),
    [
        ("echo 'pdfTeX 3.14159265-2.6-1.40.15 (TeX Live 2014)'", "TeX is too old: pdfTeX"),
        (None, "TeX is not installed"),
    ],
    ids=["too old", "missing"],
)
def test_tex_that_will_not_do(
    script: str | None, told: str, run: Run, assignment: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    programs = assignment.parent / "programs"
    programs.mkdir()
    if script:
        (programs / "pdflatex").write_text(f"#!/bin/sh\n{script}\n")
        (programs / "pdflatex").chmod(0o755)
    monkeypatch.setenv("PATH", str(programs))
    result = run("build", assignment, *ALONE)
    assert result.exit_code == 3
    assert told in result.stderr
    assert "mend" in result.stderr
    assert not (assignment.parent / "week-3").exists()
