"""Curves along a beam: right below it, at one scale each, and every value that is told is true."""

from __future__ import annotations

import pytest

from probgen.figures.inside.diagram import Row, diagram
from probgen.figures.paper.scene import HEAVY, Label, Path, Scene, bounds, line
from probgen.figures.paper.tag import Tag, What
from probgen.quantities.expression import Name, Number, number
from probgen.quantities.rounding import round_figures
from probgen.statics.internal_forces import Inside, InternalForces, Load, Piece

SCALE, START = 40.0, 25.0 + 5.0j
# 6 m on two supports under 900 N at 2 m: 600 N and 300 N.
BEAM = InternalForces(
    "beam",
    6.0,
    (
        Piece(0.0, 2.0, (0.0,), (600.0,), (0.0, 600.0)),
        Piece(2.0, 6.0, (0.0,), (-300.0,), (1800.0, -300.0)),
    ),
    (Load(2.0, 2.0, (0.0,), (-900.0,)),),
)
# The same length under 100 N/m: 450 N m in the middle.
EVEN = InternalForces(
    "beam", 6.0, (Piece(0.0, 6.0, (0.0,), (300.0, -100.0), (0.0, 300.0, -50.0)),), ()
)


def printed(value: float) -> Number:
    return Number(round_figures(value, 3))


# 6 m on two supports under 200 N/m and 400 N at 1.2 m.
JUMP = InternalForces(
    "beam",
    6.0,
    (
        Piece(0.0, 1.2, (0.0,), (920.0, -200.0), (0.0, 920.0, -100.0)),
        Piece(1.2, 6.0, (0.0,), (520.0, -200.0), (480.0, 520.0, -100.0)),
    ),
    (Load(1.2, 1.2, (0.0,), (-400.0,)),),
)


# 620 N/m on the first 2.5 m, and 575 N at 3 m: three values of M close together.
CLOSE = InternalForces(
    "beam",
    3662.5 / 852.0,
    (
        Piece(0.0, 2.5, (0.0,), (1273.0, -620.0), (0.0, 1273.0, -310.0)),
        Piece(2.5, 3.0, (0.0,), (-277.0,), (1937.5, -277.0)),
        Piece(3.0, 3662.5 / 852.0, (0.0,), (-852.0,), (3662.5, -852.0)),
    ),
    (Load(3.0, 3.0, (0.0,), (-575.0,)),),
)


def drawn(found: InternalForces, *, bare: bool = False, asked: tuple[float, ...] = ()) -> Scene:
    beam = line(START, START + found.length * SCALE, HEAVY, Tag(What.BODY, "beam"))
    measure = line(START + 9j, START + 80 + 9j, HEAVY, Tag(What.DIMENSION, "a"))
    above = Scene((beam, measure), bounds([beam, measure]), SCALE)
    rows = tuple(
        Row(of, Name(of.value, of.name[0]), "N", printed) for of in (Inside.SHEAR, Inside.MOMENT)
    )
    return diagram(found, None if bare else above, START, rows, "words", asked)


def curve(scene: Scene, of: Inside) -> tuple[complex, ...]:
    """The one stroke of a row that is no outline and no zero line."""
    strokes = [s for s in scene.showing(What.DIAGRAM, of) if isinstance(s, Path) and not s.closed]
    return max((stroke.lines[0] for stroke in strokes), key=len)


@pytest.mark.parametrize("found", [BEAM, EVEN])
@pytest.mark.parametrize("of", [Inside.SHEAR, Inside.MOMENT])
def test_a_curve_is_to_scale_and_below_the_beam(found: InternalForces, of: Inside) -> None:
    spots = curve(drawn(found), of)
    zero = spots[0].imag
    most = found.largest(of)
    rise = (max(spots, key=lambda spot: abs(spot.imag - zero)).imag - zero) / most.value
    assert rise > 0.0  # positive values upward
    for spot in spots[1:-1]:
        x = (spot.real - START.real) / SCALE
        sides = [found.at(x, of, before=before) for before in (True, False)]
        assert min(abs((spot.imag - zero) / rise - side) for side in sides) < 1e-6
    assert (spots[0].real, spots[-1].real) == (START.real, START.real + 6.0 * SCALE)
    assert max(spot.imag for spot in spots) < START.imag


