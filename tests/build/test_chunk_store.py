"""Chunks kept in a working folder count when they are whole, and are read back as they were."""

from pathlib import Path

from probgen.build.chunk_store import ChunkStore
from probgen.build.folder import Working
from probgen.papers.answers import Row
from probgen.papers.chunk import Loss, PrintedChunk
from probgen.papers.typesetter import Kind

ROW = Row("ABCD-EFGH", "Zoë", "7", 1, "shelf", "T", "123.25", "N", "123 N", "", "")
LOSS = Loss("keys/01-zoe-7.pdf", "Zoë (7)", 1, "shelf", "TeX: Undefined control sequence.")
PRINTED = PrintedChunk(
    {Kind.SHEETS: (("01-zoe-7", b"a sheet"),), Kind.KEYS: ()},
    {Kind.SHEETS: b"all sheets", Kind.KEYS: b""},
    (ROW,),
    (LOSS,),
)


def working_in(folder: Path) -> Working:
    working = Working(folder)
    working.whole.mkdir()
    working.chunks.mkdir()
    return working


def test_a_chunk_is_read_back_as_it_was(tmp_path: Path) -> None:
    working = working_in(tmp_path)
    ChunkStore(working).keep(0, PRINTED)
    again = ChunkStore(working)
    assert again.has(0)
    assert not again.has(1)
    assert list(again.rows(range(1))) == [ROW]
    assert again.losses(range(1)) == (LOSS,)
    assert (working.whole / "sheets" / "01-zoe-7.pdf").read_bytes() == b"a sheet"
    assert [path.read_bytes() for path in again.together(Kind.SHEETS, range(1))] == [b"all sheets"]
    assert again.together(Kind.KEYS, range(1)) == []


def test_a_chunk_without_its_note_does_not_count(tmp_path: Path) -> None:
    working = working_in(tmp_path)
    ChunkStore(working).keep(0, PRINTED)
    (note,) = working.chunks.glob("*.json")
    note.unlink()
    assert not ChunkStore(working).has(0)
    ChunkStore(working).keep(0, PRINTED)
    assert ChunkStore(working).has(0)
