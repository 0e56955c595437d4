"""A house style: the few things by which a department's pages differ from others'."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal, cast, get_args

from probgen.bank.fault import Fault, Faults, InputError
from probgen.bank.table import Table
from probgen.sheets.document import Paper

Letters = Literal["roman", "sans"]
_COLOUR: Final = re.compile(r"#[0-9A-Fa-f]{6}")
_PICTURES: Final = (".pdf", ".png", ".jpg", ".jpeg")


@dataclass(frozen=True, slots=True)
class HouseStyle:
    """What a department may choose.

    text, headings: the letters of each.  colour: of headings and rules, "#RRGGBB", "" for black.
    header: stands at the top right of a first page, where a document names no institution.
    logo: a PDF, PNG or JPEG file, printed `logo_height` mm high above the header.
    paper: None where the set file decides.
    """

    text: Letters = "roman"
    headings: Letters = "roman"
    colour: str = ""
    header: str = ""
    logo: Path | None = None
    logo_height: int = 12
    paper: Paper | None = None

    @property
    def files(self) -> Mapping[str, Path]:
        """Files that a print run needs beside its documents, by the names its preamble uses."""
        return {f"logo{self.logo.suffix.lower()}": self.logo} if self.logo else {}

    @property
    def ink(self) -> str:
        """The colour as TeX's red, green and blue, "0,0,0" for black."""
        parts = (self.colour[start : start + 2] or "0" for start in (1, 3, 5))
        return ",".join(f"{int(part, 16) / 255:.3g}" for part in parts)


def read_style(path: Path) -> HouseStyle:
    """The house style in a TOML file; a logo's path starts from the file's folder.

    Raises InputError with every fault of the file.
    """
    where = str(path)
    try:
        text = path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        fault = Fault(where, "", str(error), "a house style in a UTF-8 file", "check the path")
        raise InputError([fault]) from None
    return parse_style(text, where, path.parent)


def parse_style(text: str, where: str, folder: Path) -> HouseStyle:
    """As `read_style`, from text; `where` names the file in messages."""
    try:
        content = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        mend = "correct the line; words stand between quotes"
        raise InputError([Fault(where, "", str(error), "a TOML file", mend)]) from None
    faults = Faults(where)
    style = style_in(Table(content, "", faults), folder)
    faults.settle()
    return style


def style_in(table: Table, folder: Path) -> HouseStyle:
    """The house style a table holds; notes its faults.  Closes the table."""
    letters = get_args(Letters)
    found = HouseStyle(
        text=cast(Letters, table.word("text", letters, "roman")),
        headings=cast(Letters, table.word("headings", letters, "roman")),
        colour=_read_colour(table),
        header=table.text("header", ""),
        logo=_read_logo(table, folder),
        logo_height=table.whole("logo_height", 5, 40, 12),
        paper=cast(Paper, table.word("paper", get_args(Paper))) if table.has("paper") else None,
    )
    table.close()
    return found


def _read_colour(table: Table) -> str:
    colour = table.text("colour", "")
    if colour and not _COLOUR.fullmatch(colour):
        expected = "a colour as #RRGGBB"
        table.fault("colour", colour, expected, 'write it as in colour = "#1F3A5F"')
        return ""
    return colour


def _read_logo(table: Table, folder: Path) -> Path | None:
    named = table.text("logo", "")
    if not named:
        return None
    path = (folder / named).resolve()
    expected = f"a picture: {', '.join(_PICTURES)}"
    if path.suffix.lower() not in _PICTURES:
        table.fault("logo", named, expected, "save the logo in one of these formats")
    elif not path.is_file():
        table.fault("logo", named, "a file there is", f"its path starts from {folder}")
    else:
        return path
    return None
