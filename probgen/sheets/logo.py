"""A house's logo: a picture that TeX can set, and of a size that a page can hold."""

from __future__ import annotations

import warnings
from collections.abc import Mapping
from io import BytesIO
from typing import Final, Literal

Picture = Literal["", ".pdf", ".png", ".jpg", ".jpeg"]
LARGEST_LOGO: Final = 4 * 2**20
"""Bytes; a logo is in every PDF that is made."""
MOST_PIXELS: Final = 5000
"""Each way: more than a printer sets in the width of a page, and unpacked at once by TeX."""
BEGINNINGS: Final[Mapping[str, bytes]] = {
    ".pdf": b"%PDF", ".png": b"\x89PNG", ".jpg": b"\xff\xd8", ".jpeg": b"\xff\xd8",
}  # fmt: skip
"""How the content of each kind of picture begins, by the standards they follow."""
_LONGEST_SIDE: Final = 14_400
"""Of a PDF's page, in points: what the standard of PDF advises at the most."""

_DAMAGED: Final = "it is damaged"


def flaw_of(content: bytes, kind: Picture) -> str:
    """What is wrong with a picture's content; "" for nothing.  None at all is of the kind ""."""
    if not kind:
        return "a picture of no kind" if content else ""
    if not content.startswith(BEGINNINGS[kind]):
        return "its content is something else"
    return _flaw_of_page(content) if kind == ".pdf" else _flaw_of_pixels(content)


def _flaw_of_pixels(content: bytes) -> str:
    """Reads the head of the picture alone: its pixels are not unpacked here."""
    from PIL import Image

    try:
        with warnings.catch_warnings(action="ignore", category=Image.DecompressionBombWarning):
            opened = Image.open(BytesIO(content), formats=["PNG", "JPEG"])
        with opened:
            width, height = opened.size
            opened.verify()
    except Image.DecompressionBombError:
        return "far too many pixels"
    except (OSError, ValueError, SyntaxError):  # what it raises where pictures are damaged
        return _DAMAGED
    return "" if max(width, height) <= MOST_PIXELS else f"{width} x {height} pixels"


def _flaw_of_page(content: bytes) -> str:
    from pikepdf import Pdf, PdfError

    try:
        with Pdf.open(BytesIO(content)) as pdf:
            if not len(pdf.pages):
                return "a PDF without pages"
            left, bottom, right, top = (float(side) for side in pdf.pages[0].mediabox.as_list())
    except (PdfError, ValueError, TypeError):
        return _DAMAGED
    sides = abs(right - left), abs(top - bottom)
    good = min(sides) >= 1.0 and max(sides) <= _LONGEST_SIDE
    return "" if good else f"a page of {sides[0]:.0f} x {sides[1]:.0f} pt"
