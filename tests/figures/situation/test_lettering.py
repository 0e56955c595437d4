"""Labels lie nearer to their own thing than to any other, or have a line to it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import (
    HEAVY,
    MEDIUM,
    Arc,
    Arrow,
    Box,
    Label,
    Path,
    bounds,
    circle,
    line,
)
from probgen.figures.situation.carried import Note
from probgen.figures.situation.lettering import Lettered, set_letters, set_notes
from probgen.quantities.expression import Name
from tests.figures.seen import tag

MASS = Name("m", "m")
OWN = Box(0.0, 0.0, 10.0, 10.0)


def note() -> Note:
    return Note(MASS, ((10 + 5j, 0.0), (5j, 180.0)), tag("label:m"), OWN)


def placed(field: Field) -> Label:
    return next(shape for shape in field.shapes if isinstance(shape, Label))


def test_a_label_turns_away_from_another_load() -> None:
    field, other = Field(), Box(26.0, 0.0, 36.0, 10.0)
    set_notes(field, [note()], [OWN, other], [])
    label = placed(field)
    assert label.box.gap(OWN) + 2.0 <= label.box.gap(other)
    assert not [shape for shape in field.shapes if str(shape.tag).startswith("leader")]


def test_a_label_without_a_place_of_its_own_has_a_line_to_its_thing() -> None:
    field = Field()
    field.add(circle(5 + 5j, 60.0, MEDIUM), *[circle(5 + 5j, r, MEDIUM) for r in range(8, 60, 8)])
    set_notes(field, [note()], [OWN], [])
    (leader,) = [shape for shape in field.shapes if str(shape.tag) == "leader:label:m"]
    assert not isinstance(leader, Label)


def test_a_force_s_label_is_nearest_to_its_own_arrow() -> None:
    """Though there is room sooner beside that of another force."""
    field = Field()
    for id, at in (("P", 0.0), ("Q", 30.0)):
        field.add(Arrow(complex(at, 30.0), complex(at, 0.0), MEDIUM, tag(f"force:{id}")))
    own, other = (bounds([shape]) for shape in field.shapes)
    for x in (2.0, 6.0, 10.0):
        field.add(line(x - 40j, x + 60j, MEDIUM), line(-x - 40j, -x + 60j, MEDIUM))
    set_notes(field, [Note(MASS, ((9j, 0.0),), tag("label:P"))], [], [])
    assert placed(field).box.gap(own) < placed(field).box.gap(other)


CENTRE = Box(0.0, 0.0, 4.0, 4.0)
SOMEBODY = tag("load:W_p")


def test_a_line_to_a_thing_keeps_off_whoever_stands_beside_it() -> None:
    """As at the middle of a ladder, with the feet of somebody on the one side and a wall further
    off on the other."""
    field = Field()
    leg = Path((((-4 - 30j), (-4 + 60j)),), replace(HEAVY, weight=5.0), SOMEBODY)
    field.add(leg, line(11 - 200j, 11 + 200j, MEDIUM))
    anchors, person = ((0j, 180.0), (4 + 0j, 0.0)), Box(-12.0, -30.0, 6.0, 60.0)
    set_notes(field, [Note(MASS, anchors, tag("label:m"), CENTRE)], [CENTRE, person], [])
    assert placed(field).box.left > 11.0
    (leader,) = [shape for shape in field.shapes if str(shape.tag) == "leader:label:m"]
    assert not bounds([leader]).overlaps(bounds([leg]))


def test_a_label_goes_farther_off_rather_than_past_a_muscle() -> None:
    field = Field()
    muscle = line(-4 - 200j, -4 + 200j, MEDIUM, tag("muscle:F"))
    full = *range(-20, -4, 4), *range(8, 56, 4)
    field.add(muscle, *(line(x - 200j, x + 200j, MEDIUM) for x in full))
    anchors = ((0j, 180.0), (4 + 0j, 0.0))
    set_notes(field, [Note(MASS, anchors, tag("label:m"), CENTRE)], [CENTRE], [])
    assert placed(field).box.left > 52.0


@pytest.mark.parametrize("apart", [12.0, 20.0, 40.0])
def test_letters_are_nearest_to_their_own_points(apart: float) -> None:
    field, spots = Field(), {"A": 0j, "B": apart + 0j, "C": 2 * apart + 0j}
    field.add(line(-20 + 0j, 100 + 0j, MEDIUM))
    set_letters(field, {p: Lettered(p, spot, 2.0) for p, spot in spots.items()}, ())
    for label in (shape for shape in field.shapes if isinstance(shape, Label)):
        nearest = min(spots, key=lambda point: abs(label.box.nearest(spots[point]) - spots[point]))
        assert str(label.tag) == f"letter:{nearest}"


def test_a_point_where_nothing_is_has_a_dot() -> None:
    field, spots = Field(), {"A": 0j, "B": 20 + 0j, "C": 40 + 0j}
    set_letters(field, {p: Lettered(p, spot) for p, spot in spots.items()}, {"B"})
    (dot,) = [shape for shape in field.shapes if isinstance(shape, Arc)]
    assert (dot.centre, dot.filled, str(dot.tag)) == (20 + 0j, True, "point:B")


def letter_by(*shapes: Path | Arc, spot: complex = 0j, half: float = 2.0) -> Label:
    """The letter of a point by shapes drawn before."""
    field = Field()
    field.add(*shapes)
    set_letters(field, {"A": Lettered("A", spot, half)}, ())
    return placed(field)


def test_a_letter_is_nearer_to_its_point_than_to_a_centre_of_mass() -> None:
    """Within a limb, where there is room between the two alone, nearer to the centre."""
    limb = [line(-60 + y, 60 + y, MEDIUM) for y in (12j, -12j)]
    beside = [line(x - 12j, x + 12j, MEDIUM) for x in (-12, -8, -4, 5)]
    mark = circle(20 + 0j, 3.0, MEDIUM, tag("centre:arm"))
    box = letter_by(*limb, *beside, mark, half=12.0).box
    assert box.gap(Box(0.0, 0.0, 0.0, 0.0)) <= box.gap(bounds([mark]))


@pytest.mark.parametrize("kind", ["reference:phi", "dimension:d", "cable:c"])
def test_no_thin_line_runs_between_a_point_and_its_letter(kind: str) -> None:
    """Though there would be room beyond it above, and on its own side below alone."""
    above = [line(-40 + 2j, 40 + 2j, MEDIUM, tag(kind)), line(-40 + 9j, 0j + 9j, MEDIUM)]
    assert letter_by(*above, half=6.0).box.top < 0.0


def test_a_letter_stands_in_no_distributed_load_if_there_is_another_place() -> None:
    feet = line(-60 + 2j, 60 + 2j, MEDIUM, tag("distributed:w"))
    edge = Path((((-60 + 2j), (-60 + 30j), (60 + 30j), (60 + 2j)),), MEDIUM, tag("distributed:w"))
    assert letter_by(feet, edge).box.top < 0.0


def test_a_letter_far_off_has_a_place_from_which_a_line_to_its_point_is_free() -> None:
    """Between two labels, one above and one below it."""
    field = Field()
    for bottom in (6.0, -14.0):
        wide = Box(-60.0, bottom, 60.0, bottom + 8.0)
        field.add(Label(complex(-60.0, bottom), MASS, 9.0, wide, tag("label:m")))
    set_letters(field, {"A": Lettered("A", 0j, 2.0)}, ())
    assert [str(s.tag) for s in field.shapes if not isinstance(s, Label)] == ["leader:letter:A"]


@pytest.mark.parametrize("between", ["muscle:F", "body:plank"])
def test_a_label_stands_on_its_thing_s_side_of_what_is_beside_it(between: str) -> None:
    """Though there would be room nearer to it on the other side."""
    field = Field()
    strip = ((14 - 40j), (18 - 40j), (18 + 60j), (14 + 60j), (14 - 40j))
    field.add(Path((strip,), MEDIUM, tag(between)), line(-12 - 60j, -12 + 60j, MEDIUM))
    field.add(*(line(-12 + 1j * y, 14 + 1j * y, MEDIUM) for y in range(-60, 61, 6)))
    set_notes(field, [note()], [OWN], [])
    assert placed(field).box.right < -12.0


def test_a_label_leaves_free_where_extension_lines_are_expected() -> None:
    """Also one that has no place close to its thing."""
    field, strips = Field(), [(10.0, float(y), 24.0, float(y)) for y in range(-60, 61, 4)]
    field.add(*(line(-2 + 1j * y, 10 + 1j * y, MEDIUM) for y in range(-60, 61, 6)))
    set_notes(field, [Note(MASS, ((10 + 5j, 0.0),), tag("label:m"), OWN)], [OWN], strips)
    assert placed(field).box.left > 24.0


def test_a_letter_beyond_another_point_has_a_line_that_keeps_off_that_point() -> None:
    """About its own there is no room, and to the left the other point is nearer."""
    field, spots = Field(), {"O": 0j, "M": -8 + 0j}
    field.add(*(circle(1 + 0j, radius, MEDIUM) for radius in (2.0, 6.0, 14.0)))
    field.add(*(line(x - 60j, x + 60j, MEDIUM) for x in range(4, 200, 6)))
    set_letters(field, {name: Lettered(name, spot, 8.0) for name, spot in spots.items()}, ())
    (leader,) = (shape for shape in field.shapes if shape.tag == tag("leader:letter:O"))
    assert isinstance(leader, Path)
    ((start, end),) = leader.lines
    assert abs(end) < 1e-6
    assert abs(((spots["M"] - start) / (end - start)).imag) * abs(end - start) > 1.5


def test_a_letter_may_stand_beside_its_point_s_support() -> None:
    """Though another point is nearer than its own."""
    wedge = Path((((0j), (-13 - 22j), (13 - 22j)),), MEDIUM, tag("support:A"), closed=True)
    field = Field()
    field.add(wedge, line(-80 + 2j, 80 + 2j, MEDIUM), line(-80 - 2j, 80 - 2j, MEDIUM))
    field.add(*(line(complex(-80, y), complex(80, y), MEDIUM) for y in range(8, 80, 4)))
    field.add(*(line(x - 8j, x - 40j, MEDIUM) for x in (9, 16, 23)))
    points = {"A": Lettered("A", 0j, 2.2), "E": Lettered("E", -28 + 0j, 2.2)}
    set_letters(field, points, ())
    label = next(each for each in field.shapes if str(each.tag) == "letter:A")
    assert isinstance(label, Label)
    assert -24.0 < label.box.left < label.box.right < 0.0
    assert -22.0 < label.box.bottom < label.box.top < 0.0
    assert not [each for each in field.shapes if str(each.tag) == "leader:letter:A"]
