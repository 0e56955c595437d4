"""What a proof found wrong, in an author's words and units."""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.problem.flaw_words import flaws_told
from probgen.quantities.unit import SI, US_CUSTOMARY
from probgen.statics.flaw import Flaw, FlawKind
from tests.bank.test_largest_moment import EVEN, asked
from tests.bank.test_section import BEAM, ON_TWO
from tests.situations import FIND_T, HEAD, HINGED, SHELF, SLIDES, STAYED, cabinet, finding

HANGING = SHELF + HINGED + STAYED + FIND_T
CABINET = cabinet() + SLIDES + finding("P", "largest")
CURVED = """
[[distributed]]
from = "A"
to = "B"
intensity = "(30 N/m)*(x/L)^2"
symbol = "W"
name = "snow"
"""
BENT = HEAD + BEAM + ON_TWO + EVEN + asked('between = ["D", "B"]')
PULLS = "it can only pull; turn it round or change the values"
PUSHES = "a surface can only push, so the body lifts off there; change the values"

TOLD = [
    (HANGING, Flaw(FlawKind.UNBALANCED), "the balances do not close"),
    (HANGING, Flaw(FlawKind.DISPUTED), "the second solver finds other values"),
    (HANGING, Flaw(FlawKind.NEGATIVE, "T", value=-12.34567),
     f"tension in the cable (T) comes out negative, -12.35 N: {PULLS}"),
    (HANGING, Flaw(FlawKind.NEGATIVE, "M", value=-2.0),
     "load mass (M) comes out negative, -2 kg"),
    (CABINET, Flaw(FlawKind.NEGATIVE, "N", value=-3.0),
     f"normal force from the floor (N) comes out negative, -3 N: {PUSHES}"),
    (CABINET, Flaw(FlawKind.TOO_LOW, "x", value=0.0),
     "distance of the normal force (x) is below 0 m"),
    (CABINET, Flaw(FlawKind.TOO_HIGH, "x", value=0.5),
     "distance of the normal force (x) is above 0.5 m"),
    (CABINET, Flaw(FlawKind.SECOND_VALUE, "x", value=0.25),
     "distance of the normal force (x) may also be 0.25 m: narrow its range with from and to"),
    (CABINET, Flaw(FlawKind.OTHER_FORMULA, "x", value=0.25),
     "distance of the normal force (x) is 0.25 m, by another formula than in most draws, such as "
     "past a right angle: keep all draws on one side, with a [[require]] or other ranges"),
    (CABINET, Flaw(FlawKind.PASSED, limit="slides"), "it slides"),
    (CABINET, Flaw(FlawKind.PASSED_AT_ZERO, "P", "slides"),
     "it slides already with P = 0: raise the limit or change the values"),
    (HANGING + CURVED, Flaw(FlawKind.TURNED_LOAD, "W"),
     "the load of the snow (W) is below zero somewhere along its length"),
    (HANGING, Flaw(FlawKind.LIFTING_WEIGHT, "W_t"), "the weight of the load (W_t) is below zero"),
    (HANGING, Flaw(FlawKind.OFF_BODY, "T", place="C", body="shelf"),
     "the cable acts at C, which lies beyond the shelf"),
    (HANGING, Flaw(FlawKind.HOLE_BEYOND, "W_t", body="shelf"),
     "the load (W_t) is cut out beyond the shelf"),
    (HANGING, Flaw(FlawKind.OFF_SECTION, "T", place="C", body="shelf"),
     "the section at C is not on the shelf"),
    (HANGING, Flaw(FlawKind.NO_LENGTH, body="shelf"), "the shelf has no length to be cut along"),
    (HANGING, Flaw(FlawKind.NEAR_AXIS, "R", place="y"),
     "the force from the hinge (R) is so nearly horizontal that the tolerance of a direction "
     "cannot tell which side is meant; add a [[require]] with that = "
     '"abs(R.y) > 0.05*hypot(R.x, R.y)" and a because'),
    (HANGING, Flaw(FlawKind.NEAR_AXIS, "R", place="x"),
     "the force from the hinge (R) is so nearly vertical that the tolerance of a direction "
     "cannot tell which side is meant; add a [[require]] with that = "
     '"abs(R.x) > 0.05*hypot(R.x, R.y)" and a because'),
    (HANGING, Flaw(FlawKind.NO_DIRECTION, "R"),
     "the force from the hinge (R) is zero, so it has no direction: ask for its components, or "
     "keep it from zero with a [[require]] or other ranges"),
    (BENT, Flaw(FlawKind.LARGER_ELSEWHERE, "M_max", value=1.5, place="A"),
     "the bending moment is as large or larger 1.5 m from A, not largest between D and B (M_max): "
     "keep it there with a [[require]] on x_m and the loads, or ask for it elsewhere"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "flaw", "said"), TOLD, ids=[said for _, _, said in TOLD])
def test_each_flaw(text: str, flaw: Flaw, said: str) -> None:
    assert flaws_told(read_template(text, "own.toml"), [flaw]) == said


def test_a_value_is_in_its_quantity_s_unit() -> None:
    text = CABINET.replace('x = { name = "distance of the normal force", unit = "m"',
                           'x = { name = "distance of the normal force", unit = "cm"')  # fmt: skip
    said = flaws_told(read_template(text, "own.toml"), [Flaw(FlawKind.TOO_HIGH, "x", value=0.5)])
    assert said.endswith("is above 50 cm")


def test_no_value_names_its_likely_reasons() -> None:
    template = read_template(HANGING, "own.toml")
    said = flaws_told(template, [Flaw(FlawKind.NO_VALUE, "T")])
    assert said.startswith("tension in the cable (T) has no value for these numbers")


def test_several_stand_in_one_line() -> None:
    template = read_template(HANGING, "own.toml")
    flaws = [Flaw(FlawKind.UNBALANCED), Flaw(FlawKind.DISPUTED)]
    assert flaws_told(template, flaws) == (
        "the balances do not close; the second solver finds other values"
    )


STRUT = '[[strut]]\nat = "C"\ndirection = 60\nsymbol = "S"\nname = "prop"\n'


def test_a_strut_can_only_push() -> None:
    template = read_template(SHELF + HINGED + STRUT + finding("S"), "own.toml")
    said = flaws_told(template, [Flaw(FlawKind.NEGATIVE, "S", value=-1.0)])
    assert said == (
        "push of the prop (S) comes out negative, -1 N: it can only push; turn it round or "
        "change the values"
    )


def test_values_are_told_in_the_units_that_the_template_is_read_in() -> None:
    flaw = Flaw(FlawKind.NEGATIVE, "T", value=-44.482216)
    for units, value in ((SI, "-44.48 N"), (US_CUSTOMARY, "-10 lbf")):
        template = default_bank().read("beam-stay-cable", units)
        assert f"comes out negative, {value}: it can only pull" in flaws_told(template, [flaw])
