"""Formulas: expressions, relations and words side by side, written as LaTeX or as plain text."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Expression


@dataclass(frozen=True, slots=True)
class Relation:
    """ "=", "→", "≈", "<", "≤", ">", "≥", "⇒"."""

    sign: str


@dataclass(frozen=True, slots=True)
class Words:
    """Upright words within a formula, plain Unicode."""

    text: str


@dataclass(frozen=True, slots=True)
class Balance:
    """The name of a balance: the sum of forces along an axis, or of torques about a pivot.

    kind: "force", "torque" or "moment"; about: the axis ("x", "y") or the pivot's point name, ""
    for any.
    """

    kind: str
    about: str


Piece = Expression | Relation | Words | Balance
Formula = tuple[Piece, ...]
