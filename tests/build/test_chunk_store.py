"""Chunks kept in a working folder count when they are whole, and are read back as they were."""

import json
import os
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from probgen.build import chunk_store
from probgen.build.chunk_store import ChunkStore
from probgen.build.folder import Working
from probgen.build.manifest import MANIFEST, write_manifest
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.input.outside import OutsideError
from probgen.papers.answers import Row
from probgen.papers.chunk import Chunk, Loss, PrintedChunk
from probgen.papers.typesetter import Kind
from probgen.press.split import Leaves


def pdf(pages: int) -> bytes:
    target = BytesIO()
    with pikepdf.new() as made:
        for _ in range(pages):
            made.add_blank_page()
        made.save(target)
    return target.getvalue()


ROW = Row("ABCD-EFGH", "Zoë", "7", 1, "shelf", "T", "123.25", "N", "123 N", "", "")
LOSS = Loss(Kind.KEYS, "01-zoe-7", "Zoë (7)", 1, "shelf", "TeX: Undefined control sequence.")
ZOE = Version("ABCD-EFGH", "01-zoe-7", Student("Zoë", "7"))
BO = Version("BCDE-FGHJ", "02-bo-8", Student("Bo", "8"))
CHUNK = Chunk((ZOE,), frozenset({"01-zoe-7"}), "c0de")
OTHER = Chunk((BO,), frozenset({"02-bo-8"}), "0the")
PRINTED = PrintedChunk(
    {Kind.SHEETS: (("01-zoe-7", pdf(3)),), Kind.KEYS: ()},
    {Kind.SHEETS: pdf(3), Kind.KEYS: b""},
    (ROW,),
    (LOSS,),
)


def working_in(folder: Path) -> Working:
    working = Working(folder)
    working.whole.mkdir()
    return working


def store_in(working: Working) -> ChunkStore:
    return ChunkStore(working, [CHUNK, OTHER])


def test_a_chunk_is_read_back_as_it_was(tmp_path: Path) -> None:
    working = working_in(tmp_path)
    store_in(working).keep(0, PRINTED)
    again = store_in(working)
    assert again.has(0)
    assert not again.has(1)
    assert list(again.rows("01-zoe-7")) == [ROW]
    assert again.losses == (LOSS,)
    sheet, leaves = working.whole / "sheets" / "01-zoe-7.pdf", again.leaves(Kind.SHEETS, "01-zoe-7")
    assert sheet.read_bytes() == dict(PRINTED.pdfs[Kind.SHEETS])["01-zoe-7"]
    assert leaves == Leaves(working.pieces / "c0de-sheets.pdf", 0, 3)
    assert (working.pieces / "c0de-sheets.pdf").read_bytes() == PRINTED.together[Kind.SHEETS]
    assert again.leaves(Kind.KEYS, "01-zoe-7") is None


WHOLE = PrintedChunk(
    {kind: (("01-zoe-7", pdf(3)),) for kind in (Kind.SHEETS, Kind.KEYS)},
    {kind: pdf(3) for kind in (Kind.SHEETS, Kind.KEYS)},
    (ROW,),
    (),
)


@pytest.mark.parametrize(("printed", "taken"), [(WHOLE, True), (PRINTED, False)])
def test_what_an_earlier_build_has_printed_is_taken_unless_a_document_is_lost(
    printed: PrintedChunk, taken: bool, tmp_path: Path
) -> None:
    """What kept a key from being printed may have been mended since."""
    for name in ("earlier", "now"):
        (tmp_path / name).mkdir()
    earlier, now = working_in(tmp_path / "earlier"), store_in(working_in(tmp_path / "now"))
    store_in(earlier).keep(0, printed)
    write_manifest(earlier.whole)
    assert now.adopt(0, earlier.whole) is taken
    assert now.has(0) is taken
    assert not now.adopt(1, earlier.whole)


def of_somebody_else(folder: Path, note: Path) -> None:
    listed = json.loads((folder / MANIFEST).read_text())
    (folder / MANIFEST).write_text(json.dumps(listed | {"": "0" * 64}))


def edited(folder: Path, note: Path) -> None:
    note.write_text(note.read_text().replace("zoe", "zoE"))


def an_endless_pipe(folder: Path, note: Path) -> None:
    note.unlink()
    os.mkfifo(note)


