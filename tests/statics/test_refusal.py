"""What the engine says to the author of a situation it cannot stand behind, a row for each."""

from __future__ import annotations

import re
from dataclasses import dataclass

import pytest

from probgen.bank.reading import read_template
from probgen.draws.draw import completed
from probgen.input.fault import InputError
from probgen.problem.problem import prepare, work
from probgen.working.convention import Convention

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


@dataclass(frozen=True)
class Refused:
    """A situation, and what is said of it (a pattern; letter case does not matter)."""

    name: str
    template: str
    says: str

    def __str__(self) -> str:
        return self.name


NOT_AT_REST = [
    Refused(
        "free to slide",
        beam(
            entry("cable", at="A", direction=90, symbol="T_1"),
            entry("cable", at="B", direction=90, symbol="T_2"),
            entry("force", at="B", direction=0, magnitude="F"),
            finding("T_1"),
        ),
        r"unstable: nothing holds .*beam against moving sideways.*add a support.*horizontally",
    ),
    Refused(
        "free to fall",
        beam(roller("A", "N_1", 0), roller("B", "N_2", 180), finding("N_1")),
        r"unstable: nothing holds .*beam against moving up or down.*add a support.*vertically",
    ),
    Refused(
        "free to turn",
        beam(HINGE, finding("R")),
        r"unstable: nothing holds .*beam against turning.*add a support with a lever arm",
    ),
    Refused(
        "a knot that falls",
        ball(
            entry("cable", direction=0, symbol="T_1"),
            entry("cable", direction=180, symbol="T_2"),
            finding("T_1"),
        ),
        r"unstable: nothing holds .*ball against moving up or down",
    ),
    Refused(
        "a chain of two beams",
        jointed(
            entry("hinge", at="A", symbol="R", body="left"),
            roller("B", "N", body="right"),
            finding("N"),
        ),
        r"unstable: .*(left|right)",
    ),
]

INDETERMINATE = [
    Refused(
        "three rollers",
        beam(HOLDS_ENDS, roller("C", "N_3"), finding("N_1")),
        r"indeterminate: 3 unknowns \(N_1, N_2, N_3\) but only 2 independent equations "
        r".*F_y on .*beam; .*torques on .*beam.*N_1, N_2, N_3 cannot be told apart",
    ),
    Refused(
        "two hinges",
        beam(HINGE, entry("hinge", at="B", symbol="Q"), finding("R")),
        r"indeterminate: 4 unknowns .* but only 3 independent equations .*F_x.*F_y.*torques"
        r".*R.x, Q.x cannot be told apart",
    ),
    Refused(
        "built in and propped",
        beam(entry("fixed", at="A", symbol="R", couple="M_A"), roller("B", "N"), finding("N")),
        r"indeterminate: 4 unknowns .*R.y, M_A, N cannot be told apart: give 1 of them",
    ),
    Refused(
        "three cords at a knot",
        ball(
            *(
                entry("cable", direction=way, symbol=f"T_{way}")
                for way in (30, 90, 150)
            ),
            finding("T_30"),
        ),
        r"indeterminate: 3 unknowns .* but only 2 independent equations",
    ),
    Refused(
        "two beams built in at both ends",
        jointed(
            entry("fixed", body="left", at="A", symbol="R", couple="M_A"),
            entry("fixed", body="right", at="B", symbol="S_B", couple="M_B"),
            finding("M_A"),
        ),
        r"indeterminate: 8 unknowns .* but only 6 independent equations .*left.*right.*give 2",
    ),
]

CONTRADICTORY = [
    Refused(
        "a condition the balances do not allow",
        beam(
            HOLDS_ENDS,
            entry("condition", that="N_1 = 2*N_2", because="so told"),
            finding("N_1"),
        ),
        "contradicts the balances",
    ),
    Refused(
        "on the verge, and the push given too",
        ball(
            entry("rough", normal="N", friction="f", friction_direction=180, coefficient="mu"),
            PUSH,
            finding("N"),
        ),
        "contradicts the balances",
    ),
    Refused(
        "given forces that do not balance",
        beam(
            roller("A", "N"),
            entry("cable", at="B", direction=90, magnitude="F", symbol="T"),
            finding("N"),
        ),
        r"be found",
    ),
]

