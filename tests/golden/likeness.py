"""Pages as pictures, and how much two pictures of a page differ.

Shades run from 0, black, to 255, white.
"""

from __future__ import annotations

import subprocess
from io import BytesIO
from itertools import product
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy.ndimage import uniform_filter

DOTS = 60  # of a picture, in each inch
RENDERED = 600  # dots in each inch that a page is first rendered at, lest hairlines be rounded
SHADES = 16
REACH = 5  # dots, across the square over which shades are averaged: 2 mm
SHIFT = 1  # dots by which things may have moved: 0.4 mm
TOLERANCE = 17.5
"""The largest difference of an averaged shade between pictures that are alike.

Other ways to render a page were seen to differ by 14 at most, a word moved by 2 mm by 21 or more.
"""

Picture = NDArray[np.float64]


def picture_of(pdf: bytes, page: int, *options: str, dots: int = RENDERED) -> Picture:
    """A page of a PDF, from 0; dots: rendered in each inch.  options: further ones of pdftoppm."""
    command = ["pdftoppm", "-gray", "-singlefile", "-r", str(dots), "-f", str(page + 1), *options]
    done = subprocess.run([*command, "-"], input=pdf, capture_output=True, check=True)
    with Image.open(BytesIO(done.stdout)) as image:
        size = [round(side * DOTS / dots) for side in image.size]
        return np.asarray(image.resize((size[0], size[1]), Image.Resampling.BOX), dtype=float)


def write_picture(picture: Picture, path: Path) -> None:
    """The picture as a small PNG, in a few shades of grey."""
    step = 255 / (SHADES - 1)
    shades = (np.round(picture / step) * step).round().astype(np.uint8)
    Image.fromarray(shades).save(path, optimize=True)


def read_picture(path: Path) -> Picture:
    with Image.open(path) as image:
        return np.asarray(image.convert("L"), dtype=float)


def difference(expected: Picture, found: Picture) -> Picture:
    """How much each place of a page differs, 0 to 255, in shades averaged about it.

    What lies a dot aside is no difference: each place is compared with the most alike near it.
    Raises ValueError for pages of different size.
    """
    if expected.shape != found.shape:
        raise ValueError(f"{expected.shape} dots expected, {found.shape} found")
    one, other = (uniform_filter(each, REACH, mode="nearest") for each in (expected, found))
    moves = product(range(-SHIFT, SHIFT + 1), repeat=2)
    least: Picture = np.min([np.abs(one - np.roll(other, way, (0, 1))) for way in moves], axis=0)
    return least
