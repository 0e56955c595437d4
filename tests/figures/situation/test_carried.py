"""Loads: clear of what is drawn, labelled on their face or beside it, a mark for a body itself."""

from __future__ import annotations

import pytest

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    Arrow,
    Label,
    Path,
    bounds,
    heading,
    segments,
)
from probgen.figures.paper.segment import meets
from probgen.figures.paper.tag import What
from probgen.figures.paper.type_metrics import extent
from probgen.figures.situation.carried import Burdens
from probgen.figures.situation.shape import encloses
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved
from tests.figures.seen import box_of, outlines, tag, tagged, touching
from tests.figures.sketches import (
    BEAM,
    BOOM,
    CASE,
    KNOT,
    LIMB,
    SLOPE,
    TWO,
    sketch,
    stage,
)


@pytest.mark.parametrize("steep", [10, 38, 53, 60, 75])
@pytest.mark.parametrize("load", ["crate hung", "bucket", "lamp", "sign"])
def test_hung_load_is_clear_of_a_slanted_body(steep: int, load: str) -> None:
    scene = sketch(BOOM.replace("STEEP", str(steep)), f'W_b = "{load}"')
    drawn = tagged(scene, "load")
    low = min(drawn, key=lambda shape: bounds([shape]).bottom)
    box = bounds([low])
    assert not [s for body in tagged(scene, "body") for s in segments(body) if meets(s, box)]
    assert touching(scene) == []


def test_row_of_arrows_leaves_room_for_who_stands_among_them() -> None:
    row = '\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "Q_s"\nload = "w"\n'
    scene = sketch(BEAM + '\n[[weight]]\nat = "B"\nmass = "m"\nsymbol = "W_p"\n' + row,
                   'W_p = "person"')  # fmt: skip
    person = box_of(scene, "load:W_p")
    arrows = [s for s in tagged(scene, "distributed") if isinstance(s, Arrow)]
    assert arrows
    assert not [a for a in arrows for s in segments(a) if meets(s, person)]


BOX = BOOM.replace("STEEP", "0").replace('symbol = "W_b"', 'symbol = "W_b"\nof = "box"')


def burdens(text: str, *shown: str) -> Burdens:
    return Burdens(stage(text, *shown, scale=60.0), Field(), [])


def test_the_weight_of_a_body_itself_is_a_mark_with_its_label_beside() -> None:
    carried = burdens(LIMB.replace('of = "limb"', 'of = "limb"\nsymbol = "W"'))
    note = carried.weight(carried.system.element("W"))
    assert [str(shape.tag) for shape in carried.field.shapes] == ["centre:limb"] * 3
    assert note is not None
    assert str(note.tag) == "label:m"


def test_what_is_in_a_case_is_a_block_about_its_centre_with_its_label_on_it_or_beside() -> None:
    carried = burdens(CASE, 'case = "cabinet"')
    note = carried.weight(carried.system.element("W_b"))
    assert note is not None
    block = bounds(shape for shape in carried.field.shapes if str(shape.tag) == "load:W_b")
    assert note.thing == block
    room = extent(note.text)
    assert block.height > room.height + room.depth + 6.0  # its letters have room in it
    assert not [shape for shape in carried.field.shapes if isinstance(shape, Label)]


def test_a_load_is_a_plain_block_when_nothing_is_said() -> None:
    one, other = (burdens(BOX, *told) for told in ((), ('W_b = "block"',)))
    for carried in (one, other):
        carried.weight(carried.system.element("W_b"))
    assert one.field.shapes == other.field.shapes


def test_a_load_s_name_draws_nothing() -> None:
    drawn = []
    for each in (BOX, BOX.replace('"box"', '"person"')):
        carried = burdens(each)
        carried.weight(carried.system.element("W_b"))
        drawn.append(carried.field.shapes)
    assert drawn[0] == drawn[1]


@pytest.mark.parametrize(("end", "side"), [("A", 1), ("B", -1)])
def test_who_sits_at_an_end_looks_along_the_body(end: str, side: int) -> None:
    text = BEAM + f'\n[[weight]]\nat = "{end}"\nmass = "m"\nsymbol = "W_p"\n'
    scene = sketch(text, 'W_p = "rider"')
    spot = scene.scale * (0.0 if end == "A" else 3.0)
    box = box_of(scene, "load:W_p")
    assert ((box.right - spot) > (spot - box.left)) is (side > 0)


