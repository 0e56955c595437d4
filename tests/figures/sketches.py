"""Small situations in the template language, and their figures."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from probgen.bank.depiction import Look
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.figures.freebody.diagram import free_body
from probgen.figures.measured.survey import Survey, survey
from probgen.figures.paper.scene import Scene
from probgen.figures.situation.drawing import situation
from probgen.figures.situation.stage import Stage, stage_at
from probgen.quantities.expression import Number, evaluate
from tests.figures.telling import telling

HEAD = """
id = "case"
revision = 1
title = "Case"
family = "beams"
level = 1
goals = ["drawing"]
statement = "Case."
[given]
L = { name = "length", choices = [3.0], unit = "m" }
w = { name = "load per length", choices = [40], unit = "N/m" }
m = { name = "mass", choices = [12.0], unit = "kg" }
theta = { name = "slope", choices = [25], unit = "deg" }
"""
BEAM = """
[points]
A = [0, 0]
B = ["L", 0]
[body.shelf]
along = ["A", "B"]
[[find]]
quantity = "R"
as = "components"
[[fixed]]
at = "A"
symbol = "R"
couple = "M_A"
"""
TRUSS = """
[points]
A = [0, 0]
B = ["L", 0]
C = ["L/2", "L/2*tan(theta)"]
D = ["L/2", 0]
[[member]]
along = ["D", "A", "C", "D", "B", "C"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "B"
symbol = "N"
[[force]]
at = "C"
magnitude = "400 N"
direction = 270
symbol = "P"
[[force]]
at = "D"
magnitude = "300 N"
direction = 270
symbol = "Q"
[[find]]
quantity = "F_AC"
"""
STACK = """
[body.books]
particle = true
[body.box]
particle = true
[[weight]]
body = "books"
mass = "m"
[[weight]]
body = "box"
mass = "2*m"
of = "box"
[[contact]]
body = "books"
other = "box"
direction = 90
symbol = "N_1"
[[contact]]
body = "box"
name = "floor"
direction = 90
symbol = "N_2"
[[find]]
quantity = "N_2"
"""
SLOPE = """
[body.crate]
particle = true
[[weight]]
mass = "m"
[[rough]]
direction = "90 + theta"
friction_direction = "theta"
normal = "N"
friction = "f"
[[find]]
quantity = "N"
"""
CABINET = """
[unknown]
x = { name = "distance to the normal force", unit = "m" }
[points]
O = [0, 0]
B = ["L", 0]
C = ["L", "2*L"]
D = [0, "2*L"]
G = ["L/2", "L"]
K = [0, "1.5*L"]
Q = ["x", 0]
[body.cabinet]
along = ["O", "B", "C", "D", "O"]
[[weight]]
at = "G"
mass = "m"
[[force]]
at = "K"
direction = 0
symbol = "P"
magnitude = "m*g/4"
[[rough]]
at = "Q"
normal = "N"
friction = "f"
friction_direction = 180
[[find]]
quantity = "N"
"""
BOOM = """
[points]
A = [0, 0]
B = { from = "A", distance = "L", direction = "STEEP" }
[body.boom]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[cable]]
at = "B"
direction = 180
symbol = "T"
[[weight]]
at = "B"
mass = "m"
symbol = "W_b"
[[find]]
quantity = "T"
"""
LIMB = """
[points]
A = [0, 0]
B = { from = "A", distance = "L", direction = "-theta" }
H = { from = "A", distance = "L/3", direction = "180 - theta" }
[body.limb]
along = ["H", "A", "B"]
[[hinge]]
at = "A"
symbol = "J"
[[muscle]]
at = "H"
direction = 85
symbol = "F"
[[weight]]
at = "B"
mass = "m"
of = "limb"
[[find]]
quantity = "F"
"""
LEANING = """
[points]
A = [0, 0]
B = { from = "A", distance = "L", direction = 60 }
C = { from = "A", distance = "0.7*L", direction = 60 }
[body.pole]
along = ["A", "B"]
[[contact]]
at = "C"
direction = 150
symbol = "N"
name = "branch"
[[rough]]
at = "A"
normal = "N_f"
friction = "f"
[[weight]]
mass = "m"
uniform = true
[[find]]
quantity = "N"
"""
TWO = """
[body.box]
particle = true
[body.pail]
particle = true
[[rough]]
body = "box"
direction = "90 + SLOPE"
friction_direction = "180 + SLOPE"
normal = "N"
friction = "f"
[[weight]]
body = "box"
mass = "m"
[[weight]]
body = "pail"
mass = "m/3"
symbol = "W_p"
[[rope]]
symbol = "T"
pulls = [{ body = "box", direction = "SLOPE" }, { body = "pail", direction = 90 }]
[[find]]
quantity = "T"
"""


DRUM = """
[points]
P = ["-L/6", 0]
O = [0, 0]
H = ["L/3", 0]
[body.drum]
along = ["P", "O", "H"]
[[hinge]]
at = "O"
symbol = "R"
[[weight]]
at = "P"
mass = "m"
symbol = "W"
[[force]]
at = "H"
direction = 270
symbol = "F"
[[find]]
quantity = "F"
"""
HELD = """
[points]
A = [0, 0]
B = ["L", 0]
[body.shelf]
along = ["A", "B"]
[[roller]]
at = "A"
symbol = "N"
[[force]]
at = "B"
direction = DIRECTION
symbol = "F"
[[weight]]
mass = "m"
uniform = true
[[find]]
quantity = "F"
""".replace("DIRECTION", "90")
HINGED = """
[points]
A = [0, 0]
B = ["L", 0]
[body.shelf]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[cable]]
at = "B"
direction = WAY
symbol = "T"
[[weight]]
at = "B"
mass = "m"
symbol = "W"
[[find]]
quantity = "T"
"""
CASE = """
[points]
O = [0, 0]
T = [0, "L"]
C = ["L/6", 0]
G = [0, "L/2"]
[body.case]
along = ["O", "T"]
[[weight]]
at = "G"
mass = "m"
symbol = "W_b"
of = "books"
[[find]]
quantity = "W_b"
"""
KNOT = """
[body.knot]
particle = true
[[cable]]
body = "knot"
direction = 150
symbol = "T_1"
[[cable]]
body = "knot"
direction = 40
symbol = "T_2"
[[weight]]
body = "knot"
mass = "m"
symbol = "W"
[[find]]
quantity = "T_1"
"""
TACKLE = """
[body.lower]
particle = true
[body.upper]
particle = true
[[rope]]
symbol = "T"
pulls = [
  { body = "lower", direction = 90, strands = 2 },
  { body = "upper", direction = 270, strands = 3 },
]
[[weight]]
body = "lower"
mass = "m"
symbol = "W_e"
[[force]]
body = "upper"
direction = 90
symbol = "F"
[[find]]
quantity = "T"
"""
LOADS = {
    "even": ('load = "w"', (1.0, 1.0)),
    "growing": ('start = 0\nend = "w"', (0.0, 1.0)),
    "falling": ('start = "w"\nend = 0', (1.0, 0.0)),
    "both": ('start = "w"\nend = "3*w"', (1 / 3, 1.0)),
}
"""What a distributed load is told by, and its sizes at both ends, of the larger one."""


def loaded(kind: str) -> str:
    """The built-in beam with one of these loads along all of it."""
    row = '\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "Q_s"\n'
    return BEAM + row + LOADS[kind][0]


def template_of(text: str, shown: Sequence[str] = ()) -> Template:
    """A situation read; shown: the lines of its [depicts]."""
    return read_template("\n".join((HEAD + text, "[depicts]", *shown)), "case.toml")


def read(text: str, *shown: str) -> tuple[Template, dict[str, float], dict[str, Number]]:
    """Its template, the values of the givens and of g, and the numbers they are printed as."""
    return _numbered(template_of(text, shown))


def _numbered(template: Template) -> tuple[Template, dict[str, float], dict[str, Number]]:
    givens = {given.id: Number(given.choices[0], given.unit) for given in template.givens}
    values = {id: float(evaluate(number, {})) for id, number in givens.items()}
    return template, {**values, "g": 9.8}, givens


def sketch(text: str, *shown: str, named: Sequence[str] = ()) -> Scene:
    """Its figure; shown: the lines of its [depicts]."""
    template = template_of(text, shown)
    _, values, givens = _numbered(template)
    own = template.system, template.labels, values, template.depicts, givens
    return situation(*own, tell=telling(template), named=named)


def surveyed(template: Template, values: Mapping[str, float]) -> Survey:
    return survey(template.system, template.labels, values)


def alone(
    template: Template, values: Mapping[str, float], body: str, pivot: str, look: Look = Look.BEAM
) -> Scene:
    """The free-body diagram of one body."""
    shown = (template.system, template.labels, values, body, pivot)
    return free_body(*shown, tell=telling(template), wedges=template.depicts.wedges, look=look)


def stage(text: str, *shown: str, scale: float = 40.0) -> Stage:
    """It set out on paper, pt for each metre."""
    template = template_of(text, shown)
    _, values, givens = _numbered(template)
    return stage_at(scale, surveyed(template, values), template.depicts, givens)
