"""Makes the pictures anew that the pages are compared with; run by `make golden`.

It says by how much each page differs from its picture before, and which figures differ, and keeps
those that are alike.
"""

from __future__ import annotations

import os
import tempfile

from tests.golden.figures import DRAWINGS, differences, drawn, kept
from tests.golden.likeness import TOLERANCE, difference, picture_of, read_picture, write_picture
from tests.golden.pages import PICTURES, printed, tex_live


def main() -> None:
    make_pictures()
    make_drawings()


def make_drawings() -> None:
    """The figures, those that differ; others keep the numbers they were rounded to before."""
    DRAWINGS.mkdir(exist_ok=True)
    now = drawn()
    for name, text in now.items():
        path = DRAWINGS / f"{name}.svg"
        if path.exists() and not differences(kept(name), text):
            continue
        print(f"{path.stem}  {'differs' if path.exists() else 'new'}")
        path.write_text(f"{text}\n", encoding="utf-8")
    for path in DRAWINGS.glob("*.svg"):
        if path.stem not in now:
            path.unlink()


def make_pictures() -> None:
    """The pages."""
    PICTURES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as cache:
        os.environ["XDG_CACHE_HOME"] = cache
        pages = printed()
    for name, (pdf, page) in pages.items():
        path, found = PICTURES / f"{name}.png", picture_of(pdf, page)
        before = read_picture(path) if path.exists() else None
        if before is None or before.shape != found.shape:
            print(f"{name:12}  new")
        elif (most := difference(before, found).max()) <= TOLERANCE:
            print(f"{name:12}  as it was")
            continue
        else:
            print(f"{name:12}  differs by {most:.0f}")
        write_picture(found, path)
    for path in PICTURES.glob("*.png"):
        if path.stem not in pages:
            path.unlink()
    (PICTURES / "made-with.txt").write_text(f"{tex_live()}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