@pytest.mark.parametrize("slope", [20, 160, 200, 340])
def test_a_load_stands_on_the_upper_side_of_a_sloping_body(slope: int) -> None:
    scene = sketch(BOOM.replace("STEEP", str(slope)), 'W_b = "crate"')
    spot = 3.0 * scene.scale * heading(slope)
    box = box_of(scene, "load:W_b")
    assert box.bottom > spot.imag
    assert box.left < spot.real < box.right


@pytest.mark.parametrize(
    ("direction", "along"), [(0, 1), (180, 1), (30, heading(30)), (210, heading(30)), (90, 1j),
                             (270, 1j), (150, heading(-30))],
)  # fmt: skip
def test_a_body_is_taken_to_the_right_or_upward_whichever_end_is_told_first(
    direction: int, along: complex
) -> None:
    carried = burdens(BOOM.replace("STEEP", str(direction)))
    seat = carried._seat(carried.system.element("W_b"))
    assert seat.along == pytest.approx(along, abs=1e-9)
    assert seat.beyond == pytest.approx(heading(direction))  # out of the body at its end
    assert seat.spot == pytest.approx(180.0 * heading(direction))
    if direction % 180 != 90:  # toward the middle
        assert seat.facing == (-1 if seat.spot.real > 0 else 1)


def test_who_lies_on_a_board_has_their_soles_at_its_left_end() -> None:
    for direction, left in ((0, 0j), (180, -180 + 0j)):
        carried = burdens(BOOM.replace("STEEP", str(direction)))
        seat = carried._seat(carried.system.element("W_b"))
        assert seat.lying is not None
        soles, way = seat.lying
        assert soles == pytest.approx(left + 3j, abs=1e-9)  # on the upper side of the bar
        assert way == pytest.approx(0.86 * 180.0)


def test_only_a_bookcase_has_shelves() -> None:
    shown = [sketch(CASE, f'case = "{word}"') for word in ("bookcase", "cabinet")]
    assert [bool(tagged(scene, "shelf")) for scene in shown] == [True, False]
    for line in tagged(shown[0], "shelf"):
        load = bounds(tagged(shown[0], "load:W_b"))
        assert not any(meets(piece, load) for piece in segments(line))


def test_how_far_a_body_goes_on_above_what_it_carries() -> None:
    middle = 'M = { from = "A", distance = "L/2", direction = STEEP }\n[body.boom]'
    text = BOOM.replace("[body.boom]", middle).replace(
        '[[weight]]\nat = "B"', '[[weight]]\nat = "M"'
    )
    for steep in (65, -65, 115):
        carried = burdens(text.replace('"STEEP"', "STEEP").replace("STEEP", str(steep)))
        assert carried._seat(carried.system.element("W_b")).above == pytest.approx(90.0)


def test_a_load_on_a_block_is_as_wide_where_it_nearly_is() -> None:
    second = '[[weight]]\nmass = "2*m"\nof = "books"\nsymbol = "W_2"\n[[find]]'
    flat = SLOPE.replace("90 + theta", "90").replace("theta", "0").replace("[[find]]", second, 1)
    scene = sketch(flat, 'W_2 = "crate"')
    load, block = tagged(scene, "load:W_2"), box_of(scene, "body:crate")
    assert bounds(load).width == pytest.approx(block.width)


@pytest.mark.parametrize("way", [-15, -30, -45])
def test_what_hangs_is_let_down_past_an_arrow_wherever_it_is_told(way: int) -> None:
    pulled = KNOT.replace("direction = 150", "direction = 100").replace(
        '[[cable]]\nbody = "knot"\ndirection = 40', f'[[force]]\nbody = "knot"\ndirection = {way}'
    )
    weight = pulled[pulled.index("[[weight]]") : pulled.index("[[find]]")]
    first = pulled.replace(weight, "").replace("[[cable]]", f"{weight}[[cable]]", 1)
    for text in (pulled, first):
        scene = sketch(text, 'W = "crate"')
        (arrow,) = tagged(scene, "force:T_2")
        load = bounds(s for s in tagged(scene, "load:W") if isinstance(s, Path) and s.closed)
        assert not any(meets(piece, load) for piece in segments(arrow))


@pytest.mark.parametrize(("steep", "side"), [(65, -1.0), (115, 1.0)])
def test_the_label_of_somebody_on_a_ladder_is_on_their_side_of_it(steep: int, side: float) -> None:
    carried = burdens(BOOM.replace('"STEEP"', str(steep)), 'W_b = "climber"')
    note = carried.weight(carried.system.element("W_b"))
    assert note is not None
    ways = [heading(way).real * side for _, way in note.anchors]
    assert max(ways) == pytest.approx(1.0)
    assert min(ways) > -0.1


