"""Labels of loads come nearer to their own things once all lengths are drawn."""

from __future__ import annotations

from probgen.figures.paper.canvas import Field
from probgen.figures.paper.scene import FINE, LIGHT, MEDIUM, Box, Label, Spot, Tone, line, polygon
from probgen.figures.paper.scene import Path as Strokes
from probgen.figures.situation.carried import Note
from probgen.figures.situation.lettering import set_notes
from probgen.figures.situation.settling import noted, settled
from probgen.quantities.expression import Name
from tests.figures.seen import tag

MASS = Name("m", "m")
OWN = Box(-3.0, -3.0, 3.0, 3.0)
ABOVE_AND_BELOW = ((3j, 90.0), (-3j, 270.0))


def note(*anchors: tuple[Spot, float]) -> Note:
    return Note(MASS, anchors or ABOVE_AND_BELOW, tag("label:m"), OWN)


def labelled(at: Spot, *, led: bool = False) -> tuple[Field, Label]:
    """A paper with the label of a mass somewhere, and a line from it."""
    field = Field()
    box = Box(at.real - 4, at.imag - 3, at.real + 4, at.imag + 3)
    label = Label(complex(box.left, box.bottom), MASS, 9.0, box, tag("label:m"))
    field.add(label)
    if led:
        start = box.grown(2.3).nearest(0j)
        field.add(line(start, OWN.nearest(start), FINE, tag("leader:label:m")))
    return field, label


def place(field: Field) -> Box:
    (label,) = (shape for shape in field.shapes if isinstance(shape, Label))
    return label.box


def test_a_label_far_off_comes_near_and_needs_its_line_no_more() -> None:
    field, label = labelled(60 + 40j, led=True)
    after = settled(field, [note()], [OWN])
    assert place(after).gap(OWN) < 6.0 < label.box.gap(OWN)
    assert not [shape for shape in after.shapes if isinstance(shape, Strokes)]
    assert place(field) == label.box  # the paper before is left as it was
    assert after.box == place(after)


def test_a_label_that_is_near_stays() -> None:
    field, _ = labelled(10j)
    assert settled(field, [note()], [OWN]) is field


def test_a_label_stays_where_no_better_place_is_free() -> None:
    field, _ = labelled(60 + 40j, led=True)
    field.add(*(line(complex(-40, y), complex(40, y), LIGHT) for y in range(-40, 36, 4)))
    assert settled(field, [note()], [OWN]) is field


def test_a_label_does_not_come_where_another_label_parts_it_from_its_thing() -> None:
    """Too far for no line to it, and with no way for one."""
    field, _ = labelled(60 + 40j, led=True)
    field.add(*(line(complex(-60, y), complex(60, y), LIGHT) for y in range(-8, 36, 4)))
    wide = Box(-60.0, -16.0, 60.0, -11.0)
    field.add(Label(-60 - 16j, Name("w", "w"), 9.0, wide, tag("label:w")))
    assert settled(field, [note((-3j, 270.0))], [OWN]) is field


def test_a_label_comes_not_where_it_is_nearer_to_another_thing() -> None:
    field, _ = labelled(60 + 40j)
    field.add(*(line(x - 8j, x + 5j, LIGHT) for x in (-5.5, 5.5)))  # so that it would go above
    other = Box(-3.0, 12.0, 3.0, 20.0)
    after = settled(field, [note((3j, 90.0))], [OWN, other])
    assert place(after).gap(OWN) < place(after).gap(other)


def test_a_label_behind_a_thin_line_comes_before_it() -> None:
    field, label = labelled(11.5j)  # near enough without the line
    field.add(line(-20 + 5.8j, 20 + 5.8j, FINE, tag("dimension:x")))
    after = place(settled(field, [note()], [OWN]))
    assert after.top < 5.8 < label.box.bottom


def test_a_label_beside_a_body_does_not_go_into_it() -> None:
    field = Field()
    corners = (-80 - 40j, 20 - 40j, 20 + 40j, -80 + 40j)
    field.add(polygon(corners, MEDIUM, tag("body:x"), tone=Tone.BODY))
    aside, label = labelled(34 + 0j)
    field.add(*aside.shapes)
    inward = note((-3 + 0j, 180.0), (20 + 0j, 0.0))
    assert place(settled(field, [inward], [OWN])).left >= 20.0
    assert label.box.gap(OWN) > 20.0


def test_a_mass_told_twice_has_each_of_its_labels_looked_at() -> None:
    field, _ = labelled(60 + 40j, led=True)
    other = Box(197.0, -3.0, 203.0, 3.0)
    field.add(*labelled(200 + 10j)[0].shapes)
    further = Note(MASS, ((200 + 3j, 90.0),), tag("label:m"), other)
    after = settled(field, [note(), further], [OWN, other])
    boxes = [shape.box for shape in after.shapes if isinstance(shape, Label)]
    assert sorted(min(box.gap(OWN), box.gap(other)) < 8.0 for box in boxes) == [True, True]


def test_what_is_noted_on_one_paper_is_noted_on_another() -> None:
    field, bare = Field(), Field()
    bare.add(line(0j, 9 + 0j, MEDIUM))
    set_notes(field, [note()], [OWN], [])
    field.add(line(0j, 5j, FINE, tag("dimension:x")))
    told = noted(bare, field, [note()])
    assert place(told) == place(field)
    assert len(told.shapes) == 2
    assert len(bare.shapes) == 1
