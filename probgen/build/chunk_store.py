"""The chunks of a class that are printed: kept while a build goes on, and for the builds after it.

A chunk's documents lie in the folders of sheets and keys; the pages of each kind in one PDF, its
piece, and a note on them lie in `.pieces`, under the chunk's id.  A chunk counts once its note is
written.  That is written last, when the chunk's files are on the disk itself, and tells the size,
digest and pages of each; a chunk whose files are not what its note says, as after a power cut, or
whose note does not tell of all its documents, is printed again.
"""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Any

from probgen.build.file_digest import digest_of_content, file_mark
from probgen.build.folder import PIECES, Working
from probgen.build.manifest import is_as_made, made_by_this_user
from probgen.input.file import naming, sync, write_beside
from probgen.input.outside import OutsideError
from probgen.papers.answers import Row
from probgen.papers.chunk import Chunk, Loss, PrintedChunk
from probgen.papers.typesetter import Kind
from probgen.press.split import Leaves, pages_in


@dataclass(frozen=True, slots=True)
class _Note:
    """files: for each document's path from the whole folder, size, digest and pages.

    pieces: size and digest of each kind's; remarks: each with the path of its document.
    """

    answers: tuple[Row, ...]
    lost: tuple[Loss, ...]
    files: dict[str, tuple[int, str, int]]
    pieces: dict[str, tuple[int, str]]
    remarks: tuple[tuple[str, str], ...]


