"""A house style: the few things by which a department's pages differ from others'."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal, cast, get_args

from probgen.input.fault import Faults, InputError
from probgen.input.file import read_bytes, read_text
from probgen.input.table import Table
from probgen.input.toml import parse_toml
from probgen.sheets.document import Paper
from probgen.sheets.logo import BEGINNINGS, LARGEST_LOGO, MOST_PIXELS, Picture, flaw_of

Letters = Literal["roman", "sans"]
Figures = Literal["black", "colour"]
COLOUR: Final = re.compile(r"#[0-9A-Fa-f]{6}")


@dataclass(frozen=True, slots=True)
class HouseStyle:
    """What a department may choose.

    text, headings: the letters of each.  colour: of headings and rules, "#RRGGBB", "" for black.
    header: stands at the top right of a first page, where a document names no institution.
    logo: the content of a PDF, PNG or JPEG file, printed `logo_height` mm high above the header;
    logo_kind: which of them it is, ".png".  figures: in black, or with colours too.
    paper: None where the assignment file decides.
    """

    text: Letters = "roman"
    headings: Letters = "roman"
    colour: str = ""
    header: str = ""
    logo: bytes = b""
    logo_kind: Picture = ""
    logo_height: int = 12
    figures: Figures = "black"
    paper: Paper | None = None

    @property
    def files(self) -> Mapping[str, bytes]:
        """Files that a print run needs beside its documents, by the names its preamble uses."""
        return {f"logo{self.logo_kind}": self.logo} if self.logo else {}

    @property
    def colours(self) -> bool:
        """Whether figures have colours."""
        return self.figures == "colour"

    @property
    def ink(self) -> str:
        """The colour as TeX's red, green and blue, "0,0,0" for black."""
        parts = (self.colour[start : start + 2] or "0" for start in (1, 3, 5))
        return ",".join(f"{int(part, 16) / 255:.3g}" for part in parts)


PLAIN: Final = HouseStyle()


def read_style(path: Path) -> HouseStyle:
    """The house style in a TOML file; a logo's path starts from the file's folder.

    Raises InputError with every fault of the file.
    """
    return parse_style(read_text(path, "house style"), str(path), path.parent)


def parse_style(text: str, where: str, folder: Path) -> HouseStyle:
    """As `read_style`, from text; `where` names the file in messages."""
    faults = Faults(where)
    style = style_in(Table(parse_toml(text, where), "", faults), folder)
    faults.settle()
    return style


def style_in(table: Table, folder: Path) -> HouseStyle:
    """The house style a table holds; notes its faults.  Closes the table."""
    letters = get_args(Letters)
    logo, logo_kind = _read_logo(table, folder)
    found = HouseStyle(
        text=cast(Letters, table.word("text", letters, "roman")),
        headings=cast(Letters, table.word("headings", letters, "roman")),
        colour=_read_colour(table),
        header=table.text("header", ""),
        logo=logo,
        logo_kind=logo_kind,
        logo_height=table.whole("logo_height", 5, 40, 12),
        figures=cast(Figures, table.word("figures", get_args(Figures), "black")),
        paper=cast(Paper, table.word("paper", get_args(Paper))) if table.has("paper") else None,
    )
    table.close()
    return found


def _read_colour(table: Table) -> str:
    colour = table.text("colour", "")
    if colour and not COLOUR.fullmatch(colour):
        expected = "a colour as #RRGGBB"
        table.fault("colour", colour, expected, 'write it as in colour = "#1F3A5F"')
        return ""
    return colour


def _read_logo(table: Table, folder: Path) -> tuple[bytes, Picture]:
    """Content and kind of the logo's file; empty for none, or after a fault."""
    named = table.text("logo", "")
    if not named:
        return b"", ""
    path = folder / named
    kind = path.suffix.lower()
    if kind not in BEGINNINGS:
        expected = f"a picture: {', '.join(BEGINNINGS)}"
        table.fault("logo", named, expected, "save the logo in one of these formats")
        return b"", ""
    try:
        content = read_bytes(path, "picture", LARGEST_LOGO)
    except InputError as error:
        (fault,) = error.faults
        expected = f"a picture of at most {LARGEST_LOGO // 2**20} MB"
        mend = f"{fault.mend}; its path starts from {folder}"
        table.fault("logo", f"{named}: {fault.found}", expected, mend)
        return b"", ""
    if flaw := flaw_of(content, cast(Picture, kind)):
        expected = f"a {kind} picture of at most {MOST_PIXELS} pixels each way"
        table.fault("logo", f"{named}: {flaw}", expected, "save the logo anew, small")
        return b"", ""
    return content, cast(Picture, kind)
