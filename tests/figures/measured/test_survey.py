"""What can be measured on a system: its places, its named lengths and angles."""

from __future__ import annotations

import cmath
import math
from pathlib import Path

import pytest

from probgen.bank.labels import Labels
from probgen.bank.reading import read_template
from probgen.figures.measured.opening import openings
from probgen.figures.measured.survey import is_distorted, mass_name, spans, survey, ways_out
from probgen.problem.single import work_single
from tests.figures.conftest import CASES, Case
from tests.figures.seen import tagged
from tests.figures.sketches import CABINET, HINGED, SLOPE, read, sketch, surveyed, template_of

LENGTHS = {
    "beam": {"length", "cable_at", "load_at"},
    "ladder": {"length", "climber_at"},
    "forearm": {"insertion", "forearm_center", "load_distance"},
    "seesaw": {"distance_1", "distance_2"},
}
ANGLES = {"beam": {"cable_angle"}, "ladder": {"ladder_angle"}, "forearm": {"muscle_angle"}}


@pytest.mark.parametrize("name", CASES)
def test_every_named_length_and_angle_is_found_once(
    cases: dict[tuple[str, int], Case], name: str
) -> None:
    case = cases[name, 2]
    measured = survey(case.system, case.labels, case.values)
    assert sorted(span.id for span in spans(measured)) == sorted(LENGTHS[name])
    assert sorted(o.id for o in openings(measured)) == sorted(ANGLES.get(name, set()))


@pytest.mark.parametrize("name", CASES)
def test_lengths_and_angles_have_their_values(
    cases: dict[tuple[str, int], Case], name: str
) -> None:
    case = cases[name, 3]
    measured = survey(case.system, case.labels, case.values)
    for span in spans(measured):
        assert abs(span.end - span.start) == pytest.approx(case.values[span.id])
    for opening in openings(measured):
        difference = abs(opening.direction - opening.reference)
        assert difference == pytest.approx(case.values[opening.id])


@pytest.mark.parametrize(
    ("name", "reference"), [("beam", 180.0), ("ladder", 0.0), ("forearm", 90.0)]
)
def test_angle_is_measured_from_the_line_it_was_stated_from(
    cases: dict[tuple[str, int], Case], name: str, reference: float
) -> None:
    case = cases[name, 1]
    (opening,) = openings(survey(case.system, case.labels, case.values))
    assert opening.reference == pytest.approx(reference)


