"""A finished scene drawn larger: things grow, print keeps its size and its place beside them."""

from dataclasses import replace
from decimal import Decimal

import pytest

from probgen.figures.paper.angle import draw_angle
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.enlargement import enlarged
from probgen.figures.paper.scene import (
    FINE,
    LIGHT,
    MEDIUM,
    Arc,
    Arrow,
    Box,
    Curve,
    Label,
    Path,
    Scene,
    Shape,
    bounds,
    circle,
    composed,
    heading,
    line,
    polygon,
)
from probgen.figures.paper.tag import UNTAGGED, Tag, What
from probgen.quantities.expression import Number
from probgen.quantities.unit import UNITS

BLOCK = polygon((0j, 40 + 0j, 40 + 20j, 20j), MEDIUM, Tag(What.BODY, "block"))
NAME = Label(14 + 7j, "name", 8.0, Box(14.0, 6.0, 26.0, 14.0), Tag(What.LABEL, "m"))
FAR = Label(60 + 7j, "far", 8.0, Box(60.0, 6.0, 72.0, 14.0), Tag(What.LABEL, "f"))
LEADER = line(58 + 10j, 40 + 10j, FINE, Tag(What.LEADER, FAR.tag))
ROOM = 300 + 300j


def grown(*shapes: Shape, room: complex = ROOM) -> Scene:
    return enlarged(composed(shapes), room)


def test_it_grows_up_to_a_limit_and_never_beyond_its_room() -> None:
    free, tight = grown(BLOCK), grown(BLOCK, room=50 + 300j)
    assert 1.2 < free.box.width / composed([BLOCK]).box.width < 1.6
    assert 45 < tight.box.width <= 51
    assert tight.box.height / tight.box.width == pytest.approx(0.5, abs=0.02)


def test_what_fills_its_room_stays_as_it_is() -> None:
    scene = composed([BLOCK, NAME])
    assert enlarged(scene, complex(scene.box.width, 300)) == scene


def test_print_keeps_its_size_and_its_share_of_the_way() -> None:
    scene = grown(BLOCK, NAME)
    (label,), (block,) = scene.labels, scene.showing(What.BODY)
    assert (label.box.width, label.box.height, label.size) == (12.0, 8.0, 8.0)
    assert label.box.centre == pytest.approx(bounds([block]).centre)
    assert label.spot - complex(label.box.left, label.box.bottom) == pytest.approx(1j)


@pytest.mark.parametrize(
    "left", [46.0, 60.0, -30.0], ids=["close to it", "further off", "on the other side"]
)
def test_what_is_told_of_a_thing_stays_as_near_to_it(left: float) -> None:
    label = replace(NAME, spot=complex(left, 7.0), box=Box(left, 6.0, left + 12.0, 14.0))
    before = label.box.gap(bounds([BLOCK]))
    scene = enlarged(composed([BLOCK, label]), ROOM, {label.tag: (UNTAGGED, BLOCK.tag)})
    (moved,), (block,) = scene.labels, scene.showing(What.BODY)
    assert bounds([block]).width > 1.3 * bounds([BLOCK]).width
    assert moved.box.gap(bounds([block])) == pytest.approx(before, abs=MEDIUM.weight)
    assert moved.spot - complex(moved.box.left, moved.box.bottom) == pytest.approx(1j)


def test_a_leader_runs_from_its_labels_edge_to_its_thing() -> None:
    scene = grown(BLOCK, NAME, FAR, LEADER)
    (leader,), (far,) = scene.showing(What.LEADER), scene.showing(What.LABEL, "f")
    (block,) = scene.showing(What.BODY)
    assert isinstance(leader, Path)
    assert isinstance(far, Label)
    ((start, end),) = leader.lines
    assert far.box.left - start.real == pytest.approx(2.0)
    assert end.real == pytest.approx(bounds([block]).right, abs=MEDIUM.weight)


@pytest.mark.parametrize(
    "shape",
    [
        BLOCK,
        Curve(0j, ((5 + 5j, 20 + 9j, 30 + 0j),), LIGHT),
        Arc(10 + 10j, 8.0, 20.0, 200.0, LIGHT),
        circle(4j, 9.0, LIGHT),
        Arrow(0j, 30 + 20j, MEDIUM),
        line(1j, 25 + 8j, LIGHT),
    ],
    ids=lambda shape: type(shape).__name__,
)
def test_every_kind_of_stroke_grows_alike(shape: Shape) -> None:
    """Beside a block, whose corners tell by how much."""
    scene = grown(BLOCK, shape)
    block, other = scene.shapes
    by = bounds([block]).width / bounds([BLOCK]).width
    before, after = bounds([shape]), bounds([other])
    assert after.width / before.width == pytest.approx(by, abs=0.05)
    assert after.centre == pytest.approx(before.centre * by, abs=2.0)


def lantern() -> Scene:
    """A cord up to the right, its angle set beside it; room for it to grow."""
    field = Field()
    field.add(line(0j, heading(50.0) * 60.0, MEDIUM, Tag(What.CABLE, "c")))
    fifty = Number(Decimal(50), UNITS["deg"])
    draw_angle(field, 0j, 0.0, 50.0, fifty, "beta", reference_drawn=False)
    return Scene(tuple(field.shapes), field.box)


def test_an_angle_is_set_anew_and_keeps_its_number_by_its_arc() -> None:
    before, scene = lantern(), enlarged(lantern(), ROOM)
    (cable,) = scene.showing(What.CABLE)
    assert bounds([cable]).width > 1.3 * bounds(before.showing(What.CABLE)).width
    for each in (before, scene):
        (arc,), (label,) = each.showing(What.ANGLE), each.showing(What.LABEL)
        assert isinstance(arc, Arc)
        assert isinstance(label, Label)
        assert arc.radius == pytest.approx(17.0)
        assert abs(label.box.nearest(arc.centre) - arc.centre) - arc.radius < 5.0
        assert len(each.showing(What.REFERENCE)) == 1


def test_an_angle_set_anew_keeps_off_what_else_is_there() -> None:
    label = Label(21 + 6j, "m", 8.0, Box(21.0, 5.0, 33.0, 13.0), Tag(What.LABEL, "m"))
    scene = enlarged(composed([*lantern().shapes, label]), ROOM)
    one, other = scene.labels
    assert not one.box.overlaps(other.box)
