"""Scenes as TikZ pictures: a command a shape, as such figures are written."""

from __future__ import annotations

from typing import Final

from probgen.figures.paper.scene import (
    Arc,
    Arrow,
    Curve,
    Label,
    Path,
    Pen,
    Scene,
    Shape,
    Spot,
    Stated,
    Tone,
    heading,
)
from probgen.figures.writers.colour import tint_of
from probgen.quantities.formula import Relation
from tests.bench.ordinary.formula import formula_of

_EQUALS: Final = Relation("=")


def picture_of(scene: Scene) -> str:
    """The scene as a `tikzpicture` of its own size, measured from its lower left corner."""
    corner = complex(scene.box.left, scene.box.bottom)
    drawn = "\n".join(_shape(shape, corner) for shape in scene.shapes)
    return f"\\begin{{tikzpicture}}[x=1pt,y=1pt]\n{drawn}\n\\end{{tikzpicture}}"


def _shape(shape: Shape, corner: Spot) -> str:
    def at(spot: Spot) -> str:
        return _at(spot - corner)

    match shape:
        case Path():
            close = " -- cycle" if shape.closed or shape.filled else ""
            runs = " ".join(" -- ".join(map(at, run)) + close for run in shape.lines)
            return rf"\draw[{_look(shape.pen, shape.filled, shape.tone)}] {runs};"
        case Curve():
            bends = (f" .. controls {at(a)} and {at(b)} .. {at(c)}" for a, b, c in shape.pieces)
            look = _look(shape.pen, shape.filled, shape.tone)
            return rf"\draw[{look}] {at(shape.start)}{''.join(bends)};"
        case Arc():
            return rf"\draw[{_look(shape.pen, shape.filled, shape.tone)}] {_arc(shape, corner)};"
        case Arrow():
            tip = f"{{Stealth[length={shape.length:g}pt,width={shape.width:g}pt]}}"
            ends = f"{tip}-{tip}" if shape.both else f"-{tip}"
            return rf"\draw[{_look(shape.pen)},{ends}] {at(shape.tail)} -- {at(shape.head)};"
        case Label():
            size = rf"\fontsize{{{shape.size:g}}}{{{1.2 * shape.size:g}}}\selectfont"
            return (
                rf"\node[anchor=base west,inner sep=0pt,font={size}] at {at(shape.spot)} "
                f"{{{_label(shape)}}};"
            )


def _arc(arc: Arc, corner: Spot) -> str:
    centre = arc.centre - corner
    if abs(arc.sweep) >= 360.0:
        return f"{_at(centre)} circle[radius={arc.radius:.2f}]"
    start = _at(centre + arc.radius * heading(arc.start))
    end = arc.start + arc.sweep
    return f"{start} arc[start angle={arc.start:.2f},end angle={end:.2f},radius={arc.radius:.2f}]"


def _label(label: Label) -> str:
    if isinstance(label.text, str):
        return label.text
    if isinstance(label.text, Stated):
        return f"${formula_of((label.text.symbol, _EQUALS, label.text.number))}$"
    return f"${formula_of(label.text)}$"


def _look(pen: Pen, filled: bool = False, tone: Tone | None = None) -> str:
    parts = [f"line width={pen.weight:g}pt"] if pen.weight else ["draw=none"]
    if pen.dash:
        parts.append(f"dash pattern=on {pen.dash:g}pt off {pen.gap:g}pt")
    if pen.round:
        parts.append("line cap=round")
    if filled:
        parts.append("fill=black")
    elif tone is not None:
        red, green, blue = tint_of(tone, colour=False)
        parts.append(f"fill={{rgb,1:red,{red:g};green,{green:g};blue,{blue:g}}}")
    return ",".join(parts)


def _at(spot: Spot) -> str:
    return f"({spot.real:.2f},{spot.imag:.2f})"
