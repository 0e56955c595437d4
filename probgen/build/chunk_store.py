"""The chunks of a build that are printed: kept in its working folder until the whole is there.

A chunk counts once its note is written, and that is written last; what a killed build left half
done is printed again over it.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from probgen.build.folder import Working
from probgen.input.file import write_beside
from probgen.papers.answers import Row
from probgen.papers.chunk import Loss, PrintedChunk
from probgen.papers.typesetter import Kind


class ChunkStore:
    """The printed chunks in a working folder, by their place in the class."""

    def __init__(self, working: Working) -> None:
        self._whole = working.whole
        self._chunks = working.chunks
        for kind in Kind:
            (self._whole / kind).mkdir(exist_ok=True)

    def has(self, place: int) -> bool:
        return self._note(place).is_file()

    def keep(self, place: int, printed: PrintedChunk) -> None:
        """Writes a chunk's PDFs, and then the note that it is done."""
        for kind in Kind:
            for name, pdf in printed.pdfs[kind]:
                (self._whole / kind / f"{name}.pdf").write_bytes(pdf)
            self._together(kind, place).write_bytes(printed.together[kind])
        note = {"answers": printed.rows, "lost": [loss._asdict() for loss in printed.losses]}
        write_beside(self._note(place), json.dumps(note).encode())

    def together(self, kind: Kind, places: range) -> list[Path]:
        """The PDFs of whole chunks, without those of which nothing could be printed."""
        paths = (self._together(kind, place) for place in places)
        return [path for path in paths if path.stat().st_size]

    def rows(self, places: range) -> Iterator[Row]:
        for place in places:
            yield from (Row(*row) for row in self._read(place)["answers"])

    def losses(self, places: range) -> tuple[Loss, ...]:
        return tuple(Loss(**lost) for place in places for lost in self._read(place)["lost"])

    def _note(self, place: int) -> Path:
        return self._chunks / f"{place}.json"

    def _together(self, kind: Kind, place: int) -> Path:
        return self._chunks / f"{place}-{kind}.pdf"

    def _read(self, place: int) -> Any:
        return json.loads(self._note(place).read_bytes())
