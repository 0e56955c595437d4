"""Distributed loads: what stands among them, and their labels over what is free of their edge."""

from __future__ import annotations

import pytest

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import Arrow, Path, bounds, dot, heading
from probgen.figures.paper.tag import What
from probgen.figures.situation.carried import Burdens
from probgen.figures.situation.spread import draw_spreads
from tests.figures.seen import tagged, touching
from tests.figures.sketches import loaded, sketch, stage


def burdens(text: str) -> Burdens:
    return Burdens(stage(text, scale=60.0), Field(), [])


def test_each_end_of_an_uneven_load_has_its_label() -> None:
    carried = burdens(loaded("both"))
    notes = list(draw_spreads(carried, carried.system.bodies[0]))
    assert [str(note.tag) for note in notes] == ["label:w"]
    assert any(isinstance(shape, Arrow) for shape in carried.field.shapes)


def test_the_label_of_a_load_that_falls_off_may_lie_over_it_beside_its_larger_end() -> None:
    carried = burdens(loaded("falling"))
    (note,) = draw_spreads(carried, carried.system.bodies[0])
    (end, away), (over, square), (also, inward) = note.anchors
    row = bounds(s for s in carried.field.shapes if s.tag.what is What.DISTRIBUTED)
    assert end == also
    assert abs(heading(away) - 1j) < 1e-9
    assert heading(inward).real * (row.centre - end).real > 0.0
    assert abs(end - over) < abs(row.centre - end)
    assert dot(heading(square), over - end) == pytest.approx(0.0)
    assert heading(square).imag > 0.5


@pytest.mark.parametrize(("kind", "kept"), [("falling", True), ("even", False)])
def test_lengths_keep_out_of_the_notch_over_a_load_that_falls_off(kind: str, kept: bool) -> None:
    carried = burdens(loaded(kind))
    list(draw_spreads(carried, carried.system.bodies[0]))
    row = bounds(
        shape for shape in carried.field.shapes if str(shape.tag).startswith("distributed")
    )
    for above, poles in ((2.0, 1), (30.0, 2)):  # over its label too, which is left room for
        level = 1j * (row.top + above)
        crossed = carried.field.crossings(row.left + level, row.right + level)
        assert crossed == int(kept) * poles


_MIDDLE = '\n[[weight]]\nat = "C"\nmass = "m"\nsymbol = "W"\n'
_OVER = '\n[[distributed]]\nfrom = "C"\nto = "B"\nload = "2*w"\nsymbol = "Q_t"\n'


def _with_middle(text: str) -> str:
    return loaded("even").replace('B = ["L", 0]', 'B = ["L", 0]\nC = ["L/2", 0]') + text


def test_a_load_runs_on_behind_somebody_who_stands_in_it() -> None:
    stood = sketch(_with_middle(_MIDDLE), 'W = "person"')
    (edge,) = (s for s in tagged(stood, "distributed:Q_s") if isinstance(s, Path))
    assert len(edge.lines) == 1
    order = [shape.tag.what for shape in stood.shapes]
    assert order.index(What.DISTRIBUTED) < order.index(What.LOAD)
    person = bounds(tagged(stood, "load:W"))
    feet = [s.head.real for s in tagged(stood, "distributed:Q_s") if isinstance(s, Arrow)]
    assert feet
    assert not [x for x in feet if person.left < x < person.right]
    boxed = sketch(_with_middle(_MIDDLE), 'W = "block"')  # its number keeps clear of the line
    (edge,) = (s for s in tagged(boxed, "distributed:Q_s") if isinstance(s, Path))
    assert len(edge.lines) == 2


def test_a_load_under_another_is_labelled_over_the_free_part_of_its_edge() -> None:
    carried = burdens(_with_middle(_OVER))
    under, over = draw_spreads(carried, carried.system.bodies[0])
    left, right = (0.0, 3.0 * 60.0)
    assert all(abs(heading(way) - 1j) < 1e-9 for _, way in under.anchors)
    assert all(left < spot.real < (left + right) / 2 for spot, _ in under.anchors)
    assert all(spot.real > (left + right) / 2 for spot, _ in over.anchors)
    assert under.thing is not None
    assert under.thing.right < (left + right) / 2


def test_bales_are_about_the_arrows_of_their_load_and_no_wider() -> None:
    scene = sketch(_with_middle(_OVER), 'Q_t = "bales"')
    stack, row = (bounds(tagged(scene, of)) for of in ("scenery", "distributed:Q_t"))
    assert stack.left == pytest.approx(row.left, abs=2.5)
    assert stack.right == pytest.approx(row.right, abs=2.5)
    assert row.top < stack.top - 3.0
    assert touching(scene) == []


def test_a_bathtub_is_about_the_arrows_of_its_load_behind_them() -> None:
    plain = sketch(_with_middle(_OVER))
    scene = sketch(_with_middle(_OVER), 'Q_t = "bathtub"')
    assert not tagged(plain, "scenery")
    tub, row = (bounds(tagged(scene, of)) for of in ("scenery", "distributed:Q_t"))
    assert tub.left < row.left + 1.0
    assert row.right < tub.right
    assert tub.bottom < row.bottom < row.top < tub.top
    order = [shape.tag.what for shape in scene.shapes]
    assert order.index(What.SCENERY) < order.index(What.DISTRIBUTED)
