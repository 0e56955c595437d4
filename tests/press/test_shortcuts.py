"""Pages with the press's shortcuts beside pages without them."""

from collections.abc import Callable, Iterator
from io import BytesIO
from typing import Any

import pdfplumber
import pytest

from probgen.press import format_cache
from probgen.press.batch import Document, print_batch
from probgen.sheets.document import Key, Sheet
from probgen.sheets.latex.layout import Layouts

FIGURE = (
    r"\setlength{\unitlength}{%s}\begin{picture}(60,40)\roundjoin\linethickness{1.1pt}\roundcap"
    r"\moveto(1,2)\lineto(30,35.5) \curveto(31,34)(35,32)(40,20)\closepath \strokepath"
    "\n"
    r"\linethickness{.4pt}\buttcap\moveto(50,5)\lineto(55,5)\lineto(50,10)\closepath\fillpath "
    r"\moveto(2,1)\lineto(9,1)\moveto(2,3)\lineto(9,3)\strokepath\put(20,2){$R$ AVAV --}"
    r"\end{picture}"
)
"""Paths with all that may stand between their commands, and a label behind them."""
FORMULAS = (
    r"$x_y + 2$ {\footnotesize $x^2$} {\boldmath $x_y + 2$ \footnotesize $x^2$} $x_y + 2$"
    r" $\mathbf{v} = \mathfrak{g}$ {\footnotesize $\mathbf{v}_{\mathbf{w}} \leqslant x$ {\boldmath"
    r" $\mathbf{v} \leqslant \mathsf{x}$} $\mathsf{v}$}"
    r" {\boldmath $\mathfrak{g}\bigl(x\bigr)$} $x\bigr)$"
)
"""Sizes and weights that take turns, and alphabets that are first used when both were used."""
LOOKS = ("text", "fontname", "size", "fill", "stroke")
HANGING = (
    r"\begin{minipage}{30mm}\footnotesize AVA, half-hearted, \textit{odd}: $x$, so -- and on, and"
    r" on\end{minipage}"
)
"""Lines that end in what microtype hangs into the margin."""


def things(pdf: bytes) -> Iterator[tuple[Any, ...]]:
    """Everything on the pages of a PDF with its place, to 0.02 pt."""
    with pdfplumber.open(BytesIO(pdf)) as opened:
        for page in opened.pages:
            for kind in ("chars", "lines", "rects", "curves"):
                for thing in getattr(page, kind):
                    look = [thing.get(key) for key in LOOKS]
                    width = thing["linewidth"] if thing.get("stroke") else 0
                    places = [round(thing[edge] / 0.02) for edge in ("x0", "top", "x1", "bottom")]
                    yield kind, *look, width, *places


@pytest.mark.parametrize("unit", ["1pt", "1mm"])
def test_pages_are_the_same_without(
    unit: str,
    layouts: Layouts,
    sheet_for: Callable[..., Sheet],
    key_for: Callable[..., Key],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    bodies = [layouts.sheet(sheet_for("Ada Quill")), layouts.key(key_for("Ada Quill"))]
    bodies += [FORMULAS, FIGURE % unit + HANGING]
    documents = [Document(f"{n}", "", body, layouts.preamble()) for n, body in enumerate(bodies)]
    quick = print_batch(documents)
    monkeypatch.setattr(format_cache, "OWN", ("press.tex",))
    slow = [Document(d.name, "", d.body, d.preamble + "% slow\n") for d in documents]
    for one, other in zip(quick.printed, print_batch(slow).printed, strict=True):
        found = list(things(one.pdf))
        assert len(found) > 10
        assert found == list(things(other.pdf))
    assert "curves" in {kind for kind, *_ in found}
