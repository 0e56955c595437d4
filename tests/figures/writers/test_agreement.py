"""Two writers, one drawing: every stroke of the SVG is in the LaTeX, in its place and width."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass

import pytest

from probgen.figures.paper.scene import (
    BARE,
    DASHED,
    FINE,
    HEAVY,
    LIGHT,
    MEDIUM,
    Arc,
    Arrow,
    Curve,
    Pen,
    Scene,
    Tone,
    circle,
    composed,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.scene import Path as Strokes
from probgen.figures.writers.latex import latex_picture
from probgen.figures.writers.svg import svg
from tests.figures.sketches import BOOM, CABINET, LIMB, SLOPE, STACK, TACKLE, loaded, sketch
from tests.gallery.part_scenes import part_scenes

SPACE = "{http://www.w3.org/2000/svg}"


@dataclass(frozen=True)
class Way:
    """One run of the pen: its commands, its places (pt, from the left edge and the lower one).

    painted: "S" stroked, "F" painted solid, "B" tinted and stroked; width: of the stroke, pt.
    """

    commands: str
    spots: tuple[complex, ...]
    painted: str
    width: float

    def like(self, other: Way) -> bool:
        """Whether it is the other but for the rounding of either."""
        if (self.painted, self.width) != (other.painted, other.width):
            return False
        solid = self.painted == "F"  # is closed whether that is said or not
        mine, others = (w.commands.rstrip("Z") if solid else w.commands for w in (self, other))
        if mine != others:
            return False
        return all(abs(a - b) < 0.03 for a, b in zip(self.spots, other.spots, strict=True))


def svg_ways(scene: Scene) -> list[Way]:
    root = ET.fromstring(svg(scene))
    height = float(root.get("viewBox", "").split()[3])
    found = []
    for element in root.findall(f"{SPACE}path"):
        stroke, fill = element.get("stroke"), element.get("fill")
        painted = "S" if fill is None else "F" if stroke == "none" else "B"
        width = float(element.get("stroke-width", 0)) if painted != "F" else 0.0
        if element.get("stroke-dasharray"):
            continue  # LaTeX gets every dash by itself
        for run in re.findall(r"M[^M]+", element.get("d", "")):
            numbers = [float(n) for n in re.findall(r"-?[\d.]+", run)]
            pairs = zip(numbers[::2], numbers[1::2], strict=True)
            spots = [complex(x, height - y) for x, y in pairs]
            found.append(Way("".join(re.findall("[MLCZ]", run)), tuple(spots), painted, width))
    return found


LETTERS = {"moveto": "M", "lineto": "L", "curveto": "C", "closepath": "Z"}


def latex_ways(scene: Scene) -> list[Way]:
    found: list[Way] = []
    width, tinted = 0.0, ""
    waiting: list[tuple[str, tuple[complex, ...]]] = []
    tokens = re.compile(
        r"\\linethickness\{([\d.]+)pt\}|pIIe@stroke@op\\endcsname\{(\w)\}"
        r"|\\(moveto|lineto|curveto|closepath|strokepath|fillpath)|\((-?[\d.]+),(-?[\d.]+)\)"
    )
    body = latex_picture(scene).partition(r"\roundjoin")[2]
    for thickness, operator, command, x, y in tokens.findall(body):
        if thickness:
            width = float(thickness)
        elif operator:
            tinted = operator
        elif command in LETTERS:
            if command == "moveto":
                waiting.append(("", ()))
            commands, spots = waiting[-1]
            waiting[-1] = (commands + LETTERS[command], spots)
        elif command:
            solid = command == "fillpath" or tinted == "f"
            painted = "F" if solid else "B" if tinted == "B" else "S"
            found += [Way(*way, painted, 0.0 if solid else width) for way in waiting]
            waiting = []
        elif waiting:
            commands, spots = waiting[-1]
            waiting[-1] = (commands, (*spots, complex(float(x), float(y))))
    return found


BOX = (0j, 12 + 0j, 12 + 7j, 7j)
PLAIN = composed(
    [
        line(1j, 9 + 4j, FINE),
        Strokes((BOX, (3j, 5 + 3j)), MEDIUM),
        Strokes((BOX,), MEDIUM, closed=True),
        Strokes((BOX,), MEDIUM, closed=True, filled=True),
        polygon(BOX, LIGHT, tone=Tone.BODY),
        polygon(BOX, BARE, tone=Tone.GROUND),
        Strokes((BOX,), Pen(4.0, round=True), tone=Tone.PERSON),
        line(2 + 0j, 9 + 9j, DASHED),
        circle(3 + 3j, 5.0, HEAVY),
        circle(3 + 3j, 2.0, HEAVY, filled=True),
        Arc(3 + 3j, 4.0, 20.0, 200.0, FINE),
        Arc(3 + 3j, 4.0, 20.0, -80.0, FINE, tone=Tone.WATER),
        Curve(1 + 1j, ((2 + 2j, 3 + 2j, 4 + 1j), (5 + 0j, 6 + 0j, 7 + 1j)), MEDIUM),
        Curve(1 + 1j, ((2 + 2j, 3 + 2j, 4 + 1j),), MEDIUM, filled=True),
        Arrow(0j, 20 * heading(30.0), HEAVY),
        Arrow(0j, 20 * heading(200.0), FINE, both=True),
    ]
)
SCENES = {
    "shapes": PLAIN,
    **dict(part_scenes()),
    **{
        name: sketch(text)
        for name, text in {
            "stack": STACK, "slope": SLOPE, "tackle": TACKLE, "cabinet": CABINET,
            "boom": BOOM.replace("STEEP", "40"), "limb": LIMB, "load": loaded("growing"),
        }.items()
    },
}  # fmt: skip


@pytest.mark.parametrize("name", SCENES)
def test_both_writers_draw_the_same(name: str) -> None:
    left = latex_ways(SCENES[name])
    for way in svg_ways(SCENES[name]):
        same = [other for other in left if way.like(other)]
        assert same, way
        left.remove(same[0])
    dashed = [shape for shape in SCENES[name].shapes if getattr(shape, "pen", HEAVY).dash]
    assert bool(left) is bool(dashed)


def test_a_closed_way_runs_back_to_its_start_and_a_solid_one_is_painted() -> None:
    """What the picture is made of, sign by sign; the frame has a margin of 1 pt.

    A pen of 0.8 pt reaches 0.4 pt beyond the line it draws.
    """
    square = Strokes(((0j, 4 + 0j, 4 + 4j),), MEDIUM, closed=True)
    solid = Strokes(((0j, 4 + 0j, 4 + 4j),), MEDIUM, closed=True, filled=True)
    way = r"\moveto(1.4,1.4)\lineto(5.4,1.4)\lineto(5.4,5.4)\closepath"
    assert f"{way}\\strokepath%\n" in latex_picture(composed([square]))
    assert f"{way}\\fillpath%\n" in latex_picture(composed([solid]))
    assert r"\begin{picture}(6.8,6.8)" in latex_picture(composed([square]))
    assert 'd="M1.4,5.4L5.4,5.4L5.4,1.4Z"' in svg(composed([square]))
    assert 'viewBox="0 0 6.8 6.8"' in svg(composed([square]))
    assert 'width="0.0941in" height="0.0941in"' in svg(composed([square]))
