"""Shapes: which of them are wires."""

from __future__ import annotations

from probgen.statics.shape import Outline


def test_wires_have_a_length_and_flat_parts_an_area() -> None:
    assert {each for each in Outline if each.is_wire} == {Outline.WIRE, Outline.HALF_RING}


def test_round_ones_have_a_centre() -> None:
    straight = {Outline.RECTANGLE, Outline.TRIANGLE, Outline.WIRE}
    assert {each for each in Outline if not each.is_round} == straight
