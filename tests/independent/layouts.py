"""Random beams and frames, one layout a seed."""

from __future__ import annotations

from itertools import pairwise
from math import cos, dist, radians, sin

from tests.independent.sketch import Draw, Frame, Layout, Sketch, along_a_line, finished


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


def overhang(seed: int) -> Layout:
    """A beam that hangs over at both ends, under two loads that grow or fade along it."""
    sketch = Sketch("overhang", seed)
    random = sketch.random
    line, points, place = along_a_line(sketch, 6, random.choice([0.0, 40.0]))
    supports = {random.choice(["P1", "P2"]): "hinge", random.choice(["P4", "P5"]): "roller"}
    hinge, roller = supports
    sketch.hinge("beam", hinge, "R")
    sketch.roller("beam", roller, "N")
    sketch.load("beam", random.choice(line))
    for ends in (("P0", random.choice(["P3", "P4", "P5"])), (random.choice(line[1:4]), "P6")):
        sketch.spread("beam", line, random.choice([ends, ends[::-1]]))

    def framed(draw: Draw) -> Frame:
        frame = Frame(place(draw), supports=supports)
        frame.bar(line)
        return frame

    return finished(sketch, points, {"beam": line}, framed)


def span(seed: int) -> Layout:
    """A level beam on two supports under an even load or one that grows from nothing, and a few
    loads at points: its moment is often largest between two of them.
    """
    sketch = Sketch("span", seed)
    random = sketch.random
    line, points, place = along_a_line(sketch, 5, 0.0)
    roller = random.choice(["P4", "P5"])
    supports = {"P0": "hinge", roller: "roller"}
    sketch.hinge("beam", "P0", "R")
    sketch.roller("beam", roller, "N")
    ends = random.choice(line[:2]), random.choice(line[4:])
    sketch.spread(
        "beam", line, random.choice([ends, ends[::-1]]), random.choice(["even", "growing"])
    )
    for _ in range(random.randint(0, 2)):
        sketch.load("beam", random.choice(line[1:]))

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


def portal(seed: int) -> Layout:
    """Two bent bodies, each a post and a rafter, joined at the ridge: hinged below, or built in."""
    sketch = Sketch("portal", seed)
    random = sketch.random
    sides = {"l": (2.4, 3.2), "p": (1.8, 2.6), "q": (1.8, 2.6), "r": (2.4, 3.2)}
    slopes = {"a": (75, 105), "s": (10, 35), "t": (10, 35), "b": (75, 105)}
    between = {"k": (0.6, 1.8), "u": (0.5, 1.3), "v": (0.5, 1.3), "m": (0.6, 1.8)}
    for id, ends in (sides | between).items():
        sketch.given(id, "m", *ends)
    for id, ends in slopes.items():
        sketch.given(id, "deg", *ends)
    corners = ["A", "E", "C", "F", "B"]
    steps = list(zip(pairwise(corners), sides, ("a", "s", "-t", "-b"), between, strict=True))
    points = {"A": "[0, 0]"}
    for (start, end), side, slope, short in steps:
        along = f'from = "{start}"'
        points[end] = f'{{ {along}, distance = "{side}", direction = "{slope}" }}'
        points[short.upper()] = f'{{ {along}, toward = "{end}", distance = "{short}" }}'
    sketch.entry("hinge", body="left", other="right", at="C", symbol="J")
    built_in = random.random() < 0.4
    if built_in:
        sketch.fixed("left", "A", "R", "M_A")
        sketch.roller("right", "B", "N")
    else:
        sketch.hinge("left", "A", "R")
        sketch.hinge("right", "B", "S")
    sketch.load("left", random.choice("AKEU"))
    sketch.load("right", random.choice("VFMB"))
    for body, line in (("left", ["E", "U", "C"]), ("right", ["C", "V", "F"])):
        sketch.spread(body, line, random.choice([(line[0], line[2]), (line[1], line[0])]))
    supports = {"A": "fixed", "B": "roller"} if built_in else {"A": "hinge", "B": "hinge"}

    def framed(draw: Draw) -> Frame:
        nodes = {"A": (0.0, 0.0)}
        for (start, end), side, slope, short in steps:
            turn = radians(draw[slope[-1]]) * (-1 if slope[0] == "-" else 1)
            for node, reach in ((end, draw[side]), (short.upper(), draw[short])):
                x, y = nodes[start]
                nodes[node] = x + reach * cos(turn), y + reach * sin(turn)
        frame = Frame(nodes, supports=supports)
        for (start, end), _, _, short in steps:
            frame.bar([start, short.upper(), end], "end" if end == "C" else "")
        return frame

    bodies = {"left": corners[:3], "right": corners[2:]}
    return finished(sketch, points, bodies, framed, bent=True)


