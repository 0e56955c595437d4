"""Situations that tests of several rooms work: templates whose numbers are easily done by hand.

The shelf: 1.20 m and 4.0 kg (39.2 N), 8.0 kg (78.4 N) at its end B, hinged at A, and a cable at C,
0.96 m from A, that pulls up and back at 40 degrees to the shelf.  About A: T 0.96 m sin 40 =
39.2 N x 0.60 m + 78.4 N x 1.20 m = 117.6 N m, so T = 190.58 N.  Along x: R_x = T cos 40 = 145.99 N;
along y: R_y = 117.6 N - T sin 40 = -4.90 N.

The bracket: 98.0 N at K, L = 2.00 m from the hinge A, held at E, h = 0.50 m above K, by a cable at
150 degrees: T (L sin 30 + h sin 60) = 98.0 N x 2.00 m, so T = 196 N m/(1.433 m) = 136.8 N.

Two beams in one line, built in at A and joined at C, the right one (98.0 N) on a roller at B: half
of its weight hangs on the joint, and M_A = 49.0 N x 2.00 m = 98.0 N m.

The cabinet: weight W, depth b, pushed at height h on a floor with coefficient mu: it slides at
P = mu W and tips at P = W b/(2 h).

A ball pulled aside by F = 9.8 N on a cord that a counterweight holds: T = M g = 19.6 N and
sin t = F/T, t = 30 degrees.

The crate on a slope theta, held by a cable along it: it slips down below T = W (sin theta - mu cos
theta), up above W (sin theta + mu cos theta).
"""

from __future__ import annotations

from typing import Final

from probgen.bank.reading import read_template
from probgen.draws.draw import completed
from probgen.problem.problem import Problem, Worked, prepare, work
from probgen.statics.system import System
from probgen.working.convention import Convention

HEAD: Final = """
id = "own"
revision = 1
title = "Own"
family = "levers"
level = 3
goals = ["own"]
statement = "Own."
"""

SHELF: Final = (
    HEAD
    + """
[given]
L = { name = "shelf length", choices = [1.20], unit = "m" }
d = { name = "distance to the cable", choices = [0.96], unit = "m" }
m = { name = "shelf mass", choices = [4.0], unit = "kg" }
M = { name = "load mass", choices = [8.0], unit = "kg" }
theta = { name = "angle", choices = [40], unit = "deg" }
[points]
A = [0, 0]
B = ["L", 0]
C = ["d", 0]
[body.shelf]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
symbol = "W_s"
[[weight]]
at = "B"
mass = "M"
symbol = "W_t"
"""
)
HINGED: Final = '[[hinge]]\nat = "A"\nsymbol = "R"\n'
STAYED: Final = '[[cable]]\nat = "C"\ndirection = "180 - theta"\nsymbol = "T"\n'
FIND_T, FIND_R = (f'[[find]]\nquantity = "{quantity}"\n' for quantity in "TR")
STAYED_SHELF: Final = SHELF + HINGED + STAYED + FIND_T + FIND_R

SLOPED: Final = STAYED_SHELF.replace(
    'theta = { name = "angle", choices = [40], unit = "deg" }',
    'h = { name = "height", choices = [0.59], unit = "m" }',
).replace(
    "[points]",
    '[unknown]\ntheta = { name = "slope", unit = "deg", from = 5, to = 80 }\n'
    '[[condition]]\nthat = "d*tan(theta) = h"\nbecause = "its upper end is there"\n[points]',
)
"""The shelf's cable goes to a place 0.59 m above the hinge: theta = 31.574°."""
TWO_SLOPES: Final = (
    SLOPED.replace(
        "[unknown]", '[unknown]\nphi = { name = "turn", unit = "deg", from = 5, to = 80 }'
    )
    .replace("[given]", '[given]\nk = { name = "rise", choices = [0.63], unit = "m" }')
    .replace('"180 - theta"', '"theta + phi"')
    + '[[condition]]\nthat = "d*tan(phi) = k"\nbecause = "it is turned so far"\n'
)
"""The cable leads away from the wall, at theta + phi = 31.574° + 33.275° = 64.849°."""

