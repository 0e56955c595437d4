"""Axes along and square to something that slopes, and the angles of forces to it."""

from __future__ import annotations

from tests.wording.own_telling import told_of


def test_forces_at_an_angle_to_a_member_are_told_before_its_axis() -> None:
    """The load at a rafter's joint, and the strut that falls as steeply as the rafter rises."""
    (said,) = (line for line in told_of("roof-truss-snow") if "Along the axis" in line)
    assert said == (
        "P_1 is at θ to the line square to member AE. F_DE is at 2 θ to member AE. Along the axis "
        "⊥, square to member AE (up and to the left is positive), F_AE and F_CE do not appear:"
    )


def test_of_a_slope_the_parts_are_told_before() -> None:
    """The weight's, by the slope's angle."""
    lines = told_of("crate-ramp-strap")
    assert not any(" is at " in line and "Along the axis" in line for line in lines)
    assert any("its components are" in line for line in lines)


def test_an_angle_put_together_of_two_is_told_to_a_surface() -> None:
    """Of a pipe's other face: as far from the line square to this one as both slope together.

    Which of the two faces is said, here and where the axes are taken.
    """
    lines = told_of("pipe-in-cradle")
    assert any(line.startswith("N_2 is at β + α to the line square to the left face. Along the "
                               "axis ∥, along the left face") for line in lines)  # fmt: skip
    assert any("; ∥ along the left face, down" in line for line in lines)
    assert any(line.endswith("square to the left face and W_p sin α along it.") for line in lines)
