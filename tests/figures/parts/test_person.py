"""People: as tall as asked, on what they stand, sit or climb on."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Arc, Curve, Path, bounds, heading
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts import person

_POSES = {
    "standing": person.standing(0j, 64.0, UNTAGGED),
    "seated": person.seated(0j, 64.0, 1, UNTAGGED),
    "sitting": person.sitting(0j, 64.0, -1, UNTAGGED),
    "holding": person.holding(0j, 64.0, 1, UNTAGGED),
    "hanging": person.hanging(0j, 50.0, UNTAGGED),
    "bearing": person.bearing(0j, 64.0, 1, UNTAGGED),
    "climbing": person.climbing(0j, heading(66.0), heading(156.0), 64.0, 200.0, UNTAGGED),
    "at the top": person.climbing(0j, heading(75.0), heading(165.0), 64.0, 22.0, UNTAGGED),
    "lifting": person.lifting(0j, 12 + 70j, 1, UNTAGGED),
    "braced": person.braced(0j, 80 + 30j, 80 + 0j, UNTAGGED),
}


@pytest.mark.parametrize("pose", _POSES)
def test_no_head_is_apart_from_its_shoulders(pose: str) -> None:
    """A tinted neck runs from inside the trunk to inside the head, which is smaller than it."""
    shapes = _POSES[pose]
    (head,) = [s for s in shapes if isinstance(s, Arc) and s.filled]
    trunk = shapes[0]
    assert isinstance(trunk, Path)
    half = trunk.pen.weight / 2
    assert head.radius < half
    inside = [s for s in shapes if isinstance(s, Path) and s.tone is not None and not s.closed]
    (neck,) = [s for s in inside if s.lines[0][-1] == head.centre]
    begins = neck.lines[0][0]
    ends = trunk.lines[0]
    along = (begins - ends[0]) / (ends[1] - ends[0])
    assert -0.05 <= along.real < 0.3
    assert abs(along.imag) * abs(ends[1] - ends[0]) < half - neck.pen.weight / 2
    assert abs(head.centre - ends[0]) < half + head.radius + 0.1 * 64.0  # no long neck


@pytest.mark.parametrize("height", [34.0, 71.0])
def test_standing_person_is_as_tall_as_asked(height: float) -> None:
    box = bounds(person.standing(10 + 5j, height, UNTAGGED))
    assert box.bottom == pytest.approx(5.0, abs=0.02 * height)
    assert box.height == pytest.approx(height, rel=0.03)


@pytest.mark.parametrize("facing", [1, -1])
def test_seated_person_looks_the_way_they_face(facing: int) -> None:
    box = bounds(person.seated(0j, 60.0, facing, UNTAGGED))
    assert (box.right > -box.left) == (facing > 0)
    assert box.bottom == pytest.approx(0.0, abs=1.0)


@pytest.mark.parametrize("degrees", [55.0, 65.0, 75.0])
def test_climber_keeps_to_their_side_of_the_ladder(degrees: float) -> None:
    along = heading(degrees)
    out = along * 1j
    legs = person.climbing(0j, along, out, 60.0, 200.0, UNTAGGED)[1]
    assert isinstance(legs, Path)
    aside = [((spot) / along).imag for line in legs.lines for spot in line]
    assert min(aside) > -0.05 * 60.0


@pytest.mark.parametrize("degrees", [55.0, 65.0, 75.0, 105.0])
@pytest.mark.parametrize("above", [22.0, 35.0, 50.0, 200.0])
def test_a_climber_stands_on_one_rung_and_keeps_short_of_the_wall(
    degrees: float, above: float
) -> None:
    along = heading(degrees)
    out, away = (along * 1j, -1.0) if degrees < 90.0 else (along * -1j, 1.0)
    shapes = person.climbing(0j, along, out, 60.0, above, UNTAGGED)
    _, legs, arms = shapes[:3]
    assert isinstance(legs, Path)
    assert isinstance(arms, Path)
    assert len({line[0] for line in legs.lines}) == 1
    wall = (along * above).real  # that the ladder leans against
    assert all(spot.real * away > wall * away for line in arms.lines for spot in line)
    box = bounds(shapes)
    assert max(box.left * away, box.right * away) > 0.0
    assert min(box.left * away, box.right * away) > wall * away - 1.0
    if above > 30.0:  # within reach
        for *_, hand in arms.lines:
            assert abs((hand / along).imag) < 3.0
            assert (hand / along).real < above


def test_who_lies_reaches_from_soles_to_head_and_lies_on_the_board() -> None:
    box = bounds(person.lying(5 + 3j, 60 + 0j, UNTAGGED))
    assert box.left == pytest.approx(5.0, abs=4.0)
    assert box.right == pytest.approx(65.0, abs=2.0)
    assert box.bottom >= 3.0 - 0.5


@pytest.mark.parametrize("way", [60 + 0j, -60 + 0j])
def test_who_lies_is_one_outline_with_the_toes_and_the_nose_up(way: complex) -> None:
    outline, arm, ear = person.lying(0j, way, UNTAGGED)
    assert isinstance(outline, Curve)
    assert outline.start == pytest.approx(outline.pieces[-1][-1])
    body = bounds([outline])
    assert body.holds(bounds([arm]))
    ends = [piece[-1] for piece in outline.pieces]
    high = sorted(ends, key=lambda end: -end.imag)[:3]
    shares = [(end / way).real for end in high]
    assert min(shares) < 0.05
    assert max(shares) > 0.85
    assert (bounds([ear]).centre / way).real > 0.88
    assert body.height < 0.2 * 60.0


@pytest.mark.parametrize("facing", [1, -1])
def test_the_head_of_who_bears_something_is_clear_of_what_is_above_the_feet(facing: int) -> None:
    shapes = person.bearing(5 + 2j, 60.0, facing, UNTAGGED)
    (head,) = [s for s in shapes if isinstance(s, Arc) and s.filled]
    assert (head.centre.real - 5.0) * facing > head.radius + 1.0
    whole = bounds(shapes)
    assert whole.bottom == pytest.approx(2.0, abs=0.5)
    trunk, _, arms = (bounds([shape]) for shape in shapes[:3])
    assert trunk.top == pytest.approx(2.0 + person.SHOULDER * 60.0, abs=1.0)
    assert trunk.left <= 5.0 <= trunk.right
    assert arms.top >= 2.0 + person.SHOULDER * 60.0  # it holds it before the head


def test_who_hangs_is_below_their_hands() -> None:
    box = bounds(person.hanging(0j, 50.0, UNTAGGED))
    assert box.top == pytest.approx(0.0, abs=2.0)
    assert box.bottom == pytest.approx(-60.0, abs=1.5)


@pytest.mark.parametrize("facing", [1, -1])
def test_who_holds_a_line_reaches_out_to_its_side(facing: int) -> None:
    arms = bounds(person.holding(0j, 60.0, facing, UNTAGGED)[2:3])
    assert arms.centre.real * facing > 4.0


@pytest.mark.parametrize("toward", [1, -1])
def test_who_does_a_push_up_is_on_toes_and_hands(toward: int) -> None:
    shapes = person.braced(0j, complex(80 * toward, 30), complex(80 * toward, 0), UNTAGGED)
    box = bounds(shapes)
    assert box.bottom == pytest.approx(0.0, abs=1.5)
    nearest, farthest = sorted((box.left * toward, box.right * toward))
    assert nearest == pytest.approx(0.0, abs=4.0)
    assert farthest > 90.0  # the head, beyond the shoulder
    arm = bounds(shapes[2:3])
    assert (arm.left + arm.right) / 2 * toward == pytest.approx(80.0, abs=2.0)


@pytest.mark.parametrize("toward", [1, -1])
def test_who_does_a_push_up_is_straight_from_heels_to_shoulder(toward: int) -> None:
    shapes = person.braced(0j, complex(80 * toward, 30), complex(80 * toward, 0), UNTAGGED)
    trunk, legs, _, thigh = shapes[:4]
    assert isinstance(trunk, Path)
    assert isinstance(legs, Path)
    assert isinstance(thigh, Path)
    ways = [
        run[1] - run[0] for run in (trunk.lines[0][::-1], legs.lines[0][1:], thigh.lines[0][1::-1])
    ]
    assert ways == pytest.approx([abs(way) * ways[0] / abs(ways[0]) for way in ways])
    toes = legs.lines[0][0]
    assert toes.real == pytest.approx(0.0, abs=0.5)  # straight above the point they push at
    assert toes.imag == pytest.approx(legs.pen.weight / 2, abs=0.1)


@pytest.mark.parametrize("toward", [1, -1])
def test_the_head_of_who_does_a_push_up_is_on_a_neck_and_smaller_than_the_trunk(
    toward: int,
) -> None:
    shapes = person.braced(0j, complex(80 * toward, 30), complex(80 * toward, 0), UNTAGGED)
    trunk, neck = shapes[0], shapes[4]
    (head,) = [s for s in shapes if isinstance(s, Arc) and s.filled]
    assert isinstance(trunk, Path)
    assert isinstance(neck, Path)
    assert 2 * head.radius < trunk.pen.weight
    start, end = neck.lines[0]
    assert end == head.centre
    assert start == trunk.lines[0][0] or abs(start - trunk.lines[0][0]) < trunk.pen.weight / 2


@pytest.mark.parametrize("facing", [1, -1])
def test_who_holds_something_up_has_both_hands_there(facing: int) -> None:
    hands = complex(11.0 * facing, 76.0)
    shapes = person.lifting(0j, hands, facing, UNTAGGED)
    arms = shapes[2]
    assert isinstance(arms, Path)
    top = {run[-1] + 0.5j * arms.pen.weight for run in arms.lines}
    assert [abs(spot - hands) < 0.1 for spot in top] == [True] * len(top)
    (head,) = [s for s in shapes if isinstance(s, Arc) and s.filled]
    assert (head.centre.imag + head.radius) < hands.imag
    assert bounds(shapes).bottom == pytest.approx(0.0, abs=1.0)


def test_a_boot_has_its_toe_at_a_place_on_the_ground() -> None:
    box = bounds(person.boot(5 + 3j, 12.0, 1, UNTAGGED))
    assert box.right == pytest.approx(5.0, abs=0.5)
    assert box.width == pytest.approx(12.0, abs=0.9)
    assert box.bottom == pytest.approx(3.0, abs=0.5)
