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


def split_run(run: bytes, titles: Sequence[str], language: str) -> tuple[list[bytes], bytes]:
    """The PDF of each document of a run, in order, and one PDF of them all.

    titles: one for each document, shown by PDF readers; language: a tag such as "en".
    Raises ValueError when a document has no page in the run.
    """
    with pikepdf.open(BytesIO(run)) as source:
        owners = [int(page.obj[_MARK]) for page in source.pages]
        if set(owners) != set(range(len(titles))):
            raise ValueError("a document has no pages")
        for page in source.pages:
            del page.obj[_MARK]
        alone = [
            _extract(source, [place for place, _ in group], titles[owner], language)
            for owner, group in groupby(enumerate(owners), key=lambda placed: placed[1])
        ]
        return alone, _saved(source)


def page_count(pdf: bytes) -> int:
    with pikepdf.open(BytesIO(pdf)) as opened:
        return len(opened.pages)


def join(parts: Iterable[bytes | Path], title: str = "", language: str = "en") -> bytes:
    """One PDF of all parts in order.  Parts given as paths are read only when they are written."""
    with pikepdf.new() as whole:
        for part in parts:
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
