"""What makes pages of documents: the interface of the writers in the rooms beside."""

from __future__ import annotations

from typing import Protocol

from probgen.sheets.document import Key, Sheet


class Writer(Protocol):
    """A page language; each writer picks how figures and formulas are put in it."""

    def sheet(self, sheet: Sheet) -> str:
        """A sheet in the page language."""

    def key(self, key: Key) -> str:
        """A key in the page language."""
