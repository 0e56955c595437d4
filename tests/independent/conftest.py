"""Random beams and frames, told in the template language and in plain numbers for other programs.

A layout is what holds a structure and where its loads act; it is drawn several times over.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache
from itertools import pairwise
from math import cos, dist, radians, sin
from random import Random

import numpy as np
import pytest
from numpy.typing import NDArray

from probgen.bank.reading import read_template
from probgen.statics.plan import find_plan
from probgen.statics.proof import TOLERANCE, prove
from probgen.statics.solution import solve

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
    tie: our id of the tension in the tie, "" where there is none.
    """

    text: str
    draws: list[Draw]
    frames: list[Frame]
    reactions: dict[str, tuple[str, int]]
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

    def load(self, body: str, at: str) -> None:
        """A weight, a couple or a force at a point."""
        number = len(self.loads)
        kind = self.random.choice(["weight", "couple", "force"])
        if kind == "weight":
            mass = self.given(f"m_{number}", "kg", 1, 50)
            self.entry("weight", body=body, at=at, mass=mass, symbol=f"W_{number}")
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

    def spread(self, body: str, line: Line, ends: tuple[str, str]) -> None:
        """A load spread along a part of a line: even, or growing evenly."""
        number = len(self.loads)
        low = self.given(f"q_{number}", "N/m", 10, 200)
        high = self.given(f"p_{number}", "N/m", 10, 200)
        start = self.random.choice([low, 0])
        self.entry("distributed", body=body, from_=ends[0], to=ends[1], start=start, end=high,
                   symbol=f"Q_{number}")  # fmt: skip
        self.loads.append(
            lambda frame, draw: frame.spread(line, ends, (draw[low] if start else 0.0, draw[high]))
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


def beam(seed: int, steepest: float = 0.0) -> Layout:
    """A beam built in at one end, or on a hinge and a roller, under up to five loads."""
    sketch = Sketch("beam", seed)
    random = sketch.random
    last = random.randint(3, 6)
    line, points, place = along_a_line(sketch, last, steepest)
    if random.random() < 0.3:
        end = random.choice([line[0], line[-1]])
        supports = {end: "fixed"}
        sketch.fixed("beam", end, "R", "M")
    else:
        hinge, roller = random.sample(line, 2)
        supports = {hinge: "hinge", roller: "roller"}
        sketch.hinge("beam", hinge, "R")
        sketch.roller("beam", roller, "N")
    for _ in range(random.randint(1, 3)):
        sketch.load("beam", random.choice(line))
    for _ in range(random.randint(0, 2)):
        first, second = sorted(random.sample(range(last + 1), 2))
        sketch.spread("beam", line, (line[first], line[second]))

    def framed(draw: Draw) -> Frame:
        frame = Frame(place(draw), supports=supports)
        frame.bar(line)
        return frame

    return finished(sketch, points, {"beam": line}, framed)


def stayed(seed: int) -> Layout:
    """A sloping beam on a hinge, held by a cable from above."""
    sketch = Sketch("stayed", seed)
    line, points, place = along_a_line(sketch, 4, 30.0)
    points["Z"] = f'[0, "{sketch.given("h", "m", 4, 6)}"]'
    held = sketch.random.choice(line[2:])
    sketch.hinge("beam", "P0", "R")
    sketch.tie(body="beam", at=held, toward="Z")
    for _ in range(2):
        sketch.load("beam", sketch.random.choice(line[1:]))
    sketch.spread("beam", line, ("P0", sketch.random.choice(line[1:])))

    def framed(draw: Draw) -> Frame:
        nodes = {**place(draw), "Z": (0.0, draw["h"])}
        frame = Frame(nodes, supports={"P0": "hinge", "Z": "hinge"})
        frame.bar(line)
        frame.bar([held, "Z"], "tie")
        return frame

    return finished(sketch, points, {"beam": line}, framed, "T")


def jointed(seed: int) -> Layout:
    """Two beams in one line, joined by a hinge, on two or three supports."""
    sketch = Sketch("jointed", seed)
    line, points, place = along_a_line(sketch, 4, 40.0)
    left, right = line[:3], line[2:]
    sketch.entry("hinge", body="left", other="right", at="P2", symbol="J")
    built_in = sketch.random.random() < 0.5
    if built_in:
        supports = {"P0": "fixed", sketch.random.choice(right[1:]): "roller"}
        sketch.fixed("left", "P0", "R", "M")
    else:
        supports = {"P0": "hinge", "P1": "roller", "P4": "roller"}
        sketch.hinge("left", "P0", "R")
        sketch.roller("left", "P1", "N_1")
    sketch.roller("right", list(supports)[-1], "N_2")
    for body, part in (("left", left), ("right", right)):
        sketch.load(body, sketch.random.choice([node for node in part if node != "P2"]))
        sketch.spread(body, part, (part[0], sketch.random.choice(part[1:])))

    def framed(draw: Draw) -> Frame:
        frame = Frame(place(draw), supports=supports)
        frame.bar(left, "end")
        frame.bar(right)
        return frame

    return finished(sketch, points, {"left": left, "right": right}, framed)


def legs(seed: int) -> Layout:
    """Two legs joined by a hinge at the top: on two hinges, or on one and a roller with a tie."""
    sketch = Sketch("legs", seed)
    sides = {"l": "m", "r": "m", "a": "deg", "b": "deg"}
    for id, unit in sides.items():
        sketch.given(id, unit, *((2.4, 3.2) if unit == "m" else (50, 70)))
    for id, low, high in (("k", 0.4, 0.9), ("u", 1.2, 1.9), ("m", 1.5, 2.0), ("v", 0.3, 1.2)):
        sketch.given(id, "m", low, high)
    points = {"A": "[0, 0]", "C": '{ from = "A", distance = "l", direction = "a" }'}
    points["B"] = '{ from = "C", distance = "r", direction = "-b" }'
    between = {"K": ("A", "C"), "U": ("A", "C"), "M": ("C", "B"), "V": ("C", "B")}
    for name, (start, end) in between.items():
        points[name] = f'{{ from = "{start}", toward = "{end}", distance = "{name.lower()}" }}'
    left, right = ["A", "K", "U", "C"], ["C", "V", "M", "B"]
    sketch.entry("hinge", body="left", other="right", at="C", symbol="J")
    sketch.hinge("left", "A", "R")
    tied = sketch.random.random() < 0.5
    if tied:
        sketch.roller("right", "B", "N")
        sketch.tie(body="left", other="right", at="K", toward="M")
    else:
        sketch.hinge("right", "B", "S")
    for body, line in (("left", left), ("right", right)):
        sketch.load(body, sketch.random.choice([node for node in line if node != "C"]))
        sketch.spread(body, line, sketch.random.choice([(line[0], line[3]), (line[0], line[2])]))

    def framed(draw: Draw) -> Frame:
        a, b = radians(draw["a"]), -radians(draw["b"])
        top = draw["l"] * cos(a), draw["l"] * sin(a)
        nodes = {"A": (0.0, 0.0), "C": top}
        nodes["B"] = top[0] + draw["r"] * cos(b), top[1] + draw["r"] * sin(b)
        for name, ends in between.items():
            (x, y), (to_x, to_y) = (nodes[each] for each in ends)
            share = draw[name.lower()] / dist((x, y), (to_x, to_y))
            nodes[name] = x + share * (to_x - x), y + share * (to_y - y)
        frame = Frame(nodes, supports={"A": "hinge", "B": "roller" if tied else "hinge"})
        frame.bar(left, "end")
        frame.bar(right)
        if tied:
            frame.bar(["K", "M"], "tie")
        return frame

    return finished(sketch, points, {"left": left, "right": right}, framed, "T" if tied else "")


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
    bodies: dict[str, Line],
    framed: Callable[[Draw], Frame],
    tie: str = "",
) -> Layout:
    """The sketch as a template, and its draws as loaded frames."""
    frames = [framed(draw) for draw in sketch.draws]
    for frame, draw in zip(frames, sketch.draws, strict=True):
        for load in sketch.loads:
            load(frame, draw)
    outlines = {id: [line[0], line[-1]] for id, line in bodies.items()}
    return Layout(sketch.text(points, outlines), sketch.draws, frames, sketch.reactions, tie)