def test_places_follow_the_links(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["ladder", 0]
    top = survey(case.system, case.labels, case.values).places["B"]
    angle = math.radians(case.values["ladder_angle"])
    assert top == pytest.approx(cmath.rect(case.values["length"], angle))


def test_length_without_a_value_is_sketched(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["seesaw", 0]
    assert survey(case.system, case.labels, case.known).sketched == {"distance_2"}
    assert survey(case.system, case.labels, case.values).sketched == frozenset()


# Two points laid off by parts of the length from one place, and whether they measure it.
PARTS = [
    ("length/2", 0, "length/2", 180, True),
    ("length/4", 0, "3*length/4", 180, False),  # as far apart, but not to both sides alike
    ("length/2", 0, "length/4", 180, False),
    ("length/2", 0, "length/2", 90, False),
]


@pytest.mark.parametrize(("first", "one", "second", "other", "halved"), PARTS)
def test_a_length_laid_off_by_halves_is_measured_between_the_ends(
    first: str, one: int, second: str, other: int, halved: bool
) -> None:
    source = (Path(__file__).parents[1] / "cases" / "beam.toml").read_text(encoding="utf-8")
    laid = (
        f'B = {{ from = "A", distance = "{first}", direction = {one} }}\n'
        f'E = {{ from = "A", distance = "{second}", direction = {other} }}'
    )
    assert 'B = ["length", "0"]' in source
    text = source.replace('B = ["length", "0"]', laid).replace('["A", "B"]', '["E", "B"]')
    system = read_template(text, "own.toml").system
    values = {"length": 2.0, "cable_at": 0.5, "load_at": 0.25, "cable_angle": 30.0, "g": 9.8}
    found = spans(survey(system, Labels(), {**values, "beam_mass": 1.0, "load_mass": 1.0}))
    ends = [end for s in found if s.id == "length" for end in (s.start, s.end)]
    assert ends == pytest.approx([-1, 1] * halved)


@pytest.mark.parametrize(
    ("at", "ways"), [(0j, [2]), (2 + 0j, [-2, 1j]), (1 + 0j, [-1, 1]), (1j, [])]
)
def test_ways_out_of_a_bent_body(at: complex, ways: list[complex]) -> None:
    assert ways_out((0j, 2 + 0j, 2 + 1j), at) == pytest.approx(ways)


def test_a_place_named_twice_does_not_end_a_body_s_axis() -> None:
    assert ways_out((0j, 0j, 2 + 0j, 2 + 1j), 2 + 0j) == [-2, 1j]


def test_weight_is_labelled_by_its_mass(cases: dict[tuple[str, int], Case]) -> None:
    system = cases["beam", 0].system
    name = mass_name(system, system.element("W_l"))
    assert name is not None
    assert name.id == "load_mass"


@pytest.mark.parametrize(
    ("weight", "told"),
    [('"w*L"', None), ('"2*p"', "p"), ('"m*g/2"', "m"), ('"p + m*g"', "m")],
)
def test_a_weight_of_several_quantities_is_labelled_by_none_but_a_mass(
    weight: str, told: str | None
) -> None:
    pushed = HINGED.replace("WAY", "90").replace('mass = "m"', f"force = {weight}")
    template = template_of('p = { name = "push", choices = [9], unit = "N" }\n' + pushed)
    name = mass_name(template.system, template.system.element("W"))
    assert (name and name.id) == told


def test_what_is_sketched_distorts_a_drawing(cases: dict[tuple[str, int], Case]) -> None:
    case = cases["seesaw", 0]
    assert is_distorted(survey(case.system, case.labels, case.known))
    assert not is_distorted(survey(case.system, case.labels, case.values))


@pytest.mark.parametrize(
    ("name", "distorted"),
    [
        ("plank-raised-slowly", True),  # the slope of the surface
        ("garland-two-lanterns", True),  # that of a cord
        ("spring-scales-baskets", False),  # by how much springs are longer, which is not drawn
    ],
)
def test_what_is_not_drawn_distorts_nothing(name: str, distorted: bool) -> None:
    single = work_single(name, 1)
    template, own = single.problem.template, single.worked
    known = {id: own.case.values[id] for id in (*own.draw.values, "g")}
    measured = survey(own.case.system, template.labels, known)
    assert measured.sketched
    assert is_distorted(measured) is distorted


def test_unknown_position_is_sketched_on_the_body_and_not_told_unless_asked() -> None:
    template, values, _ = read(CABINET)
    assert 0 < survey(template.system, template.labels, values).places["Q"].real < values["L"]
    scene = sketch(CABINET)
    assert not tagged(scene, "dimension:x")
    assert not tagged(scene, "letter:Q")


def test_what_a_surface_pushes_along_opens_no_angle() -> None:
    """The slope's own angle is drawn with the slope."""
    template, values, _ = read(SLOPE)
    assert openings(surveyed(template, values)) == ()


def test_a_force_by_components_has_no_direction_that_a_figure_could_show() -> None:
    """A hand at the end of a bar, with and without a direction that is known."""
    known = HINGED.replace("[[cable]]", "[[force]]").replace("WAY", "45")
    by_parts = known.replace('direction = 45\nsymbol = "T"', 'symbol = "T"\nname = "hand"')
    for text, way in ((known, 45.0), (by_parts + 'as = "components"\n', None)):
        template, values, _ = read(text)
        measured = surveyed(template, values)
        assert measured.direction_of(template.system.element("T")) == way
        assert bool(tagged(sketch(text), "force:T")) is (way is not None)


BEYOND = ['Q = ["L/2 + x", 0]', 'M = ["L/2", 0]\nQ = { from = "M", distance = "x", direction = 0 }']


@pytest.mark.parametrize("beyond", BEYOND)
def test_a_length_beyond_another_is_sketched_on_the_body_too(beyond: str) -> None:
    """0.62 of 3 m beyond the middle is off the base, 0.62 of that too near to its corner."""
    template, values, _ = read(CABINET.replace('Q = ["x", 0]', beyond))
    place = surveyed(template, values).places["Q"]
    assert place == pytest.approx(1.5 + 0.62**3 * 3.0)


@pytest.mark.parametrize(("way", "reflex"), [(140, False), (180, False), (215, True), (330, True)])
def test_an_angle_of_more_than_half_a_turn_is_told_apart(way: int, reflex: bool) -> None:
    template, values, _ = read(HINGED.replace("WAY", '"theta"'))
    (opening,) = openings(surveyed(template, {**values, "theta": float(way)}))
    assert opening.reflex is reflex


def test_a_length_is_not_sketched_as_if_it_led_to_an_end() -> None:
    """0.62 of 6 m is 0.28 m before the corner of a base of 4 m; the next size is well inside."""
    wide = CABINET.replace('["L", 0]', '["4/3*L", 0]').replace('"2*L"', '"H"')
    wide = wide.replace(
        "[unknown]", '[given.H]\nname = "height"\nchoices = [6.0]\nunit = "m"\n[unknown]'
    )
    template, values, _ = read(wide)
    place = surveyed(template, values).places["Q"]
    assert place == pytest.approx(0.62**2 * 6.0)


def test_the_longer_arm_of_a_lever_is_found_behind_its_shorter_one() -> None:
    single = work_single("pump-handle")
    measured = survey(
        single.worked.case.system, single.problem.template.labels, single.worked.complete
    )
    values = single.worked.complete
    (handle,) = measured.system.bodies
    pivot = measured.places["O"]
    short, long = (180.0 - values["slope"], -values["slope"])
    assert measured.reach(pivot, short, handle) == pytest.approx(values["rod_at"])
    assert measured.reach(pivot, long) == pytest.approx(values["hand_at"])
    assert measured.reach(pivot, 90.0) == 0.0
    assert measured.is_longer_behind(pivot, short)
    assert not measured.is_longer_behind(pivot, long)
    assert not measured.is_longer_behind(measured.places["A"], short)
