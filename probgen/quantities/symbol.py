"""Symbols of quantities: a letter and its subscripts, read from their short notation."""

from __future__ import annotations

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
_VARIABLES: Final = frozenset("xyznijk")


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


def is_italic(subscript: str) -> bool:
    """Whether a subscript stands for a quantity or an axis itself (NIST SP 811, 10.2)."""
    return subscript in _VARIABLES or subscript in GREEK
