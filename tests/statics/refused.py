"""Situations the engine cannot stand behind, and what it says of each to its author."""

from __future__ import annotations

from dataclasses import dataclass

from tests.statics.entries import (
    AT_X,
    BREAKS,
    CABLE,
    FIND_LEAN,
    HINGE,
    HOLDS_ENDS,
    PLACE,
    POT,
    POT_MASS,
    PUSH,
    TILTED,
    ball,
    beam,
    entry,
    finding,
    jointed,
    lean,
    roller,
)


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
        "free to turn, and a ratio of what would be found is asked",
        beam(
            HINGE,
            entry("cable", at="B", direction=180, symbol="T"),
            entry("find", value="T / F", symbol="k", name="ratio", unit="1"),
        ),
        r"unstable: nothing holds .*beam against turning.*line of action of T passes through A",
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
        r"among the 3 .*F_y on .*beam; .*torques on .*beam.*N_1, N_2, N_3 cannot be told apart",
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
            *(entry("cable", direction=way, symbol=f"T_{way}") for way in (30, 90, 150)),
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
        "a condition that the balances say already",
        beam(
            HOLDS_ENDS,
            entry("condition", that="N_1 = N_2", because="so told"),
            finding("N_1"),
        ),
        "N_1 = N_2 follows from the balances",
    ),
    Refused(
        "a force balance told as a condition, beside one that is needed",
        beam(
            HOLDS_ENDS,
            roller("C", "N_3"),
            entry("condition", that="N_3 = N_2/2", because="so told"),
            entry("condition", that="m*g = N_1 + N_2 + N_3", because="so told"),
            finding("N_1"),
        ),
        r"m g = N_1 \+ N_2 \+ N_3 follows from the balances",
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
        beam(HINGE, entry("cable", at="B", direction="180 - q", symbol="T"), finding("T")).replace(
            "choices = [50]", "choices = [0, 50]"
        ),
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
        "two ends of one state",
        beam(HINGE, CABLE, POT, BREAKS.replace("20", "200"), unknown=POT_MASS)
        + '[[find]]\nquantity = "m_x"\nas = "smallest"\n',
        r"the largest and the smallest m_x are asked of one state: give each a body of its own",
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
