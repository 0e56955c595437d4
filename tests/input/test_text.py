"""What no text may hold, and how what misleads an eye is shown."""

import unicodedata

import pytest

from probgen.input.text import LONGEST_TEXT, is_seen, unfit, unfit_line, visible


@pytest.mark.parametrize(
    "text", ["", "Zoë", "two\nlines", "a\ttab", "\u202e", "\u200b", "\ue000", "x" * LONGEST_TEXT]
)
def test_texts(text: str) -> None:
    assert unfit(text) == ""


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("a\0", r"the control character, \x00"),
        ("\x1b[2J", r"the control character, \x1b"),
        ("\x7f", r"the control character, \x7f"),
        ("\x9b", r"the control character, \x9b"),
        ("\ud800", r"half a character, \ud800"),
        ("x" * (LONGEST_TEXT + 1), "1001 characters"),
    ],
)
def test_what_no_text_may_hold(text: str, found: str) -> None:
    assert unfit(text) == found


@pytest.mark.parametrize("text", ["a", "7", "-", "李", "\u200bé", "\ue000", "\U0001f600"])
def test_what_is_seen(text: str) -> None:
    assert is_seen(text)


@pytest.mark.parametrize(
    "text", ["", " \n", "\u200b\u200d", "\u00a0\u2028", "\u202e", "\u0301", "\u3164\u2800", "\x1b"]
)
def test_what_is_not(text: str) -> None:
    assert not is_seen(text)


def test_the_line_of_what_no_text_may_hold() -> None:
    assert unfit_line("a\n\nb\x1b\n\x00") == 3
    assert unfit_line("a\tb\n") == 0


def test_nothing_that_is_shown_is_a_control_or_turns_the_line() -> None:
    for code in range(0x110000):
        shown = visible(chr(code))
        if shown == chr(code) != "\n":
            assert unicodedata.category(shown) not in ("Cc", "Cs", "Co", "Cn")
        else:
            assert shown.isascii()
