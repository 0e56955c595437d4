"""Pages look as they did: each like its picture, but for less than a label's moving makes."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from itertools import cycle
from pathlib import Path

import numpy as np
import pytest
from scipy import ndimage

from .likeness import (
    TOLERANCE,
    Picture,
    difference,
    picture_of,
    read_picture,
    write_picture,
)
from .pages import KEPT, PICTURES, printed, tex_live

STEP = 5  # dots: 2 mm
DARK = 950  # shades of a letter, summed over its dots; a stroke has less
WAYS = ((0, STEP), (STEP, 0), (0, -STEP), (-STEP, 0))
LOOK = "see tests/golden/README.md; if the pages are meant to look so: make golden"
RENDERINGS = {
    "fewer dots": ((), 480),
    "an odd number of dots": ((), 487),
    "hard edges": (("-aa", "no", "-aaVector", "no"), 900),
}
Printed = dict[str, tuple[bytes, int]]


def kept(name: str) -> Picture:
    return read_picture(PICTURES / f"{name}.png")


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> Printed:
    """Every page that is kept, printed."""
    if shutil.which("pdflatex") is None or shutil.which("pdftoppm") is None:
        pytest.skip("pdflatex or pdftoppm is not installed")
    return printed()


def test_every_page_looks_as_its_picture(pages: Printed, tmp_path: Path) -> None:
    made_with = (PICTURES / "made-with.txt").read_text(encoding="utf-8").strip()
    if tex_live() != made_with:
        pytest.skip(f"the pictures are of {made_with}, whose lines may break elsewhere")
    unlike = [
        told
        for name, (pdf, page) in pages.items()
        for told in _unlike(name, picture_of(pdf, page), tmp_path)
    ]
    assert not unlike, "\n".join([*unlike, LOOK])


def _unlike(name: str, found: Picture, folder: Path) -> Iterator[str]:
    """Where a page differs most from its picture, if it does; three pictures of it are written."""
    expected = kept(name)
    if expected.shape != found.shape:
        yield f"{name}: {found.shape} dots high and wide instead of {expected.shape}"
        return
    differs = difference(expected, found)
    if differs.max() <= TOLERANCE:
        return
    shown = {"expected": expected, "found": found, "difference": 255 - np.minimum(4 * differs, 255)}
    for what, picture in shown.items():
        write_picture(picture, folder / f"{name}-{what}.png")
    row, column = np.unravel_index(differs.argmax(), differs.shape)
    place = f"{column * 25.4 / 60:.0f} mm from the left, {row * 25.4 / 60:.0f} mm from the top"
    yield f"{name}: differs by {differs.max():.0f} {place}: {folder}/{name}-*.png"


@pytest.mark.parametrize("rendering", RENDERINGS)
@pytest.mark.parametrize("name", ["sheet-first", "key-first", "answers"])
def test_another_rendering_is_alike(pages: Printed, name: str, rendering: str) -> None:
    options, dots = RENDERINGS[rendering]
    usual, other = picture_of(*pages[name]), picture_of(*pages[name], *options, dots=dots)
    height, width = np.minimum(usual.shape, other.shape)
    assert difference(usual[:height, :width], other[:height, :width]).max() <= TOLERANCE


@pytest.mark.parametrize("name", ["sheet-first", "sheet-last", "sheet-large", "key-first"])
def test_a_moved_label_is_seen(name: str) -> None:
    page = kept(name)
    labels = pieces(page)
    assert len(labels) > 10
    overlooked = []
    for label, way in zip(labels, cycle(WAYS), strict=False):
        about = tuple(slice(max(s.start - 15, 0), s.stop + 15) for s in label)
        if difference(page[about], moved(page, label, way)[about]).max() <= TOLERANCE:
            overlooked.append(label)
    assert overlooked == []


def test_pages_of_another_size_are_not_compared() -> None:
    with pytest.raises(ValueError, match="dots expected"):
        difference(kept("sheet-first"), kept("sheet-house"))


def test_every_page_has_a_picture_and_every_picture_a_page() -> None:
    assert {path.stem for path in PICTURES.glob("*.png")} == {each.name for each in KEPT}


def pieces(page: Picture) -> list[tuple[slice, slice]]:
    """The labels and words of a page: what stands alone and is as large and dark as they are.

    A lone stroke ("/") is too light for its moving to be told from another rendering.
    """
    near = ndimage.binary_dilation(page < 225, np.ones((3, 3)))
    numbered, _ = ndimage.label(near, np.ones((3, 3)))
    boxes = ndimage.find_objects(numbered)
    alike = [box for box in boxes if 4 < _length(box[0]) < 16 and 4 < _length(box[1]) < 40]
    return [box for box in alike if (255.0 - page[box]).sum() > DARK]


def _length(side: slice) -> int:
    return int(side.stop - side.start)


def moved(page: Picture, piece: tuple[slice, slice], way: tuple[int, int]) -> Picture:
    """The page with what is in a box laid elsewhere; way: dots down and to the right."""
    changed = page.copy()
    changed[piece] = 255.0
    rows, columns = (slice(s.start + by, s.stop + by) for s, by in zip(piece, way, strict=True))
    place = changed[rows, columns]
    np.minimum(place, page[piece], out=place)
    return changed
