r"""A scene as a LaTeX picture: plain picture commands and the path commands of the pict2e package.

Needs \usepackage{pict2e} and nothing else.  Numbers are rounded to 0.01 pt, so the same scene
always gives the same bytes.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from itertools import groupby, pairwise
from typing import Final

from probgen.figures.paper.scene import (
    Arc,
    Arrow,
    Curve,
    Label,
    Path,
    Pen,
    Scene,
    Spot,
    Stated,
    Stroke,
    barbs,
    heading,
    shaft,
)
from probgen.figures.writers.colour import BLACK, Ink, ink_of, tint_of
from probgen.quantities.expression import Expression
from probgen.quantities.printing import latex, latex_in_line
from probgen.quantities.symbol import in_words

_MARGIN: Final = 1.0
"""Space left around the drawing, pt."""

_PLAIN: Final = ("", "S")


def latex_picture(scene: Scene, colour: bool = False) -> str:
    """The scene as a picture environment of its own size.

    colour: strokes and labels in the colours of their kind, which needs the color package.
    """
    shift = complex(scene.box.left - _MARGIN, scene.box.bottom - _MARGIN)
    width, height = scene.box.width + 2 * _MARGIN, scene.box.height + 2 * _MARGIN
    lines = [
        rf"\begingroup\setlength{{\unitlength}}{{1pt}}\begin{{picture}}({_n(width)},{_n(height)})",
        r"\roundjoin",
    ]
    strokes = [shape for shape in scene.shapes if not isinstance(shape, Label)]
    weight, rounded, ink, join = -1.0, False, BLACK, _PLAIN
    for (pen, paint, tint), group in groupby(strokes, key=lambda s: _look(s, colour)):
        if pen.weight != weight:
            weight = pen.weight
            lines.append(rf"\linethickness{{{_n(weight)}pt}}")
        if pen.round != rounded:
            rounded = pen.round
            lines.append(r"\roundcap" if rounded else r"\buttcap")
        if paint != ink:
            ink = paint
            lines.append(_color(ink))
        if tint != join:
            join = tint
            lines.append(_tinted(*tint))
        if tint == _PLAIN:
            lines += _paint(list(group), shift)
        else:  # one over the other
            lines += [_stroked(shape, shift) + r"\strokepath" for shape in group]
    by_look = groupby(scene.labels, key=lambda label: (label.size, ink_of(label.tag, colour)))
    for (size, paint), labels in by_look:
        if paint != ink:
            ink = paint
            lines.append(_color(ink))
        lines.append(rf"\fontsize{{{_n(size)}}}{{{_n(1.2 * size)}}}\selectfont")
        lines += [_label(label, shift) for label in labels]
    lines.append(r"\end{picture}\endgroup")
    return "%\n".join(lines)


def _color(ink: Ink) -> str:
    return r"\color[rgb]{" + ",".join(_n(part) for part in ink) + "}"


def _look(shape: Stroke, colour: bool) -> tuple[Pen, Ink, tuple[str, str]]:
    """Pen, ink, and what a tone takes: the PDF's operators that choose it and paint the path."""
    ink = ink_of(shape.tag, colour)
    if isinstance(shape, Arrow) or shape.tone is None:
        return shape.pen, ink, _PLAIN
    tint = tint_of(shape.tone, colour)
    grey = tint[0] == tint[1] == tint[2]
    parts = " ".join(_n(part) for part in (tint[:1] if grey else tint))
    operator = "g" if grey else "rg"
    if isinstance(shape, Path) and not shape.closed:
        return shape.pen, ink, (f"{parts} {operator.upper()}", "S")
    return shape.pen, ink, (f"{parts} {operator}", "B" if shape.pen.weight else "f")


def _tinted(chosen: str, painted: str) -> str:
    """The package sets a path's joins before it paints it; the tone is chosen with them."""
    join = rf"\expandafter\def\csname pIIe@linejoin\endcsname{{ 1 j {chosen}}}"
    paint = rf"\expandafter\def\csname pIIe@stroke@op\endcsname{{{painted}}}"
    return (join if chosen else r"\roundjoin") + paint


def _paint(shapes: list[Stroke], shift: Spot) -> Iterator[str]:
    """All strokes of one pen as one path, then the filled shapes."""
    strokes = "".join([_stroked(shape, shift) for shape in shapes])
    if strokes:
        yield strokes + r"\strokepath"
    fills = "".join([_filled(shape, shift) for shape in shapes])
    if fills:
        yield fills + r"\fillpath"


