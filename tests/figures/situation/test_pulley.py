"""Ropes that tie two particles: over a pulley along its tangents, or in strands."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import (
    Path,
    bounds,
    dot,
    heading,
)
from probgen.figures.situation.pulley import (
    Hoist,
    course,
    hoists_of,
    schematic,
    strand_count,
    tackle,
)
from probgen.quantities.expression import Name, Product, number
from tests.figures.seen import box_of, tagged
from tests.figures.sketches import KNOT, TACKLE, TWO, read, sketch, surveyed


@pytest.mark.parametrize("ways", [(0, 90), (25, 90), (180, 90), (155, 90), (90, 90), (0, 0)])
def test_rope_leaves_its_pulley_along_the_tangent(ways: tuple[float, float]) -> None:
    template, values, _ = read(TWO.replace("SLOPE", "0"))
    first, second = (template.system.element(id) for id in ("T", "T.2"))
    one, other = heading(ways[0]), heading(ways[1])
    hoist = Hoist(first, second, (one, other))
    end = 60 * one - 70 * other if not hoist.alike else -20j * one
    run = course(hoist, 0j, end)
    for spot, start, way in zip(run.touching, (run.start, run.end), (one, other), strict=True):
        assert abs(spot - run.centre) == pytest.approx(run.radius)
        assert dot(spot - run.centre, way) == pytest.approx(0.0, abs=1e-6)
        assert dot(spot - start, way) > 0
        assert ((spot - start) / way).imag == pytest.approx(0.0, abs=1e-6)
    assert values


def test_a_rope_that_pulls_once_at_each_of_two_particles_is_found() -> None:
    template, values, _ = read(TWO.replace("SLOPE", "0"))
    (hoist,) = hoists_of(surveyed(template, values))
    assert (hoist.first.body, hoist.second.body) == ("box", "pail")
    assert not hoist.tackle
    assert not hoist.alike
    template, values, _ = read(KNOT)
    assert hoists_of(surveyed(template, values)) == ()


@pytest.mark.parametrize(("strands", "count"), [(2, 2), (6, 6), (1, 1), (7, 1), ("2.5", 1)])
def test_strands_are_the_whole_number_a_tension_is_multiplied_by(
    strands: int | str, count: int
) -> None:
    assert strand_count(Product((number(strands), Name("T", "T")))) == count
    assert strand_count(Name("T", "T")) == 1


def test_between_two_blocks_the_one_with_more_strands_has_the_free_end() -> None:
    template, values, _ = read(TACKLE)
    (hoist,) = hoists_of(surveyed(template, values))
    assert hoist.tackle
    even = tackle(hoist, (2, 2), (0j, 80j))
    more = tackle(hoist, (2, 3), (0j, 80j))
    assert [len(shape.lines) for shape in even if isinstance(shape, Path)] == [2]
    assert [len(shape.lines) for shape in more if isinstance(shape, Path)] == [2, 1]
    free = more[1]
    assert isinstance(free, Path)
    start, end = free.lines[0]
    assert start.imag == pytest.approx(80.0)  # at the upper block, and down from it
    assert end.imag < start.imag


HAULED = TACKLE.replace("strands = 3 }", 'strands = 2 }, { body = "upper", direction = 270 }')


def test_the_free_end_of_a_tackle_may_be_a_pull_of_its_own() -> None:
    template, values, _ = read(HAULED)
    (hoist,) = hoists_of(surveyed(template, values))
    assert (hoist.first.body, hoist.second.body, hoist.tackle) == ("lower", "upper", True)
    ((pull, way),) = hoist.loose
    assert pull.body == "upper"
    assert way == pytest.approx(-1j)
    scene = sketch(HAULED)
    lower, upper = (box_of(scene, f"body:{body}") for body in ("lower", "upper"))
    assert lower.centre.real == pytest.approx(upper.centre.real)  # one below the other
    (free,) = tagged(scene, f"rope:{pull.id}")
    end = bounds([free])
    assert end.top == pytest.approx(upper.centre.imag, abs=1.0)
    assert lower.top < end.bottom


def test_pulls_that_nothing_faces_make_no_tackle() -> None:
    apart = HAULED.replace('"lower", direction = 90', '"lower", direction = 60')
    template, values, _ = read(apart)
    assert hoists_of(surveyed(template, values)) == ()


WORKED = HAULED.replace("[[rope]]", "[body.hand]\nparticle = true\n[[rope]]").replace(
    '{ body = "upper", direction = 270 }',
    '\n{ body = "upper", direction = "270 + theta" },\n{ body = "hand", direction = "90 + theta" }',
).replace("[[find]]", """
[[weight]]
body = "hand"
mass = "5*m"
symbol = "W_h"
[[rough]]
body = "hand"
normal = "N"
friction = "f"
[[find]]""")  # fmt: skip
"""The tackle, its free end in the hand of somebody who stands to the right of it."""


def test_somebody_hauls_on_the_free_end_of_a_tackle_whose_strands_hang_plumb() -> None:
    scene = sketch(WORKED, 'hand = "worker"')
    lower, upper, hand = (box_of(scene, f"body:{body}") for body in ("lower", "upper", "hand"))
    assert lower.centre.real == pytest.approx(upper.centre.real)
    assert lower.top < upper.bottom
    (strands,) = (s for s in tagged(scene, "rope:T") if isinstance(s, Path))
    assert len(strands.lines) == 2
    assert all(a.real == pytest.approx(b.real) for a, b in strands.lines)
    (free,) = (s for s in tagged(scene, "rope:T.3") if isinstance(s, Path))
    ((begin, end),) = free.lines
    assert (end - begin) / abs(end - begin) == pytest.approx(heading(270.0 + 25.0))
    spoke = begin - upper.centre  # it leaves the block at its side
    assert abs(spoke) == pytest.approx(upper.width / 2, abs=0.8)
    assert abs(dot(spoke, end - begin)) < 0.05 * abs(spoke) * abs(end - begin)
    assert spoke.real > 0
    assert hand.left < end.real < hand.right
    assert hand.left > lower.right


def test_an_end_that_leaves_neither_block_belongs_to_no_tackle() -> None:
    """It may be of the same tension, and runs between two others."""
    beside = WORKED.replace('body = "upper", direction = "270', 'body = "post", direction = "270')
    template, values, _ = read(beside.replace("[[rope]]", "[body.post]\nparticle = true\n[[rope]]"))
    assert not [each for each in hoists_of(surveyed(template, values)) if each.hauled]


def test_the_end_in_a_hand_is_found_whichever_pull_is_told_first() -> None:
    head, rest = WORKED.split("pulls = [")
    told, tail = rest.split("]", 1)
    pulls = ["{" + each.rstrip(" ,\n") for each in told.split("{")[1:]]
    assert len(pulls) == 4
    again = head + "pulls = [" + ",\n".join(reversed(pulls)) + "]" + tail
    for text in (WORKED, again):
        template, values, _ = read(text)
        main, end = hoists_of(surveyed(template, values))
        assert {main.first.body, main.second.body} == {"lower", "upper"}
        assert (end.first.body, end.second.body) == ("upper", "hand")
        assert (main.hauled, end.hauled) == (False, True)
        assert main.second.body == "upper"  # so that each has its place from one before it


def test_a_tackle_that_is_hauled_on_stays_where_its_points_are() -> None:
    text = "[points]\nK = [0, 0]\nO = [0, 'L']\n" + WORKED
    for body, point in (("lower", "K"), ("upper", "O")):
        text = text.replace(f"[body.{body}]", f"[body.{body}]\nalong = ['{point}']")
    hand = 'H = { from = "O", distance = "L", direction = "270 + theta" }\n'
    text = text.replace("[body.lower]", hand + "[body.lower]", 1)
    text = text.replace("[body.hand]", "[body.hand]\nalong = ['H']")
    scene = sketch(text)
    upper, lower = (box_of(scene, f"body:{body}") for body in ("upper", "lower"))
    assert (upper.centre - lower.centre) == pytest.approx(3j * scene.scale, abs=1.0)
    template, values, _ = read(text)
    assert schematic(surveyed(template, values)) == {}
    template, values, _ = read(WORKED)
    assert schematic(surveyed(template, values)) == {"upper": "lower", "hand": "upper"}
