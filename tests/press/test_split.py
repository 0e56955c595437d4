"""PDFs joined into one."""

import random
import subprocess
import sys
from collections.abc import Sequence
from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from probgen.press.bookmark import Bookmark, label_pages, read_bookmarks, set_bookmarks
from probgen.press.split import Leaves, collate, cut_run, extract, join, pages_in


def pages(count: int, title: str = "", size: tuple[int, int] = (612, 792)) -> bytes:
    made = BytesIO()
    with pikepdf.new() as pdf:
        for _ in range(count):
            pdf.add_blank_page(page_size=size)
        if title:
            set_bookmarks(pdf, [Bookmark(title, 0), Bookmark("end", count - 1)])
            label_pages(pdf, [0])
        pdf.save(made)
    return made.getvalue()


def joined(parts: Sequence[bytes | Path], title: str = "", duplex: bool = False) -> bytes:
    target = BytesIO()
    join(map(Leaves, parts), target, title, duplex=duplex)
    return target.getvalue()


def test_joined_from_bytes_and_paths(tmp_path: Path) -> None:
    path = tmp_path / "two.pdf"
    path.write_bytes(pages(2))
    whole = joined([pages(1), path], "All sheets")
    assert whole == joined([pages(1), path], "All sheets")
    with pikepdf.open(BytesIO(whole)) as opened:
        assert opened.docinfo["/Title"] == "All sheets"
        assert len(opened.pages) == 3


@pytest.mark.parametrize(
    ("counts", "starts", "total"),
    [((1, 2, 3), (0, 2, 4), 7), ((3, 3), (0, 4), 7), ((2, 2), (0, 2), 4), ((1,), (0,), 1)],
)
def test_joined_for_duplex_printers(
    counts: tuple[int, ...], starts: tuple[int, ...], total: int
) -> None:
    parts = [pages(count, f"part {place}") for place, count in enumerate(counts)]
    with pikepdf.open(BytesIO(joined(parts, duplex=True))) as opened:
        assert len(opened.pages) == total
        found = [mark for mark in read_bookmarks(opened) if mark.title != "end"]
        assert found == [Bookmark(f"part {n}", start) for n, start in enumerate(starts)]
        assert [opened.pages[start].label for start in starts] == ["1"] * len(starts)


def test_an_empty_page_is_as_large_as_those_beside_it() -> None:
    whole = joined([pages(1, size=(300, 400)), pages(1)], duplex=True)
    with pikepdf.open(BytesIO(whole)) as opened:
        sizes = [[float(edge) for edge in page.mediabox] for page in opened.pages]
    assert sizes == [[0, 0, 300, 400]] * 2 + [[0, 0, 612, 792]]


def test_bookmarks_and_labels_move_with_their_pages() -> None:
    with pikepdf.open(BytesIO(joined([pages(2, "one"), pages(3, "two")]))) as opened:
        assert read_bookmarks(opened) == [
            Bookmark("one", 0), Bookmark("end", 1), Bookmark("two", 2), Bookmark("end", 4),
        ]  # fmt: skip
        assert [page.label for page in opened.pages] == ["1", "2", "1", "2", "3"]


def test_a_part_that_comes_again_is_held_once(tmp_path: Path) -> None:
    parts = []
    for place, letter in enumerate("AB"):
        with pikepdf.open(BytesIO(pages(1, letter))) as pdf:
            noise = random.Random(place).randbytes(20_000)
            pdf.pages[0].Contents = pdf.make_stream(noise)
            pdf.save(tmp_path / f"{letter}.pdf")
        parts.append(tmp_path / f"{letter}.pdf")
    dealt = [parts[place % 2] for place in range(50)]
    whole = joined(dealt, duplex=True)
    assert len(whole) < 60_000
    with pikepdf.open(BytesIO(whole)) as opened:
        assert len(opened.pages) == 99
        found = [(m.title, m.page) for m in read_bookmarks(opened) if m.title != "end"]
        assert found == [("AB"[place % 2], 2 * place) for place in range(50)]
        held = [page.Contents.read_bytes() for page in list(opened.pages)[::2]]
        assert held[0] == held[2] != held[1] == held[49]
        assert len({page.obj.objgen for page in opened.pages}) == 99


def test_joined_into_a_file(tmp_path: Path) -> None:
    parts = [pages(1, "one"), pages(2, "two"), pages(1, "one")]
    target = tmp_path / "all.pdf"
    join(map(Leaves, parts), target, "All", duplex=True)
    assert target.read_bytes() == joined(parts, "All", duplex=True)
    assert [entry.name for entry in tmp_path.iterdir()] == ["all.pdf"]


