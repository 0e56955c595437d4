"""The angle between a force and its arm, folded into 0 to 180 degrees; by hand, with theta = 40°.

The shelf's arm from its hinge A points along 0 degrees, from its end B back along 180 degrees.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from probgen.quantities.printing import plain
from probgen.statics.equation import Term, torque_balance
from probgen.wording.torque_angle import angle_between, angle_to_arm, partly_along
from probgen.working.convention import Convention
from probgen.working.digits import Digits
from tests.situations import BRACKET, STAYED_SHELF, TWO_SLOPES, worked
from tests.wording.own_telling import told_of


def pushed(direction: str) -> str:
    """The shelf with a small known force at its end."""
    force = f'[[force]]\nat = "B"\ndirection = {direction}\nmagnitude = "2 N"\nsymbol = "P"\n'
    return STAYED_SHELF + force


def terms(text: str, source: str, pivot: str = "A") -> Iterator[tuple[Digits, Term]]:
    problem, own = worked(text)
    system = own.case.system
    balance = torque_balance(system, (system.bodies[0].id,), pivot, problem.plan.method)
    for term in balance.terms:
        if term.source == source:
            yield own.digits, term


# A direction, the angle in letters and numbers, and what its sine is.
ANGLES = [
    ('"theta"', "θ = 40°", ""),
    ('"-theta"', "θ = 40°", ""),
    ('"180 - theta"', "180° − θ = 180° − 40° = 140°", "sin 140° = sin 40°"),
    ('"180 + theta"', "180° − θ = 180° − 40° = 140°", "sin 140° = sin 40°"),
    ('"90 + theta"', "90° + θ = 90° + 40° = 130°", "sin 130° = cos 40°"),
    ('"90 - theta"', "90° − θ = 90° − 40° = 50°", "sin 50° = cos 40°"),
    ('"270 - theta"', "90° + θ = 90° + 40° = 130°", "sin 130° = cos 40°"),
    ('"360 + theta"', "θ = 40°", ""),
    ('"360 - theta"', "θ = 40°", ""),
    ('"theta - 360"', "θ = 40°", ""),
    ('"-360 - theta"', "θ = 40°", ""),
    ('"540 - theta"', "180° − θ = 180° − 40° = 140°", "sin 140° = sin 40°"),
    ("270", "90°", "sin 90° = 1"),
    ("150", "150°", "sin 150° = sin 30°"),
    ("-30", "30°", ""),
]


@pytest.mark.parametrize(("direction", "angle", "sine"), ANGLES)
def test_the_angle_is_folded_in_letters_and_numbers(direction: str, angle: str, sine: str) -> None:
    ((digits, term),) = terms(pushed(direction), "P")
    found, ratio = angle_between(digits, term, frozenset(digits.case.values))
    assert plain(found) == angle
    assert (plain(ratio) if ratio else "") == sine


def test_an_angle_without_a_value_yet_is_told_in_letters() -> None:
    ((digits, term),) = terms(STAYED_SHELF, "T")
    angle, sine = angle_between(digits, term, frozenset())
    assert plain(angle) == "180° − θ"
    assert plain(sine) == "sin(180° − θ) = sin θ"
    ((digits, term),) = terms(pushed('"theta"'), "P")
    assert [plain(each) if each else "" for each in angle_between(digits, term, frozenset())] == [
        "θ", "",
    ]  # fmt: skip


def test_an_arm_that_leads_back_turns_the_angle_round() -> None:
    """From B the arm points along 180 degrees: 40 degrees from a cable at 140."""
    ((digits, term),) = terms(STAYED_SHELF, "T", "B")
    assert plain(angle_between(digits, term, frozenset(digits.case.values))[0]).endswith("40°")
    arm = angle_to_arm(digits, term)
    assert arm is not None
    assert plain(arm) == "40°"


def test_only_of_a_way_with_a_bend_a_part_may_run_along_the_force() -> None:
    """From A to E it runs along 0 and along 90 degrees; the cable pulls at 150."""
    both = list(terms(BRACKET, "T"))
    found = [plain(angle_between(d, term, frozenset(d.case.values))[0]) for d, term in both]
    assert found == ["150°", "60°"]
    assert [partly_along(digits, "A", term) for digits, term in both] == [True, True]
    ((digits, term),) = terms(STAYED_SHELF, "T")
    assert not partly_along(digits, "A", term)


def test_an_angle_that_lengths_tell_comes_with_its_tangent() -> None:
    """The strut of the first draw: 0.40 m down at 0.70 m along."""
    worked = "arctan(h/d) = arctan(0.40 m/(0.70 m)) = 29.74°"
    lines = told_of("sign-arm-strut")
    assert any(f"The angle between F and its arm AC is {worked}, and" in line for line in lines)
    assert any(f"F points {worked} above the horizontal" in line for line in lines)


def test_printed_angles_add_up_to_the_angle_that_is_told() -> None:
    """As in `test_numbers`."""
    ((digits, term),) = terms(TWO_SLOPES, "T")
    angle, _ = angle_between(digits, term, frozenset(digits.case.values))
    assert plain(angle) == "θ + φ = 31.57° + 33.27° = 64.84°"


def test_a_slanting_line_square_to_its_force_is_the_lever_arm_and_said_to_be() -> None:
    """A hand square to a crank; of a level beam and its loads there is nothing to say."""
    lines = told_of("well-windlass", Convention(torque="arm"))
    assert any(
        line.startswith("F acts at right angles to OH, so OH itself is its lever arm: c = ")
        for line in lines
    )
    by_parts = told_of("hip-one-leg", Convention(torque="components"))
    assert any("F acts at (−a sin α, a cos α), at right angles to OM, with" in x for x in by_parts)
    level = told_of("seesaw-two-riders", Convention(torque="arm"))
    assert not any("right angles" in line for line in level)


@pytest.mark.parametrize("torque", ["angle", "arm"])
def test_of_an_angle_not_worked_with_lengths_tell_the_sine(torque: str) -> None:
    """The guy of a mast, whose angle with the mast is more than the one of its lengths."""
    lines = told_of("mast-guy-wind", Convention(torque=torque))  # type: ignore[arg-type]
    (said,) = [line for line in lines if line.startswith("The angle between T and")]
    assert "has the sine d/√(d² + a²) = " in said
    assert "°" not in said
