"""A winch: on the slope its rope runs up, which goes on under it, or on a floor of its own."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import dot, heading, runs
from probgen.figures.parts.ground import Surface
from probgen.figures.parts.solid import WINCH
from probgen.figures.situation.contact import touching as touched
from probgen.figures.situation.line import lines_of
from probgen.figures.situation.winch import winch_of
from tests.figures.seen import touching
from tests.figures.sketches import BOOM, SLOPE, sketch, stage

ROPED = SLOPE.replace("[[find]]", '[[cable]]\ndirection = "theta"\nsymbol = "T"\n[[find]]')


def test_a_line_that_is_told_nothing_of_runs_to_no_winch() -> None:
    set_out = stage(ROPED)
    assert winch_of(set_out, set_out.system.element("T")) is None


def test_a_winch_stands_on_the_slope_its_rope_runs_up() -> None:
    set_out = stage(ROPED, 'T = "winch"')
    winch = winch_of(set_out, set_out.system.element("T"))
    assert winch is not None
    assert not winch.own
    up, out = heading(25.0), heading(115.0)
    start = set_out.rest(set_out.system.element("T"))
    assert ((winch.end - start) / up).imag == pytest.approx(0.0)
    assert abs(winch.end - winch.axle) == pytest.approx(WINCH)  # a tangent of its drum
    assert dot(winch.end - winch.axle, up) == pytest.approx(0.0)
    slope = set_out.system.element("N")
    face = set_out.face(slope, 115.0)
    assert dot(winch.foot - face, out) == pytest.approx(0.0)
    drawn = touched(set_out, slope).shapes
    plain = touched(stage(ROPED), stage(ROPED).system.element("N")).shapes
    tops = [max(dot(s, up) for shape in shapes for run in runs(shape) for s in run)
            for shapes in (drawn, plain)]  # fmt: skip
    assert tops[0] > dot(winch.foot, up) > tops[1]


def test_elsewhere_it_has_a_floor_of_its_own() -> None:
    set_out = stage(BOOM.replace("STEEP", "40"), 'T = "winch"')
    walls: list[Surface] = []
    list(lines_of(set_out, walls))
    winch = winch_of(set_out, set_out.system.element("T"))
    assert winch is not None
    assert winch.own
    assert [(wall.at, wall.normal) for wall in walls] == [(winch.foot, 90.0)]


@pytest.mark.parametrize("direction", [40, 140])
def test_its_rope_runs_over_the_top_of_its_drum(direction: int) -> None:
    set_out = stage(BOOM.replace("STEEP", str(direction)), 'T = "winch"')
    winch = winch_of(set_out, set_out.system.element("T"))
    assert winch is not None
    assert winch.end.imag > winch.axle.imag


def test_labels_keep_clear_of_it() -> None:
    assert touching(sketch(ROPED, 'T = "winch"')) == []
