"""Bookmarks and page labels: finding one's way in a PDF on a screen."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import pikepdf


@dataclass(frozen=True, slots=True)
class Bookmark:
    """A title in a PDF's outline; page: counted from 0."""

    title: str
    page: int


def take_bookmarks(run: pikepdf.Pdf) -> list[Bookmark]:
    r"""The places that `\bookmark` marked in a run, in page order, taken out of it."""
    if "/Names" not in run.Root:
        return []
    places = {page.obj.objgen: place for place, page in enumerate(run.pages)}
    found = []
    for name, target in pikepdf.NameTree(run.Root.Names.Dests).items():
        page = (target.D if isinstance(target, pikepdf.Dictionary) else target)[0]
        title = bytes.fromhex(str(name).partition(":")[2]).decode()
        found.append(Bookmark(title, places[page.objgen]))
    del run.Root.Names
    return sorted(found, key=lambda bookmark: (bookmark.page, _number(bookmark.title)))


def _number(title: str) -> int:
    """What a title begins with: several problems on a page stand in their order."""
    first = title.partition(" ")[0]
    return int(first) if first.isascii() and first.isdigit() else 10**6


def read_bookmarks(document: pikepdf.Pdf) -> list[Bookmark]:
    """The outline of a PDF that `set_bookmarks` wrote."""
    places = {page.obj.objgen: place for place, page in enumerate(document.pages)}
    with document.open_outline() as outline:
        return [
            Bookmark(item.title, places[item.destination[0].objgen])
            for item in outline.root
            if isinstance(item.destination, pikepdf.Array)
        ]


def set_bookmarks(document: pikepdf.Pdf, bookmarks: Iterable[Bookmark]) -> None:
    """Gives a PDF an outline, unless there are no bookmarks."""
    chosen = list(bookmarks)
    if not chosen:
        return
    with document.open_outline() as outline:
        outline.root.extend(pikepdf.OutlineItem(mark.title, mark.page, "Fit") for mark in chosen)


def label_pages(document: pikepdf.Pdf, starts: Sequence[int]) -> None:
    """Page labels that count from 1 again at each start, as the pages themselves do."""
    numbers = pikepdf.Array()
    for start in starts:
        numbers.append(start)
        numbers.append(pikepdf.Dictionary(S=pikepdf.Name.D, St=1))
    document.Root.PageLabels = pikepdf.Dictionary(Nums=numbers)


def label_starts(document: pikepdf.Pdf) -> list[int]:
    """The pages at which the labels of `label_pages` begin again, just the first for none."""
    if "/PageLabels" not in document.Root:
        return [0]
    return [int(place) for place in list(document.Root.PageLabels.Nums)[::2]]