DEGENERATE = [
    Refused(
        "a cable along the beam",
        beam(HINGE, entry("cable", at="B", direction=180, symbol="T"), finding("T")),
        r"\bT\b.* through A",
    ),
    Refused(
        "a cable toward the hinge",
        beam(HINGE, entry("cable", at="B", toward="A", symbol="T"), finding("T")),
        r"\bT\b.* through A",
    ),
    Refused(
        "a cable along the beam for these numbers only",
        beam(
            HINGE, entry("cable", at="B", direction="180 - q", symbol="T"), finding("T")
        ).replace("choices = [50]", "choices = [0, 50]"),
        r"T\b.* has no value",
    ),
    Refused(
        "a pull too small for the push",
        ball(TILTED, PUSH, FIND_LEAN, unknown=lean(0, 90)).replace("[24.0]", "[8.0]"),
        r"lean .*has no value",
    ),
]

WRONG_WAY = [
    Refused(name, beam(HINGE, entry(kind, at="B", direction=270, **fields), finding(asked),
                       unknown=unknown), says)
    for name, kind, fields, asked, unknown, says in [
        ("a cable that pushes", "cable", {"symbol": "T"}, "T", "",
         r"\(T\) comes out negative.*can only pull"),
        ("a muscle that pushes", "muscle", {"symbol": "M", "name": "biceps"}, "M", "",
         r"biceps \(M\) comes out negative.*can only pull"),
        ("a strut that pulls", "strut", {"symbol": "P"}, "P", "",
         r"strut \(P\) comes out negative.*can only push"),
        ("a contact that pulls", "contact", {"symbol": "N", "name": "ceiling"}, "N", "",
         r"ceiling \(N\) comes out negative.*can only push"),
        ("a roller that pulls", "roller", {"symbol": "N"}, "N", "",
         r"\(N\) comes out negative.*can only push"),
        ("a spring that pushes", "spring",
         {"symbol": "F_s", "stiffness": "800 N/m", "stretch": "s"}, "s",
         's = { name = "stretch", unit = "cm" }\n', r"stretch \(s\) comes out negative"),
    ]
] + [
    Refused(
        "a rope that pushes",
        beam(
            HINGE,
            '[[rope]]\nsymbol = "T"\npulls = [{ at = "B", direction = 270 }]\n',
            finding("T"),
        ),
        r"\(T\) comes out negative.*can only pull",
    ),
    Refused(
        "a floor that pulls",
        ball(
            entry("rough", normal="N", friction="f", friction_direction=180),
            entry("force", direction=90, magnitude="200 N", symbol="P"),
            finding("N"),
        ),
        r"\(N\) comes out negative.*can only push",
    ),
    Refused(
        "a mass below nothing",
        beam(
            HINGE,
            entry("cable", at="C", direction=90, magnitude="F", symbol="T"),
            entry("weight", at="B", mass="m_x"),
            finding("m_x"),
            unknown=POT_MASS,
        ),
        r"mass of the pot \(m_x\) comes out negative",
    ),
    Refused(
        "friction that would have to push on",
        ball(
            entry("rough", normal="N", friction="f", friction_direction=0, coefficient="mu_s"),
            PUSH,
            finding("mu_s"),
        ),
        r"coefficient of static friction \(mu_s\) comes out negative",
    ),
]  # fmt: skip

