r"""Formulas with their numbers set by siunitx: `\qty{12.3}{N.m}`, `\ang{35}`, `\num{0.25}`."""

from __future__ import annotations

from typing import Final

from probgen.quantities.expression import Expression, Number
from probgen.quantities.formula import Formula
from probgen.quantities.notation.latex import SlashedLatex
from probgen.quantities.notation.notation import digits, is_negative, scaled
from probgen.quantities.notation.walk import write
from probgen.quantities.unit import DEGREE


class _Siunitx(SlashedLatex):
    def quantity(self, printed: Number) -> str:
        power = scaled(printed.value)
        number = "-" if is_negative(printed.value) else ""
        number += digits(printed.value, "") + (f"e{power}" if power else "")
        if printed.unit is None or not printed.unit.latex:
            return rf"\num{{{number}}}"
        if printed.unit is DEGREE:
            return rf"\ang{{{number}}}"
        return rf"\qty{{{number}}}{{{printed.unit.name.replace('*', '.')}}}"


_NOTATION: Final = _Siunitx()


def formula_of(formula: Expression | Formula) -> str:
    """LaTeX for math mode."""
    return write(formula, _NOTATION, 1)
