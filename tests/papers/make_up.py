"""How a key's pages are made up, read from its PDF: where lines, headings and panels stand."""

from __future__ import annotations

import ctypes
import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium

from tests.papers.ink import Leaf, leaves

FOOT_GAP = 13.5  # pt from the foot of a key's text to the line above its foot
TOP = 45.0  # pt from the edge of the paper to a key's first line
FIRST = 3  # axes and forces: the two steps that a problem begins with end where this one begins
HEAD = 11.0  # pt, and a problem's head is larger than that
_BESIDE = 14.0  # pt between a column of text and a figure beside it
_NUMBERED = re.compile(r"\d+ ")
_FOOT = re.compile(r"page \d+ of \d+$")


@dataclass(frozen=True)
class Line:
    """A line of text, pt from the top of its page; bold, size: how it begins, in pt.

    column: top and bottom of what stands in the column of text, without labels of a figure beside.
    """

    top: float
    bottom: float
    text: str
    bold: bool
    size: float
    column: tuple[float, float] = (0.0, 0.0)

    @property
    def begins_problem(self) -> bool:
        return self._numbered and self.size > HEAD

    @property
    def begins_step(self) -> bool:
        return self._numbered and self.size < HEAD

    @property
    def _numbered(self) -> bool:
        return self.bold and bool(_NUMBERED.match(self.text))

    @property
    def begins_answers(self) -> bool:
        return self.bold and self.text.startswith("Answers")


@dataclass(frozen=True)
class Page:
    """lines: without the foot's, and those above the text, which are its head; filled: the part of
    the height for text that has ink above; height: for text, in pt; strokes: where what is
    drawn begins and ends, pt from the top, of a page that begins with a problem, but for the first.
    """

    lines: tuple[Line, ...]
    filled: float
    height: float
    strokes: tuple[tuple[float, float], ...] = ()
    head: tuple[str, ...] = ()


def pages(pdf: bytes) -> tuple[Page, ...]:
    """The pages of a key."""
    return tuple(_page(leaf, first=not place) for place, leaf in enumerate(leaves(pdf)))


def answers_apart(key: Sequence[Page]) -> Iterator[int]:
    """The pages that begin with a panel of answers, away from all of its working."""
    for number, page in enumerate(key, start=1):
        if page.lines and page.lines[0].begins_answers:
            yield number


def lone_lines(key: Sequence[Page]) -> Iterator[int]:
    """The pages whose first line alone belongs to what began on the page before."""
    for number, page in enumerate(key[1:], start=2):
        first, *others = page.lines
        goes_on = not (first.begins_problem or first.begins_step or first.begins_answers)
        if goes_on and (not others or _begins(others[0])):
            yield number


def _begins(line: Line) -> bool:
    return line.begins_problem or line.begins_step or line.begins_answers


def white_feet(key: Sequence[Page]) -> Iterator[tuple[int, float]]:
    """How much of each page is white at its foot, but for the last of a problem."""
    for number, (page, following) in enumerate(pairwise(key), start=1):
        if not following.lines[0].begins_problem:
            yield number, 1.0 - page.filled


def begun_anew(key: Sequence[Page]) -> Iterator[tuple[int, float, int]]:
    """Each page that begins with a problem, unless what that begins with, its data and its figure
    that nothing parts, would have had no room on the page before: how much of that page is white,
    and on how many pages the problem stands."""
    tops = [number for number, page in enumerate(key) if page.lines[0].begins_problem]
    for top in tops:
        if top and _white(key[top - 1]) > _opening(key[top], 1):
            later = (n for n in range(top, len(key)) if _ends(key, n))
            yield top + 1, 1.0 - key[top - 1].filled, next(later) - top + 1


def begun_late(key: Sequence[Page]) -> Iterator[tuple[int, float]]:
    """Each page that begins with a problem whose data, figure and first steps, with a quarter
    more, would have had room on the page before it: how much of that is white.  But for a problem
    that is a spread where it stands, and would have gone on to a third page."""
    for number, (before, page) in enumerate(pairwise(key), start=2):
        room = _white(before)
        late = page.lines[0].begins_problem and room > 1.25 * _opening(page, FIRST)
        if late and not _keeps_its_spread(key, number - 1, room):
            yield number, 1.0 - before.filled


