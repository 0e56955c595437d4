"""Letters of the other cuts."""

import unicodedata

import pytest

from probgen.sheets.latex.escape import _CORK
from probgen.sheets.latex.letter import LETTERS


@pytest.mark.parametrize("letter", LETTERS)
def test_letters_are_what_one_types(letter: str) -> None:
    assert unicodedata.normalize("NFC", letter) == letter
    assert unicodedata.name(letter).startswith("LATIN")
    assert letter not in _CORK


def test_no_slot_has_two_letters() -> None:
    assert len(set(LETTERS.values())) == len(LETTERS)
    assert all(0 <= slot < 256 for _, slot in LETTERS.values())
