"""A record printed into its folder: chunks that follow from the class alone, and whole PDFs."""

from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest

from probgen.build import delivery, joined_pdfs
from probgen.build.build import build_assignment
from probgen.build.delivery import chunks_of
from probgen.build.workers import Crew
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.record import Assignment, Record
from probgen.course.roster import Student
from probgen.draws.draw import Draw
from probgen.papers.typesetter import Kind

SET = ProblemSet("Mechanics", "Week 3", "class.csv", (Assigned("shelf", 8),))
ASSIGNMENT_FILE = """
course = "M"
title = "W"
roster = "class.csv"
seed = "s"
print.duplex = false
[[problem]]
template = "seesaw-two-riders"
points = 1
"""


def record_of(students: int) -> Record:
    people = tuple(Student(f"Student {n}", str(n)) for n in range(students))
    draws = tuple(Draw("shelf", 1, {}) for _ in people)
    codes = tuple(f"C{n}" for n in range(students))
    return Record("s", SET, people, codes, (Assignment("shelf", "", draws),))


@pytest.mark.parametrize(
    ("students", "sizes"),
    [(1, [1]), (12, [6, 6]), (26, [7, 7, 7, 5]), (101, [13] * 7 + [10]), (300, [25] * 12)],
)
def test_chunks_follow_from_the_size_of_the_class(students: int, sizes: list[int]) -> None:
    record = record_of(students)
    chunks = chunks_of(record)
    assert [len(chunk.versions) for chunk in chunks] == sizes
    assert sum((chunk.versions for chunk in chunks), ()) == record.versions
    assert all(len(chunk.draws[0]) == len(chunk.versions) for chunk in chunks)


def test_another_draw_changes_no_chunk_but_its_own() -> None:
    record = record_of(30)
    (assignment,) = record.assignments
    draws = (*assignment.draws[:-1], Draw("shelf", 2, {}))
    other = chunks_of(replace(record, assignments=(replace(assignment, draws=draws),)))
    assert other[:-1] == chunks_of(record)[:-1]
    assert other[-1] != chunks_of(record)[-1]


def pages(path: Path) -> int:
    with pikepdf.open(path) as pdf:
        return len(pdf.pages)


def test_a_large_class_gets_its_whole_pdfs_in_volumes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    roster = "name,id\n" + "".join(f"Student {n},{n}\n" for n in range(7))
    (tmp_path / "class.csv").write_text(roster)
    (tmp_path / "assignment.toml").write_text(ASSIGNMENT_FILE)
    told: list[tuple[str, int, int]] = []
    for name, value in {"_LEAST": 1, "_AT_ONCE": 1, "_MOST": 3}.items():
        monkeypatch.setattr(delivery, name, value)
    monkeypatch.setattr(joined_pdfs, "CHUNKS_A_VOLUME", 2)
    out = tmp_path / "out"
    built = build_assignment(
        tmp_path / "assignment.toml", out, None, Crew(1), lambda *stage: told.append(stage)
    )
    for kind in ("sheets", "keys"):
        whole = [pages(out / f"all-{kind}-{volume}.pdf") for volume in ("01", "02")]
        alone = [pages(path) for path in sorted((out / kind).iterdir())]
        assert whole == [sum(alone[:6]), sum(alone[6:])]
    assert [path.name for path in built.together(Kind.SHEETS)] == [
        "all-sheets-01.pdf",
        "all-sheets-02.pdf",
    ]
    assert [done for stage, done, total in told if stage == "students"] == [0, 3, 6, 7]
