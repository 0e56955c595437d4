"""Structures in the making: told in the template language, and in plain numbers for others.

A layout is what holds a structure and where its loads act; it is drawn several times over.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from itertools import pairwise
from math import cos, dist, radians, sin
from random import Random

DRAWS = 10
"""Systems of one layout."""
GRAVITY = 9.8
HEAD = """
id = "random"
revision = 1
title = "Random"
family = "structures"
level = 1
goals = ["comparison"]
statement = "Random."
"""

Draw = dict[str, float]
Line = list[str]


@dataclass
class Frame:
    """Straight members between nodes: metres, newtons, degrees; x right, y up.

    members: first node, last node, and what is loose: "" nothing, "end" the last node's hinge,
    "tie" both.  supports: node to "hinge", "roller" (pushes straight up) or "fixed".
    forces: node, F_x, F_y, couple (counter-clockwise).  spreads: place of a member, and the load
    straight down at its first and last node, newtons per metre of its length.
    """

    nodes: dict[str, tuple[float, float]] = field(default_factory=dict)
    members: list[tuple[str, str, str]] = field(default_factory=list)
    supports: dict[str, str] = field(default_factory=dict)
    forces: list[tuple[str, float, float, float]] = field(default_factory=list)
    spreads: list[tuple[int, float, float]] = field(default_factory=list)

    def bar(self, line: Line, loose: str = "") -> None:
        """Members along nodes on one line, from its first on; what is loose is at the last."""
        first = self.nodes[line[0]]
        line = sorted(line, key=lambda node: dist(first, self.nodes[node]))
        for one, other in pairwise(line):
            self.members.append((one, other, loose if other == line[-1] else ""))

    def push(self, node: str, size: float, direction: float) -> None:
        turn = radians(direction)
        self.forces.append((node, size * cos(turn), size * sin(turn), 0.0))

    def spread(self, line: Line, ends: tuple[str, str], loads: tuple[float, float]) -> None:
        """A load along the members of a line that lie between two of its nodes."""
        first, last = (self.nodes[end] for end in ends)
        length = dist(first, last)
        for place, (one, other, loose) in enumerate(self.members):
            shares = [dist(first, self.nodes[node]) / length for node in (one, other)]
            left = [dist(last, self.nodes[node]) / length for node in (one, other)]
            inside = max(*shares, *left) < 1.0 + 1e-9
            if inside and {one, other} <= set(line) and loose != "tie":
                low, high = (loads[0] + (loads[1] - loads[0]) * share for share in shares)
                self.spreads.append((place, low, high))


Load = Callable[[Frame, Draw], None]


@dataclass
class Layout:
    """A template and its draws, each also as a frame.

    reactions: our id to a node and the component there: 0 F_x, 1 F_y, 2 couple.
    bodies: body to its nodes from its first to its last, those of a straight one in any order
    between.  tie: our id of the tension in the tie, "" where there is none.
    """

    text: str
    draws: list[Draw]
    frames: list[Frame]
    reactions: dict[str, tuple[str, int]]
    bodies: Mapping[str, Line]
    tie: str = ""


class Sketch:
    """A layout in the making: its quantities with their draws, its entries, what loads it."""

    def __init__(self, name: str, seed: int) -> None:
        self.random = Random(f"{name} {seed}")
        self.draws: list[Draw] = [{} for _ in range(DRAWS)]
        self.units: dict[str, str] = {}
        self.entries: list[str] = []
        self.loads: list[Load] = []
        self.reactions: dict[str, tuple[str, int]] = {}

    def given(self, id: str, unit: str, low: float, high: float) -> str:
        """A quantity with a value for each draw."""
        self.units[id] = unit
        for draw in self.draws:
            draw[id] = round(self.random.uniform(low, high), 4)
        return id

    def entry(self, heading: str, **fields: object) -> None:
        self.entries.append(f"[[{heading}]]")
        for key, value in fields.items():
            shown = f'"{value}"' if isinstance(value, str) else str(value)
            self.entries.append(f"{key.strip('_')} = {shown}")

    def hinge(self, body: str, at: str, symbol: str) -> None:
        self.entry("hinge", body=body, at=at, symbol=symbol)
        self.entry("find", quantity=symbol, as_="components")
        self.reactions |= {f"{symbol}.x": (at, 0), f"{symbol}.y": (at, 1)}

    def fixed(self, body: str, at: str, symbol: str, couple: str) -> None:
        self.entry("fixed", body=body, at=at, symbol=symbol, couple=couple)
        self.entry("find", quantity=symbol, as_="components")
        self.entry("find", quantity=couple)
        self.reactions |= {f"{symbol}.x": (at, 0), f"{symbol}.y": (at, 1), couple: (at, 2)}

    def roller(self, body: str, at: str, symbol: str) -> None:
        self.entry("roller", body=body, at=at, symbol=symbol)
        self.entry("find", quantity=symbol)
        self.reactions[symbol] = (at, 1)

    def tie(self, **fields: object) -> None:
        self.entry("cable", **fields, symbol="T")
        self.entry("find", quantity="T")

    def link(self, body: str, other: str, ends: tuple[str, str]) -> str:
        """A strut with nothing on it but its pins, the second on a body; the first too, or fixed.

        Its force by our id.
        """
        self.entry("hinge", body=body, other="strut", at=ends[1], symbol="I")
        if other:
            self.entry("hinge", body=other, other="strut", at=ends[0], symbol="H")
        else:
            self.hinge("strut", ends[0], "S")
        force = f"F_{''.join(sorted(ends))}"
        self.entry("find", quantity=force)
        return force

    def load(self, body: str, at: str) -> None:
        """A weight, a couple or a force at a point."""
        number = len(self.loads)
        kind = self.random.choice(["weight", "couple", "force"])
        if kind == "weight":
            mass = self.given(f"m_{number}", "kg", 1, 50)
            self.entry("weight", body=body, at=at, mass=mass, of="load",
                       symbol=f"W_{number}")  # fmt: skip
            self.loads.append(lambda frame, draw: frame.push(at, draw[mass] * GRAVITY, 270))
        elif kind == "couple":
            couple = self.given(f"C_{number}", "N*m", -200, 200)
            self.entry("couple", body=body, at=at, moment=couple)
            self.loads.append(lambda frame, draw: frame.forces.append((at, 0, 0, draw[couple])))
        else:
            size = self.given(f"F_{number}", "N", 10, 500)
            angle = self.given(f"a_{number}", "deg", 0, 360)
            self.entry("force", body=body, at=at, magnitude=size, direction=angle)
            self.loads.append(lambda frame, draw: frame.push(at, draw[size], draw[angle]))

    def spread(self, body: str, line: Line, ends: tuple[str, str], shape: str = "") -> None:
        """A load spread along a part of a line.

        shape: "even", "growing" from nothing, or "" for a growing one that may begin with any size.
        """
        number = len(self.loads)
        low = self.given(f"q_{number}", "N/m", 10, 200)
        high = self.given(f"p_{number}", "N/m", 10, 200)
        start = {"even": high, "growing": 0}.get(shape, self.random.choice([low, 0]))
        self.entry("distributed", body=body, from_=ends[0], to=ends[1], start=start, end=high,
                   symbol=f"Q_{number}")  # fmt: skip
        self.loads.append(
            lambda frame, draw: frame.spread(line, ends, (draw.get(str(start), 0.0), draw[high]))
        )

    def text(self, points: dict[str, str], bodies: dict[str, Line]) -> str:
        givens = ["[given]"]
        for id, unit in self.units.items():
            shown = ", ".join(f"{value:.4f}" for value in sorted({d[id] for d in self.draws}))
            name = id.replace("_", " ")
            givens.append(f'{id} = {{ name = "{name}", choices = [{shown}], unit = "{unit}" }}')
        places = ["[points]", *(f"{name} = {how}" for name, how in points.items())]
        outlines = [f"[body.{id}]\nalong = {line!r}" for id, line in bodies.items()]
        return "\n".join([HEAD, *givens, *places, *outlines, *self.entries])


def along_a_line(
    sketch: Sketch, last: int, steepest: float
) -> tuple[Line, dict[str, str], Callable[[Draw], dict[str, tuple[float, float]]]]:
    """Points P0, P1, ... on a line through the origin: their names, entries and places."""
    line = [f"P{number}" for number in range(last + 1)]
    slope = sketch.given("t", "deg", -steepest, steepest) if steepest else "0"
    steps = {}
    for number, name in enumerate(line[1:], start=1):
        steps[name] = sketch.given(f"x_{number}", "m", number - 0.3, number + 0.3)
    points = {"P0": "[0, 0]"}
    for name, step in steps.items():
        points[name] = f'{{ from = "P0", distance = "{step}", direction = "{slope}" }}'

    def places(draw: Draw) -> dict[str, tuple[float, float]]:
        turn = radians(draw.get(slope, 0.0))
        along = {"P0": 0.0, **{name: draw[step] for name, step in steps.items()}}
        return {name: (x * cos(turn), x * sin(turn)) for name, x in along.items()}

    return line, points, places


def finished(
    sketch: Sketch,
    points: dict[str, str],
    bodies: Mapping[str, Line],
    framed: Callable[[Draw], Frame],
    tie: str = "",
    *,
    bent: bool = False,
) -> Layout:
    """The sketch as a template, and its draws as loaded frames."""
    frames = [framed(draw) for draw in sketch.draws]
    for frame, draw in zip(frames, sketch.draws, strict=True):
        for load in sketch.loads:
            load(frame, draw)
    outlines = {id: line if bent else [line[0], line[-1]] for id, line in bodies.items()}
    text = sketch.text(points, outlines)
    return Layout(text, sketch.draws, frames, sketch.reactions, bodies, tie)
