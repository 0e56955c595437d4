"""Templates of flawed situations, put together entry by entry."""

from __future__ import annotations

HEAD = """
id = "trial"
revision = 1
title = "Trial"
family = "beams"
level = 1
goals = ["trial"]
statement = "Trial."
[given]
L = { name = "length", choices = [2.0], unit = "m" }
m = { name = "mass", choices = [10.0], unit = "kg" }
mu = { name = "coefficient of friction", choices = [0.50], unit = "1" }
F = { name = "push", choices = [12.0], unit = "N" }
S = { name = "pull", choices = [24.0], unit = "N" }
q = { name = "angle", symbol = "theta", choices = [50], unit = "deg" }
[unknown]
"""

BEAM = """
[points]
A = [0, 0]
B = ["L", 0]
C = ["L/2", 0]
"""
BODY = """
[body.beam]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
"""

BALL = """
[body.ball]
particle = true
[[weight]]
mass = "m"
"""

JOINTED = """
[points]
A = [0, 0]
C = ["L", 0]
B = ["2*L", 0]
[body.left]
along = ["A", "C"]
[body.right]
along = ["C", "B"]
[[weight]]
body = "left"
uniform = true
mass = "m"
[[hinge]]
body = "left"
other = "right"
at = "C"
symbol = "Q"
"""


def entry(kind: str, **fields: str | int | bool) -> str:
    """One entry of a template; `as_` is its field `as`."""
    lines = [f"[[{kind}]]"]
    for key, value in fields.items():
        written = f'"{value}"' if isinstance(value, str) else str(value).lower()
        lines.append(f"{key.rstrip('_')} = {written}")
    return "\n".join(lines) + "\n"


def beam(*entries: str, unknown: str = "", points: str = "") -> str:
    """A uniform beam from A to B, 2 m and 98 N, its middle C."""
    return HEAD + unknown + BEAM + points + BODY + "".join(entries)


def ball(*entries: str, unknown: str = "") -> str:
    """A particle of 98 N."""
    return HEAD + unknown + BALL + "".join(entries)


def jointed(*entries: str) -> str:
    """Two beams in one line, joined by a hinge at C."""
    return HEAD + JOINTED + "".join(entries)


def roller(at: str, symbol: str, direction: int = 90, body: str = "beam") -> str:
    return entry("roller", at=at, symbol=symbol, direction=direction, body=body)


def lean(low: int, high: int) -> str:
    return f't = {{ name = "lean", symbol = "phi", unit = "deg", from = {low}, to = {high} }}\n'


HINGE = entry("hinge", at="A", symbol="R")
CABLE = entry("cable", at="B", direction=90, symbol="T")
POT = entry("weight", at="B", mass="m_x") + entry("find", quantity="m_x", as_="largest")
POT_MASS = 'm_x = { name = "mass of the pot", unit = "kg" }\n'
PLACE = 'x = { name = "distance to the load", unit = "m", from = 0, to = 2 }\n'
BREAKS = entry("limit", that="T <= 20 N", name="the cable breaks")
HOLDS_ENDS = roller("A", "N_1") + roller("B", "N_2")
TILTED = entry("cable", direction="90 + t", magnitude="S") + entry(
    "force", direction=90, symbol="P"
)
PUSH = entry("force", direction=0, magnitude="F")
FIND_LEAN = entry("find", quantity="t")
AT_X = 'X = ["x", 0]\n'


def finding(quantity: str) -> str:
    return entry("find", quantity=quantity)