class ChunkStore:
    """The printed chunks in a working folder, by their place."""

    def __init__(self, working: Working, chunks: Sequence[Chunk]) -> None:
        self._whole = working.whole
        self._chunks = chunks
        self._notes: dict[int, _Note] = {}
        self._made = cache(made_by_this_user)
        for folder in (*Kind, PIECES):
            (self._whole / folder).mkdir(exist_ok=True)

    def has(self, place: int) -> bool:
        """Whether a chunk is printed whole; looked into once."""
        if place not in self._notes:
            note = self._read(self._whole, place)
            if note is None or not self._is_whole(self._whole, place, note):
                return False
            self._notes[place] = note
        return True

    def adopt(self, place: int, earlier: Path) -> bool:
        """Takes a chunk that an earlier build of this folder has printed whole, if it has.

        Only one of this user's: who has put other sheets there could have put a note too.
        """
        if not is_as_made(earlier / self._note(place), self._made(earlier).get(self._note(place))):
            return False
        note = self._read(earlier, place)
        if note is None or not self._is_whole(earlier, place, note):
            return False
        if {lost.document for lost in note.lost}.intersection(self._documents(place)):
            return False  # what kept it from being printed may be mended
        names = [*self._wanted(place, note), *(self._piece(place, kind) for kind in note.pieces)]
        for name in (*names, self._note(place)):
            _link(earlier / name, self._whole / name)
        self._notes[place] = note
        return True

    def keep(self, place: int, printed: PrintedChunk) -> None:
        """Writes a chunk's PDFs, and then the note that it is done."""
        documents = {f"{kind}/{name}.pdf": pdf for kind in Kind for name, pdf in printed.pdfs[kind]}
        pieces = {str(kind): printed.together[kind] for kind in Kind}
        note = _Note(
            printed.rows,
            printed.losses,
            {path: (*_mark(pdf), pages_in(pdf)) for path, pdf in documents.items()},
            {kind: _mark(pdf) for kind, pdf in pieces.items()},
            printed.remarks,
        )
        files = {self._whole / path: documents[path] for path in self._wanted(place, note)}
        files |= {self._whole / self._piece(place, kind): pdf for kind, pdf in pieces.items()}
        for path, pdf in files.items():
            with naming(path):
                path.write_bytes(pdf)
        sync(files)
        sync({path.parent for path in files})
        written = self._whole / self._note(place)
        write_beside(written, json.dumps(_as_data(note), ensure_ascii=False).encode())
        sync([written, written.parent])
        self._notes[place] = note

    def leaves(self, kind: Kind, name: str) -> Leaves | None:
        """The pages of a document in its chunk's piece; None where it could not be printed."""
        place = self._places[name]
        first = 0
        for path, (_, _, pages) in self._notes[place].files.items():
            if path == f"{kind}/{name}.pdf":
                return Leaves(self._whole / self._piece(place, kind), first, pages)
            first += pages if path.startswith(f"{kind}/") else 0
        return None

    def rows(self, name: str) -> Iterator[Row]:
        """The answers of one paper, by the name of its files."""
        place = self._places[name]
        code = next(v.code for v in self._chunks[place].versions if v.name == name)
        return (row for row in self._notes[place].answers if row.code == code)

    def require_whole(self) -> None:
        """Raises OutsideError unless all that somebody is to have is there as it was printed."""
        for place, chunk in enumerate(self._chunks):
            note = self._notes.get(place)
            if note is None or not self._is_whole(self._whole, place, note):
                whose = ", ".join(sorted(chunk.wanted)[:3])
                failed = f"of what was printed for {whose} something is not as it was"
                raise OutsideError(failed, "see whether the disk is sound, and build again")

    @property
    def losses(self) -> tuple[Loss, ...]:
        """What could not be printed of that which somebody is to have."""
        return tuple(
            lost
            for place, note in sorted(self._notes.items())
            for lost in note.lost
            if lost.document in self._documents(place)
        )

    @property
    def remarks(self) -> tuple[str, ...]:
        """What should be looked at before it is handed out."""
        return tuple(
            f"{document}: {words}"
            for place, note in sorted(self._notes.items())
            for document, words in note.remarks
            if document in self._documents(place)
        )

    @property
    def marks(self) -> Mapping[str, str]:
        """The digests of the files of whole chunks that are known, by their paths."""
        known: dict[str, str] = {}
        for place, note in self._notes.items():
            known |= {path: note.files[path][1] for path in self._wanted(place, note)}
            known |= {self._piece(place, kind): mark for kind, (_, mark) in note.pieces.items()}
        return known

    @cached_property
    def _places(self) -> dict[str, int]:
        return {name: place for place, chunk in enumerate(self._chunks) for name in chunk.wanted}

    def _note(self, place: int) -> str:
        return f"{PIECES}/{self._chunks[place].id}.json"

    def _piece(self, place: int, kind: str) -> str:
        return f"{PIECES}/{self._chunks[place].id}-{kind}.pdf"

    def _documents(self, place: int) -> list[str]:
        """The paths of all documents that somebody is to have of a chunk."""
        chunk = self._chunks[place]
        wanted = [each for each in chunk.versions if each.name in chunk.wanted]
        sheets = [f"{Kind.SHEETS}/{each.name}.pdf" for each in wanted]
        return sheets + [f"{Kind.KEYS}/{each.name}.pdf" for each in wanted if not each.repeats]

    def _wanted(self, place: int, note: _Note) -> list[str]:
        """The same, without what could not be printed."""
        return [path for path in self._documents(place) if path in note.files]

    def _read(self, folder: Path, place: int) -> _Note | None:
        """A chunk's note, None when there is none that can be read."""
        with suppress(OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
            return _from_data(json.loads((folder / self._note(place)).read_bytes()))
        return None

    def _is_whole(self, folder: Path, place: int, note: _Note) -> bool:
        told = {*note.files, *(lost.document for lost in note.lost)}
        if not told.issuperset(self._documents(place)):
            return False
        marks = {path: note.files[path][:2] for path in self._wanted(place, note)}
        marks |= {self._piece(place, kind): mark for kind, mark in note.pieces.items()}
        try:
            return all(file_mark(folder / path) == mark for path, mark in marks.items())
        except OSError:
            return False


def _mark(content: bytes) -> tuple[int, str]:
    """By which a file is known again: its size and a digest of it."""
    return len(content), digest_of_content(content)


def _link(source: Path, target: Path) -> None:
    """The same file at another place too; a copy where the file system has no links."""
    try:
        target.unlink(missing_ok=True)
        os.link(source, target)
    except OSError:
        shutil.copyfile(source, target)


def _as_data(note: _Note) -> dict[str, Any]:
    return {
        "answers": note.answers,
        "lost": [loss._asdict() for loss in note.lost],
        "files": note.files,
        "pieces": note.pieces,
        "remarks": note.remarks,
    }


def _from_data(data: Any) -> _Note:
    """Raises ValueError, TypeError, KeyError or AttributeError for what is no note."""
    return _Note(
        tuple(Row(*row) for row in data["answers"]),
        tuple(Loss(**{**lost, "kind": Kind(lost["kind"])}) for lost in data["lost"]),
        {path: (int(n), str(mark), int(pages)) for path, (n, mark, pages) in data["files"].items()},
        {str(kind): (int(data["pieces"][kind][0]), data["pieces"][kind][1]) for kind in Kind},
        tuple((str(document), str(words)) for document, words in data["remarks"]),
    )
