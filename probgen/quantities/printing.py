"""Quantities and formulas as they are printed: in LaTeX, in plain Unicode text, in MathML.

Follows NIST SP 811 (2008): quantity symbols italic, units and descriptive subscripts roman
(10.1 to 10.2), a space between number and unit but none before the degree sign (7.2), digits in
groups of three from five digits on (10.5.3).  Numbers whose last known figure is left of the units
place, and numbers below a thousandth, are printed with a power of ten: a zero at the end of a whole
number never only fills a place (7.9 and its note).
"""

from __future__ import annotations

from typing import Final

from probgen.quantities.expression import Expression
from probgen.quantities.formula import Formula
from probgen.quantities.notation.latex import BrokenLatex, Latex, SlashedLatex
from probgen.quantities.notation.mathml import MathML, SlashedMathML
from probgen.quantities.notation.plain import Marked, Plain
from probgen.quantities.notation.walk import write
from probgen.quantities.symbol import read_symbol

_LATEX: Final = Latex()
_SLASHED: Final = SlashedLatex()
_BROKEN: Final = BrokenLatex()
_PLAIN: Final = Plain()
_MARKED: Final = Marked()
_MATHML: Final = MathML()
_SLASHED_MATHML: Final = SlashedMathML()


def latex(formula: Expression | Formula) -> str:
    """LaTeX for math mode set apart, without delimiters, with fractions of full size."""
    return write(formula, _LATEX, 0)


def latex_in_line(formula: Expression | Formula) -> str:
    """LaTeX for math mode with fractions on one line, as in L/2."""
    return write(formula, _SLASHED, 1)


def latex_in_lines(formula: Expression | Formula) -> str:
    """LaTeX for math mode that may go over several lines, as no fraction holds it together."""
    return write(formula, _BROKEN, 0)


def plain(formula: Expression | Formula) -> str:
    """The formula on one line of Unicode text."""
    return write(formula, _PLAIN, 0)


def marked(formula: Expression | Formula) -> str:
    """The same with its marks of which letters are italic (`probgen.quantities.symbol`)."""
    return write(formula, _MARKED, 0)


def mathml(formula: Expression | Formula, *, display: bool = True) -> str:
    """The formula's elements of presentation MathML, without `math`.

    display: whether it is set apart, with fractions of full size; else they are on the line.
    """
    return write(formula, _MATHML, 0) if display else write(formula, _SLASHED_MATHML, 1)


def symbol_plain(symbol: str) -> str:
    """A symbol in short notation as plain text: "theta" gives θ, "W_s" stays W_s."""
    return _PLAIN.symbol(read_symbol(symbol))
