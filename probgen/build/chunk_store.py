"""The chunks of a build that are printed: kept in its working folder until the whole is there.

A chunk counts once its note is written.  That is written last, when the chunk's files are on the
disk itself, and tells the size, digest and pages of each; a chunk whose files are not what its note
says, as after a power cut, or whose note does not tell of all its documents, is printed again.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Iterable, Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from probgen.build.folder import Working
from probgen.input.file import write_beside
from probgen.papers.answers import Row
from probgen.papers.chunk import Chunk, Loss, PrintedChunk
from probgen.papers.typesetter import Kind
from probgen.press.split import pages_in


@dataclass(frozen=True, slots=True)
class _Note:
    """files: for each document's path from the whole folder, size, digest and pages."""

    answers: tuple[Row, ...]
    lost: tuple[Loss, ...]
    files: dict[str, tuple[int, str, int]]
    together: dict[str, tuple[int, str]]
    remarks: tuple[str, ...]


class ChunkStore:
    """The printed chunks in a working folder, by their place in the class."""

    def __init__(self, working: Working, chunks: Sequence[Chunk]) -> None:
        self._whole = working.whole
        self._folder = working.chunks
        self._chunks = chunks
        self._notes: dict[int, _Note] = {}
        for kind in Kind:
            (self._whole / kind).mkdir(exist_ok=True)

    def has(self, place: int) -> bool:
        """Whether a chunk is printed whole; looked into once."""
        if place not in self._notes:
            note = self._read(place)
            if note is None or not self._is_whole(place, note):
                return False
            self._notes[place] = note
        return True

    def keep(self, place: int, printed: PrintedChunk) -> None:
        """Writes a chunk's PDFs, and then the note that it is done."""
        documents = {
            f"{kind}/{name}.pdf": pdf for kind in Kind for name, pdf in printed.pdfs[kind]
        }
        together = {str(kind): printed.together[kind] for kind in Kind}
        note = _Note(
            printed.rows,
            printed.losses,
            {path: (*_mark(pdf), pages_in(pdf)) for path, pdf in documents.items()},
            {kind: _mark(pdf) for kind, pdf in together.items()},
            printed.remarks,
        )
        files = {self._whole / path: pdf for path, pdf in documents.items()}
        files |= {self._together(kind, place): pdf for kind, pdf in together.items()}
        for path, pdf in files.items():
            path.write_bytes(pdf)
        _sync(files)
        _sync({path.parent for path in files})
        write_beside(self._note(place), json.dumps(_as_data(note)).encode())
        _sync([self._note(place), self._folder])
        self._notes[place] = note

    def together(self, kind: Kind, places: range) -> list[Path]:
        """The PDFs of whole chunks, without those of which nothing could be printed."""
        return [
            self._together(kind, place) for place in places if self._notes[place].together[kind][0]
        ]

    def pages(self, path: Path) -> list[int]:
        """How many pages each document has that is in a document's file or a whole chunk's."""
        for place, note in self._notes.items():
            for kind in Kind:
                if path == self._together(kind, place):
                    return [n for name, (_, _, n) in note.files.items() if name.startswith(kind)]
            name = f"{path.parent.name}/{path.name}"
            if name in note.files:
                return [note.files[name][2]]
        return []

    def rows(self, places: range) -> Iterator[Row]:
        for place in places:
            yield from self._notes[place].answers

    def losses(self, places: range) -> tuple[Loss, ...]:
        return tuple(lost for place in places for lost in self._notes[place].lost)

    def remarks(self, places: range) -> tuple[str, ...]:
        """What should be looked at before it is handed out."""
        return tuple(remark for place in places for remark in self._notes[place].remarks)

    def _note(self, place: int) -> Path:
        return self._folder / f"{place}.json"

    def _together(self, kind: str, place: int) -> Path:
        return self._folder / f"{place}-{kind}.pdf"

    def _read(self, place: int) -> _Note | None:
        """A chunk's note, None when there is none that can be read."""
        with suppress(OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
            return _from_data(json.loads(self._note(place).read_bytes()))
        return None

    def _is_whole(self, place: int, note: _Note) -> bool:
        versions = self._chunks[place].versions
        wanted = {f"{Kind.SHEETS}/{version.name}.pdf" for version in versions}
        wanted |= {f"{Kind.KEYS}/{each.name}.pdf" for each in versions if not each.repeats}
        told = [*note.files, *(lost.document for lost in note.lost)]
        if sorted(told) != sorted(wanted):
            return False
        marks = {self._whole / path: (size, mark) for path, (size, mark, _) in note.files.items()}
        marks |= {self._together(kind, place): mark for kind, mark in note.together.items()}
        try:
            return all(_mark(path.read_bytes()) == mark for path, mark in marks.items())
        except OSError:
            return False


def _mark(content: bytes) -> tuple[int, str]:
    """By which a file is known again: its size and a digest of it."""
    return len(content), hashlib.blake2b(content, digest_size=16).hexdigest()


def _sync(paths: Iterable[Path]) -> None:
    """Returns when files, or the names in folders, are on the disk itself."""
    for path in paths:
        with suppress(PermissionError):  # Windows opens no folders
            opened = os.open(path, os.O_RDONLY)
            try:
                os.fsync(opened)
            finally:
                os.close(opened)


def _as_data(note: _Note) -> dict[str, Any]:
    return {
        "answers": note.answers,
        "lost": [loss._asdict() for loss in note.lost],
        "files": note.files,
        "together": note.together,
        "remarks": note.remarks,
    }


def _from_data(data: Any) -> _Note:
    """Raises ValueError, TypeError, KeyError or AttributeError for what is no note."""
    return _Note(
        tuple(Row(*row) for row in data["answers"]),
        tuple(Loss(**lost) for lost in data["lost"]),
        {path: (int(n), str(mark), int(pages)) for path, (n, mark, pages) in data["files"].items()},
        {str(kind): (int(data["together"][kind][0]), data["together"][kind][1]) for kind in Kind},
        tuple(str(remark) for remark in data["remarks"]),
    )
