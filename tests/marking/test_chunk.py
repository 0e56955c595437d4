"""A class marked in chunks, by one process or by several: what comes out is the same."""

from __future__ import annotations

import gc
from contextlib import suppress
from pathlib import Path

import pytest

from probgen.build.workers import Crew
from probgen.course.frozen import frozen_problems
from probgen.course.record_file import write_record
from probgen.marking import chunk
from probgen.marking.answers_file import Typed, read_answers
from probgen.marking.chunk import mark, uncollected
from probgen.marking.folder import mark_class
from probgen.marking.form import columns
from probgen.marking.policy import Policy
from tests.marking.lamps import record_of, table, tension

RECORD = record_of(8)
PROBLEMS = frozen_problems(RECORD.issue, RECORD.current, "record")


def answers() -> str:
    """Right, half of it, all of the weight, and nothing, in turn."""
    typed = {}
    for n in range(1, 9):
        right = tension(RECORD, str(n))
        cells = [(f"{right:.3g}", "N"), (f"{right / 2:.3g}", "N"), (f"{2 * right:.4g}", "N")]
        typed[str(n)] = [*cells, ("", "")][n % 4]
    return table(RECORD, typed)


def read(folder: Path) -> tuple[Typed, ...]:
    path = folder / "answers.csv"
    path.write_text(answers(), encoding="utf-8")
    return read_answers(path, RECORD, columns(RECORD, PROBLEMS), [])


def test_chunks_are_of_so_many_papers_in_the_order_of_the_table(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    typed = read(tmp_path)
    monkeypatch.setattr(chunk, "PAPERS", 3)
    found = mark(RECORD, PROBLEMS, typed, Policy(), {}, crew=Crew(1))
    assert [[row.id for row in each.found] for each in found] == [
        ["1", "2", "3"], ["4", "5", "6"], ["7", "8"],
    ]  # fmt: skip
    monkeypatch.setattr(chunk, "PAPERS", 100)
    (whole,) = mark(RECORD, PROBLEMS, typed, Policy(), {}, crew=Crew(1))
    assert [row for each in found for row in each.found] == list(whole.found)


def test_nothing_is_made_but_what_is_wanted(tmp_path: Path) -> None:
    typed = read(tmp_path)
    assert mark(RECORD, PROBLEMS, (), Policy(), {}) == []
    (without,) = mark(RECORD, PROBLEMS, typed, Policy(), {})
    (with_pages,) = mark(RECORD, PROBLEMS, typed, Policy(), {}, feedback=True)
    assert without.pages == ()
    assert [page.header.student_id for page in with_pages.pages] == [str(n) for n in range(1, 9)]


def test_any_number_of_workers_writes_the_same_bytes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "record.json").write_text(write_record(RECORD), encoding="utf-8")
    (tmp_path / "answers.csv").write_text(answers(), encoding="utf-8")
    monkeypatch.setattr(chunk, "PAPERS", 2)
    made = []
    for workers in (1, 2, 3):
        out = tmp_path / f"by-{workers}"
        mark_class(tmp_path / "record.json", tmp_path / "answers.csv", out, crew=Crew(workers))
        made.append({path.name: path.read_bytes() for path in out.iterdir()})
    assert len(made[0]) >= 6
    assert made[0] == made[1] == made[2]


def test_few_papers_are_marked_by_this_process_and_many_by_several(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    typed, shared = read(tmp_path), list[int]()

    class Watched(Crew):
        def each(self, do, tasks, count):  # type: ignore[no-untyped-def]
            shared.append(count)
            return super().each(do, tasks, count)

    for papers in (9, 5, 4, 1):
        monkeypatch.setattr(chunk, "PAPERS", papers)
        mark(RECORD, PROBLEMS, typed, Policy(), {}, crew=Watched(2))
    cores = Crew().processes(2)
    assert shared == [1, 1, cores, cores]


def test_python_collects_again_when_all_is_marked() -> None:
    assert gc.isenabled()
    with uncollected():
        with suppress(ArithmeticError), uncollected():
            raise ArithmeticError
        assert not gc.isenabled()
    assert gc.isenabled()
