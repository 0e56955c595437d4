"""PDFs joined into one."""

from io import BytesIO
from pathlib import Path

import pikepdf
import pytest

from probgen.press.bookmark import Bookmark, label_pages, read_bookmarks, set_bookmarks
from probgen.press.split import join, page_count


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


def test_joined_from_bytes_and_paths(tmp_path: Path) -> None:
    path = tmp_path / "two.pdf"
    path.write_bytes(pages(2))
    whole = join([pages(1), path], "All sheets")
    assert page_count(whole) == 3
    assert whole == join([pages(1), path], "All sheets")
    with pikepdf.open(BytesIO(whole)) as opened:
        assert opened.docinfo["/Title"] == "All sheets"


@pytest.mark.parametrize(
    ("counts", "starts", "total"),
    [((1, 2, 3), (0, 2, 4), 7), ((3, 3), (0, 4), 7), ((2, 2), (0, 2), 4), ((1,), (0,), 1)],
)
def test_joined_for_duplex_printers(
    counts: tuple[int, ...], starts: tuple[int, ...], total: int
) -> None:
    parts = [pages(count, f"part {place}") for place, count in enumerate(counts)]
    with pikepdf.open(BytesIO(join(parts, duplex=True))) as opened:
        assert len(opened.pages) == total
        found = [mark for mark in read_bookmarks(opened) if mark.title != "end"]
        assert found == [Bookmark(f"part {n}", start) for n, start in enumerate(starts)]
        assert [opened.pages[start].label for start in starts] == ["1"] * len(starts)


def test_an_empty_page_is_as_large_as_those_beside_it() -> None:
    whole = join([pages(1, size=(300, 400)), pages(1)], duplex=True)
    with pikepdf.open(BytesIO(whole)) as opened:
        sizes = [[float(edge) for edge in page.mediabox] for page in opened.pages]
    assert sizes == [[0, 0, 300, 400], [0, 0, 300, 400], [0, 0, 612, 792]]


def test_bookmarks_and_labels_move_with_their_pages() -> None:
    with pikepdf.open(BytesIO(join([pages(2, "one"), pages(3, "two")]))) as opened:
        assert read_bookmarks(opened) == [
            Bookmark("one", 0), Bookmark("end", 1), Bookmark("two", 2), Bookmark("end", 4),
        ]  # fmt: skip
        assert [page.label for page in opened.pages] == ["1", "2", "1", "2", "3"]