OUT_OF_RANGE = [
    Refused(
        "a place off the body",
        beam(
            entry("cable", at="C", direction=90, symbol="T"),
            entry("force", at="X", direction=270, magnitude="F", symbol="P"),
            entry("force", at="B", direction=270, magnitude="S", symbol="V"),
            finding("x"),
            unknown=PLACE,
            points=AT_X,
        ),
        r"distance to the load \(x\) is below 0 m",
    ),
    Refused(
        "a place beyond the body",
        beam(
            entry("cable", at="C", direction=90, symbol="T"),
            entry("force", at="X", direction=270, magnitude="F", symbol="P"),
            entry("force", at="A", direction=270, magnitude="S", symbol="V"),
            finding("x"),
            unknown=PLACE,
            points=AT_X,
        ),
        r"distance to the load \(x\) is above 2 m",
    ),
    Refused(
        "an angle out of its range",
        ball(TILTED, PUSH, FIND_LEAN, unknown=lean(40, 80)),
        r"lean \(t\) is below 40",
    ),
    Refused(
        "two angles in the range",
        ball(TILTED, PUSH, FIND_LEAN, unknown=lean(0, 180)),
        r"more than one possible value between 0 and 180: narrow its range with from and to",
    ),
    Refused(
        "no way to what is asked",
        beam(
            HINGE,
            entry("force", at="X", direction=90, symbol="P"),
            entry("condition", that="atan(x/L) = q*x/L", because="so told"),
            finding("P"),
            unknown='x = { name = "place", unit = "m" }\n',
            points=AT_X,
        ),
        r"no order of balances leads to P",
    ),
]

LIMITS = [
    Refused(
        "nothing limits it",
        beam(HINGE, CABLE, POT, unknown=POT_MASS),
        r"a limit that can be reached.*add \[\[limit\]\]",
    ),
    Refused(
        "passed before it starts",
        beam(HINGE, CABLE, POT, BREAKS, unknown=POT_MASS),
        r"the cable breaks already",
    ),
    Refused(
        "never reached",
        beam(
            HINGE,
            CABLE,
            POT.replace('at = "B"', 'at = "A"'),
            BREAKS.replace("20", "200"),
            unknown=POT_MASS,
        ),
        r"m_x has no effect on",
    ),
    Refused(
        "a limit passed that nobody asked about",
        beam(HINGE, CABLE, BREAKS, finding("T")),
        r"the cable breaks",
    ),
    Refused(
        "beyond static friction",
        ball(
            entry("rough", normal="N", friction="f", friction_direction=180, coefficient="mu",
                  verge=False, name="floor"),
            entry("force", direction=0, magnitude="60 N", symbol="P"),
            finding("f"),
        ),
        r"the ball slips on the floor",
    ),
]  # fmt: skip

ALL = [
    *NOT_AT_REST, *INDETERMINATE, *CONTRADICTORY, *DEGENERATE, *WRONG_WAY, *OUT_OF_RANGE, *LIMITS,
]  # fmt: skip


def refusals(template: str) -> list[str]:
    """What is said of the situation with the first of all its choices; nothing if it is solved."""
    try:
        read = read_template(template, "trial.toml")
        first = {given.id: given.choices[0] for given in read.givens}
        work(prepare(read, Convention()), [completed(read, first)])
    except InputError as error:
        return [" ".join(str(fault).split()) for fault in error.faults]
    return []


@pytest.mark.parametrize("refused", ALL, ids=str)
def test_what_cannot_be_solved_is_refused_with_its_reason(refused: Refused) -> None:
    said = refusals(refused.template)
    assert len(said) == 1
    assert re.search(refused.says, said[0], re.IGNORECASE)


@pytest.mark.parametrize(
    "template",
    [
        beam(HINGE, CABLE, finding("T")),
        ball(TILTED, PUSH, FIND_LEAN, unknown=lean(0, 90)),
        beam(HINGE, CABLE, POT, BREAKS.replace("20", "200"), unknown=POT_MASS),
        jointed(
            entry("fixed", body="left", at="A", symbol="R", couple="M_A"),
            roller("B", "N", body="right"),
            finding("M_A"),
        ),
    ],
)
def test_what_can_be_solved_is_not_refused(template: str) -> None:
    """The same situations with the flaw taken away."""
    assert refusals(template) == []


@pytest.mark.parametrize("refused", OUT_OF_RANGE[:3], ids=str)
def test_one_flaw_is_told_once(refused: Refused) -> None:
    """A place off the body is below its bound; that its number is negative says nothing more."""
    (said,) = refusals(refused.template)
    assert "comes out negative" not in said


@pytest.mark.parametrize("refused", DEGENERATE, ids=str)
def test_what_has_no_value_is_not_blamed_on_the_solver(refused: Refused) -> None:
    (said,) = refusals(refused.template)
    assert "solver" not in said