BRACKET: Final = (
    HEAD
    + """
[given]
L = { name = "length", choices = [2.00], unit = "m" }
h = { name = "height", choices = [0.50], unit = "m" }
m = { name = "mass", choices = [10.0], unit = "kg" }
[points]
A = [0, 0]
K = ["L", 0]
E = ["L", "h"]
[body.bracket]
along = ["A", "K", "E"]
[[hinge]]
at = "A"
symbol = "R"
[[cable]]
at = "E"
direction = 150
symbol = "T"
[[weight]]
at = "K"
mass = "m"
symbol = "W"
[[find]]
quantity = "T"
[[find]]
quantity = "R"
"""
)

_TWO: Final = """
[given]
L = { name = "length", choices = [2.00], unit = "m" }
m = { name = "mass", choices = [10.0], unit = "kg" }
[points]
A = [0, 0]
<joint>
[body.left]
along = ["A", "C"]
[body.right]
along = ["C", "B"]
[[weight]]
body = "right"
uniform = true
mass = "m"
[[hinge]]
body = "left"
other = "right"
at = "C"
symbol = "Q"
<ends>
"""
TWO_BEAMS: Final = HEAD + _TWO.replace("<joint>", 'C = ["L", 0]\nB = ["2*L", 0]').replace(
    "<ends>",
    """[[fixed]]
body = "left"
at = "A"
symbol = "R"
couple = "M_A"
[[roller]]
body = "right"
at = "B"
symbol = "N"
[[find]]
quantity = "M_A"
""",
)
THREE_HINGES: Final = HEAD + _TWO.replace("<joint>", 'C = ["L/2", "L"]\nB = ["L", 0]').replace(
    "<ends>",
    """[[hinge]]
body = "left"
at = "A"
symbol = "R"
[[hinge]]
body = "right"
at = "B"
symbol = "S"
[[find]]
quantity = "S"
""",
)

THREE_CABLES: Final = (
    HEAD
    + """
[given]
L = { name = "length", choices = [2.0], unit = "m" }
m = { name = "mass", choices = [60], unit = "kg" }
[points]
A = [0, 0]
B = ["L", 0]
C = ["0.8*L", 0]
[body.beam]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
[[cable]]
at = "A"
direction = 120
symbol = "T_1"
[[cable]]
at = "B"
direction = 50
symbol = "T_2"
[[cable]]
at = "C"
direction = 80
symbol = "T_3"
[[find]]
quantity = "T_1"
"""
)

_CABINET: Final = """
[given]
m = { name = "mass", <m>, unit = "kg" }
b = { name = "depth", <b>, unit = "m" }
h = { name = "height of the push", <h>, unit = "m" }
mu = { name = "coefficient", <mu>, unit = "1" }
<push>
[unknown]
x = { name = "distance of the normal force", unit = "m" }
[points]
O = [0, 0]
G = ["b/2", 0]
Q = ["x", 0]
K = [0, "h"]
[body.cabinet]
along = ["O", "K"]
[[force]]
at = "K"
direction = 0
symbol = "P"
name = "push"
<magnitude>
[[weight]]
at = "G"
mass = "m"
[[rough]]
at = "Q"
normal = "N"
friction = "f"
friction_direction = 180
name = "floor"
"""
_VALUES: Final = {
    "m": "from = 40, to = 80, step = 5",
    "b": "from = 0.40, to = 0.60, step = 0.05",
    "h": "from = 0.60, to = 1.20, step = 0.10",
    "mu": "choices = [0.20, 0.30, 0.35, 0.40]",
}


def ball_on_a_cord(low: int, high: int) -> str:
    """A ball pulled aside by 12.0 N on a cord of 24.0 N: sin t = 12/24, t from low to high."""
    return (
        HEAD
        + f"""
[given]
m = {{ name = "mass", choices = [2.0], unit = "kg" }}
F = {{ name = "pull", choices = [12.0], unit = "N" }}
T = {{ name = "tension", choices = [24.0], unit = "N" }}
[unknown]
t = {{ name = "lean", symbol = "theta", unit = "deg", from = {low}, to = {high} }}
[body.ball]
particle = true
[[cable]]
direction = "90 + t"
magnitude = "T"
[[force]]
direction = 0
magnitude = "F"
[[force]]
direction = 90
symbol = "P"
[[weight]]
mass = "m"
[[find]]
quantity = "t"
"""
    )


