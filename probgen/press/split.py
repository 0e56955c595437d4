"""The PDF of a shared run, split into one PDF a document; and PDFs joined into one.

A split PDF holds its own pages and what they use, and nothing of the documents beside it.  All
bytes follow from the pages alone: there is no clock, no random id and no path in them.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from copy import copy
from dataclasses import dataclass, field
from io import BytesIO
from pathlib import Path

import pikepdf

from probgen.input.file import write_beside
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
        owners = [int(page.obj.get(_MARK, -1)) for page in source.pages]
    except (pikepdf.PdfError, TypeError, ValueError, RuntimeError):
        raise ValueError("TeX has written no whole PDF") from None
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
    except pikepdf.PdfError:
        raise ValueError("no whole PDF") from None


def extract(part: Part, language: str) -> bytes:
    """A document's own PDF.  language: a tag such as "en"."""
    with pikepdf.new() as document:
        document.pages.extend(part.run.pages[place] for place in part.pages)
        set_bookmarks(document, part.bookmarks)
        label_pages(document, [0])
        _describe(document, part.title, language)
        return _saved(document)


def collate(parts: Iterable[Part], language: str) -> bytes:
    """One PDF of documents, also of several runs, with a bookmark for each.

    What the documents of one run share, such as its fonts, is in it once.
    """
    marks: list[Bookmark] = []
    with pikepdf.new() as whole:
        for part in parts:
            marks.append(Bookmark(part.title, len(whole.pages)))
            whole.pages.extend(part.run.pages[place] for place in part.pages)
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


@dataclass(frozen=True, slots=True)
class Leaves:
    """Some pages of a PDF: those of one document in it; from 0, all of them for a count of None."""

    source: bytes | Path
    first: int = 0
    count: int | None = None


def join(
    parts: Iterable[Leaves],
    target: Path | BytesIO,
    title: str = "",
    language: str = "en",
    duplex: bool = False,
) -> None:
    """One PDF of all parts in order, put into its place whole; one that comes again is in once.

    What parts of one PDF share, such as its fonts, is in it once too.
    duplex: each part begins on a right-hand page, after an empty page where that needs one.
    """
    with pikepdf.new() as whole:
        joined = _Joined(whole)
        for part in parts:
            if duplex:
                _fill_leaf(whole)
            joined.add(part)
        set_bookmarks(whole, joined.marks)
        label_pages(whole, joined.starts)
        _describe(whole, title, language)
        content = _saved(whole)
    if isinstance(target, Path):
        write_beside(target, content)
    else:
        target.write(content)


@dataclass(slots=True)
class _Joined:
    """What has been put into a joined PDF: its bookmarks, and the pages where labels begin."""

    whole: pikepdf.Pdf
    marks: list[Bookmark] = field(default_factory=list)
    starts: list[int] = field(default_factory=list)
    _opened: dict[bytes | Path, _Source] = field(default_factory=dict)
    _known: dict[Leaves, range] = field(default_factory=dict)

    def add(self, part: Leaves) -> None:
        """Appends pages, whose content is read when the whole is written."""
        if part.source not in self._opened:
            self._opened[part.source] = _Source.of(part.source)
        source = self._opened[part.source]
        end = len(source.pdf.pages) if part.count is None else part.first + part.count
        start = len(self.whole.pages)
        if part in self._known:
            again = [self.whole.pages[place] for place in self._known[part]]
            self.whole.pages.extend(
                pikepdf.Page(self.whole.make_indirect(copy(page.obj))) for page in again
            )
        else:
            self.whole.pages.extend(source.pdf.pages[part.first : end])
            self._known[part] = range(start, start + end - part.first)
        own = range(part.first, end)
        moved = start - part.first
        self.marks += (Bookmark(m.title, m.page + moved) for m in source.marks if m.page in own)
        self.starts += (first + moved for first in source.starts if first in own)


@dataclass(frozen=True, slots=True)
class _Source:
    """A PDF that pages are taken from; its bookmarks and labels are counted from its first page."""

    pdf: pikepdf.Pdf
    marks: tuple[Bookmark, ...]
    starts: tuple[int, ...]

    @classmethod
    def of(cls, source: bytes | Path) -> _Source:
        content = BytesIO(source) if isinstance(source, bytes) else source
        opened = pikepdf.open(content, access_mode=pikepdf.AccessMode.stream)
        return cls(opened, tuple(read_bookmarks(opened)), tuple(label_starts(opened)))


def _describe(document: pikepdf.Pdf, title: str, language: str) -> None:
    document.Root.Lang = pikepdf.String(language)
    if title:
        document.docinfo["/Title"] = title
        document.Root.ViewerPreferences = pikepdf.Dictionary(DisplayDocTitle=True)


def _saved(document: pikepdf.Pdf) -> bytes:
    """The document's bytes.  In memory: on a full disk the library would end the whole process."""
    target = BytesIO()
    document.save(
        target,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
        fix_metadata_version=False,
    )
    return target.getvalue()
