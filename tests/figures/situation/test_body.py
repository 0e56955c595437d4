"""Bodies are drawn as what they are, what they carry is clear of them, and lengths are as told."""

from __future__ import annotations

import pytest

from probgen.figures.measured.distributed import rows
from probgen.figures.measured.survey import survey
from probgen.figures.paper.scene import (
    Arc,
    Arrow,
    Curve,
    bounds,
    dot,
    heading,
    segments,
)
from probgen.figures.paper.segment import meets
from probgen.figures.situation.pulley import Hoist, course
from probgen.figures.situation.shape import encloses
from tests.figures.seen import box_of, dimension_ends, outlines, touching
from tests.figures.sketches import BEAM, BOOM, CABINET, LEANING, LIMB, TWO, read, sketch


def test_closed_outline_is_one_solid_on_a_floor_that_reaches_under_all_of_it() -> None:
    scene = sketch(CABINET)
    (body,) = outlines(scene, "body")
    assert body.closed
    assert len(body.lines[0]) == 4
    (floor,) = outlines(scene, "ground")
    box = box_of(scene, "body")
    left, right = sorted(spot.real for spot in floor.lines[0])
    assert left < box.left
    assert right > box.right


def test_push_on_a_solid_ends_at_its_face() -> None:
    scene = sketch(CABINET)
    (push,) = (s for s in scene.tagged("force:P") if isinstance(s, Arrow))
    assert push.head.real == pytest.approx(box_of(scene, "body").left, abs=0.5)
    assert push.tail.real < push.head.real


def test_unknown_position_is_sketched_on_the_body_and_not_told_unless_asked() -> None:
    system, values, _ = read(CABINET)
    assert 0 < survey(system, values).places["Q"].real < values["L"]
    scene = sketch(CABINET)
    assert not scene.tagged("dimension:x")
    assert not scene.tagged("letter:Q")


@pytest.mark.parametrize("steep", [10, 38, 53, 60, 75])
@pytest.mark.parametrize("load", ["crate hung", "bucket", "lamp", "sign"])
def test_hung_load_is_clear_of_a_slanted_body(steep: int, load: str) -> None:
    scene = sketch(BOOM.replace("STEEP", str(steep)), f'W_b = "{load}"')
    drawn = scene.tagged("load")
    low = min(drawn, key=lambda shape: bounds([shape]).bottom)
    box = bounds([low])
    assert not [s for body in scene.tagged("body") for s in segments(body) if meets(s, box)]
    assert touching(scene) == []


@pytest.mark.parametrize("word", ["foot", "head", "jaw", "forearm", "lower leg", "arm"])
def test_limbs_are_drawn_with_their_flesh(word: str) -> None:
    scene = sketch(LIMB, f'limb = "{word}"')
    assert any(isinstance(shape, Curve) for shape in scene.tagged("body"))
    assert scene.tagged("centre")  # its weight is its own, nothing it carries
    assert touching(scene) == []


def test_branch_is_a_circle_that_touches_what_leans_on_it() -> None:
    scene = sketch(LEANING, 'pole = "rod"', 'N = "branch"')
    rings = (shape for shape in scene.tagged("support:N") if isinstance(shape, Arc))
    branch = max(rings, key=lambda ring: ring.radius)
    body = outlines(scene, "body")[0]
    away = heading(150.0)
    face = min(dot(spot - branch.centre, away) for spot in body.lines[0])
    assert face == pytest.approx(branch.radius, abs=0.05)


@pytest.mark.parametrize("ways", [(0, 90), (25, 90), (180, 90), (155, 90), (90, 90), (0, 0)])
def test_rope_leaves_its_pulley_along_the_tangent(ways: tuple[float, float]) -> None:
    system, values, _ = read(TWO.replace("SLOPE", "0"))
    first, second = (system.element(id) for id in ("T", "T.2"))
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


@pytest.mark.parametrize("slope", [0, 20, 35])
def test_what_hangs_over_an_edge_is_clear_of_it(slope: int) -> None:
    scene = sketch(TWO.replace("SLOPE", str(slope)), 'pail = "bucket"')
    pail = box_of(scene, "body:pail")
    support = [*scene.tagged("ground"), *scene.tagged("incline"), *scene.tagged("body:box")]
    assert not [s for shape in support for s in segments(shape) if meets(s, pail)]
    assert scene.tagged("pulley")
    assert touching(scene) == []


def test_second_load_stands_on_the_first_and_both_are_labelled() -> None:
    text = BEAM + "".join(
        f'\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "{symbol}"\n{size}\n'
        for symbol, size in (("Q_s", 'load = "w"'), ("Q_t", 'start = "2*w"\nend = 0'))
    )
    system, values, _ = read(text)
    low, high = rows(survey(system, values), system.elements, 60.0, 3.0, 17.0)
    assert high.feet == pytest.approx(low.tops)
    assert high.heights[0] == pytest.approx(2 * low.heights[0], rel=0.2)
    assert touching(sketch(text)) == []


def test_row_of_arrows_leaves_room_for_who_stands_among_them() -> None:
    row = '\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "Q_s"\nload = "w"\n'
    scene = sketch(BEAM + '\n[[weight]]\nat = "B"\nmass = "m"\nsymbol = "W_p"\n' + row,
                   'W_p = "person"')  # fmt: skip
    person = box_of(scene, "load:W_p")
    arrows = [s for s in scene.tagged("distributed") if isinstance(s, Arrow)]
    assert arrows
    assert not [a for a in arrows for s in segments(a) if meets(s, person)]


def test_length_laid_off_by_halves_is_dimensioned() -> None:
    text = LEANING.replace(
        "[body.pole]", 'E = ["-L/2", 0]\nF = ["L/2", 0]\n[body.pole]'
    ).replace('distance = "L"', 'distance = "3.5 m"')
    scene = sketch(text)
    start, end = dimension_ends(scene, "L")
    assert abs(end - start) / scene.scale == pytest.approx(3.0)


def test_what_is_enclosed() -> None:
    square = (0j, 4 + 0j, 4 + 4j, 4j)
    assert encloses(square, 2 + 2j)
    assert not encloses(square, 5 + 2j)
    assert not encloses((), 0j)