def solved(layout: Layout) -> dict[str, NDArray[np.float64]]:
    """Every quantity asked, one entry a draw, as the engine plans, solves and proves it.

    The proof may blame a push or pull that came out the wrong way, and nothing else.
    """
    system = read_template(layout.text, "random.toml").system
    values = {id: np.array([draw[id] for draw in layout.draws]) for id in layout.draws[0]}
    values["g"] = np.full(DRAWS, GRAVITY)
    plan = find_plan(system, values)
    found = solve(plan, values)
    proof = prove(plan, found)
    assert proof.max_residual.max() <= TOLERANCE
    assert proof.second_solver_difference.max() <= TOLERANCE
    one_way = [v.id for v in system.variables.values() if v.nonnegative and v.id in found]
    wrong = np.any([np.broadcast_to(found[id] < 0.0, DRAWS) for id in one_way], axis=0)
    assert [bool(faults) for faults in proof.faults] == list(np.broadcast_to(wrong, DRAWS))
    return {name: np.broadcast_to(value, DRAWS) for name, value in found.items()}


@cache
def worked(kind: str, seed: int) -> tuple[Layout, dict[str, NDArray[np.float64]]]:
    layout = {"beam": beam, "stayed": stayed, "jointed": jointed, "legs": legs}[kind](seed)
    return layout, solved(layout)


Work = Callable[[str, int], tuple[Layout, dict[str, NDArray[np.float64]]]]


@pytest.fixture
def work() -> Work:
    """From a kind of layout and a seed to the layout and what the engine finds for its draws."""
    return worked
