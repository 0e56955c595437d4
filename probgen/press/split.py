"""The PDF of a shared run, split into one PDF a document; and PDFs joined into one.

A split PDF holds its own pages and what they use, and nothing of the documents beside it.  All
bytes follow from the pages alone: there is no clock, no random id and no path in them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from io import BytesIO
from itertools import groupby
from pathlib import Path

import pikepdf

_MARK = "/PressDocument"


def split_run(
    run: bytes, titles: Sequence[str], language: str, duplex: bool = False
) -> tuple[list[bytes], bytes]:
    """The PDF of each document of a run, in order, and one PDF of them all.

    titles: one for each document, shown by PDF readers; language: a tag such as "en".
    duplex: in the PDF of them all each document begins on a right-hand page.  Raises ValueError when a document has no page in the run.
    """
    with pikepdf.open(BytesIO(run)) as source:
        owners = [int(page.obj[_MARK]) for page in source.pages]
        if set(owners) != set(range(len(titles))):
            raise ValueError("a document has no pages")
        for page in source.pages:
            del page.obj[_MARK]
        groups = [
            [place for place, _ in group]
            for _, group in groupby(enumerate(owners), key=lambda placed: placed[1])
        ]
        alone = [
            _extract(source, places, title, language)
            for places, title in zip(groups, titles, strict=True)
        ]
        for places in reversed(groups if duplex else []):
            if len(places) % 2:
                source.pages.insert(places[-1] + 1, _blank(source, source.pages[places[-1]]))
        return alone, _saved(source)


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
    with pikepdf.new() as whole:
        for part in parts:
            if duplex and len(whole.pages) % 2:
                whole.pages.append(_blank(whole, whole.pages[-1]))
            whole.pages.extend(
                pikepdf.open(BytesIO(part) if isinstance(part, bytes) else part).pages
            )
        _describe(whole, title, language)
        return _saved(whole)


def _extract(source: pikepdf.Pdf, places: Sequence[int], title: str, language: str) -> bytes:
    with pikepdf.new() as document:
        document.pages.extend(source.pages[place] for place in places)
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