def propped(seed: int) -> Layout:
    """A sloping beam hinged to a wall and held by a two-force member from below or above."""
    sketch = Sketch("propped", seed)
    random = sketch.random
    line, points, place = along_a_line(sketch, 4, 25.0)
    below = random.random() < 0.6
    points["Z"] = f'[0, "{"-" if below else ""}{sketch.given("h", "m", 2.5, 4)}"]'
    held = random.choice(line[2:])
    sketch.hinge("beam", "P0", "R")
    force = sketch.link("beam", "", ("Z", held))
    for _ in range(2):
        sketch.load("beam", random.choice(line[1:]))
    sketch.spread("beam", line, ("P0", random.choice(line[1:])))

    def framed(draw: Draw) -> Frame:
        nodes = {**place(draw), "Z": (0.0, -draw["h"] if below else draw["h"])}
        frame = Frame(nodes, supports={"P0": "hinge", "Z": "hinge"})
        frame.bar(line)
        frame.bar(["Z", held], "tie")
        return frame

    return finished(sketch, points, {"beam": line, "strut": ["Z", held]}, framed, force)


def kneed(seed: int) -> Layout:
    """A post built in at its foot, a beam hinged to its head, a two-force member between them."""
    sketch = Sketch("kneed", seed)
    random = sketch.random
    for id, low, high in (("h", 2.8, 3.6), ("k", 0.8, 1.4), ("j", 1.6, 2.2), ("c", 1.0, 1.8),
                          ("d", 2.2, 3.0), ("b", 3.4, 4.2)):  # fmt: skip
        sketch.given(id, "m", low, high)
    points = {"A": "[0, 0]", "K": '[0, "k"]', "J": '[0, "j"]', "D": '[0, "h"]'}
    points |= {name: f'["{id}", "h"]' for name, id in zip("CGB", "cdb", strict=True)}
    post, beam = ["A", "K", "J", "D"], ["D", "C", "G", "B"]
    sketch.entry("hinge", body="post", other="beam", at="D", symbol="Q")
    sketch.fixed("post", "A", "R", "M")
    ends = random.choice("KJ"), random.choice("CG")
    force = sketch.link("beam", "post", ends)
    sketch.load("post", random.choice("KJ"))
    sketch.load("beam", random.choice("CGB"))
    sketch.spread("beam", beam, random.choice([("D", "B"), ("B", "D"), ("C", "B"), ("G", "D")]))

    def framed(draw: Draw) -> Frame:
        heights = {"A": 0.0, "K": draw["k"], "J": draw["j"], "D": draw["h"]}
        nodes = {name: (0.0, height) for name, height in heights.items()}
        nodes |= {name: (draw[id], draw["h"]) for name, id in zip("CGB", "cdb", strict=True)}
        frame = Frame(nodes, supports={"A": "fixed"})
        frame.bar(post, "end")
        frame.bar(beam)
        frame.bar(list(ends), "tie")
        return frame

    return finished(
        sketch, points, {"post": post, "beam": beam, "strut": list(ends)}, framed, force
    )


KINDS = {
    each.__name__: each
    for each in (beam, overhang, span, stayed, jointed, legs, portal, propped, kneed)
}
