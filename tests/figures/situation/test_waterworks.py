"""A pump stands under its rod, clear of its handle; a bucket hangs in the shaft of its well."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Path, Scene, bounds
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import waterworks
from probgen.figures.situation.waterworks import pump_of, well_of
from tests.figures.readings import TEMPLATES, customary, prepared, scenes_of, solved
from tests.figures.seen import box_of, tagged, touching
from tests.figures.sketches import DRUM, sketch, stage

PUMP = """
[points]
O = [0, 0]
A = { from = "O", distance = "L/4", direction = "180 - theta" }
H = { from = "O", distance = "L", direction = "-theta" }
[body.handle]
along = ["A", "O", "H"]
[[hinge]]
at = "O"
symbol = "R"
[[cable]]
at = "A"
direction = 270
symbol = "Q"
[[force]]
at = "H"
direction = { square_to = ["O", "H"], side = "right" }
symbol = "F"
[[find]]
quantity = "F"
"""
PUMPED, WELL = 'R = "pump"', ('drum = "drum with crank"', 'R = "well"', 'W = "bucket hung"')


def figures(id: str) -> list[Scene]:
    path = next(path for path in TEMPLATES if path.stem == id)
    return [
        scenes_of(problem, own)[0]
        for problem in (prepared(path), customary(path))
        for own in solved(problem, 3)
    ]


def test_a_pump_is_under_its_rod_and_its_ground_below_all_of_its_handle() -> None:
    set_out = stage(PUMP, PUMPED)
    pump = pump_of(set_out, "handle")
    assert pump is not None
    assert (pump.rod.id, pump.start, pump.pin) == ("Q", set_out.spot("A"), set_out.spot("O"))
    assert pump.head.real == pump.foot.real == pytest.approx(pump.start.real)
    assert pump.pin.imag - waterworks.HEAD == pytest.approx(pump.head.imag)
    assert pump.foot.imag < set_out.spot("H").imag - 10.0
    scene = sketch(PUMP, PUMPED)
    rod = next(shape for shape in tagged(scene, "cable:Q") if isinstance(shape, Path))
    start, end = rod.lines[0]
    barrel = box_of(scene, "beyond:Q")
    assert start.real == pytest.approx(end.real)
    assert barrel.bottom < end.imag < start.imag
    assert box_of(scene, "ground").top == pytest.approx(barrel.bottom, abs=1.0)
    assert touching(scene) == []


@pytest.mark.parametrize("direction", [90, 240])
def test_a_handle_with_no_rod_straight_down_is_on_no_pump(direction: int) -> None:
    turned = PUMP.replace("direction = 270", f"direction = {direction}")
    assert pump_of(stage(turned, PUMPED), "handle") is None
    assert pump_of(stage(PUMP), "handle") is None
    scene = sketch(turned, PUMPED)
    assert not tagged(scene, "beyond:Q")
    assert tagged(scene, "support:R")  # a plain hinge is left


def test_the_pump_of_every_draw_is_clear_of_its_labels_and_its_push() -> None:
    for scene in figures("pump-handle"):
        assert box_of(scene, "ground").bottom < box_of(scene, "body:handle").bottom
        assert box_of(scene, "force:F").left > box_of(scene, "beyond:Q").right
        assert touching(scene) == []


def test_what_hangs_from_a_drum_over_a_well_is_in_its_shaft_and_so_is_its_label() -> None:
    for scene in [sketch(DRUM, *WELL), *figures("well-windlass")]:
        shaft = box_of(scene, "beyond")
        post, walls = bounds(tagged(scene, "beyond")[-1:]), box_of(scene, "support:R")
        rim = walls.top
        assert post.bottom == pytest.approx(rim, abs=1.0)
        pail = next(s for s in tagged(scene, "load:W") if isinstance(s, Path) and s.closed)
        bucket = bounds([pail])
        assert rim > bucket.top
        assert walls.left + waterworks.WALL < bucket.left < bucket.right < shaft.right
        assert walls.bottom < bucket.bottom
        (label,) = [s for s in scene.labels if str(s.tag) in ("label:m", "label:bucket_mass")]
        assert label.box.top < rim
        assert touching(scene) == []


def test_a_drum_is_over_no_well_unless_a_word_says_so() -> None:
    assert well_of(stage(DRUM, WELL[0], 'R = "axle"'), "drum") is None
    well = well_of(stage(DRUM, *WELL), "drum")
    assert well is not None
    assert well.radius == pytest.approx(0.5 * 40.0)
    assert well.tag == Tag(What.SUPPORT, "R")
