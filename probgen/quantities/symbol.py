"""Symbols of quantities: a letter and its subscripts, read from their short notation.

The rule for italic and roman, wherever a symbol is printed (ISO 80000-2; NIST SP 811, 10.1, 10.2):
a letter that stands for something is italic, on the line and as a subscript alike: a quantity, an
axis (F_x, "x-component"), a point or a body called by its letter (T_AB, "the floor at A").  Digits
are upright, and so are subscripts that describe, be they words or the first letters of words: N_w
at a wall, M_max, also T_L on the left where no point is called L.

Which letters are names only the problem knows.  Where it is read they are marked, with `italic`, in
symbols (`with_names`) and in names in words: such a letter is one of Unicode's mathematical italic
ones until it is printed.  Everything that prints a symbol asks `runs`, and nothing else decides.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

GREEK: Final = {
    "alpha": "α", "beta": "β", "gamma": "γ", "delta": "δ", "epsilon": "ε", "eta": "η",
    "theta": "θ", "kappa": "κ", "lambda": "λ", "mu": "μ", "nu": "ν", "rho": "ρ",
    "sigma": "σ", "tau": "τ", "phi": "φ", "psi": "ψ", "omega": "ω", "Delta": "Δ",
    "Sigma": "Σ", "Omega": "Ω", "Phi": "Φ", "ell": "ℓ",
    "pi": "π",
}  # fmt: skip
"""The letters that are written by their names."""

SIGNS: Final = ("∥", "⊥")
"""Along a line, and square to it."""
_BAR: Final = "bar"
_AXES: Final = frozenset("xyz")
_LATIN: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"
_SLANTED: Final = {c: chr(0x1D434 + place) for place, c in enumerate(_LATIN)} | {"h": "ℎ"}
_MARKED: Final = frozenset(_SLANTED.values())
_ITALIC: Final = str.maketrans(_SLANTED)
_UPRIGHT: Final = str.maketrans({slanted: c for c, slanted in _SLANTED.items()})
_KINDS: Final = re.compile(r"([𝐴-𝑧ℎ]+)|([^𝐴-𝑧ℎ\W\d]+)|(\d+|.)")
_IN_WORDS: Final = re.compile(r"[𝐴-𝑧ℎ]+|[^𝐴-𝑧ℎ]+")
MARKED_ONE: Final = re.compile(r"[𝐴-𝑧ℎ](?:_?[A-Za-z0-9]{1,3})?'*")
"""The letter of an axis or a point in words, marked, with what belongs to it: 𝐺_1."""
MARKED: Final = re.compile(f"(?:{MARKED_ONE.pattern})+")
"""Several in a row, such as those of a member."""


@dataclass(frozen=True, slots=True)
class Symbol:
    """A symbol taken apart: "W_s" is the letter W with the subscript s.

    letter, subscripts: as typed, Greek by its name.  sign: stands before the letter, "" for none.
    bar: whether a bar is above the letter, as of a mean.
    """

    letter: str
    subscripts: tuple[str, ...] = ()
    sign: str = ""
    bar: bool = False


@lru_cache(maxsize=1024)
def read_symbol(short: str) -> Symbol:
    """A symbol from its short notation, such as "m_1", "theta", "W_s", "xbar" or "∥"."""
    sign = short[:1] if short.startswith(SIGNS) else ""
    letter, *subscripts = short[len(sign) :].split("_")
    bar = len(letter) == len(_BAR) + 1 and letter.endswith(_BAR)
    return Symbol(letter[:1] if bar else letter, tuple(subscripts), sign, bar)


def italic(name: str) -> str:
    """A name with its letters marked as italic ones, whatever stands around them."""
    return name.translate(_ITALIC)


def unmarked(text: str) -> str:
    """A symbol or a text as somebody types it."""
    return text.translate(_UPRIGHT)


def in_words(text: str) -> Iterator[tuple[str, bool]]:
    """Words in pieces as somebody types them, and whether each is italic, as marked letters are."""
    for piece in _IN_WORDS.findall(text):
        yield unmarked(piece), piece[0] in _MARKED


def with_names(short: str, names: Collection[str]) -> str:
    """A symbol's short notation with the letters marked that name a point: T_AB between two."""
    letter, *subscripts = short.split("_")
    if not subscripts:
        return short
    named = (
        italic(part) if part in names or all(c in names or c in _MARKED for c in part) else part
        for part in subscripts
    )
    marked = "_".join((letter, *named))
    return short if marked == short else marked


def runs(subscript: str) -> tuple[tuple[str, bool], ...]:
    """A subscript, or what is printed of it, in runs of one face; True for italic."""
    if subscript in GREEK or subscript in SIGNS:
        return ((subscript, subscript in GREEK),)
    return tuple(_runs(subscript))


def _runs(subscript: str) -> Iterator[tuple[str, bool]]:
    upright = ""
    for marked, word, other in _KINDS.findall(subscript):
        if marked or word in _AXES or (word and not word.isascii()):
            if upright:
                yield upright, False
            yield unmarked(marked or word), True
            upright = ""
        else:
            upright += word or other
    if upright:
        yield upright, False
