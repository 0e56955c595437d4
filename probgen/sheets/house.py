"""A department's house: the style of its pages, and its own layouts in place of the usual."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.input.fault import Fault, Faults, InputError
from probgen.input.file import read_text, require_nameable
from probgen.input.text import unfit, unfit_line
from probgen.sheets.style import PLAIN, HouseStyle, read_style

LAYOUTS: Final = (
    "sheet.tex.j2", "key.tex.j2", "cover.tex.j2", "answers.tex.j2", "formulas.tex.j2",
    "header.tex.j2", "preamble.tex.j2", "fonts.tex.j2", "scripts.tex.j2", "page.tex.j2",
    "large.tex.j2", "style.tex.j2", "flow.tex.j2", "working.tex.j2", "problem.tex.j2",
    "makeup.tex.j2", "solution.tex.j2", "table.tex.j2", "feedback.tex.j2", "marked.tex.j2",
)  # fmt: skip
"""The layouts there are; a house may have its own of any of them."""
LARGEST_LAYOUT: Final = 1_000_000
"""Bytes; the largest of the usual ones has a hundredth of that."""

MOST_LAYOUTS: Final = 100
"""Files of a folder of layouts, those of other names that they include among them."""


@dataclass(frozen=True, slots=True)
class House:
    """layouts: name and text of each layout of its own; folder: where they lie, for messages."""

    style: HouseStyle = PLAIN
    layouts: tuple[tuple[str, str], ...] = ()
    folder: str = ""


USUAL: Final = House()
"""Pages as they come with the package."""


def read_house(style: Path | None, layouts: Path | None) -> House:
    """The house whose style is in a file and whose layouts lie in a folder; None for the usual.

    Raises InputError with every fault of both.
    """
    faults = Faults("")
    read = PLAIN
    own: tuple[tuple[str, str], ...] = ()
    try:
        read = read_style(style) if style else read
    except InputError as error:
        faults.take(error)
    try:
        own = read_layouts(layouts) if layouts else own
    except InputError as error:
        faults.take(error)
    faults.settle()
    return House(read, own, str(layouts or ""))


def read_layouts(folder: Path) -> tuple[tuple[str, str], ...]:
    """Name and text of every layout file in a folder, by name.

    Files of other names are taken along, since layouts may include them.  Raises InputError when
    there is no layout among them, or one cannot be read.
    """
    require_nameable(folder, "folder of layouts")
    paths = sorted(folder.glob("*.j2"))
    if not any(path.name in LAYOUTS for path in paths):
        expected = f"a folder with one or more of {', '.join(LAYOUTS)}"
        mend = "correct the path, or name the files so"
        raise InputError([Fault(str(folder), "", "no layout", expected, mend)])
    if len(paths) > MOST_LAYOUTS:
        found, expected = f"{len(paths)} layouts", f"at most {MOST_LAYOUTS}"
        mend = "keep those that your pages use"
        raise InputError([Fault(str(folder), "", found, expected, mend)])
    return tuple((path.name, _read_layout(path)) for path in paths)


def _read_layout(path: Path) -> str:
    text = read_text(path, "layout", LARGEST_LAYOUT)
    if line := unfit_line(text):  # which no record could hold
        found, expected = unfit(text, LARGEST_LAYOUT), "a layout of printable text"
        raise InputError([Fault(str(path), f"line {line}", found, expected, "take it out")])
    return text
