"""A cable with loads is told by the horizontal part of its tension, which is said once."""

from __future__ import annotations

from tests.statics.test_loaded_cable import THREE
from tests.wording.own_telling import told


def test_why_it_is_the_same_all_along_is_said_before_it_is_used_and_what_it_is_of_each() -> None:
    lines = told(THREE)
    why = (
        "Nothing but these pulls acts sideways on the knot B, the knot C and the knot D, so along "
        "x each is pulled as hard to the left as to the right: the horizontal part of the tension "
        "is the same all along, H. Up or down a stretch pulls with H times its rise over its run."
    )
    (first,) = [at for at, line in enumerate(lines) if why in line]
    assert not any(line.startswith("H") for line in lines[:first])
    assert "H is the horizontal part of T_1." in lines
    assert "H = T_1 (r/√(r² + y²))" in lines
