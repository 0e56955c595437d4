"""What the ordinary way would have to print: each document of a build as a file of its own."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from unittest.mock import patch

from probgen.sheets.document import Key, Sheet
from probgen.sheets.latex.layout import Layouts
from tests.bench.ordinary.page import OrdinaryPages


@contextmanager
def written() -> Iterator[list[str]]:
    """The LaTeX of all sheets and keys that are laid out meanwhile, in this process."""
    files: list[str] = []
    pages, sheet_of, key_of = OrdinaryPages(), Layouts.sheet, Layouts.key

    def sheet(own: Layouts, of: Sheet) -> str:
        files.append(pages.sheet(of))
        return sheet_of(own, of)

    def key(own: Layouts, of: Key) -> str:
        files.append(pages.key(of))
        return key_of(own, of)

    with patch.object(Layouts, "sheet", sheet), patch.object(Layouts, "key", key):
        yield files