def _keeps_its_spread(key: Sequence[Page], top: int, room: float) -> bool:
    """Whether the problem that a page begins with ends on the next one, and is higher than some
    room (pt) on a page before and one more page together."""
    if _ends(key, top) or top + 1 == len(key) or not _ends(key, top + 1):
        return False
    return sum(each.filled * each.height for each in key[top : top + 2]) > room + key[top].height


def _white(page: Page) -> float:
    """The height that is white at the foot, in pt."""
    return (1.0 - page.filled) * page.height


def _opening(page: Page, step: int) -> float:
    """How high what stands above a step of the page's first problem is, with all of the figures
    that begin there, in pt; infinite where the page does not have that step."""
    steps = [line.top for line in page.lines if line.begins_step][:step]
    if len(steps) < step:
        return math.inf
    return max([steps[-1], *(end for begin, end in page.strokes if begin < steps[-1])]) - TOP


def _ends(key: Sequence[Page], number: int) -> bool:
    """Whether the problem that a page begins with has its end there: its answers."""
    return any(line.begins_answers for line in key[number].lines)


def _page(leaf: Leaf, *, first: bool) -> Page:
    page, dark = leaf
    height = page.get_height()
    lines = list(_lines(page, height))
    foot = next(line for line in reversed(lines) if _FOOT.search(line.text))
    body = tuple(line for line in lines if TOP < line.bottom < foot.top - 6.0)
    head = tuple(line.text for line in lines if line.bottom <= TOP)
    end = foot.top - 8.0 - FOOT_GAP
    rows = np.flatnonzero(dark[: int(end + 12.0)].any(1))
    last = float(rows[-1]) if rows.size else TOP
    begins = not first and bool(body) and body[0].begins_problem
    strokes = tuple(_strokes(page, height)) if begins else ()
    return Page(body, (last - TOP) / (end - TOP), end - TOP, strokes, head)


def _strokes(page: pypdfium2.PdfPage, height: float) -> Iterator[tuple[float, float]]:
    for drawn in page.get_objects([pdfium.FPDF_PAGEOBJ_PATH]):
        _, bottom, _, top = drawn.get_bounds()
        yield height - top, height - bottom


def _lines(page: pypdfium2.PdfPage, height: float) -> Iterator[Line]:
    """What overlaps in height is a line, with its pieces from left to right."""
    text = page.get_textpage()
    boxes = [(text.get_rect(place), place) for place in range(text.count_rects())]
    row: list[tuple[float, float, float, float]] = []
    for box, _ in sorted(boxes, key=lambda each: -each[0][3]):
        if row and box[3] < min(each[1] for each in row) + 1.0:
            yield _line(text, row, height)
            row = []
        row.append(box)
    if row:
        yield _line(text, row, height)


def _line(
    text: pypdfium2.PdfTextPage, row: Sequence[tuple[float, float, float, float]], height: float
) -> Line:
    left, bottom, _, top = min(row)
    first = text.get_index(left + 1.0, (bottom + top) / 2, 4.0, 4.0)
    bold = first is not None and "Bold" in _font(text, first)
    size = 0.0 if first is None else pdfium.FPDFText_GetFontSize(text, first)
    right, low, high = max(b[2] for b in row), min(b[1] for b in row), max(b[3] for b in row)
    edge = min(1.0, (high - low) / 4)  # by which other rows may reach into this one
    words = text.get_text_bounded(left, low + edge, right, high - edge)
    own = list(_in_column(row))
    column = height - max(b[3] for b in own), height - min(b[1] for b in own)
    return Line(height - high, height - low, " ".join(words.split()), bold, size, column)


def _in_column(
    row: Sequence[tuple[float, float, float, float]],
) -> Iterator[tuple[float, float, float, float]]:
    """The pieces from the left that have no wide gap before them."""
    reached = min(row)[2]
    for piece in sorted(row):
        if piece[0] > reached + _BESIDE:
            return
        reached = max(reached, piece[2])
        yield piece


def _font(text: pypdfium2.PdfTextPage, place: int) -> str:
    buffer, flags = ctypes.create_string_buffer(80), ctypes.c_int()
    size = pdfium.FPDFText_GetFontInfo(text, place, buffer, len(buffer), flags)
    return buffer.raw[: max(size - 1, 0)].decode("utf-8", "replace")
