"""The PDF of a shared run, split into one PDF a document; and PDFs joined into one.

A split PDF holds its own pages and what they use, and nothing of the documents beside it.  All
bytes follow from the pages alone: there is no clock, no random id and no path in them.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from copy import copy
from dataclasses import dataclass
from io import BytesIO
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


@dataclass(frozen=True, slots=True)
class Part:
    """A document's pages in the PDF of a run.

    bookmarks: their pages are counted from the document's first page.
    """

    run: pikepdf.Pdf
    pages: range
    title: str
    bookmarks: tuple[Bookmark, ...]


def cut_run(run: bytes, titles: Sequence[str]) -> list[Part]:
    """The documents of a run, in order.

    titles: one for each document, shown by PDF readers.  Raises ValueError when a document has no
    page in the run, or the run is no whole PDF.
    """
    try:
        source = pikepdf.open(BytesIO(run), attempt_recovery=False)
    except pikepdf.PdfError as error:
        raise ValueError(f"TeX has written no whole PDF: {error}") from None
    owners = [int(page.obj.get(_MARK, -1)) for page in source.pages]
    if owners != sorted(owners) or set(owners) != set(range(len(titles))):
        raise ValueError("a document has no pages")
    for page in source.pages:
        del page.obj[_MARK]
    marks = take_bookmarks(source)
    parts = []
    for place, title in enumerate(titles):
        pages = range(bisect_left(owners, place), bisect_right(owners, place))
        inside = (mark for mark in marks if mark.page in pages)
        own = tuple(Bookmark(mark.title, mark.page - pages.start) for mark in inside)
        parts.append(Part(source, pages, title, own))
    return parts


def pages_in(pdf: bytes | Path) -> int:
    """How many pages a PDF has.  Raises ValueError when it is no whole PDF."""
    try:
        with pikepdf.open(BytesIO(pdf) if isinstance(pdf, bytes) else pdf) as opened:
            return len(opened.pages)
    except pikepdf.PdfError as error:
        raise ValueError(f"no whole PDF: {error}") from None


def extract(part: Part, language: str) -> bytes:
    """A document's own PDF.  language: a tag such as "en"."""
    with pikepdf.new() as document:
        document.pages.extend(part.run.pages[place] for place in part.pages)
        set_bookmarks(document, part.bookmarks)
        label_pages(document, [0])
        _describe(document, part.title, language)
        return _saved(document)


def collate(parts: Iterable[Part], language: str, duplex: bool = False) -> bytes:
    """One PDF of documents, also of several runs, with a bookmark for each.

    What the documents of one run share, such as its fonts, is in it once.
    duplex: each document begins on a right-hand page, after an empty page where that needs one.
    """
    marks: list[Bookmark] = []
    with pikepdf.new() as whole:
        for part in parts:
            if duplex:
                _fill_leaf(whole)
            marks.append(Bookmark(part.title, len(whole.pages)))
            whole.pages.extend(part.run.pages[place] for place in part.pages)
        if duplex:
            _fill_leaf(whole)
        set_bookmarks(whole, marks)
        label_pages(whole, [mark.page for mark in marks])
        _describe(whole, "", language)
        return _saved(whole)


def _fill_leaf(document: pikepdf.Pdf) -> None:
    """Adds an empty page, as large as the one before it, where the number of pages is odd."""
    if len(document.pages) % 2:
        document.pages.append(_blank(document, document.pages[-1]))


def _blank(document: pikepdf.Pdf, beside: pikepdf.Page) -> pikepdf.Page:
    """An empty page as large as the one beside it."""
    blank = pikepdf.Dictionary(
        Type=pikepdf.Name.Page, MediaBox=beside.mediabox, Resources=pikepdf.Dictionary()
    )
    return pikepdf.Page(document.make_indirect(blank))


def join(
    parts: Iterable[bytes | Path],
    target: Path | BytesIO,
    title: str = "",
    language: str = "en",
    duplex: bool = False,
) -> None:
    """One PDF of all parts in order, written while they are read; one that comes again is in once.

    duplex: each part begins on a right-hand page, after an empty page where that needs one.
    """
    with _joined(parts, title, language, duplex) as whole:
        _save(whole, target)


@dataclass(frozen=True, slots=True)
class _Copied:
    """A part's pages in the joined PDF; its bookmarks and labels are counted from the first."""

    pages: range
    marks: tuple[Bookmark, ...]
    starts: tuple[int, ...]


def _joined(
    parts: Iterable[bytes | Path], title: str, language: str, duplex: bool
) -> pikepdf.Pdf:
    marks: list[Bookmark] = []
    starts: list[int] = []
    known: dict[bytes | Path, _Copied] = {}
    whole = pikepdf.new()
    for part in parts:
        if duplex:
            _fill_leaf(whole)
        start = len(whole.pages)
        if part in known:
            again = [whole.pages[place] for place in known[part].pages]
            whole.pages.extend(pikepdf.Page(whole.make_indirect(copy(p.obj))) for p in again)
        else:
            known[part] = _copied(part, whole)
        marks += (Bookmark(mark.title, mark.page + start) for mark in known[part].marks)
        starts += (first + start for first in known[part].starts)
    set_bookmarks(whole, marks)
    label_pages(whole, starts)
    _describe(whole, title, language)
    return whole


def _copied(part: bytes | Path, whole: pikepdf.Pdf) -> _Copied:
    """Appends a part's pages, whose content is read when the whole is written."""
    source = BytesIO(part) if isinstance(part, bytes) else part
    opened = pikepdf.open(source, access_mode=pikepdf.AccessMode.stream)
    start = len(whole.pages)
    whole.pages.extend(opened.pages)
    marks, starts = read_bookmarks(opened), label_starts(opened)
    return _Copied(range(start, len(whole.pages)), tuple(marks), tuple(starts))


def _describe(document: pikepdf.Pdf, title: str, language: str) -> None:
    document.Root.Lang = pikepdf.String(language)
    if title:
        document.docinfo["/Title"] = title
        document.Root.ViewerPreferences = pikepdf.Dictionary(DisplayDocTitle=True)


def _saved(document: pikepdf.Pdf) -> bytes:
    target = BytesIO()
    _save(document, target)
    return target.getvalue()


def _save(document: pikepdf.Pdf, target: Path | BytesIO) -> None:
    document.save(
        target,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
        fix_metadata_version=False,
    )
