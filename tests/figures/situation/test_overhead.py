"""Two upright parts of one rope, over pulleys under a ceiling."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Path
from probgen.figures.parts.ground import Surface
from probgen.figures.situation.overhead import over_pulleys, overhead
from tests.figures.rope_sketches import FRAME, PLANK, TOWARD
from tests.figures.seen import box_of, tagged
from tests.figures.sketches import KNOT, TACKLE, TWO, sketch, stage

SHOWN = 'rigger = "person"'


@pytest.mark.parametrize("toward", ["", 'toward = "W"'])
def test_the_parts_are_upright_and_meet_over_pulleys_at_the_ceiling_there_is(toward: str) -> None:
    text = PLANK.replace("V = [", 'U = ["L", "2*L/3"]\nW = ["L/3", "2*L/3"]\nV = [')
    if toward:
        text = text.replace('"B", direction = 90', '"B", toward = "U"')
        text = text.replace('"rigger", direction = 90', f'"rigger", {toward}')
    scene = sketch(text, SHOWN)
    for pull in ("T", "T.2"):
        parts = [s for s in tagged(scene, f"rope:{pull}") if isinstance(s, Path)]
        start, end = parts[0].lines[0]
        assert start.real == pytest.approx(end.real)
        assert end.imag > start.imag
    ceiling, wheels = box_of(scene, "cable:S").top, tagged(scene, "pulley:T")
    assert len(wheels) in (3, 6)
    assert box_of(scene, "pulley:T").top == pytest.approx(ceiling - 12.0, abs=1.0)


def test_where_nothing_is_above_the_pulleys_have_a_ceiling_of_their_own() -> None:
    text = PLANK.replace('toward = "V"', "direction = 270")
    set_out = stage(text, SHOWN)
    walls = list[Surface]()
    ((one, other),) = overhead(set_out)
    list(over_pulleys(set_out, walls, (one, other)))
    assert [wall.normal for wall in walls] == [270.0]
    assert walls[0].at.imag > max(set_out.rest(pull).imag for pull in (one, other)) + 60.0


@pytest.mark.parametrize("text", [FRAME.replace("TOWARD", TOWARD), TWO.replace("SLOPE", "0"),
                                  TACKLE, KNOT])  # fmt: skip
def test_other_ropes_are_none_of_these(text: str) -> None:
    assert list(overhead(stage(text))) == []
