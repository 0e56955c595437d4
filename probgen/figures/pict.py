r"""A scene as a LaTeX picture: plain picture commands and the path commands of the pict2e package.

Needs \usepackage{pict2e} and nothing else.  Numbers are rounded to 0.01 pt, so the same scene
always gives the same bytes.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import groupby, pairwise
from typing import Final

from probgen.figures.colour import BLACK, Ink, ink_of
from probgen.figures.scene import (
    Arc,
    Arrow,
    Curve,
    Label,
    Path,
    Pen,
    Scene,
    Shape,
    Spot,
    barbs,
    heading,
    shaft,
)
from probgen.quantities.printing import latex

_MARGIN: Final = 1.0
"""Space left around the drawing, pt."""


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
    weight, rounded, ink = -1.0, False, BLACK
    for (pen, paint), group in groupby(strokes, key=lambda s: (s.pen, ink_of(s.tag, colour))):
        if pen.weight != weight:
            weight = pen.weight
            lines.append(rf"\linethickness{{{_n(weight)}pt}}")
        if pen.round != rounded:
            rounded = pen.round
            lines.append(r"\roundcap" if rounded else r"\buttcap")
        if paint != ink:
            ink = paint
            lines.append(_color(ink))
        lines += _paint(tuple(group), pen, shift)
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


def _paint(shapes: tuple[Shape, ...], pen: Pen, shift: Spot) -> Iterator[str]:
    """All strokes of one pen as one path, then the filled shapes."""
    strokes = "".join(_stroked(shape, pen, shift) for shape in shapes)
    if strokes:
        yield strokes + r"\strokepath"
    fills = "".join(_filled(shape, shift) for shape in shapes)
    if fills:
        yield fills + r"\fillpath"


def _stroked(shape: Shape, pen: Pen, shift: Spot) -> str:
    match shape:
        case Path(filled=False):
            runs = ((*run, run[0]) if shape.closed and pen.dash else run for run in shape.lines)
            closed = shape.closed and not pen.dash
            return "".join(_line(run, pen, shift, closed) for run in runs)
        case Arrow():
            return _line(shaft(shape), pen, shift, False)
        case Curve(filled=False):
            return _curve(shape.start, shape.pieces, shift)
        case Arc(filled=False):
            start, pieces = arc_pieces(shape)
            return _curve(start, pieces, shift)
        case _:
            return ""


def _filled(shape: Shape, shift: Spot) -> str:
    match shape:
        case Path(filled=True):
            return "".join(_line(run, Pen(0), shift, True) for run in shape.lines)
        case Arrow():
            return "".join(_line(barb, Pen(0), shift, True) for barb in barbs(shape))
        case Curve(filled=True):
            return _curve(shape.start, shape.pieces, shift) + r"\closepath"
        case Arc(filled=True):
            start, pieces = arc_pieces(shape)
            return _curve(start, pieces, shift) + r"\closepath"
        case _:
            return ""


def arc_pieces(arc: Arc) -> tuple[Spot, tuple[tuple[Spot, Spot, Spot], ...]]:
    """An arc as a start and Bezier pieces of at most 90 degrees each (error below 0.03 %)."""
    count = max(1, math.ceil(abs(arc.sweep) / 90.0 - 1e-9))
    step = arc.sweep / count
    reach = 4 / 3 * math.tan(math.radians(step / 4))
    pieces = []
    for i in range(count):
        first, last = heading(arc.start + i * step), heading(arc.start + (i + 1) * step)
        controls = first + first * 1j * reach, last - last * 1j * reach
        pieces.append(
            (
                arc.centre + arc.radius * controls[0],
                arc.centre + arc.radius * controls[1],
                arc.centre + arc.radius * last,
            )
        )
    return arc.centre + arc.radius * heading(arc.start), tuple(pieces)


def _line(run: tuple[Spot, ...], pen: Pen, shift: Spot, closed: bool) -> str:
    if pen.dash:
        return "".join(_line(dash, Pen(0), shift, False) for dash in dashes(run, pen))
    text = rf"\moveto{_at(run[0], shift)}"
    text += "".join(rf"\lineto{_at(spot, shift)}" for spot in run[1:])
    return text + (r"\closepath" if closed else "")


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


def _curve(start: Spot, pieces: tuple[tuple[Spot, Spot, Spot], ...], shift: Spot) -> str:
    text = rf"\moveto{_at(start, shift)}"
    return text + "".join(
        rf"\curveto{_at(a, shift)}{_at(b, shift)}{_at(c, shift)}"
        for a, b, c in pieces
    )


def _label(label: Label, shift: Spot) -> str:
    text = label.text if isinstance(label.text, str) else f"${latex(label.text)}$"
    return rf"\put{_at(label.spot, shift)}{{{text}}}"


def _at(spot: Spot, shift: Spot) -> str:
    return f"({_n(spot.real - shift.real)},{_n(spot.imag - shift.imag)})"


def _n(value: float) -> str:
    """A number to 0.01, without needless digits or a negative zero."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
