"""Letters of a free-body diagram: each nearer to what it names than to anything of its kind."""

from __future__ import annotations

from dataclasses import replace

import pytest

from probgen.bank.reading import read_template
from probgen.bank.support import component_symbol
from probgen.figures.freebody.arrows import Placed, distance
from probgen.figures.freebody.lettering import Lettering
from probgen.figures.measured.vector import Vector
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import GAP
from probgen.figures.paper.scene import HEAVY, Arrow, Label, Path, Spot, box_around, line
from probgen.figures.paper.tag import What
from probgen.problem.problem import prepare
from probgen.problem.problem_figures import free_body_scenes
from probgen.quantities.expression import Name
from probgen.quantities.symbol import italic
from probgen.working.convention import Convention
from tests.figures.readings import TEMPLATES, solved


def placed(id: str, tail: Spot, head: Spot, component: bool = False) -> Placed:
    vector = Vector(id, id, tail, abs(head - tail), 0.0, id)
    return Placed(Arrow(tail, head, HEAVY), vector, component)


def named(*arrows: Placed, spots: tuple[Spot, ...] = ()) -> dict[str, Label]:
    """The labels of arrows that are alone on the paper, by the symbol."""
    lettering = Lettering(Field())
    lettering.field.add(*(each.arrow for each in arrows))
    lettering.name_arrows(arrows, spots)
    assert lettering.strained == 0
    return labels(lettering)


def labels(lettering: Lettering) -> dict[str, Label]:
    shapes = lettering.field.shapes
    return {str(shape.tag): shape for shape in shapes if isinstance(shape, Label)}


def fenced(lettering: Lettering, reach: float) -> None:
    """Fills the square of so many pt about the origin with strokes that no letter fits between."""
    steps = range(-int(reach), int(reach) + 1, 4)
    lettering.field.add(*(line(complex(-reach, y), complex(reach, y), HEAVY) for y in steps))


AT, TO = 30 + 60j, 80 + 60j
# An arrow 50 pt long to the right, and where its symbol goes: past one of its ends, or at its
# side.  It acts at its tail, or ends at its point as a push does, whatever else acts elsewhere.
PLACES = [
    (placed("F", AT, TO), (AT,), "ahead"),
    (placed("F", AT, TO), (TO,), "behind"),
    (placed("F", AT, TO), (TO + 0.5, 0j), "behind"),  # a point half a pt off is the same
    (placed("F", AT, TO), (TO + 5, 0j), "ahead"),
    (placed("F.x", AT, TO, component=True), (AT,), "at its side"),
]


@pytest.mark.parametrize(("arrow", "spots", "where"), PLACES)
def test_a_symbol_stands_off_the_body_and_that_of_a_component_at_its_side(
    arrow: Placed, spots: tuple[Spot, ...], where: str
) -> None:
    box = named(arrow, spots=spots)[f"label:{arrow.vector.id}"].box
    if where == "at its side":
        assert AT.real < box.left < box.right < TO.real
        assert min(abs(box.bottom - AT.imag), abs(box.top - AT.imag)) < 6
        assert box.centre.real == pytest.approx(55.0, abs=box.width)
    else:
        assert box.bottom < AT.imag < box.top  # on the arrow's line
        gap = box.left - TO.real if where == "ahead" else AT.real - box.right
        assert GAP <= gap < 6


def test_a_long_symbol_of_a_component_goes_past_its_head_where_its_sides_are_taken() -> None:
    """Though the other component begins there, to which it is no farther."""
    lettering, name = Lettering(Field()), "T" + "m" * 12
    whole = placed("T", 0j, -30 - 50j)
    leg, other = (
        replace(placed(id, tail, head, component=True), of="T")
        for id, tail, head in ((name, 0j, -30 + 0j), ("T.y", -30 + 0j, -30 - 50j))
    )
    lettering.field.add(*(each.arrow for each in (whole, leg, other)))
    for y in (*range(6, 90, 6), *range(-6, -90, -6)):
        lettering.field.add(line(-200 + 1j * y, 200 + 1j * y, HEAVY))
    lettering.field.add(line(6 - 90j, 6 + 90j, HEAVY))
    lettering.name_arrows((whole, leg, other), (0j,))
    box = labels(lettering)[f"label:{name}"].box
    assert GAP <= -30.0 - box.right < 10.0
    assert box.bottom < 0.0 < box.top
    assert lettering.strained == 2  # the other two alone


def test_a_force_has_its_symbol_before_its_short_components_have_theirs() -> None:
    force, leg = placed("F", 0j, 60 + 40j), placed("F.x", 0j, 12 + 0j, component=True)
    assert list(named(leg, force, spots=(0j,))) == ["label:F", "label:F.x"]


