"""Formulas: expressions, relations and words side by side, written as LaTeX or as plain text."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Expression, Name


@dataclass(frozen=True, slots=True)
class Relation:
    """ "=", "→", "≈", "<", "≤", ">", "≥", "⇒"; "," and ":" between formulas."""

    sign: str


@dataclass(frozen=True, slots=True)
class Words:
    """Upright words within a formula, plain Unicode."""

    text: str


@dataclass(frozen=True, slots=True)
class Balance:
    """The name of a balance: the sum of forces along an axis, or of torques about a pivot.

    kind: "force", "torque" or "moment"; about: the axis ("x", "y") or the pivot's point name, ""
    for any; raised: whether that stands above in brackets, as M_A is the letter of a couple.
    """

    kind: str
    about: str
    raised: bool = False


@dataclass(frozen=True, slots=True)
class Integral:
    """The integral of an expression by one of its letters, from a start to an end."""

    of: Expression
    by: Name
    start: Expression
    end: Expression


@dataclass(frozen=True, slots=True)
class Difference:
    """An antiderivative in brackets: its value at the end less that at the start."""

    of: Expression
    start: Expression
    end: Expression


Piece = Expression | Relation | Words | Balance | Integral | Difference
Formula = tuple[Piece, ...]
