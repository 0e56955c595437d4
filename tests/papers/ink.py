"""Where the ink of a page is: its pixels, as a printer would set them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import pypdfium2

MM = 72 / 25.4
DARK = 200  # of 255, and paler ink is the grey of a fill's smoothed edge


class White(NamedTuple):
    """The white around the ink of a page, mm from each edge of the paper."""

    left: float
    right: float
    top: float
    bottom: float


class Leaf(NamedTuple):
    """A page of a PDF, and which of its pixels are dark: a pixel for each pt, rows from the top."""

    page: pypdfium2.PdfPage
    dark: np.ndarray


@lru_cache(maxsize=1)  # several measures are taken of a document, one after the other
def leaves(pdf: bytes) -> tuple[Leaf, ...]:
    return tuple(map(_leaf, pypdfium2.PdfDocument(pdf)))


def _leaf(page: pypdfium2.PdfPage) -> Leaf:
    shade = page.render(scale=1, grayscale=True).to_numpy()
    return Leaf(page, shade.reshape(shade.shape[:2]) < DARK)


def whites(pdf: bytes) -> Iterator[White]:
    """For each page of a PDF that is not empty; to a third of a millimetre."""
    for _, dark in leaves(pdf):
        across, down = np.flatnonzero(dark.any(0)), np.flatnonzero(dark.any(1))
        if across.size:
            height, width = dark.shape
            edges = (across[0], width - 1 - across[-1], down[0], height - 1 - down[-1])
            yield White(*(float(edge) / MM for edge in edges))
