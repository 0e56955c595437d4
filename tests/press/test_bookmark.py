"""Bookmarks and page labels, written into a PDF and read from it again."""

from __future__ import annotations

import io

import pikepdf
import pytest

from probgen.press.bookmark import (
    Bookmark,
    label_pages,
    label_starts,
    read_bookmarks,
    set_bookmarks,
    take_bookmarks,
)


def pages(count: int) -> pikepdf.Pdf:
    document = pikepdf.new()
    for _ in range(count):
        document.add_blank_page()
    return document


def again(document: pikepdf.Pdf) -> pikepdf.Pdf:
    """The document written and read."""
    written = io.BytesIO()
    document.save(written)
    written.seek(0)
    return pikepdf.open(written)


def test_an_outline_is_read_back() -> None:
    document, marks = pages(3), [Bookmark("1 Shelf", 0), Bookmark("2 Größe", 2)]
    set_bookmarks(document, marks)
    assert read_bookmarks(again(document)) == marks


def test_without_bookmarks_there_is_no_outline() -> None:
    document = pages(1)
    set_bookmarks(document, [])
    assert "/Outlines" not in document.Root
    assert read_bookmarks(document) == []


@pytest.mark.parametrize("starts", [[0], [0, 2], [0, 1, 4]])
def test_labels_count_from_one_at_each_start(starts: list[int]) -> None:
    document = pages(6)
    label_pages(document, starts)
    found = again(document)
    assert label_starts(found) == starts
    labels = [page.label for page in found.pages]
    expected = [str(place - max(s for s in starts if s <= place) + 1) for place in range(6)]
    assert labels == expected


def test_a_pdf_without_labels_starts_once() -> None:
    assert label_starts(pages(2)) == [0]


def marked(*marks: Bookmark) -> pikepdf.Pdf:
    r"""A run of TeX in which `\bookmark` marked places, each in its own way."""
    document = pages(4)
    tree = pikepdf.NameTree.new(document)
    for number, mark in enumerate(marks):
        place = pikepdf.Array([document.pages[mark.page].obj, pikepdf.Name.Fit])
        target = pikepdf.Dictionary(D=place) if number % 2 else place
        tree[f"{number}:{mark.title.encode().hex()}"] = document.make_indirect(target)
    document.Root.Names = pikepdf.Dictionary(Dests=tree.obj)
    return document


def test_marks_of_a_run_are_taken_out_in_the_order_of_pages_and_problems() -> None:
    late, ten, two, none = (
        Bookmark("1 Late", 3), Bookmark("10 Ten", 1), Bookmark("2 Two", 1), Bookmark("Notes", 1)
    )  # fmt: skip
    run = marked(late, none, ten, two)
    assert take_bookmarks(run) == [two, ten, none, late]
    assert take_bookmarks(run) == []
