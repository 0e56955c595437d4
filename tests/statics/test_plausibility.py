"""What no balance minds: forces off their body, weights that lift, directions near an axis."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.draws.sample import sample
from probgen.input.fault import InputError
from probgen.problem.problem import prepare, proved_values
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.plausibility import NEAR_AXIS, implausible
from probgen.working.convention import Convention
from tests.bank.test_shape import PLATE, part
from tests.situations import BRACKET, FIND_R, FIND_T, HEAD, HINGED, SHELF, STAYED, TWO_BEAMS


def flaws(text: str) -> dict[Flaw, int]:
    """What is wrong, and with how many of 40 draws."""
    problem = prepare(read_template(text, "own.toml"), Convention())
    solved, proof = proved_values(problem, sample(problem.template, 40).values)
    found = implausible(problem.plan, {**proof.values, **solved})
    return {flaw: int(np.sum(wrong)) for flaw, wrong in found}


BOARD = SHELF + HINGED + STAYED + FIND_T
POINT = "[points]\nA = [0, 0]\n"


def extra(place: str, entry: str) -> str:
    """The shelf with one more thing that acts at a point X of its own."""
    text = BOARD.replace(POINT, f"{POINT}X = {place}\n")
    assert text != BOARD
    return text + entry


BUCKET = '[[weight]]\nat = "X"\nmass = "m"\nof = "bucket"\nsymbol = "W_x"\n'
LINE = '[[cable]]\nat = "X"\ndirection = {}\nmagnitude = "5 N"\nsymbol = "F_x"\n'
HAND = '[[force]]\nat = "X"\ndirection = 90\nmagnitude = "5 N"\nsymbol = "F_x"\n'
ROW = '[[distributed]]\nfrom = "A"\nto = "X"\nload = "9 N/m"\nsymbol = "W_x"\n'

PLACES = [
    ('["-1 cm", 0]', BUCKET, "W_x"),  # beyond one end
    ('["L + 1 cm", 0]', BUCKET, "W_x"),
    ('["L + 1 cm", "30 cm"]', BUCKET, "W_x"),  # above, but beyond
    ('["L", 0]', BUCKET, ""),
    ('["d", "30 cm"]', BUCKET, ""),  # its centre of mass lies above the shelf
    ('["-10 cm", 0]', LINE.format(90), "F_x"),
    ('["-10 cm", "10 cm"]', LINE.format(-45), ""),  # told by its line, which meets the end A
    ('["-10 cm", "10 cm"]', LINE.format(-30), ""),
    ('["-10 cm", "10 cm"]', LINE.format(45), "F_x"),
    ('["-10 cm", 0]', HAND, ""),  # a hand may hold a handle
    ('["L", 0]', ROW, ""),
    ('["L + 10 cm", 0]', ROW, "W_x"),
]  # fmt: skip


@pytest.mark.parametrize(("place", "entry", "off"), PLACES)
def test_what_acts_beyond_the_end_of_its_body(place: str, entry: str, off: str) -> None:
    found = flaws(extra(place, entry))
    assert [flaw.quantity for flaw in found] == ([off] if off else [])
    assert all(flaw.kind is FlawKind.OFF_BODY and flaw.body == "shelf" for flaw in found)
    assert set(found.values()) <= {40}


UPRIGHT = '[points]\nA = [0, 0]\nB = [0, "L"]\nC = [0, "d"]\n'


@pytest.mark.parametrize(("place", "off"), [('["1 cm", "L + 5 cm"]', 0), ('[0, "-5 cm"]', 1)])
def test_a_weight_may_stand_on_an_upright_body_and_not_below_it(place: str, off: int) -> None:
    level = f'{POINT}B = ["L", 0]\nC = ["d", 0]\n'
    assert level in BOARD
    text = BOARD.replace(level, f"{UPRIGHT}X = {place}\n") + BUCKET
    assert len(flaws(text)) == off


OUTLINE = BRACKET.replace('along = ["A", "K", "E"]', 'along = ["A", "K", "E", "A"]').replace(
    "[body.bracket]", "X = [<place>]\n[body.bracket]"
)


@pytest.mark.parametrize(
    ("place", "off"),
    [('"1.5 m", "0.2 m"', 0), ('"1 m", 0', 0), ('"0.5 m", "0.3 m"', 1), ('"1 m", "-1 mm"', 1)],
)
def test_a_closed_outline_holds_what_is_inside(place: str, off: int) -> None:
    """The triangle (0, 0), (2 m, 0), (2 m, 0.5 m)."""
    found = flaws(OUTLINE.replace("<place>", place) + BUCKET)
    assert [flaw.quantity for flaw in found] == ["W_x"] * off


CUT = """
[[cut]]
body = "left"
at = "X"
axis = 0
axial = "P"
shear = "V"
couple = "M_X"
"""


@pytest.mark.parametrize(("place", "off"), [('["L/2", 0]', 0), ('["-10 cm", 0]', 1)])
def test_a_section_is_on_the_member_it_cuts(place: str, off: int) -> None:
    text = TWO_BEAMS.replace(POINT, f"{POINT}X = {place}\n")
    fixed, rest = text.split("[[fixed]]")
    end = rest.index("[[roller]]")
    found = flaws(fixed + CUT + rest[end:].replace('"M_A"', '"V"'))
    assert [flaw.kind for flaw in found] == [FlawKind.OFF_SECTION] * off


CURVED = ROW.replace('"X"', '"B"').replace('load = "9 N/m"', 'intensity = "{}"')


@pytest.mark.parametrize(
    ("load", "turned"),
    [
        ("(9 N/m)*(1 - x/(1.2 m))", 0),
        ("(9 N/m)*(1 - x/(1.1 m))", 20),  # in draws of 1.2 m, not of 1.0 m
        ("(9 N/m)*(1 - 4*x/L + 4*(x/L)^2)", 0),  # none at its middle
        ("(9 N/m)*(0.9 - 4*x/L + 4*(x/L)^2)", 40),
    ],
)
def test_a_load_that_turns_within_its_length(load: str, turned: int) -> None:
    text = BOARD.replace("choices = [1.20]", "choices = [1.00, 1.20]").replace("[0.96]", "[0.80]")
    if turned == 40:
        with pytest.raises(InputError, match="nowhere below zero"):
            flaws(text + CURVED.format(load))
        return
    found = flaws(text + CURVED.format(load))
    assert [flaw.kind for flaw in found] == [FlawKind.TURNED_LOAD] * (turned > 0)
    assert all(10 < count < 30 for count in found.values())


HOLES = [
    ('circle = "E"\nradius = "r"', 1),  # over the lower edge
    ('circle = "Q"\nradius = "r"', 0),
    ('circle = "Q"\nradius = "2*r"', 1),  # over the upper and the lower edge
    ('circle = "B"\nradius = "r"', 1),
    ('rectangle = ["O", "E"]', 0),
    ('rectangle = ["E", "X"]', 1),  # a corner of it beyond the right edge
    ('triangle = ["O", "E", "D"]', 0),
    ('triangle = ["O", "E", "X"]', 1),
    ('half_circle = "O"\nradius = "r"\nfacing = "right"', 1),  # half of it below
    ('half_circle = "E"\nradius = "h/4"\nfacing = "down"', 0),  # down to the edge
]


@pytest.mark.parametrize(("hole", "beyond"), HOLES)
def test_a_hole_is_cut_out_of_what_is_there(hole: str, beyond: int) -> None:
    text = PLATE.replace("Q = [", 'X = ["b + r", "h/2"]\nQ = [')
    plate = text + part('rectangle = ["O", "B"]') + part(hole, symbol="W_2", more="hole = true")
    found = flaws(HEAD + plate)
    assert [(each.kind, each.quantity) for each in found] == [
        (FlawKind.HOLE_BEYOND, "W_2")
    ] * beyond


@pytest.mark.parametrize(
    ("other", "beyond"),
    [
        ('half_circle = "M"\nradius = "h/2"\nfacing = "right"', 0),
        ('half_circle = "M"\nradius = "h/2"\nfacing = "left"', 1),
        ('circle = "M"\nradius = "h/2"', 0),
        ('triangle = ["B", "D", "X"]', 1),
    ],
)
def test_a_hole_may_lie_in_two_parts(other: str, beyond: int) -> None:
    """A round one about the middle of the edge between them."""
    text = PLATE.replace("Q = [", 'X = ["b + r", "h/2"]\nM = ["b", "h/2"]\nQ = [')
    hole = part('circle = "M"\nradius = "r"', symbol="W_3", more="hole = true")
    parts = part('rectangle = ["O", "B"]') + part(other, symbol="W_2")
    assert len(flaws(HEAD + text + parts + hole)) == beyond


@pytest.mark.parametrize(("facing", "off"), [("right", 0), ("left", 1)])
def test_a_round_edge_is_a_part_of_its_body(facing: str, off: int) -> None:
    """A cord at the rim of half a disc beside the rectangle that the body is told by."""
    text = PLATE.replace("Q = [", 'X = ["b + h/2", "h/2"]\nM = ["b", "h/2"]\nQ = [')
    disc = part(f'half_circle = "M"\nradius = "h/2"\nfacing = "{facing}"', symbol="W_2")
    cord = '[[cable]]\nat = "X"\ndirection = 90\nmagnitude = "9 N"\nsymbol = "F_x"\n'
    found = flaws(HEAD + text + part('rectangle = ["O", "B"]') + disc + cord)
    assert [(each.kind, each.quantity) for each in found] == [(FlawKind.OFF_BODY, "F_x")] * off


def test_a_weight_that_would_lift() -> None:
    """A mass of M - 10 kg where M is 8 kg."""
    found = flaws(extra('["L", 0]', BUCKET.replace('"m"', '"M - 10 kg"')))
    assert found == {Flaw(FlawKind.LIFTING_WEIGHT, "W_x"): 40}
    assert flaws(extra('["L", 0]', BUCKET.replace('"m"', '"M - 8 kg"'))) == {}


@pytest.mark.parametrize(
    ("mass", "axis"),
    [
        ("8.0", "y"),  # R_x = 146 N, R_y = -4.9 N: 1.9 degrees off the horizontal
        ("2.0", ""),  # R_x = 58.4 N, R_y = 9.8 N: 9.5 degrees
        ("14.4", ""),  # R_x = 239 N, R_y = -20.6 N: 4.9 degrees
    ],
)
def test_a_direction_near_an_axis(mass: str, axis: str) -> None:
    text = SHELF.replace("choices = [8.0]", f"choices = [{mass}]") + HINGED + STAYED + FIND_R
    found = flaws(text)
    assert [flaw.place for flaw in found] == ([axis] if axis else [])
    assert {flaw.kind for flaw in found} <= {FlawKind.NEAR_AXIS}


PINNED = (
    HEAD
    + """
[given]
F = { name = "pull", choices = [100], unit = "N" }
beta = { name = "slope", choices = [<slope>], unit = "deg" }
[points]
A = [0, 0]
B = ["1 m", 0]
[body.bar]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[fulcrum]]
at = "B"
symbol = "N"
[[force]]
at = "A"
magnitude = "F"
direction = "beta"
"""
    + FIND_R
)


@pytest.mark.parametrize(("slope", "near"), [(2.8, 1), (2.9, 0), (0, 0), (87.2, 1), (87, 0)])
def test_the_bound_and_a_direction_exactly_along_an_axis(slope: float, near: int) -> None:
    """The pin holds the pull alone: its force is opposite; asin(0.05) = 2.866 degrees."""
    assert np.degrees(np.arcsin(NEAR_AXIS)) == pytest.approx(2.866, abs=1e-3)
    found = flaws(PINNED.replace("<slope>", str(slope)))
    assert [flaw.place for flaw in found] == (["x" if slope > 45 else "y"] if near else [])
