"""Formulas are written as a teacher writes them: no nested roots, no double signs, no zeros.

Each situation is our own, a file in formulas/; what its working must hold and must not hold stands
beside it.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.wording.own_telling import told

HERE = Path(__file__).parent / "formulas"


@dataclass(frozen=True)
class Written:
    """A situation, lines that its working has, and pieces that stand on no line."""

    name: str
    lines: tuple[str, ...]
    never: tuple[str, ...] = ()

    def __str__(self) -> str:
        return self.name


WRITTEN = [
    Written(  # a cable of length L that runs d to the side
        "cable-by-length",
        (
            "T = W_b L/√(L² − d²)",
            "ΣF_x = R_x + T (d/L) = 0",
        ),
        (
            "1.5 L + d",
            "√(d²",
        ),
    ),
    Written(  # square to a bar given by its angle
        "square-to-angle",
        (
            "Στ_A = R (s/(cos θ)) − W_b (s/2) = 0",
            "ΣF_x = H_x − R sin θ = 0",
        ),
        (
            "tan θ/√",
            "s/2/",
            "two legs",
        ),
    ),
    Written(  # square to a bar given by two lengths
        "square-to-lengths",
        (
            "Στ_A = N √(L² + h²) − W_b (L/2) = 0",
            "= (98.0 N)(0.200 m)/(0.500 m)",
        ),
        ("two legs",),
    ),
    Written(  # half of an angle
        "half-angle",
        (
            "ΣF_y = T_1 cos(γ/2) + T_2 cos(γ/2) − W = 0",
            "= 98.0 N/(2 cos(152°/2))",
        ),
        ("0.5",),
    ),
    Written(  # points to the left of the pivot
        "left-of-pivot",
        ("Στ_O = F_2 (2 s) + F_3 (3 s) − P (2 s) = 0",),
        ("−(−",),
    ),
    Written(  # friction on two sides of a block
        "two-frictions",
        ("N = W/(cos α + 2 μ sin α − μ² cos α)", "N_w = N (sin α − μ cos α)"),
        (
            "μ μ",
            "/(−",
        ),
    ),
    Written(  # a bar at 60 degrees
        "sixty-degrees",
        (
            "ΣF_y = S sin 60° − W = 0",
            "ΣF_x = −T + S cos 60° = 0",
        ),
        ("30°",),
    ),
    Written(  # sine and cosine of one angle together
        "sine-and-cosine",
        (
            "√(W² + Q²) sin(θ − arctan(Q/W)) = P",
            "θ = arcsin(P/√(W² + Q²)) + arctan(Q/W)",
        ),
        (
            "atan2",
            "(−W)",
        ),
    ),
    Written(  # arms of three parts
        "three-parts",
        ("Στ_D = −R_y (a_1 + a_2 + a_3) − N a_3 + W_r ((a_1 + a_2 + a_3)/2) + F (a_2 + a_3)",),
        ("a_3 − (a_1",),
    ),
    Written(  # a tension stated as a multiple
        "tension-multiple",
        ("T_R = (W_b (L/2 − x_e) + W_p (L − x_p − x_e))/(q (L − x_e) − x_e)",),
        (
            "= −(",
            "(4.50 m) 2",
        ),
    ),
    Written(  # a force by its angle from a bar given by lengths
        "angle-from-lengths",
        ("Στ_A = N √(L² + h²) sin 120° − W_b (L/2)",),
        ("atan2",),
    ),
    Written(  # a support that carries nothing any more
        "idle-support",
        (
            "N_A = 0 N",
            "= (300 N)(2.50 m)/(600 N)",
        ),
        ("(0 N)",),
    ),
]


def test_every_situation_is_told() -> None:
    assert {case.name for case in WRITTEN} == {path.stem for path in HERE.glob("*.toml")}


@pytest.mark.parametrize("case", WRITTEN, ids=str)
def test_formulas_read_as_by_hand(case: Written) -> None:
    lines = told((HERE / f"{case.name}.toml").read_text(encoding="utf-8"))
    for line in case.lines:
        assert line in lines
    for piece in case.never:
        assert not any(piece in line for line in lines), piece
