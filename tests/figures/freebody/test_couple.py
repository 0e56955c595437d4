"""Couples of a free-body diagram: which way they turn, and what they are called."""

from __future__ import annotations

import pytest

from probgen.figures.freebody.couple import draw_couples
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import HEAVY, Arc, Label, composed, line
from probgen.quantities.symbol import unmarked
from tests.figures.sketches import BEAM, read, surveyed

KNOWN = """
[[couple]]
at = "B"
symbol = "C_1"
moment = MOMENT
"""
ARM = """
[points.C]
from = "B"
distance = "L"
direction = 0
[body.arm]
along = ["B", "C"]
[[fixed]]
body = "arm"
other = "shelf"
at = "B"
symbol = "S"
couple = "M_B"
"""


def turns(text: str, body: str = "shelf") -> dict[str, float]:
    """How far the arrow of each couple turns, counter-clockwise; by the letters beside them."""
    template, values, _ = read(text)
    measured, field = surveyed(template, values), Field()
    draw_couples(field, measured, measured.system.body(body), 40.0)
    scene = composed(field.shapes) if field.shapes else None
    arcs = [] if scene is None else [s for s in scene.shapes if isinstance(s, Arc)]
    labels = [] if scene is None else [s for s in scene.shapes if isinstance(s, Label)]
    for arc, label in zip(arcs, labels, strict=True):
        assert abs(label.box.centre - arc.centre) < 30.0
    names = [unmarked(getattr(label.text, "symbol", "")) for label in labels]
    return dict(zip(names, (arc.sweep for arc in arcs), strict=True))


def test_an_unknown_couple_turns_as_it_is_assumed() -> None:
    (symbol,) = turns(BEAM)
    assert symbol == "M_A"
    assert turns(BEAM)["M_A"] > 0


@pytest.mark.parametrize(("moment", "sense"), [('"20 N*m"', 1), ('"-20 N*m"', -1)])
def test_a_known_couple_turns_by_its_sign(moment: str, sense: int) -> None:
    found = turns(BEAM + KNOWN.replace("MOMENT", moment))
    assert len(found) == 2
    (sweep,) = [value for symbol, value in found.items() if symbol != "M_A"]
    assert sweep * sense > 0


def test_a_couple_and_the_one_that_acts_back_have_one_letter() -> None:
    text = BEAM.replace("[[fixed]]", '[[fixed]]\nbody = "shelf"') + ARM
    on_arm, on_shelf = turns(text, "arm"), turns(text)
    assert set(on_arm) == {"M_B"}
    assert set(on_shelf) == {"M_A", "M_B"}
    assert on_arm["M_B"] * on_shelf["M_B"] < 0


def test_a_couple_of_nothing_is_not_drawn() -> None:
    assert set(turns(BEAM + KNOWN.replace("MOMENT", '"0 N*m"'))) == {"M_A"}


def arc_among(*strokes: tuple[complex, complex]) -> tuple[Arc, Label]:
    """The arc of a couple at a beam's end among strokes, and its letter."""
    template, values, _ = read(BEAM)
    measured, field = surveyed(template, values), Field()
    field.add(*(line(start, end, HEAVY) for start, end in strokes))
    draw_couples(field, measured, measured.system.body("shelf"), 40.0)
    (arc,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    (label,) = [shape for shape in field.shapes if isinstance(shape, Label)]
    return arc, label


def test_a_couple_s_arc_is_crossed_by_no_arrow_that_leaves_a_side_free() -> None:
    beam, level, up = (0j, 60 + 0j), (0j, -40 + 0j), (0j, 40j)
    arc, label = arc_among(beam, level, up)  # below alone it is free
    assert arc.sweep > 0
    assert arc.start > 205.0  # clear of an arrow's head there
    assert arc.start + arc.sweep < 335.0
    assert label.box.top < 0.0
    arc, _ = arc_among(beam)
    assert arc.start > 0.0
    assert arc.start + arc.sweep < 360.0
    assert arc.sweep == pytest.approx(230.0)


def test_a_couple_s_arc_is_of_its_usual_length_where_no_side_is_free() -> None:
    ways = (1, 1j, -1, -1j)
    arc, _ = arc_among(*((0j, 40.0 * way) for way in ways))
    assert (arc.start, arc.sweep) == (-40.0, 230.0)


def test_an_arc_keeps_off_the_head_of_an_arrow_at_its_point() -> None:
    """By forty degrees, where half of its circle is free."""
    template, values, _ = read(BEAM)
    measured, field = surveyed(template, values), Field()
    spot = measured.places["A"] * 40.0
    field.add(line(spot - 15.0, spot + 15.0, HEAVY), line(spot, spot + 15j, HEAVY))
    draw_couples(field, measured, measured.system.body("shelf"), 40.0)
    (arc,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    assert abs(arc.sweep) == pytest.approx(100.0)