@pytest.mark.parametrize("plant", [of_somebody_else, edited, an_endless_pipe])
def test_what_somebody_else_says_was_printed_is_printed_again(
    plant: Callable[[Path, Path], None], tmp_path: Path
) -> None:
    """Sheets and answers of a colleague's folder, with a note that fits them."""
    for name in ("earlier", "now"):
        (tmp_path / name).mkdir()
    earlier, now = working_in(tmp_path / "earlier"), store_in(working_in(tmp_path / "now"))
    store_in(earlier).keep(0, WHOLE)
    write_manifest(earlier.whole)
    (note,) = earlier.pieces.glob("*.json")
    plant(earlier.whole, note)
    assert not now.adopt(0, earlier.whole)


def test_a_chunk_without_its_note_does_not_count(tmp_path: Path) -> None:
    working = working_in(tmp_path)
    store_in(working).keep(0, PRINTED)
    (note,) = working.pieces.glob("*.json")
    note.unlink()
    assert not store_in(working).has(0)
    store_in(working).keep(0, PRINTED)
    assert store_in(working).has(0)


@pytest.mark.parametrize("name", ["whole/sheets/01-zoe-7.pdf", "whole/.pieces/c0de-sheets.pdf"])
@pytest.mark.parametrize("content", [b"", None, pdf(1)], ids=["empty", "gone", "shorter"])
def test_what_a_power_cut_left_is_printed_again(
    name: str, content: bytes | None, tmp_path: Path
) -> None:
    working = working_in(tmp_path)
    store_in(working).keep(0, PRINTED)
    if content is None:
        (tmp_path / name).unlink()
    else:
        (tmp_path / name).write_bytes(content)
    assert not store_in(working).has(0)


NOTES = {
    "nothing told": '{"answers": [], "lost": []}',
    "no document told": '{"answers": [], "lost": [], "files": {}, "pieces": {}}',
    "cut": '{"answers": [], "lo',
    "empty": "",
    "another kind": "[1, 2]",
    "deep": "[" * 100_000,
    "wrong types": '{"answers": 7, "lost": {}, "files": [], "pieces": 1}',
}


@pytest.mark.parametrize("text", NOTES.values(), ids=NOTES)
def test_a_note_that_tells_too_little_is_not_believed(text: str, tmp_path: Path) -> None:
    working = working_in(tmp_path)
    store_in(working).keep(0, PRINTED)
    (working.pieces / "c0de.json").write_text(text)
    assert not store_in(working).has(0)


def test_a_note_that_leaves_a_student_out_is_not_believed(tmp_path: Path) -> None:
    working = working_in(tmp_path)
    store_in(working).keep(0, PRINTED)
    note = json.loads((working.pieces / "c0de.json").read_text())
    note["files"] = {}
    (working.pieces / "c0de.json").write_text(json.dumps(note))
    assert not store_in(working).has(0)


@pytest.mark.parametrize("name", ["sheets/01-zoe-7.pdf", ".pieces/c0de-sheets.pdf"])
def test_what_is_spoilt_after_it_was_printed_is_noticed_before_it_is_delivered(
    name: str, tmp_path: Path
) -> None:
    working = working_in(tmp_path)
    store = ChunkStore(working, [CHUNK])
    with pytest.raises(OutsideError, match="01-zoe-7"):
        store.require_whole()
    store.keep(0, PRINTED)
    store.require_whole()
    (working.whole / name).write_bytes(pdf(1))
    with pytest.raises(OutsideError, match="01-zoe-7"):
        store.require_whole()


def test_a_file_at_two_places_takes_room_once(tmp_path: Path) -> None:
    source, target = tmp_path / "kept.pdf", tmp_path / "sheet.pdf"
    source.write_text("a sheet")
    for _ in range(2):  # the second time it is there already
        chunk_store._link(source, target)
        assert target.samefile(source)
    target.unlink()
    target.write_text("an older sheet")
    chunk_store._link(source, target)
    assert target.samefile(source)


def test_a_chunk_is_on_the_disk_before_its_note_and_that_before_it_counts(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    working, sync = working_in(tmp_path), os.fsync
    early: set[int] = set()
    late: set[int] = set()

    def noted(opened: int) -> None:
        (late if [*tmp_path.rglob("*.json")] else early).add(os.fstat(opened).st_ino)
        sync(opened)

    monkeypatch.setattr(os, "fsync", noted)
    store_in(working).keep(0, PRINTED)
    (note,) = tmp_path.rglob("*.json")
    assert late == {path.stat().st_ino for path in (note, note.parent)}
    pdfs = [*tmp_path.rglob("*.pdf")]
    assert len(pdfs) == 3
    for path in (*pdfs, *(pdf.parent for pdf in pdfs)):
        assert path.stat().st_ino in early