def test_sand_in_a_pail_is_a_heap_in_its_rim_each_with_its_label_beside() -> None:
    text = (
        TWO.replace("SLOPE", "0")
        .replace("m/3", "4 kg")
        .replace(
            "[[rope]]",
            '[[weight]]\nbody = "pail"\nmass = "9 kg"\nof = "sand"\nsymbol = "W_s"\n[[rope]]',
        )
    )
    scene = sketch(text, 'pail = "bucket"', 'W_s = "sand"')
    pail, heap = (bounds(tagged(scene, what)) for what in ("body:pail", "load:W_s"))
    assert pail.left < heap.left < heap.right < pail.right
    assert pail.bottom < heap.bottom < heap.top < pail.top
    for label in (label for label in scene.labels if str(label.tag.of) in ("W_p", "W_s")):
        assert 0.0 < label.box.gap(pail) < 8.0
    assert touching(scene) == []


def test_what_a_hand_holds_has_its_label_under_its_limb() -> None:
    (path,) = (path for path in TEMPLATES if path.stem == "arm-held-out")
    for own in solved(prepared(path), 3):
        scene = scenes_of(prepared(path), own)[0]
        bottle = box_of(scene, "load:W_b")
        (label,) = (label for label in scene.labels if label.tag == tag("label:bottle_mass"))
        assert label.box.right < bottle.left


OVERHANG = """
[points]
A = [0, 0]
B = ["0.85*L", 0]
D = ["L", 0]
[body.beam]
along = ["A", "D"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "B"
symbol = "N"
[[weight]]
at = "D"
mass = "m"
symbol = "W_l"
[[find]]
quantity = "N"
"""


def test_what_hangs_beside_a_roller_is_let_down_past_it_and_its_ground() -> None:
    scene = sketch(OVERHANG, 'W_l = "block hung"')
    block = min((bounds([shape]) for shape in tagged(scene, "load")), key=lambda box: box.bottom)
    support = box_of(scene, "support:N")
    assert block.left < support.right  # as wide as to be below it
    assert block.top < support.bottom


@pytest.mark.parametrize("stem", ["hip-one-leg", "hip-walking-stick"])
def test_the_mass_a_pelvis_carries_is_told_outside_the_body_of_its_centre(stem: str) -> None:
    """Beside the outline or at the end of a line to the mark."""
    (path,) = (path for path in TEMPLATES if path.stem == stem)
    for own in solved(prepared(path), 2):
        scene = scenes_of(prepared(path), own)[0]
        (label,) = (each for each in scene.labels if each.tag.of in ("upper_mass", "W"))
        assert label.box.gap(bounds(scene.showing(What.BODY)[:1])) > 0.0
        mark = bounds(scene.showing(What.CENTRE))
        led = scene.showing(What.LEADER, label.tag)
        reach = bounds(led).grown(1.0) if led else label.box
        assert reach.gap(mark) < 14.0


@pytest.mark.parametrize("word", ["board", "pallet"])
def test_what_is_too_low_for_its_label_has_it_beside(word: str) -> None:
    scene = sketch(SLOPE, f'crate = "{word}"')
    (label,) = tagged(scene, "label:m")
    assert isinstance(label, Label)
    parts = outlines(scene, "body:crate")
    assert not any(encloses(each.lines[0], label.box.centre) for each in parts if each.closed)
    assert touching(scene) == []


def test_a_panel_is_labelled_before_its_face_and_dashed_against_its_friction() -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == "panel-pressed-wall"))
    for own in solved(problem, 3):
        scene = scenes_of(problem, own)[0]
        walls = [bounds([wall]) for wall in tagged(scene, "ground")]
        for body, sign in (("low", -1), ("high", 1)):
            panel, after = (bounds([shape]) for shape in tagged(scene, f"body:{body}"))
            assert (after.centre.imag - panel.centre.imag) * sign > 0.0
            (wall,) = [each for each in walls if abs(each.left - panel.right) < 2.0]
            assert wall.bottom < min(panel.bottom, after.bottom)
            assert wall.top > max(panel.top, after.top)
        masses = [label.box for label in scene.labels if str(label.tag) == "label:mass"]
        assert len(masses) == 2
        assert all(any(0.0 < wall.left - box.right < 20.0 for wall in walls) for box in masses)
