"""The piles of a printed class: everybody's papers in one PDF, all keys, and the lists."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.build.chunk_store import ChunkStore
from probgen.build.folder import ANSWERS, VERSIONS
from probgen.build.progress import Report
from probgen.build.tables import write_csv, write_workbook
from probgen.course.exam import deal
from probgen.course.record import CODES, Record
from probgen.course.section import folder_names, part_of, sections_of
from probgen.course.version import Version
from probgen.input.outside import OutsideError
from probgen.papers.answers import HEADINGS, NUMBERS, Row
from probgen.papers.covers_and_lists import (
    CODE_HEADS,
    CODE_NUMBERS,
    answer_table,
    code_rows,
    keys_cover,
    pile_heads,
    pile_rows,
    sheets_cover,
    version_list,
)
from probgen.papers.typesetter import Kind, typesetter_of
from probgen.press.split import Leaves, join, pages_in
from probgen.problem.problem import Problem
from probgen.sheets.document import AnswerTable, Cover
from probgen.working.result import targets

SECTIONS: Final = "sections"
"""The folder with a folder for each section."""
_UP: Final = "../../"
PAPERS_A_VOLUME: Final = 500
"""Of a large class's joined PDFs: a printer and a reader must hold one in memory."""


@dataclass(frozen=True, slots=True)
class Piles:
    """store: the printed chunks; folder: where the piles go.

    section: whose they are, with the way up to the folder of the whole; "" for everybody's.
    """

    record: Record
    problems: Sequence[Problem]
    store: ChunkStore
    folder: Path
    section: str = ""
    up: str = ""

    def write(self, report: Report) -> tuple[str, ...]:
        """Writes every pile and list, also by section where the run asks for it.

        Gives remarks on its own pages.  Raises OutsideError when TeX cannot set one of them.
        """
        remarks = self._write(report)
        if self.record.set.run.by_section:
            for name, folder in folder_names(sections_of(self.record)).items():
                place = self.folder / SECTIONS / folder
                place.mkdir(parents=True, exist_ok=True)
                remarks += self._of_section(name, place)._write(report)
        return tuple(dict.fromkeys(remarks))

    def _of_section(self, name: str, folder: Path) -> Piles:
        problems = [self.problems[place] for place in self.record.set.places_in(name)]
        part = part_of(self.record, name)
        return Piles(part, problems, self.store, folder, name, _UP)

    def _write(self, report: Report) -> tuple[str, ...]:
        pages, remarks = self._print_pages()
        piles = {name: (kind, names) for kind in Kind for name, names in self._piles(kind)}
        places: dict[str, tuple[str, int]] = {}
        for done, (name, (kind, names)) in enumerate(piles.items()):
            report("all in one", done, len(piles))
            before = [Leaves(pdf) for pdf in pages.get(kind, [])]
            own = [(each, self.store.leaves(kind, each)) for each in names]
            papers = {each: leaves for each, leaves in own if leaves}
            self._require_told(kind, name, [each for each in names if each not in papers])
            if not papers:
                continue
            found = self._join(name, [*before, *(leaves for _, leaves in own if leaves)], kind)
            if kind is Kind.KEYS:
                first = found[len(before) :]
                found_in = {e: (name, page) for e, page in zip(papers, first, strict=True)}
                places = found_in | places  # the whole pile stays, that of the new ones does not
        for name in pages.keys() - set(Kind):
            self._join(name, [Leaves(pdf) for pdf in pages[name]])
        self._write_tables(places)
        return remarks

    @property
    def _lost(self) -> set[str]:
        """The documents that are told as lost."""
        return {loss.document for loss in self.store.losses}

    def _require_told(self, kind: Kind, pile: str, absent: Iterable[str]) -> None:
        """Raises OutsideError where a pile lacks a paper of the record that is not told as lost."""
        if untold := [each for each in absent if f"{kind}/{each}.pdf" not in self._lost]:
            failed = f"{pile}.pdf lacks {', '.join(untold[:3])}"
            raise OutsideError(failed, "build again; nothing was delivered")

    def _write_tables(self, keys: Mapping[str, tuple[str, int]]) -> None:
        """keys: the pile and the page, from 1, of each key."""
        record = self.record
        self._require_answers()
        self._write_table(ANSWERS, HEADINGS, lambda: self._rows(record.versions), NUMBERS)
        self._write_table(CODES, CODE_HEADS, lambda: code_rows(record, keys, self.up), CODE_NUMBERS)
        if exam := record.set.exam:
            heads = [head.lower() for head in pile_heads()]
            self._write_table(VERSIONS, heads, lambda: pile_rows(record, exam), heads[:1])

    def _require_answers(self) -> None:
        """Raises OutsideError unless each paper with a key has a row for each quantity asked."""
        asked = [_asked(problem) for problem in self.problems]
        for version in self.record.versions:
            if version.repeats or f"{Kind.KEYS}/{version.name}.pdf" in self._lost:
                continue
            places = self.record.set.places_in(version.student.section)
            due = [(n, each) for n, place in enumerate(places, start=1) for each in asked[place]]
            rows = [(row.problem, row.answer) for row in self.store.rows(version.name)]
            if rows != due:
                failed = f"{ANSWERS} has {len(rows)} rows for {version.name}, not {len(due)}"
                raise OutsideError(failed, "build again; nothing was delivered")

    def _write_table(
        self,
        name: str,
        heads: Sequence[str],
        rows: Callable[[], Iterable[Sequence[object]]],
        numbers: Collection[str],
    ) -> None:
        """A table for spreadsheets, as CSV and, if the run asks for it, as a workbook."""
        path = self.folder / name
        write_csv(path, heads, rows())
        _require_rows(path, sum(1 for _ in rows()))
        if self.record.set.run.tables == "xlsx":
            write_workbook(path.with_suffix(".xlsx"), heads, rows(), numbers)

    def _rows(self, versions: Iterable[Version]) -> Iterator[Row]:
        for version in versions:
            if not version.repeats:
                yield from self.store.rows(version.name)

    def _piles(self, kind: Kind) -> Iterator[tuple[str, list[str]]]:
        """Each volume of a pile, "all-keys", or "all-keys-01" and so on: its papers by name."""
        names = self._dealt(kind)
        volumes = [
            names[start : start + PAPERS_A_VOLUME]
            for start in range(0, len(names), PAPERS_A_VOLUME)
        ]
        for number, volume in enumerate(volumes, start=1):
            yield f"all-{kind}" + (f"-{number:02}" if len(volumes) > 1 else ""), volume
        if fresh := self._fresh(kind):
            yield f"new-{kind}", fresh

    def _dealt(self, kind: Kind) -> list[str]:
        """The papers of a whole pile, in their order."""
        exam, versions = self.record.set.exam, self.record.versions
        if exam and kind is Kind.SHEETS:
            sheets = {(version.letter, version.large): version.name for version in versions}
            pile = deal(exam, self.record.students, self.record.letters)
            return [sheets[letter, bool(student and student.large)] for letter, student in pile]
        return [each.name for each in versions if kind is Kind.SHEETS or not each.repeats]

    def _fresh(self, kind: Kind) -> list[str]:
        """The papers that the last of several printings has added."""
        if len(self.record.printings) == 1:
            return []
        last = {(e.code, e.large) for e in self.record.printings[-1].editions}
        return [
            each.name
            for each in self.record.versions
            if (each.code, each.large) in last and (kind is Kind.SHEETS or not each.repeats)
        ]

    def _pages(self) -> Iterator[tuple[str, Cover | AnswerTable]]:
        """What this class gets besides sheets and keys, with the name of its pile."""
        run, exam = self.record.set.run, self.record.set.exam
        if run.cover:
            yield Kind.SHEETS, sheets_cover(self.record, self.section)
            yield Kind.KEYS, keys_cover(self.record, self.section)
        if run.answers or exam:
            yield from (("answers", table) for table in self._answer_tables())
        if exam:
            yield "versions", version_list(self.record, exam, self.section)

    def _answer_tables(self) -> Iterator[AnswerTable]:
        """The answers of all in tables of one length, by section where problems differ."""
        names = sections_of(self.record)
        if len(names) > 1 and any(each.sections for each in self.record.set.problems):
            for name in names:
                yield from self._of_section(name, self.folder)._answer_tables()
            return
        versions = self.record.versions
        for start in range(0, len(versions), PAPERS_A_VOLUME):
            rows = self._rows(versions[start : start + PAPERS_A_VOLUME])
            yield answer_table(self.record, self.problems, rows, self.section)

    def _print_pages(self) -> tuple[dict[str, list[bytes]], tuple[str, ...]]:
        """The pages of each pile, and remarks on them."""
        typesetter = typesetter_of(self.record.set, self.record.house)
        documents = [
            typesetter.page(pile, str(place), page)
            for place, (pile, page) in enumerate(self._pages())
        ]
        batch = typesetter.print(documents)
        for failure in batch.failures:
            mend = "look at the layouts and at the texts of the assignment file"
            raise OutsideError(f"TeX could not set {failure.pile}: {failure.complaint}", mend)
        printed: dict[str, list[bytes]] = {}
        for page in batch.printed:
            printed.setdefault(page.pile, []).append(page.pdf)
        remarks = (
            f"{page.pile}: {blemish.words}" for page in batch.printed for blemish in page.blemishes
        )
        return printed, tuple(dict.fromkeys(remarks))

    def _join(self, name: str, parts: Sequence[Leaves], kind: Kind | None = None) -> list[int]:
        """Writes a pile, of keys or not; gives the page, from 1, on which each part begins.

        Raises OutsideError when the file has other pages than its parts.
        """
        run = self.record.set.run
        duplex = run.duplex and (run.pad_keys or kind is not Kind.KEYS)
        path = self.folder / f"{name}.pdf"
        join(parts, path, self.record.set.title, duplex=duplex)
        starts, wanted = [], 0
        for part in parts:
            wanted += wanted % 2 if duplex else 0
            starts.append(wanted + 1)
            wanted += pages_in(part.source) if part.count is None else part.count
        if (found := pages_in(path)) != wanted:
            failed = f"{path.name} has {found} pages, and {wanted} were printed"
            raise OutsideError(failed, "see whether the disk is sound; nothing was delivered")
        return starts


def _asked(problem: Problem) -> list[str]:
    """The ids of what a problem asks, in the order of its answers."""
    found = targets(problem.plan, problem.template.labels)
    return [target.id for target in found if target.asked]


def _require_rows(path: Path, count: int) -> None:
    """Raises OutsideError unless a CSV has so many rows below its heads."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        found = sum(1 for _ in file) - 1  # a cell has one line
    if found != count:
        failed = f"{path.name} has {found} rows, and {count} were written"
        raise OutsideError(failed, "see whether the disk is sound; nothing was delivered")
