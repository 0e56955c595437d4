"""A plate of several parts: one outline, holes on top."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import MEDIUM, Path, Tone
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts.flat import flat

LEFT = (0j, 10 + 0j, 10 + 10j, 10j)
RIGHT = (10 + 0j, 20 + 0j, 20 + 10j, 10 + 10j)
HOLE = (2 + 2j, 4 + 2j, 4 + 4j)


def test_each_part_hides_the_strokes_between_it_and_the_others() -> None:
    """The strokes lie below every fill, and half a pen of each goes under what the fills cover."""
    shapes = flat((LEFT, RIGHT), (HOLE,), (), MEDIUM, UNTAGGED)
    assert all(isinstance(shape, Path) for shape in shapes)
    paths = [shape for shape in shapes if isinstance(shape, Path)]
    tones = [path.tone for path in paths]
    assert tones == [None, None, *[Tone.BODY] * 4, Tone.PAPER]
    outer, inner = paths[0].pen.weight, paths[4].pen.weight
    assert (outer - inner) / 2 == pytest.approx(MEDIUM.weight)  # what is seen of the outline
    assert paths[-1].pen == MEDIUM


def test_a_wire_is_a_line() -> None:
    (wire,) = flat((), (), (LEFT[:2],), MEDIUM, UNTAGGED)
    assert isinstance(wire, Path)
    assert (wire.closed, wire.lines) == (False, (LEFT[:2],))


def test_a_cross_marks_the_centre_of_a_round_hole() -> None:
    run = (0j, 10 + 0j, 10j)
    bare = flat([run], [], [], MEDIUM, UNTAGGED)
    *rest, cross = flat([run], [], [], MEDIUM, UNTAGGED, [3 + 4j])
    assert tuple(rest) == bare
    assert isinstance(cross, Path)
    assert [(a + b) / 2 for a, b in cross.lines] == [3 + 4j, 3 + 4j]
