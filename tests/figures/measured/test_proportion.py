"""Figures that are not drawn to scale: they say so, and nothing is elsewhere in them."""

from __future__ import annotations

import pytest

from probgen.bank.depiction import Depictions
from probgen.figures.measured.proportion import Amiss, Disturbance, disturbances, note_distorted
from probgen.figures.measured.survey import survey
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    FINE,
    Arrow,
    Label,
    Scene,
    Tone,
    bearing,
    circle,
    line,
    polygon,
)
from tests.figures.conftest import Case
from tests.figures.seen import tag, tagged, touching

SIZES = {"insertion": 0.09, "muscle_angle": 30.0}


def station(scene: Scene, tagged_as: str) -> float:
    """Where a force's arrow begins, from the elbow, m."""
    (arrow,) = tagged(scene, tagged_as)
    assert isinstance(arrow, Arrow)
    return arrow.tail.real / scene.scale


def diagram(case: Case, sizes: dict[str, float]) -> Scene:
    body = case.system.bodies[0].id
    return case.alone(body, "E", drawn=sizes)


@pytest.mark.parametrize("seed", [0, 1, 2])
def test_diagram_takes_the_lengths_and_keeps_the_angles(
    cases: dict[tuple[str, int], Case], seed: int
) -> None:
    case = cases["forearm", seed]
    true, drawn = diagram(case, {}), diagram(case, SIZES)
    assert station(true, "force:F") == pytest.approx(case.values["insertion"])
    assert station(drawn, "force:F") == pytest.approx(0.09)
    pulls = [tagged(scene, "force:F")[0] for scene in (true, drawn)]
    one, other = (bearing(a.head - a.tail) for a in pulls if isinstance(a, Arrow))
    assert one == pytest.approx(other)
    assert "not to scale" not in [label.text for label in true.labels]
    assert "not to scale" in [label.text for label in drawn.labels]
    assert touching(drawn) == []


def test_diagram_with_other_angles_only_is_to_scale(cases: dict[tuple[str, int], Case]) -> None:
    scene = diagram(cases["forearm", 0], {"muscle_angle": 30.0})
    (note,) = tagged(scene, "note:scale")
    assert isinstance(note, Label)
    assert str(note.text).startswith("arrows")  # and nothing of lengths


def test_situation_keeps_its_room(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["forearm", 0]
    plain = case.situation(depicts=Depictions())
    noted = case.situation(depicts=Depictions(), drawn=SIZES)
    (note,) = tagged(noted, "note:scale")
    assert note.box.bottom >= noted.box.bottom  # type: ignore[union-attr]
    assert noted.box.height <= 1.1 * plain.box.height
    assert touching(noted) == []


def test_nothing_is_disturbed_by_true_sizes(cases: dict[tuple[str, int], Case]) -> None:
    for case in cases.values():
        true = survey(case.system, case.labels, case.values)
        assert list(disturbances(true, true)) == []


@pytest.mark.parametrize(
    ("length", "amiss"),
    [
        (0.5, Disturbance(Amiss.OFF_BODY, ("B",), "forearm")),
        (-0.01, Disturbance(Amiss.OFF_BODY, ("B",), "forearm")),
        (0.0, Disturbance(Amiss.TOGETHER, ("E", "B"))),
        (0.25, Disturbance(Amiss.CHANGED_PLACES, ("B", "G"), "forearm")),
    ],
)
def test_what_is_elsewhere_is_found(
    cases: dict[tuple[str, int], Case], length: float, amiss: Disturbance
) -> None:
    case = cases["forearm", 0]
    true = survey(case.system, case.labels, case.values)
    drawn = survey(case.system, case.labels, {**case.values, "insertion": length})
    assert list(disturbances(true, drawn)) == [amiss]


@pytest.mark.parametrize(
    ("width", "height", "inside"),
    [(300.0, 100.0, True), (300.0, 5.0, False), (20.0, 100.0, False)],
)
def test_the_note_stands_within_the_figure_where_there_is_room(
    width: float, height: float, inside: bool
) -> None:
    field = Field()
    for corner in (0j, complex(width, height)):
        field.add(circle(corner, 0.1, FINE, tag("body:b")))
    frame = field.box.grown(1e-9)
    note_distorted(field, lambda fact: "not to scale")
    (note,) = (shape for shape in field.shapes if isinstance(shape, Label))
    within = note.box.left > frame.left and note.box.right < frame.right
    assert (within and note.box.bottom > frame.bottom) == inside


def noted(field: Field) -> Label:
    note_distorted(field, lambda fact: "not to scale")
    label = field.shapes[-1]
    assert isinstance(label, Label)
    return label


def test_the_note_keeps_well_off_lines_and_labels() -> None:
    """Though it would have room between them."""
    field = Field()
    field.add(line(0j, 200j, FINE), line(0j, 200 + 0j, FINE), line(200 + 0j, 200 + 200j, FINE))
    width = noted(field.trial()).box.width
    narrow = Field()
    narrow.add(line(0j, width + 6.0 + 0j, FINE), line(60j, width + 6.0 + 60j, FINE))
    narrow.add(*(line(x + 0j, x + 60j, FINE) for x in (0.0, width + 6.0)))
    assert noted(narrow).box.top < 0.0


def test_the_note_does_not_stand_in_a_body() -> None:
    field = Field()
    corners = (0j, 300 + 0j, 300 + 200j, 200j)
    field.add(polygon(corners, FINE, tone=Tone.BODY))
    assert noted(field).box.top < 0.0