def test_a_symbol_beside_a_whole_force_stands_by_its_head() -> None:
    """Past the head there is no room: it goes to the side of the arrow's outer part."""
    lettering = Lettering(Field())
    arrow = placed("F", 40 + 0j, 140 + 0j)
    wall = [line(complex(x, -200), complex(x, 200), HEAVY) for x in range(141, 340, 4)]
    lettering.field.add(arrow.arrow, *wall)
    lettering.name_arrows([arrow], [40 + 0j])
    box = labels(lettering)["label:F"].box
    assert box.centre.real == pytest.approx(110.0, abs=box.width)
    assert box.bottom > 0 or box.top < 0


# Arrows so near each other that the place a symbol likes best is as near to a neighbour.
CLOSE = [
    [placed("F", 0j, 40j), placed("G", 14 + 0j, 14 + 40j)],
    [placed("F", 0j, 40j), placed("G", 6 + 90j, 6 + 46j)],  # head to head
    [placed("F", 0j, 40j), placed("G", 5 + 45j, 60 + 45j), placed("H", -90j, -40j)],
]


@pytest.mark.parametrize("arrows", CLOSE, ids=["side by side", "head to head", "above it"])
def test_each_symbol_is_nearest_to_its_own_arrow(arrows: list[Placed]) -> None:
    found = named(*arrows)
    for own in arrows:
        centre = found[f"label:{own.vector.id}"].box.centre
        nearest, *others = sorted(
            (distance(centre, each.arrow.tail, each.arrow.head), each is not own) for each in arrows
        )
        assert nearest[1] is False
        assert nearest[0] + 1.0 < others[0][0]


def test_the_shortest_arrow_chooses_first() -> None:
    order = [placed("long", 0j, 90j), placed("short", 60 + 0j, 60 + 20j)]
    assert [*named(*order)] == ["label:short", "label:long"]
    assert [*named(*order[::-1])] == ["label:short", "label:long"]


def test_an_arrow_between_two_others_chooses_before_them() -> None:
    """Its one place is at its head, which a neighbour's symbol would else take."""
    row = [
        placed(id, x + 0j, x - y * 1j) for id, x, y in (("a", 0, 40), ("b", 12, 42), ("c", 24, 41))
    ]
    assert [*named(*row)] == ["label:b", "label:a", "label:c"]


def test_a_symbol_without_a_place_near_its_arrow_is_set_all_the_same_and_counted() -> None:
    lettering = Lettering(Field())
    arrow = placed("F", -10 + 0j, 10 + 0j)
    fenced(lettering, 60)
    lettering.name_arrows([arrow], [])
    assert lettering.strained == 1
    box = labels(lettering)["label:F"].box
    assert max(abs(box.centre.real), abs(box.centre.imag)) > 60


def lettered(points: dict[str, Spot], clear: float = 2.0) -> dict[str, Label]:
    lettering = Lettering(Field())
    lettering.name_points(points, dict.fromkeys(points.values(), clear))
    assert lettering.strained == 0
    return labels(lettering)


def test_a_letter_is_small_and_below_its_point_on_the_left() -> None:
    label = lettered({"A": 0j})["letter:A"]
    assert label.size == 7.5
    assert label.box.right < 0
    assert label.box.top < 0


@pytest.mark.parametrize("clear", [0.0, 4.0, 9.0])
def test_a_letter_keeps_off_the_mark_at_its_point(clear: float) -> None:
    box = lettered({"A": 0j}, clear)["letter:A"].box
    away = abs(box.nearest(0j))
    assert clear < away < clear + 5.0


def test_each_letter_is_nearest_to_its_own_point() -> None:
    points = {"A": 0j, "B": 16 + 0j, "C": 16 + 14j}
    found = lettered(points)
    for name, spot in points.items():
        centre = found[f"letter:{name}"].box.centre
        others = [abs(centre - other) for other in points.values() if other != spot]
        assert abs(centre - spot) + 1.0 < min(others)


def test_no_arrow_of_another_force_is_between_a_point_and_its_letter() -> None:
    """Though there is room sooner on the other side of that."""
    lettering, arrow = Lettering(Field()), Arrow(6 + 60j, 6 - 60j, HEAVY)
    left = Path((((-30 - 9j), (-1 - 9j), (-1 + 9j), (-30 + 9j)),), HEAVY, closed=True)
    lettering.field.add(arrow, left, *(line(-30 + y, -1 + y, HEAVY) for y in (-6j, -2j, 2j, 6j)))
    lettering.name_points({"G": 0j}, {0j: 2.5})
    assert labels(lettering)["letter:G"].box.right < 6.0


def test_points_almost_in_one_place_share_the_room_about_it() -> None:
    """Of points 2 pt apart no letter can be 1 pt nearer to its own all round; that is no strain."""
    assert {*lettered({"A": 0j, "B": 2 + 0j})} == {"letter:A", "letter:B"}


