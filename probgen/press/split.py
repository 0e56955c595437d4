"""The PDF of a shared run, split into one PDF a document; and PDFs joined into one.

A split PDF holds its own pages and what they use, and nothing of the documents beside it.  All
bytes follow from the pages alone: there is no clock, no random id and no path in them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from io import BytesIO
from itertools import accumulate, groupby
from pathlib import Path

import pikepdf

from probgen.press.bookmark import (
    Bookmark,
    label_pages,
    label_starts,
    read_bookmarks,
    set_bookmarks,
    take_bookmarks,
)

_MARK = "/PressDocument"


def split_run(
    run: bytes, titles: Sequence[str], language: str, duplex: bool = False
) -> tuple[list[bytes], bytes]:
    """The PDF of each document of a run, in order, and one PDF of them all.

    titles: one for each document, shown by PDF readers; language: a tag such as "en".
    duplex: in the PDF of them all each document begins on a right-hand page.
    Raises ValueError when a document has no page in the run.
    """
    with pikepdf.open(BytesIO(run)) as source:
        owners = [int(page.obj[_MARK]) for page in source.pages]
        if set(owners) != set(range(len(titles))):
            raise ValueError("a document has no pages")
        for page in source.pages:
            del page.obj[_MARK]
        marks = take_bookmarks(source)
        sizes = [len(list(group)) for _, group in groupby(owners)]
        starts = list(accumulate(sizes[:-1], initial=0))
        alone = [
            _extract(source, range(start, start + size), marks, title, language)
            for start, size, title in zip(starts, sizes, titles, strict=True)
        ]
        if duplex:
            starts = _padded(source, starts, sizes)
        set_bookmarks(source, map(Bookmark, titles, starts))
        label_pages(source, starts)
        return alone, _saved(source)


def _padded(run: pikepdf.Pdf, starts: Sequence[int], sizes: Sequence[int]) -> list[int]:
    """Where documents start once each of an odd number of pages has an empty page behind it."""
    moved = []
    for start, size in zip(starts, sizes, strict=True):
        first = start + len(run.pages) - sum(sizes)
        moved.append(first)
        if size % 2:
            run.pages.insert(first + size, _blank(run, run.pages[first + size - 1]))
    return moved


def _blank(document: pikepdf.Pdf, beside: pikepdf.Page) -> pikepdf.Page:
    """An empty page as large as the one beside it."""
    blank = pikepdf.Dictionary(
        Type=pikepdf.Name.Page, MediaBox=beside.mediabox, Resources=pikepdf.Dictionary()
    )
    return pikepdf.Page(document.make_indirect(blank))


def page_count(pdf: bytes) -> int:
    with pikepdf.open(BytesIO(pdf)) as opened:
        return len(opened.pages)


def join(
    parts: Iterable[bytes | Path], title: str = "", language: str = "en", duplex: bool = False
) -> bytes:
    """One PDF of all parts in order.  Parts given as paths are read only when they are written.

    duplex: each part begins on a right-hand page, after an empty page where that needs one.
    """
    marks: list[Bookmark] = []
    starts: list[int] = []
    with pikepdf.new() as whole:
        for part in parts:
            if duplex and len(whole.pages) % 2:
                whole.pages.append(_blank(whole, whole.pages[-1]))
            start = len(whole.pages)
            opened = pikepdf.open(BytesIO(part) if isinstance(part, bytes) else part)
            marks += (Bookmark(mark.title, mark.page + start) for mark in read_bookmarks(opened))
            starts += (first + start for first in label_starts(opened))
            whole.pages.extend(opened.pages)
        set_bookmarks(whole, marks)
        label_pages(whole, starts)
        _describe(whole, title, language)
        return _saved(whole)


def _extract(
    source: pikepdf.Pdf, places: range, marks: Iterable[Bookmark], title: str, language: str
) -> bytes:
    with pikepdf.new() as document:
        document.pages.extend(source.pages[place] for place in places)
        inside = (mark for mark in marks if mark.page in places)
        set_bookmarks(document, (Bookmark(m.title, m.page - places.start) for m in inside))
        label_pages(document, [0])
        _describe(document, title, language)
        return _saved(document)


def _describe(document: pikepdf.Pdf, title: str, language: str) -> None:
    document.Root.Lang = pikepdf.String(language)
    if title:
        document.docinfo["/Title"] = title
        document.Root.ViewerPreferences = pikepdf.Dictionary(DisplayDocTitle=True)


def _saved(document: pikepdf.Pdf) -> bytes:
    target = BytesIO()
    document.save(
        target,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
        fix_metadata_version=False,
    )
    return target.getvalue()
