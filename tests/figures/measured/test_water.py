"""Where water's surface is, by the load it presses with, and which lengths are its depth."""

from __future__ import annotations

import pytest

from probgen.figures.measured.water import depths, surface_height
from tests.figures.sketches import loaded, read, surveyed
from tests.figures.sluice import SLUICE


def test_the_surface_is_where_the_load_would_be_nothing() -> None:
    template, values, _ = read(SLUICE)
    measured = surveyed(template, values)
    assert surface_height(measured, template.system.element("F_w")) == pytest.approx(4.5)


def test_a_depth_is_told_by_the_length_that_makes_it_and_by_no_other_that_is_as_long() -> None:
    """The flap is as wide, v, as its hinge is deep, t; its length L is deep from nowhere."""
    template, values, _ = read(SLUICE)
    (span,) = depths(surveyed(template, values), template.system.element("F_w"))
    assert span.id == "t"
    assert (span.start, span.end) == pytest.approx((4.5j, 3j))


def test_a_lower_end_has_its_depth_where_that_is_given() -> None:
    text = SLUICE.replace('start = "k*t*v"', "start = 0").replace('"k*(t + L)*v"', '"k*L*v"')
    template, values, _ = read(text)
    (span,) = depths(surveyed(template, values), template.system.element("F_w"))
    assert span.id == "L"
    assert (span.start, span.end) == pytest.approx((3j, 0j))


@pytest.mark.parametrize("kind", ["even", "growing"])
def test_a_load_on_a_level_face_tells_of_no_surface(kind: str) -> None:
    template, values, _ = read(loaded(kind))
    measured, load = surveyed(template, values), template.system.element("Q_s")
    assert surface_height(measured, load) is None
    assert list(depths(measured, load)) == []


def test_nor_does_one_that_grows_upward() -> None:
    text = SLUICE.replace('start = "k*t*v"', 'start = "9*k*t*v"')
    template, values, _ = read(text)
    assert surface_height(surveyed(template, values), template.system.element("F_w")) is None