def _stroked(shape: Stroke, shift: Spot) -> str:
    if isinstance(shape, Arrow):
        return _run(shaft(shape), shape.pen, shift)
    if shape.filled:
        return ""
    if not isinstance(shape, Path):
        return _curve(shape, shift)
    if not shape.closed:
        return "".join([_run(run, shape.pen, shift) for run in shape.lines])
    if shape.pen.dash:
        return "".join([_run((*run, run[0]), shape.pen, shift) for run in shape.lines])
    return _closed(shape.lines, shift)


def _filled(shape: Stroke, shift: Spot) -> str:
    if isinstance(shape, Arrow):
        return _closed(barbs(shape), shift)
    if not shape.filled:
        return ""
    if isinstance(shape, Path):
        return _closed(shape.lines, shift)
    return _curve(shape, shift) + r"\closepath"


def arc_pieces(arc: Arc) -> tuple[Spot, tuple[tuple[Spot, Spot, Spot], ...]]:
    """An arc as a start and Bezier pieces of at most 90 degrees each (error below 0.03 %)."""
    centre, radius = arc.centre, arc.radius
    start, pieces = _unit_pieces(arc.start, arc.sweep)
    placed = [(centre + radius * a, centre + radius * b, centre + radius * c) for a, b, c in pieces]
    return centre + radius * start, tuple(placed)


@lru_cache(maxsize=64)  # most arcs are whole circles
def _unit_pieces(start: float, sweep: float) -> tuple[Spot, tuple[tuple[Spot, Spot, Spot], ...]]:
    """The same of an arc of radius 1 about 0."""
    count = max(1, math.ceil(abs(sweep) / 90.0 - 1e-9))
    step = sweep / count
    reach = 4 / 3 * math.tan(math.radians(step / 4))
    units = [heading(start + i * step) for i in range(count + 1)]
    return units[0], tuple(
        (first + first * 1j * reach, last - last * 1j * reach, last)
        for first, last in pairwise(units)
    )


def _run(run: tuple[Spot, ...], pen: Pen, shift: Spot) -> str:
    if pen.dash:
        return "".join([_line(dash, shift) for dash in dashes(run, pen)])
    return _line(run, shift)


def _closed(lines: tuple[tuple[Spot, ...], ...], shift: Spot) -> str:
    return "".join([_line(run, shift) + r"\closepath" for run in lines])


def _line(run: tuple[Spot, ...], shift: Spot) -> str:
    return r"\moveto" + r"\lineto".join([_at(spot, shift) for spot in run])


def dashes(run: tuple[Spot, ...], pen: Pen) -> Iterator[tuple[Spot, Spot]]:
    """A run of straight pieces cut into dashes; each piece begins and ends with a dash."""
    for start, end in pairwise(run):
        length = abs(end - start)
        count = max(1, round((length + pen.gap) / (pen.dash + pen.gap)))
        period = (length + pen.gap) / count
        unit = (end - start) / length if length else 0j
        for i in range(count):
            begin = start + unit * period * i
            yield begin, begin + unit * max(period - pen.gap, 0.1)


def _curve(shape: Curve | Arc, shift: Spot) -> str:
    start, pieces = (shape.start, shape.pieces) if isinstance(shape, Curve) else arc_pieces(shape)
    bends = ["".join([_at(spot, shift) for spot in piece]) for piece in pieces]
    return r"\curveto".join([rf"\moveto{_at(start, shift)}", *bends])


def _label(label: Label, shift: Spot) -> str:
    shown = label.text
    text = _words(shown) if isinstance(shown, str) else f"${_formula(shown)}$"
    return rf"\put{_at(label.spot, shift)}{{{text}}}"


def _words(text: str) -> str:
    return "".join(f"${part}$" if italic else part for part, italic in in_words(text))


def _formula(text: Expression | Stated) -> str:
    if isinstance(text, Stated):
        return f"{latex(text.symbol)} = {latex(text.number)}"
    return latex_in_line(text)


def _at(spot: Spot, shift: Spot) -> str:
    return f"({_n(spot.real - shift.real)},{_n(spot.imag - shift.imag)})"


def _n(value: float) -> str:
    """A number to 0.01, without needless digits or a negative zero."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
