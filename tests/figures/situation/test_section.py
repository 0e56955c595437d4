"""Marks of sections through bodies that are drawn whole."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Path
from probgen.figures.paper.tag import What
from probgen.figures.situation.section import section_marks
from tests.figures.readings import TEMPLATES, customary, prepared, scenes_of, solved
from tests.figures.seen import tagged
from tests.figures.sketches import BEAM, stage


def test_a_section_is_a_line_square_to_the_body_at_its_point() -> None:
    set_out = stage(BEAM)
    (mark,) = section_marks(set_out, [("shelf", "B")])
    assert isinstance(mark, Path)
    start, end = mark.lines[0]
    assert (start + end) / 2 == pytest.approx(set_out.spot("B"))
    assert (end - start).real == pytest.approx(0.0)
    assert abs(end - start) > 2 * set_out.halves["shelf"] + 10.0
    assert list(section_marks(set_out, [])) == []


@pytest.mark.parametrize("id", ["footbridge-inside", "stand-roof-inside"])
@pytest.mark.parametrize("read", [prepared, customary])
def test_a_figure_shows_where_the_key_will_cut(id: str, read: object) -> None:
    assert callable(read)
    problem = read(next(path for path in TEMPLATES if path.stem == id))
    for own in solved(problem, 2):
        scene = scenes_of(problem, own)[0]
        (mark,) = tagged(scene, "section")
        points = {shape.tag.of for shape in scene.showing(What.POINT)}
        assert mark.tag.of not in points  # no dot on its dashes