def test_some_pages_of_a_pdf_with_their_bookmark(tmp_path: Path) -> None:
    path = tmp_path / "three.pdf"
    path.write_bytes(joined([pages(2, "one"), pages(3, "two"), pages(1, "three")]))
    target = BytesIO()
    join([Leaves(path, 5, 1), Leaves(path, 0, 2), Leaves(path, 2, 3)], target, duplex=True)
    with pikepdf.open(target) as opened:
        assert [m for m in read_bookmarks(opened) if m.title != "end"] == [
            Bookmark("three", 0), Bookmark("one", 2), Bookmark("two", 4),
        ]  # fmt: skip
        assert [page.label for page in opened.pages][::2] == ["1", "1", "1", "3"]


FULL = """
import resource, sys
from pathlib import Path
from probgen.press.split import Leaves, collate, cut_run, extract, join, pages_in
resource.setrlimit(resource.RLIMIT_FSIZE, (1000, 1000))
try:
    join([Leaves(Path(sys.argv[1]))] * 40, Path(sys.argv[2]))
except OSError as error:
    print(error.filename)
"""


def test_a_full_disk_is_told_and_does_not_end_the_process(tmp_path: Path) -> None:
    """A limit to the size of files stands in: writing fails with a part written, as on a disk."""
    (tmp_path / "one.pdf").write_bytes(pages(2))
    target = tmp_path / "all.pdf"
    run = subprocess.run(
        [sys.executable, "-c", FULL, tmp_path / "one.pdf", target],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert (run.returncode, run.stdout, run.stderr) == (0, f"{target}\n", "")
    assert [path.name for path in tmp_path.iterdir()] == ["one.pdf"]


def run_of(*owners: int | None) -> bytes:
    """A run as TeX leaves it: each page says whose it is; None: one that does not."""
    made = BytesIO()
    with pikepdf.new() as pdf:
        for place, owner in enumerate(owners):
            pdf.add_blank_page(page_size=(100 + place, 100))
            if owner is not None:
                pdf.pages[-1].obj["/PressDocument"] = owner
        names = pikepdf.NameTree.new(pdf)
        for place, page in enumerate(pdf.pages):
            spot = pikepdf.Array([page.obj, pikepdf.Name.Fit])
            names[f"bookmark:{f'page {place}'.encode().hex()}"] = spot
        pdf.Root.Names = pikepdf.Dictionary(Dests=names.obj)
        pdf.save(made)
    return made.getvalue()


def widths(pdf: bytes) -> list[int]:
    with pikepdf.open(BytesIO(pdf)) as opened:
        return [int(page.mediabox[2]) for page in opened.pages]


def test_a_run_is_cut_where_another_document_begins() -> None:
    parts = cut_run(run_of(0, 0, 1, 2, 2), ["one", "two", "three"])
    assert [part.pages for part in parts] == [range(2), range(2, 3), range(3, 5)]
    assert [widths(extract(part, "en")) for part in parts] == [[100, 101], [102], [103, 104]]
    assert parts[2].bookmarks == (Bookmark("page 3", 0), Bookmark("page 4", 1))
    with pikepdf.open(BytesIO(extract(parts[1], "de"))) as opened:
        assert [str(each) for each in (opened.docinfo["/Title"], opened.Root.Lang)] == ["two", "de"]
        assert bool(opened.Root.ViewerPreferences.DisplayDocTitle)
        assert "/PressDocument" not in opened.pages[0].obj


@pytest.mark.parametrize("owners", [(0, 0), (0, 1, 0), (1, 1), (0, 1, 2), (0, None, 1), ()])
def test_a_run_that_lacks_a_document_is_refused(owners: tuple[int | None, ...]) -> None:
    with pytest.raises(ValueError, match="has no pages"):
        cut_run(run_of(*owners), ["one", "two"])


def test_what_is_no_pdf_is_refused() -> None:
    for reads in (lambda: cut_run(b"no PDF", ["one"]), lambda: pages_in(b"no PDF")):
        with pytest.raises(ValueError, match="no whole PDF"):
            reads()
    assert pages_in(pages(3)) == 3


def test_documents_of_runs_are_collated_with_a_bookmark_for_each() -> None:
    one, two = cut_run(run_of(0, 1, 1), ["one", "two"])
    (three,) = cut_run(run_of(0), ["three"])
    whole = collate([two, three, one], "en")
    assert widths(whole) == [101, 102, 100, 100]
    with pikepdf.open(BytesIO(whole)) as opened:
        assert read_bookmarks(opened) == [
            Bookmark("two", 0), Bookmark("three", 2), Bookmark("one", 3),
        ]  # fmt: skip
        assert [page.label for page in opened.pages] == ["1", "2", "1", "1"]
        assert "/Title" not in opened.docinfo