HUNG_ASIDE: Final = (
    HEAD
    + """
[given]
M = { name = "counterweight mass", choices = [2.0], unit = "kg" }
m = { name = "ball mass", choices = [1.0], unit = "kg" }
F = { name = "pull", choices = [9.8], unit = "N" }
[unknown]
t = { name = "lean", symbol = "theta", unit = "deg", from = 10, to = 80 }
[body.counterweight]
particle = true
[body.ball]
particle = true
[[cable]]
body = "counterweight"
direction = 90
symbol = "T"
[[weight]]
body = "counterweight"
mass = "M"
[[cable]]
body = "ball"
direction = "90 + t"
magnitude = "T"
symbol = "S"
[[force]]
body = "ball"
direction = 0
magnitude = "F"
[[force]]
body = "ball"
direction = 90
symbol = "P"
[[weight]]
body = "ball"
mass = "m"
[[find]]
quantity = "T"
[[find]]
quantity = "t"
"""
)


def cabinet(push: str = "", **values: str) -> str:
    """The cabinet without limits or questions.

    values: of m, b, h, mu, each a range unless it is stated; push: in newtons, else unknown.
    """
    given = f'P_0 = {{ name = "given push", choices = [{push}], unit = "N" }}' if push else ""
    stated = {id: f"choices = [{value}]" for id, value in values.items()}
    replaced = _VALUES | stated | {"push": given}
    replaced["magnitude"] = 'magnitude = "P_0"' if push else ""
    text = HEAD + _CABINET
    for id, value in replaced.items():
        text = text.replace(f"<{id}>", value)
    return text


SLIDES: Final = '[[limit]]\nid = "slides"\nthat = "f <= mu*N"\nname = "it slides"\n'
TIPS: Final = '[[limit]]\nid = "tips"\nthat = "x <= b"\nname = "it tips"\n'


def crate(pull: str = "") -> str:
    """The crate without its slope; pull: such as "60 N", else unknown."""
    known = f'magnitude = "{pull}"\n' if pull else ""
    return (
        HEAD
        + f"""
[given]
m = {{ name = "mass", choices = [50.0, 65.0], unit = "kg" }}
mu = {{ name = "coefficient", choices = [0.30, 0.25], unit = "1" }}
theta = {{ name = "slope", choices = [25, 32], unit = "deg" }}
[body.crate]
particle = true
[[weight]]
mass = "m"
[[cable]]
direction = "theta"
symbol = "T"
{known}"""
    )


SLOPE: Final = """
[[rough]]
direction = "90 + theta"
friction_direction = "theta"
normal = "N"
friction = "f"
name = "slope"
"""
SLIPS_DOWN: Final = '[[limit]]\nid = "down"\nthat = "f <= mu*N"\nname = "it slips down"\n'
SLIPS_UP: Final = '[[limit]]\nid = "up"\nthat = "f >= -mu*N"\nname = "it slips up"\n'
EITHER_WAY: Final = 'coefficient = "mu"\nverge = false\n'


def finding(quantity: str, form: str = "") -> str:
    """A question; form: "largest", "smallest", or as the template's own default."""
    return f'[[find]]\nquantity = "{quantity}"\n' + (f'as = "{form}"\n' if form else "")


HOLDS: Final = '[[find]]\nas = "holds"\n'


def system_of(text: str) -> System:
    return read_template(text, "own.toml").system


def worked(text: str, convention: Convention | None = None) -> tuple[Problem, Worked]:
    """A template worked with the first of all its choices."""
    problem = prepare(read_template(text, "own.toml"), convention or Convention())
    first = {given.id: given.choices[0] for given in problem.template.givens}
    (own,) = work(problem, [completed(problem.template, first)])
    return problem, own