def test_points_in_one_place_each_have_their_letter() -> None:
    """A load put at the middle of a beam, where its weight acts: a key names either."""
    found = lettered({"D": 0j, "Q": 0j})
    assert {*found} == {"letter:D", "letter:Q"}
    assert found["letter:D"].box.gap(found["letter:Q"].box) > 0.0


def test_a_letter_without_a_place_by_its_point_is_set_all_the_same_and_counted() -> None:
    lettering = Lettering(Field())
    fenced(lettering, 60)
    lettering.name_points({"A": 0j}, {0j: 2.0})
    assert lettering.strained == 1
    assert abs(labels(lettering)["letter:A"].box.centre) > 60


@pytest.mark.parametrize("reach", [0, 20])
def test_a_line_leads_from_a_letter_further_off_to_its_point(reach: float) -> None:
    lettering = Lettering(Field())
    fenced(lettering, reach)
    lettering.name_points({"A": 0j}, {0j: 2.0})
    led = [shape for shape in lettering.field.shapes if str(shape.tag) == "leader:letter:A"]
    assert lettering.strained == 0
    assert len(led) == (1 if reach else 0)
    for shape in led:
        assert isinstance(shape, Path)
        start, end = shape.lines[0]
        assert end == 0j
        assert labels(lettering)["letter:A"].box.grown(GAP + 0.2).nearest(start) == start


def test_a_line_to_a_point_runs_through_no_other_label() -> None:
    """With a symbol half-way on its line, the letter goes elsewhere."""
    lettering = Lettering(Field())
    fenced(lettering, 20)
    lettering.name_points({"A": 0j}, {0j: 2.0})
    middle = labels(lettering)["letter:A"].box.centre / 2
    lettering = Lettering(Field())
    fenced(lettering, 20)
    box = box_around([middle - 3 - 3j, middle + 3 + 3j])
    lettering.field.add(Label(middle, "F", 9.0, box))
    lettering.name_points({"A": 0j}, {0j: 2.0})
    (led,) = (s for s in lettering.field.shapes if str(s.tag) == "leader:letter:A")
    assert isinstance(led, Path)
    ((start, end),) = led.lines
    places = (start + (end - start) * step / 20 for step in range(21))
    assert all(box.nearest(at) != at for at in places)


def test_a_symbol_goes_past_the_head_of_its_force_where_only_its_components_are_as_near() -> None:
    """A neighbour to the left keeps it from the side of its force, as do the components."""
    tail, head = 0j, 40 - 32j
    whole = placed("FORCE", tail, head)
    legs = [
        replace(placed("x", -32j, head, component=True), of="FORCE"),
        replace(placed("y", 40 + 0j, head, component=True), of="FORCE"),
    ]
    other = placed("G", tail, -32j)
    box = named(whole, *legs, other, spots=(tail,))["label:FORCE"].box
    assert box.top < head.imag or box.left > head.real
    assert abs(box.nearest(head) - head) < 12


def test_components_whose_long_symbols_have_no_place_are_called_by_letters() -> None:
    """In a truss, where a root stands beside a short arrow between two others."""
    path = next(path for path in TEMPLATES if path.stem == "footbridge-truss-crowd")
    problem = prepare(
        read_template(path.read_text(encoding="utf-8"), path.name),
        Convention(torque="components"),
    )
    scene = free_body_scenes(problem, solved(problem, 1)[0])["part-A-B-C"]
    ((whole,), (upright,)) = (
        [shape for shape in scene.showing(what, id) if isinstance(shape, Arrow)]
        for what, id in ((What.FORCE, "F_BE"), (What.COMPONENT, "F_BE.y"))
    )
    assert upright.tail.real > whole.tail.real + 13.0  # on the side of its force without a member
    for axis in "xy":
        (leg,) = scene.showing(What.LABEL, f"F_BE.{axis}")
        assert isinstance(leg, Label)
        assert leg.text == Name(f"F_BE.{axis}", component_symbol("F_" + italic("BE"), axis))


@pytest.mark.parametrize("id", ["bent-back-toolbox", "footbridge-truss-crowd", "triceps-band"])
def test_the_long_symbols_of_components_stand_close_by_them(id: str) -> None:
    """Those of a force laid off in a diagram: F cos theta is longer than its arrow."""
    path = next(path for path in TEMPLATES if path.stem == id)
    problem = prepare(
        read_template(path.read_text(encoding="utf-8"), path.name),
        Convention(torque="components"),
    )
    legs = 0
    for own in solved(problem, 4):
        for scene in free_body_scenes(problem, own).values():
            for leg in (s for s in scene.shapes if s.tag.what is What.COMPONENT):
                assert isinstance(leg, Arrow)
                (label,) = scene.showing(What.LABEL, leg.tag.of)
                assert isinstance(label, Label)
                spots = [leg.tail + i / 20 * (leg.head - leg.tail) for i in range(21)]
                assert min(abs(label.box.nearest(spot) - spot) for spot in spots) < 8.0
                legs += 1
    assert legs
