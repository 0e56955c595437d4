"""Symbols in their short notation."""

import pytest

from probgen.quantities.symbol import (
    MARKED,
    Symbol,
    in_words,
    italic,
    read_symbol,
    runs,
    unmarked,
    with_names,
)

SYMBOLS = {
    "T": Symbol("T"),
    "m_1": Symbol("m", ("1",)),
    "W_s": Symbol("W", ("s",)),
    "theta_1_x": Symbol("theta", ("1", "x")),
    "xbar": Symbol("x", bar=True),
    "xbar_1": Symbol("x", ("1",), bar=True),
    "bar": Symbol("bar"),
    "∥": Symbol("", (), "∥"),
    "⊥": Symbol("", (), "⊥"),
    "⊥W_s": Symbol("W", ("s",), "⊥"),
}


@pytest.mark.parametrize(("short", "symbol"), SYMBOLS.items(), ids=SYMBOLS)
def test_read(short: str, symbol: Symbol) -> None:
    assert read_symbol(short) == symbol


FACES = {
    "x": (("x", True),),
    "theta": (("theta", True),),
    "α": (("α", True),),
    "⊥": (("⊥", False),),
    "s": (("s", False),),
    "A": (("A", False),),  # which describes, where no point is called A
    "i": (("i", False),),
    "n": (("n", False),),
    "max": (("max", False),),  # the x in it is no axis
    "1": (("1", False),),
    "d1": (("d1", False),),
    "1x": (("1", False), ("x", True)),
    "𝐴𝐵": (("AB", True),),
    "𝐴1": (("A", True), ("1", False)),
    "w𝑥": (("w", False), ("x", True)),
    "𝑖": (("i", True),),
}


@pytest.mark.parametrize(("subscript", "faces"), FACES.items(), ids=FACES)
def test_what_stands_for_something_is_italic(
    subscript: str, faces: tuple[tuple[str, bool], ...]
) -> None:
    """ISO 80000-1 (2022), 7.1.2, and NIST SP 811 (2008), 10.2: what only describes is roman."""
    assert runs(subscript) == faces


NAMED = {
    "T_A": "T_𝐴",
    "F_AB": "F_𝐴𝐵",
    "S_O𝑥": "S_𝑂𝑥",
    "N_A1": "N_𝐴1",
    "T_L": "T_L",  # on the left: no point
    "N_AL": "N_AL",
    "W_b": "W_b",
    "R_1x": "R_1x",
    "A": "A",
}


@pytest.mark.parametrize(("short", "marked"), NAMED.items(), ids=NAMED)
def test_letters_of_points_are_marked_in_subscripts(short: str, marked: str) -> None:
    assert with_names(short, ("A", "B", "O", "A1", "G_1")) == marked


def test_marks_are_taken_off_again() -> None:
    letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
    assert len(set(italic(letters)) | set(letters)) == 2 * 52
    assert unmarked(italic(letters)) == letters
    assert italic("G_1'") == "𝐺_1'"


WORDS = {
    "the floor at 𝐴": ["𝐴"],
    "𝑥-component": ["𝑥"],
    "part 𝐷𝐵 and joint 𝐺_1, 𝐻'": ["𝐷𝐵", "𝐺_1", "𝐻'"],
    "+𝑥 (to the right)": ["𝑥"],
    "the letter L": [],
}


@pytest.mark.parametrize(("words", "found"), WORDS.items(), ids=WORDS)
def test_marked_letters_are_found_in_words(words: str, found: list[str]) -> None:
    assert MARKED.findall(words) == found


def test_words_are_in_pieces_of_one_face() -> None:
    assert list(in_words(f"leg {italic('BC')} below")) == [
        ("leg ", False), ("BC", True), (" below", False)
    ]  # fmt: skip
    assert list(in_words("crate")) == [("crate", False)]
