"""What is drawn of a body: one outline, or those of bodies taken as one, in place."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.depiction import Look
from probgen.figures.freebody.solids import Solid, forces_on, pins_within, solids_of
from probgen.figures.measured.survey import Survey
from probgen.figures.paper.scene import dot
from probgen.statics.system import Body
from probgen.statics.taken_as_one import whole_of, with_wholes
from tests.figures.freebody.test_faces import SIZES
from tests.figures.readings import TEMPLATES, prepared, solved
from tests.figures.sketches import read, surveyed
from tests.figures.wedges import DRIVEN_DOWN, WEDGE

BOTH = ("left", "right")


def whole_in(measured: Survey, bodies: tuple[str, ...]) -> tuple[Survey, Body]:
    """A survey with some bodies taken as one among its own."""
    whole = whole_of(measured.system, bodies)
    return replace(measured, system=with_wholes(measured.system, [whole])), whole


def supplied(name: str, bodies: tuple[str, ...]) -> tuple[Survey, Body]:
    problem = prepared(next(path for path in TEMPLATES if path.stem == name))
    (own,) = solved(problem, 1)
    return whole_in(surveyed(problem.template, own.complete), bodies)


def wedged(text: str, bodies: tuple[str, ...]) -> tuple[Survey, Body, tuple[Solid, ...]]:
    template, values, _ = read(text, 'wedge = "wedge"')
    measured, whole = whole_in(surveyed(template, {**values, **SIZES}), bodies)
    return measured, whole, solids_of(measured, whole, {}, template.depicts.wedges)


@pytest.mark.parametrize(
    ("text", "bodies"), [(WEDGE, ("block", "wedge")), (DRIVEN_DOWN, ("wedge", "crate"))]
)
def test_a_wedge_and_its_block_lie_face_to_face(text: str, bodies: tuple[str, ...]) -> None:
    _, _, (one, other) = wedged(text, bodies)
    assert one.shape is not None
    assert other.shape is not None
    met = [
        (here, there)
        for here in one.shape.faces.values()
        for there in other.shape.faces.values()
        if abs(one.at + here.at - other.at - there.at) < 1e-6
    ]
    ((here, there),) = met
    assert dot(here.out, there.out) == pytest.approx(-1.0)


def test_what_acts_on_a_wedge_and_its_block_is_at_their_outer_faces() -> None:
    """What is between them has no arrow; the guide pushes the block, the floor the wedge."""
    measured, whole, solids = wedged(WEDGE, ("block", "wedge"))
    placed = {each.id: each for each in forces_on(measured, whole, solids)}
    assert placed.keys().isdisjoint({"N_1", "f_1"})
    block, wedge = solids
    for solid, force in ((block, "G"), (wedge, "N_2")):
        assert solid.shape is not None
        faces = [solid.at + face.at for face in solid.shape.faces.values()]
        assert min(abs(placed[force].at - face) for face in faces) < 1e-6
    assert wedge.shape is not None
    assert placed["P"].at == wedge.at + wedge.shape.head


def test_bars_taken_as_one_keep_their_places_and_looks() -> None:
    measured, whole = supplied("stepladder-tie", BOTH)
    looks = {"left": Look.LADDER}
    solids = solids_of(measured, whole, looks, ())
    assert [(each.body.id, each.look) for each in solids] == [
        ("left", Look.LADDER), ("right", Look.BEAM),
    ]  # fmt: skip
    for each in solids:
        assert each.outline(measured, 10.0) == [p * 10.0 for p in measured.outline(each.body)]
        assert each.slender(measured)
    assert [each.id for each in forces_on(measured, whole, solids)] == ["N_1", "N_2", "W_s", "W_d"]


def test_particles_taken_as_one_are_drawn_as_one() -> None:
    measured, whole = supplied("painter-board-seat", ("worker", "board"))
    (solid,) = solids_of(measured, whole, {}, ())
    assert solid.body == whole
    assert len(solid.outline(measured, 10.0)) == 1


PINS = [
    ("stepladder-tie", BOTH, {"O"}),
    ("folding-table-strap", ("top", *BOTH), {"D", "E"}),  # at C the leg but bears the top
    ("painter-board-seat", ("worker", "board"), set[str]()),
]


@pytest.mark.parametrize(("name", "bodies", "points"), PINS)
def test_pins_that_join_the_bodies_are_seen(
    name: str, bodies: tuple[str, ...], points: set[str]
) -> None:
    measured, whole = supplied(name, bodies)
    places = {place for _, place in pins_within(measured, whole)}
    assert places == {measured.places[point] for point in points}
    for id in bodies:
        assert pins_within(measured, measured.system.body(id)) == []


def test_a_body_alone_has_its_own_outline() -> None:
    measured, _ = supplied("stepladder-tie", BOTH)
    (solid,) = solids_of(measured, measured.system.body("left"), {"left": Look.LADDER}, ())
    assert (solid.body.id, solid.look, solid.shape) == ("left", Look.LADDER, None)
