"""The piles of a printed class: everybody's papers in one PDF, all keys, and the lists."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain
from pathlib import Path
from typing import Final

from probgen.build.chunk_store import ChunkStore
from probgen.build.folder import ANSWERS, VERSIONS
from probgen.build.progress import Report
from probgen.build.tables import write_csv, write_workbook
from probgen.course.exam import deal
from probgen.course.record import Record
from probgen.input.outside import OutsideError
from probgen.papers.answers import HEADINGS, NUMBERS
from probgen.papers.covers_and_lists import (
    answer_table,
    keys_cover,
    pile_heads,
    pile_rows,
    sheets_cover,
    version_list,
)
from probgen.papers.typesetter import Kind, typesetter_of
from probgen.press.split import join, pages_in
from probgen.problem.problem import Problem
from probgen.sheets.document import AnswerTable, Cover

CHUNKS_A_VOLUME: Final = 20
"""Of a large class's joined PDFs: a printer and a reader must hold one in memory."""
PAPERS_A_VOLUME: Final = 500
"""As many of an exam's."""


@dataclass(frozen=True, slots=True)
class Piles:
    """store: the printed chunks, so many of them; folder: where the piles go."""

    record: Record
    problems: Sequence[Problem]
    store: ChunkStore
    chunks: int
    folder: Path

    def write(self, report: Report) -> tuple[str, ...]:
        """Writes every pile and list; gives remarks on its own pages.

        Raises OutsideError when TeX cannot set one of them.
        """
        pages, remarks = self._print_pages()
        piles = {
            name: (kind, parts)
            for kind in Kind
            for name, parts in _numbered(f"all-{kind}", self._parts(kind))
        }
        for done, (name, (kind, parts)) in enumerate(piles.items()):
            report("all in one", done, len(piles))
            if parts:
                self._join(name, [*pages.get(kind, []), *parts])
        for name in pages.keys() - set(Kind):
            self._join(name, pages[name])
        self._write_table(
            ANSWERS, HEADINGS, lambda: self.store.rows(range(self.chunks)), NUMBERS
        )
        if exam := self.record.set.exam:
            heads = [head.lower() for head in pile_heads()]
            self._write_table(VERSIONS, heads, lambda: pile_rows(self.record, exam), heads[:1])
        return remarks

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
        if self.record.set.run.tables == "xlsx":
            write_workbook(path.with_suffix(".xlsx"), heads, rows(), numbers)

    def _parts(self, kind: Kind) -> Iterator[list[Path]]:
        """The PDFs of each volume of a pile."""
        exam = self.record.set.exam
        if exam and kind is Kind.SHEETS:
            sheets = {(v.letter, v.large): f"{v.name}.pdf" for v in self.record.versions}
            dealt = [
                self.folder / kind / sheets[letter, student is not None and student.large]
                for letter, student in deal(exam, self.record.students)
            ]
            for start in range(0, len(dealt), PAPERS_A_VOLUME):
                yield [path for path in dealt[start : start + PAPERS_A_VOLUME] if path.is_file()]
        else:
            for places in self._volumes():
                yield self.store.together(kind, places)

    def _volumes(self) -> Iterator[range]:
        """The places of the chunks of each volume."""
        for start in range(0, self.chunks, CHUNKS_A_VOLUME):
            yield range(start, min(start + CHUNKS_A_VOLUME, self.chunks))

    def _pages(self) -> Iterator[tuple[str, Cover | AnswerTable]]:
        """What this class gets besides sheets and keys, with the name of its pile."""
        run, exam = self.record.set.run, self.record.set.exam
        if run.cover:
            yield Kind.SHEETS, sheets_cover(self.record)
            yield Kind.KEYS, keys_cover(self.record)
        if run.answers or exam:
            for places in self._volumes():
                yield "answers", answer_table(self.record, self.problems, self.store.rows(places))
        if exam:
            yield "versions", version_list(self.record, exam)

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
            f"{page.pile}: {blemish.words}"
            for page in batch.printed
            for blemish in page.blemishes
            if not blemish.boxed  # of the class list, told of before
        )
        return printed, tuple(dict.fromkeys(remarks))

    def _join(self, name: str, parts: Iterable[bytes | Path]) -> None:
        duplex = self.record.set.run.duplex
        path = self.folder / f"{name}.pdf"
        parts = list(parts)
        join(parts, path, self.record.set.title, duplex=duplex)
        wanted = 0
        for count in chain.from_iterable(map(self._pages_of, parts)):
            wanted += count + (wanted % 2 if duplex else 0)
        found = pages_in(path)
        if found not in (wanted, wanted + wanted % 2 if duplex else wanted):
            failed = f"{path.name} has {found} pages, and {wanted} were printed"
            raise OutsideError(failed, "see whether the disk is sound; nothing was delivered")

    def _pages_of(self, part: bytes | Path) -> list[int]:
        """The pages of each document in a part of a pile, as they were counted when printed."""
        return [pages_in(part)] if isinstance(part, bytes) else self.store.pages(part)


def _numbered(name: str, volumes: Iterable[list[Path]]) -> Iterator[tuple[str, list[Path]]]:
    """Each volume with its name: "all-keys", or "all-keys-01" and so on."""
    listed = list(volumes)
    for number, parts in enumerate(listed, start=1):
        yield (f"{name}-{number:02}" if len(listed) > 1 else name), parts
