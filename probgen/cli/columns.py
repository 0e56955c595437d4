"""Rows shown in columns, by rich: in a terminal a long cell goes on in its own column."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from rich.console import Console
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

from probgen.input.text import visible

_ENDLESS: Final = 10_000


def line(text: str, style: str = "") -> Text:
    """A text for a terminal: what commands it or misleads an eye is spelled out."""
    return Text(visible(text), style)


def show_columns(
    console: Console, rows: Iterable[Sequence[str]], heads: Sequence[str] = (), indent: int = 0
) -> None:
    """Prints rows of texts, below their heads where there are some.

    Into a file or another program each row stays one line, however long.
    """
    table = Table(*heads, box=None, padding=(0, 2, 0, 0), show_header=bool(heads))
    for row in rows:
        table.add_row(*map(line, row))
    for place, column in enumerate(table.columns):
        column.no_wrap, column.overflow = place == 0, "fold"  # what is copied stays whole
    if not console.is_terminal:
        console = Console(file=console.file, width=_ENDLESS)
    console.print(Padding(table, (0, 0, 0, indent), expand=False))
