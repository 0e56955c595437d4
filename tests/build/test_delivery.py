"""A record printed into its folder: chunks that follow from the class alone, and whole PDFs."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from probgen.build import delivery, joined_pdfs
from probgen.build.build import Built, build_assignment
from probgen.build.chunk_store import ChunkStore
from probgen.build.delivery import chunks_of
from probgen.build.progress import Report
from probgen.build.tables import write_csv
from probgen.build.workers import Crew
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.record import Record
from probgen.course.record_file import write_record
from probgen.course.roster import Student
from probgen.draws.draw import Draw
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError
from probgen.papers.answers import Row
from probgen.papers.chunk import Loss
from probgen.papers.typesetter import Kind
from probgen.press.split import Leaves
from probgen.quantities.expression import Number
from probgen.quantities.unit import METRE
from tests.records import Column, record_of

SET = ProblemSet("Mechanics", "Week 3", "class.csv", (Assigned("shelf", 8),))
ASSIGNMENT_FILE = """
course = "M"
title = "W"
roster = "class.csv"
seed = "spring term, section 2"
print.duplex = false
[[problem]]
template = "seesaw-two-riders"
points = 1
"""


def class_of(students: int) -> Record:
    people = [Student(f"Student {n}", str(n)) for n in range(students)]
    codes = [f"C{n}" for n in range(students)]
    return record_of(SET, people, codes, [Column("shelf", "", [Draw("shelf", 1, {})] * students)])


@pytest.mark.parametrize(
    ("students", "sizes"),
    [(1, [1]), (12, [6, 6]), (26, [7, 7, 7, 5]), (101, [13] * 7 + [10]), (300, [25] * 12)],
)
def test_chunks_follow_from_the_size_of_the_printing(students: int, sizes: list[int]) -> None:
    record = class_of(students)
    chunks = chunks_of(record)
    assert [len(chunk.versions) for chunk in chunks] == sizes
    assert sum((chunk.versions for chunk in chunks), ()) == record.versions
    assert all(chunk.wanted == {each.name for each in chunk.versions} for chunk in chunks)


def changed_last(record: Record, **changes: Any) -> Record:
    """The record with another last edition."""
    (printing,) = record.printings
    *others, last = printing.editions
    editions = (*others, replace(last, **changes))
    return replace(record, printings=(replace(printing, editions=editions),))


LONGER = Draw("shelf", 1, {"L": Number(Decimal("1.3"), METRE)})


@pytest.mark.parametrize(
    "changes",
    [{"draws": (LONGER,)}, {"large": True}, {"name": "Bo"}, {"code": "X"}],
    ids=str,
)
def test_another_edition_changes_no_chunk_but_its_own(changes: dict[str, Any]) -> None:
    record = class_of(30)
    other = chunks_of(changed_last(record, **changes))
    assert other[:-1] == chunks_of(record)[:-1]
    assert other[-1].id != chunks_of(record)[-1].id


def test_who_has_left_stays_in_the_chunk_and_is_not_wanted() -> None:
    record = class_of(12)
    smaller = replace(record, students=record.students[1:6])
    (chunk,) = chunks_of(smaller)
    assert (chunk.id, chunk.versions) == (chunks_of(record)[0].id, chunks_of(record)[0].versions)
    assert chunk.wanted == {version.name for version in smaller.versions}
    assert len(chunk.wanted) == 5


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
    monkeypatch.setattr(joined_pdfs, "PAPERS_A_VOLUME", 6)
    out = tmp_path / "out"
    file = tmp_path / "assignment.toml"
    built = build_assignment(file, out, Crew(1), lambda *stage: told.append(stage))
    for kind in ("sheets", "keys"):
        whole = [pages(out / f"all-{kind}-{volume}.pdf") for volume in ("01", "02")]
        alone = [pages(out / kind / f"{v.name}.pdf") for v in built.record.versions]
        assert whole == [sum(alone[:6]), sum(alone[6:])]
    assert [path.name for path in built.together(Kind.SHEETS)] == [
        "all-sheets-01.pdf",
        "all-sheets-02.pdf",
    ]
    assert [done for stage, done, total in told if stage == "students"] == [0, 3, 6, 7]
    told.clear()
    build_assignment(file, out, Crew(1), lambda *stage: told.append(stage))
    assert [done for stage, done, total in told if stage == "students"] == [7]  # none anew


LOST = Loss(Kind.SHEETS, "01-ada-1", "Ada (1)", 1, "shelf", "Undefined control sequence")


def test_what_is_missing_is_listed_unless_there_is_no_sheet(tmp_path: Path) -> None:
    path = tmp_path / "MISSING.txt"
    delivery._tell_losses(path, [], 4)
    assert not path.exists()
    delivery._tell_losses(path, [LOST, LOST], 4)
    assert path.read_text(encoding="utf-8") == f"{LOST}\n" * 2
    keys = [LOST._replace(kind=Kind.KEYS)] * 4
    delivery._tell_losses(path, keys, 4)
    assert path.read_text(encoding="utf-8").count("keys/") == 4
    with pytest.raises(OutsideError, match="no sheet could be printed"):
        delivery._tell_losses(path, [*keys, *[LOST] * 4], 4)


class Store:
    """Which chunks are kept."""

    def __init__(self, *kept: int) -> None:
        self.kept = kept

    def has(self, place: int) -> bool:
        return place in self.kept


@pytest.mark.parametrize(("kept", "told"), [((), []), ((0,), ["6 of 12"]), ((0, 1), ["12 of 12"])])
def test_a_stopped_build_says_what_is_kept_and_how_to_go_on(
    kept: tuple[int, ...], told: list[str]
) -> None:
    chunks = chunks_of(class_of(12))
    with (
        pytest.raises(RuntimeError) as caught,
        delivery._told_how_far(Store(*kept), chunks, "students"),  # type: ignore[arg-type]
    ):
        raise RuntimeError("full")
    notes = getattr(caught.value, "__notes__", [])
    assert [note.partition(" students")[0] for note in notes] == told
    assert all("goes on from there" in note for note in notes)


def test_an_exam_is_counted_in_versions() -> None:
    people = [Student(f"Student {n}", str(n)) for n in range(2)]
    draws = [Draw("shelf", 1, {})] * 2
    exam = record_of(replace(SET, exam=Exam(2)), people, ["A", "B"], [Column("shelf", "", draws)])
    assert delivery._stage(exam) == "versions"
    assert delivery._stage(class_of(2)) == "students"


def built_with(folder: Path) -> Built:
    (folder / "class.csv").write_text("name,id\nAda,1\nBo,2\n")
    (folder / "set.toml").write_text(ASSIGNMENT_FILE)
    return build_assignment(folder / "set.toml", folder / "out", Crew(1), lambda *stage: None)


def test_a_pile_that_lacks_a_paper_is_not_delivered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    leaves = ChunkStore.leaves

    def without_bo(self: ChunkStore, kind: Kind, name: str) -> Leaves | None:
        return None if name.startswith("bo") and kind is Kind.KEYS else leaves(self, kind, name)

    monkeypatch.setattr(ChunkStore, "leaves", without_bo)
    with pytest.raises(OutsideError, match=r"all-keys\.pdf lacks bo-2"):
        built_with(tmp_path)
    assert not (tmp_path / "out").exists()


def test_a_pile_with_other_pages_than_its_papers_is_not_delivered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    leaves = ChunkStore.leaves

    def miscounted(self: ChunkStore, kind: Kind, name: str) -> Leaves | None:
        found = leaves(self, kind, name)
        assert found
        return Leaves(found.source, found.first, (found.count or 0) + 5)

    monkeypatch.setattr(ChunkStore, "leaves", miscounted)
    with pytest.raises(OutsideError, match=r"all-sheets\.pdf has \d+ pages, and"):
        built_with(tmp_path)
    assert not (tmp_path / "out").exists()


def test_answers_that_lack_a_row_are_not_delivered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    rows = ChunkStore.rows

    def fewer(self: ChunkStore, name: str) -> Iterator[Row]:
        yield from list(rows(self, name))[1:]

    monkeypatch.setattr(ChunkStore, "rows", fewer)
    with pytest.raises(OutsideError, match=r"answers\.csv has \d rows for ada-1"):
        built_with(tmp_path)
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("table", ["answers.csv", "codes.csv"])
def test_a_table_cut_short_is_not_delivered(
    table: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def cut(path: Path, heads: Sequence[str], rows: Iterable[Sequence[object]]) -> None:
        write_csv(path, heads, list(rows)[path.name == table :])

    monkeypatch.setattr(joined_pdfs, "write_csv", cut)
    with pytest.raises(OutsideError, match=rf"{table} has \d rows, and \d were written"):
        built_with(tmp_path)
    assert not (tmp_path / "out").exists()


def test_a_paper_spoilt_while_the_piles_are_made_is_not_delivered(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write = joined_pdfs.Piles.write

    def spoiling(self: joined_pdfs.Piles, report: Report) -> tuple[str, ...]:
        remarks = write(self, report)
        next((self.folder / "sheets").glob("*.pdf")).write_bytes(b"%PDF")
        return remarks

    monkeypatch.setattr(joined_pdfs.Piles, "write", spoiling)
    with pytest.raises(OutsideError, match="something is not as it was"):
        built_with(tmp_path)
    assert not (tmp_path / "out").exists()


def test_a_record_that_nobody_could_read_again_is_not_built(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever reader let it through: without the record no paper could be traced or corrected."""

    def spoilt(record: Record) -> str:
        return write_record(record).replace('"title": "W"', r'"title": "W\u001b"')

    monkeypatch.setattr(delivery, "write_record", spoilt)
    with pytest.raises(InputError, match="the record of this build") as caught:
        built_with(tmp_path)
    assert r"\x1b" in str(caught.value)
    assert not (tmp_path / "out").exists()
