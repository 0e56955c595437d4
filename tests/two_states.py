"""One thing in two states, each with a body, supports and limits of its own."""

from __future__ import annotations

from tests.situations import SLIPS_DOWN, SLOPE, crate, finding


def two_crates() -> str:
    """The crate about to slip down, whose least pull T is asked, and one about to slip up, whose
    largest, T_2, is."""
    second = """
[body.second]
particle = true
[[weight]]
body = "second"
mass = "m"
symbol = "W_2"
[[cable]]
body = "second"
direction = "theta"
symbol = "T_2"
[[rough]]
body = "second"
direction = "90 + theta"
friction_direction = "180 + theta"
normal = "N_2"
friction = "f_2"
name = "slope"
"""
    up = '[[limit]]\nid = "up"\nthat = "f_2 <= mu*N_2"\nname = "it slips up"\n'
    first = (crate() + SLOPE).replace("[[weight]]", '[[weight]]\nbody = "crate"')
    for entry in ("cable", "rough"):
        first = first.replace(f"[[{entry}]]", f'[[{entry}]]\nbody = "crate"')
    finds = finding("T", "smallest") + finding("T_2", "largest")
    return first + second + SLIPS_DOWN + up + finds
