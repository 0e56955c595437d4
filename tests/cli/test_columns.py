"""Columns in a terminal and in a file."""

import io

import pytest
from rich.console import Console

from probgen.cli.columns import show_columns

ROWS = [("forearm-load", "limbs", "A bag of rice on a level forearm"), ("x", "[b]", "Short")]


def shown(terminal: bool, width: int, heads: tuple[str, ...] = ()) -> list[str]:
    file = io.StringIO()
    console = Console(file=file, force_terminal=terminal, width=width, color_system=None)
    show_columns(console, ROWS, heads, indent=2)
    return [line.rstrip() for line in file.getvalue().splitlines()]


def test_each_row_of_a_file_is_one_line_however_long() -> None:
    assert shown(terminal=False, width=20) == [
        "  forearm-load  limbs  A bag of rice on a level forearm",
        "  x             [b]    Short",
    ]


def test_what_misleads_an_eye_is_spelled_out() -> None:
    file = io.StringIO()
    show_columns(Console(file=file), [("gpj.\u202eexe", "[red]\x1b[31m")])
    assert file.getvalue().split() == [r"gpj.\u202eexe", r"[red]\x1b[31m"]


@pytest.mark.parametrize("width", [34, 44])
def test_a_terminal_wraps_texts_and_keeps_what_is_copied_whole(width: int) -> None:
    lines = shown(terminal=True, width=width, heads=("id", "family", "title"))
    assert max(map(len, lines)) <= width
    assert lines[0].split() == ["id", "family", "title"]
    assert lines[1].startswith("  forearm-load  ")
    words = " ".join(" ".join(line[2:] for line in lines).split())
    assert all(word in words for word in ROWS[0][2].split())
