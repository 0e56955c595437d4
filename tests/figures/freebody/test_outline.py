"""A body alone: a ring, a solid, rims with a crank, or a bar as thin as all others."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Look
from probgen.figures.freebody.outline import HALF, draw_body, rim_of
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import Arc, Path, Tone
from tests.figures.sketches import BEAM, CABINET, DRUM, STACK, read, surveyed


def drawn(text: str, look: Look) -> list[Arc | Path]:
    template, values, _ = read(text)
    measured, field = surveyed(template, values), Field()
    draw_body(field, measured, template.system.bodies[0], look, 10.0, 4.5)
    shapes = [shape for shape in field.shapes if isinstance(shape, Arc | Path)]
    assert {str(shape.tag) for shape in shapes} == {f"body:{template.system.bodies[0].id}"}
    assert {shape.tone for shape in shapes} == {Tone.BODY}
    return shapes


def test_a_particle_is_a_ring() -> None:
    (ring,) = drawn(STACK, Look.BEAM)
    assert isinstance(ring, Arc)
    assert (ring.centre, ring.radius) == (0j, 4.5)


def test_a_slender_body_is_a_bar_along_its_axis() -> None:
    """3 m at 10 pt a metre, 2.2 pt to both sides."""
    (bar,) = drawn(BEAM, Look.LADDER)
    assert isinstance(bar, Path)
    (corners,) = bar.lines
    assert sorted({spot.real for spot in corners}) == pytest.approx([0.0, 30.0])
    assert sorted({spot.imag for spot in corners}) == pytest.approx([-HALF, HALF])


def test_a_dashed_line_goes_from_a_bar_to_what_acts_off_it() -> None:
    """From its nearest place: past its end at the end, beside it square to it."""
    template, values, _ = read(BEAM)
    measured, field = surveyed(template, values), Field()
    points = (0j, 12 + 2j, 50 + 0j, 50 + 0j, 20 - 15j)
    draw_body(field, measured, template.system.bodies[0], Look.BEAM, 10.0, 4.5, points=points)
    tag = f"reference:{template.system.bodies[0].id}"
    ties = [shape for shape in field.shapes if str(shape.tag) == tag]
    assert all(isinstance(tie, Path) and tie.pen.dash for tie in ties)
    lines = [tie.lines[0] for tie in ties if isinstance(tie, Path)]
    assert lines == [(30 + 0j, 50 + 0j), (20 + 0j, 20 - 15j)]


def test_a_solid_is_drawn_by_its_corners() -> None:
    """3 m broad and 6 m high."""
    (solid,) = drawn(CABINET, Look.CABINET)
    assert isinstance(solid, Path)
    assert solid.closed
    assert solid.lines[0] == pytest.approx((0j, 30 + 0j, 30 + 60j, 60j))


def test_a_drum_has_its_rims_and_a_crank_if_it_is_turned_by_one() -> None:
    """Radii of 0.5 m and 1 m; the crank reaches to the outer one."""
    assert [rim.radius for rim in drawn(DRUM, Look.DRUM) if isinstance(rim, Arc)] == [5.0, 10.0]
    rim, crank = drawn(DRUM, Look.CRANKED_DRUM)
    assert isinstance(rim, Arc)
    assert (rim.centre, rim.radius) == (0j, 5.0)
    assert isinstance(crank, Path)
    assert max(spot.real for spot in crank.lines[0]) == pytest.approx(10.0)


def test_the_rim_of_a_drum_is_known_and_no_other_body_has_one() -> None:
    for text, look, reach in ((DRUM, Look.DRUM, 10.0), (BEAM, Look.BEAM, None)):
        template, values, _ = read(text)
        rim = rim_of(surveyed(template, values), template.system.bodies[0], look, 10.0)
        centre = sum(rim) / len(rim) if rim else 0j
        assert {round(abs(spot - centre), 6) for spot in rim} == ({reach} if reach else set())