def values(scene: Scene) -> list[float]:
    return [float(label.text.value) for label in scene.labels if isinstance(label.text, Number)]


def test_values_are_told_at_jumps_and_where_a_curve_turns() -> None:
    assert values(drawn(BEAM)) == [600.0, -300.0, 1200.0]
    assert values(drawn(EVEN)) == [300.0, -300.0, 450.0]


def test_either_value_of_a_jump_is_told_on_its_own_side() -> None:
    jump = START.real + 1.2 * SCALE
    left, right = (
        next(label.box for label in drawn(JUMP).labels if label.text == printed(value))
        for value in (680.0, 280.0)
    )
    assert left.right <= jump <= right.left


@pytest.mark.parametrize(
    "places",
    [
        {1245.0: 2.5, 1306.9: 1273.0 / 620.0, 1106.5: 3.0},
        {1273.0: 0.0, -277.0: 2.75, -852.0: 3.65},
    ],
    ids=["moment", "shear"],
)
def test_values_close_together_stand_at_their_own_places(places: dict[float, float]) -> None:
    marks = {value: START.real + x * SCALE for value, x in places.items()}
    labels = {label.text: label.box for label in drawn(CLOSE).labels}
    for value, own in marks.items():
        middle = labels[printed(value)].centre.real
        assert min(marks.values(), key=lambda mark: abs(mark - middle)) == own


def test_dashed_lines_leave_the_values_free_that_stand_on_them() -> None:
    scene = drawn(CLOSE)
    guides = [s for s in scene.shapes if isinstance(s, Path) and s.pen.dash]
    pieces = [bounds([Path((each,), HEAVY)]) for guide in guides for each in guide.lines]
    assert len(pieces) > len(guides)  # one is broken
    assert not any(piece.overlaps(label.box) for piece in pieces for label in scene.labels)


def test_a_section_that_is_asked_has_its_values_and_a_dashed_line() -> None:
    scene = drawn(BEAM, asked=(1.0, 4.0))
    assert values(scene) == [600.0, -300.0, 1200.0, 600.0, 600.0]  # of V they are told
    for x in (1.0, 4.0):
        across = START.real + x * SCALE
        guides = [s for s in scene.shapes if isinstance(s, Path) and s.pen.dash]
        assert any(all(abs(spot.real - across) < 1e-6 for spot in g.lines[0]) for g in guides)


def test_shear_is_above_moment_and_no_label_meets_a_stroke_of_another() -> None:
    scene = drawn(BEAM)
    low = min(spot.imag for spot in curve(scene, Inside.SHEAR))
    assert low > max(spot.imag for spot in curve(scene, Inside.MOMENT))
    boxes = [shape.box for shape in scene.shapes if isinstance(shape, Label)]
    assert not any(a.overlaps(b) for at, a in enumerate(boxes) for b in boxes[:at])
    assert all(scene.box.holds(box) for box in boxes)


def test_measures_of_the_situation_are_left_out() -> None:
    scene = drawn(BEAM)
    assert scene.showing(What.BODY)
    assert not scene.showing(What.DIMENSION)


def test_a_dashed_line_leads_from_no_shear_to_the_largest_moment() -> None:
    middle = START.real + 3.0 * SCALE
    guides = [s for s in drawn(EVEN).shapes if isinstance(s, Path) and s.pen.dash]
    assert sum(all(abs(spot.real - middle) < 1e-6 for spot in g.lines[0]) for g in guides) == 1


def test_without_a_figure_to_scale_there_is_a_bar() -> None:
    scene = drawn(BEAM, bare=True)
    (bar,) = scene.showing(What.BODY, "beam")
    spots = curve(scene, Inside.SHEAR)
    assert bounds([bar]).left == pytest.approx(spots[0].real, abs=1.0)
    assert bounds([bar]).right == pytest.approx(spots[-1].real, abs=1.0)
    assert number(0) not in [label.text for label in scene.labels]
