"""A scene as an SVG drawing, one unit of it a printer's point (1/72.27 in)."""

from __future__ import annotations

from typing import Final
from xml.sax.saxutils import escape, quoteattr

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
    barbs,
    shaft,
)
from probgen.figures.paper.tag import Tag
from probgen.figures.paper.type_metrics import runs
from probgen.figures.writers.colour import BLACK, Ink, hexadecimal, ink_of, tint_of
from probgen.figures.writers.latex import arc_pieces

_MARGIN: Final = 1.0
_FONTS: Final = "'Latin Modern Roman','Latin Modern Math','CMU Serif',serif"


def svg(scene: Scene, colour: bool = False, ink: str = "") -> str:
    """The scene as an SVG document; its size is given in inches so that it prints to scale.

    colour: strokes in the colours of their kind; ink: what is written for black, such as
    "currentColor" within a page, which is then spared the ends of lines between shapes.  What the
    scene shows in words is its title.
    """
    box = scene.box.grown(_MARGIN)
    named = f" aria-label={quoteattr(scene.words)}" if scene.words and ink else ""
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{box.width / 72.27:.4f}in" '
        f'height="{box.height / 72.27:.4f}in" viewBox="0 0 {_n(box.width)} {_n(box.height)}" '
        f'role="img"{named} font-family="{_FONTS}" fill="none" stroke-linejoin="round">'
    )
    corner = complex(box.left, box.top)
    inks = {BLACK: ink} if ink else {}
    drawn = []
    for shape in scene.shapes:
        own = ink_of(shape.tag, colour)
        tint = _tint(shape, colour, ink)
        drawn.append(_drawn(shape, corner, inks.get(own) or hexadecimal(own), tint))
    title = [f"<title>{escape(scene.words)}</title>"] if scene.words else []
    return ("" if ink else "\n").join((head, *title, *drawn, "</svg>"))


def _tint(shape: Shape, colour: bool, ink: str) -> str:
    """What a shape's tone is painted in, "" without one; a share of the page's ink where it has
    its own, which may be a light one on dark paper.
    """
    tone = None if isinstance(shape, Arrow | Label) else shape.tone
    if tone is None:
        return ""
    tint: Ink = tint_of(tone, colour)
    if not ink:
        return hexadecimal(tint)
    return f"color-mix(in srgb, {ink} {100 * (1 - tint[0]):.0f}%, Canvas)"


def _drawn(shape: Shape, corner: Spot, ink: str, tint: str) -> str:
    if isinstance(shape, Label):
        return _text(shape, corner, ink)
    if isinstance(shape, Arrow):
        heads = "".join(_way(barb, corner) + "Z" for barb in barbs(shape))
        stem = _path(_way(shaft(shape), corner), shape.tag, _stroke(shape.pen, ink))
        return stem + _path(heads, shape.tag, _fill(ink))
    match shape:
        case Path():
            way = "".join(_way(run, corner) + ("Z" if shape.closed else "") for run in shape.lines)
        case Curve():
            way = _curve(shape.start, shape.pieces, corner)
        case Arc():
            way = _curve(*arc_pieces(shape), corner)
    return _path(way, shape.tag, _look(shape, ink, tint))


def _look(shape: Path | Curve | Arc, ink: str, tint: str) -> str:
    """Attributes for the inside of a shape and its strokes."""
    if shape.filled:
        return _fill(ink)
    if not tint:
        return _stroke(shape.pen, ink)
    if isinstance(shape, Path) and not shape.closed:
        return _stroke(shape.pen, tint)
    return f'fill="{tint}" {_stroke(shape.pen, ink)}'


def _fill(ink: str) -> str:
    return f'fill="{ink}" stroke="none"'


def _stroke(pen: Pen, ink: str) -> str:
    look = f'stroke="{ink}" stroke-width="{_n(pen.weight)}"'
    if not pen.weight:
        return 'stroke="none"'
    if pen.round:
        look += ' stroke-linecap="round"'
    if pen.dash:
        look += f' stroke-dasharray="{_n(pen.dash)} {_n(pen.gap)}"'
    return look


def _path(way: str, tag: Tag, look: str) -> str:
    return f"<path d={quoteattr(way)} {look} data-tag={quoteattr(str(tag))}/>"


def _way(run: tuple[Spot, ...], corner: Spot) -> str:
    return "M" + "L".join(_at(spot, corner) for spot in run)


def _curve(start: Spot, pieces: tuple[tuple[Spot, Spot, Spot], ...], corner: Spot) -> str:
    bends = (" ".join(_at(spot, corner) for spot in piece) for piece in pieces)
    return f"M{_at(start, corner)}" + "".join(f"C{bend}" for bend in bends)


def _text(label: Label, corner: Spot, ink: str) -> str:
    spans, low = [], False
    for run in runs(label.text):
        style = ' font-style="italic"' if run.face == "italic" else ""
        size = f' font-size="{_n(label.size * 2 / 3)}"' if run.low else ""
        shift = ' dy="1.5"' if run.low and not low else ' dy="-1.5"' if low and not run.low else ""
        # Between a number and its unit LaTeX sets a thin space.
        shown = run.text if isinstance(label.text, str) else run.text.replace(" ", "\u2009")
        spans.append(f"<tspan{style}{size}{shift}>{escape(shown)}</tspan>")
        low = run.low
    x, y = _at(label.spot, corner).split(",")
    return (
        f'<text x="{x}" y="{y}" font-size="{_n(label.size)}" fill="{ink}" stroke="none" '
        f"data-tag={quoteattr(str(label.tag))}>{''.join(spans)}</text>"
    )


def _at(spot: Spot, corner: Spot) -> str:
    return f"{_n(spot.real - corner.real)},{_n(corner.imag - spot.imag)}"


def _n(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text
