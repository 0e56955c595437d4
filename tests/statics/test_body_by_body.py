"""Steps in the order one works them: a body's own one after the other, no step before its data."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import prepare
from probgen.quantities.expression import Name, names_in, number, total
from probgen.statics.body_by_body import body_by_body
from probgen.statics.equation import Equation
from probgen.statics.method import Method, Order
from probgen.statics.step import Step
from probgen.working.convention import Convention
from tests.situations import HEAD

ROOT = Path(__file__).parents[2] / "templates"
STACKED = (ROOT / "structures/box-pulled-from-under.toml").read_text(encoding="utf-8")
STEPLADDER = (ROOT / "ladders/stepladder-tie.toml").read_text(encoding="utf-8")
STATES = (
    HEAD
    + """
[given]
W = { name = "weight of the box", choices = [100], unit = "N" }
mu = { name = "coefficient", choices = [0.25], unit = "1" }
P = { name = "push", choices = [40], unit = "N" }
[body.before]
particle = true
[body.after]
particle = true
[[weight]]
body = "before"
force = "W"
of = "box"
symbol = "W_1"
[[weight]]
body = "after"
force = "W"
of = "box"
symbol = "W_2"
[[rough]]
body = "before"
normal = "N_1"
friction = "f_1"
friction_direction = 180
coefficient = "mu"
[[force]]
body = "before"
direction = 0
symbol = "Q"
[[rough]]
body = "after"
normal = "N_2"
friction = "f_2"
friction_direction = 180
coefficient = "mu"
[[force]]
body = "after"
direction = 270
magnitude = "P"
[[force]]
body = "after"
direction = 0
symbol = "S"
[[find]]
quantity = "Q"
[[find]]
quantity = "S"
"""
)

KNOTS = (
    HEAD
    + """
[given]
W = { name = "weight", choices = [100], unit = "N" }
[body.one]
particle = true
[body.other]
particle = true
"""
    + "".join(
        f"""[[weight]]
body = "{body}"
force = "W"
of = "lamp"
symbol = "W_{mark}"
[[cable]]
body = "{body}"
direction = 35
symbol = "T_{mark}"
[[cable]]
body = "{body}"
direction = 160
symbol = "S_{mark}"
[[find]]
quantity = "T_{mark}"
[[find]]
quantity = "S_{mark}"
"""
        for body, mark in (("one", 1), ("other", 2))
    )
)


def steps_of(text: str) -> tuple[Step, ...]:
    return prepare(read_template(text, "own.toml"), Convention()).plan.steps


@pytest.mark.parametrize(
    ("text", "order"),
    [
        (STACKED, "N_1 f_1 T N_2 f_2 P"),  # the chest first, then the box
        (STATES, "N_1 f_1 Q N_2 f_2 S"),  # one state after the other
    ],
)
def test_one_body_after_the_other(text: str, order: str) -> None:
    assert " ".join(step.unknown for step in steps_of(text)) == order


def test_no_body_is_come_back_to_without_need() -> None:
    """Both sides of the stepladder, the right one, then the left."""
    homes = [step.equation.bodies for step in steps_of(STEPLADDER)]
    assert [home for at, home in enumerate(homes) if home != homes[at - 1] or not at] == [
        ("left", "right"), ("right",), ("left",),
    ]  # fmt: skip


def test_after_a_body_comes_one_that_goes_on_with_what_was_found_on_it() -> None:
    """The joint at the reaction, before one that needs a load alone."""
    roof = (ROOT / "structures/roof-truss-snow.toml").read_text(encoding="utf-8")
    assert " ".join(step.unknown for step in steps_of(roof)) == "R.x R.y F_AE F_AD F_DE"


@pytest.mark.parametrize("text", [STACKED, STEPLADDER, STATES])
def test_no_step_comes_before_what_it_uses(text: str) -> None:
    steps = steps_of(text)
    for shuffled in (steps, body_by_body(steps[::-1]), body_by_body(sorted(steps, key=_name))):
        found: set[str] = set()
        for step in shuffled:
            later = {each.unknown for each in steps} - found
            assert not names_in(step.expression) & later
            found.add(step.unknown)
        assert len(shuffled) == len(steps)


def test_steps_solved_together_stay_together_and_come_once() -> None:
    """Of two knots, each on two cords: the balances of a knot are solved together."""
    steps = steps_of(KNOTS)
    assert sum(bool(step.partners) for step in steps) == 2
    ordered = body_by_body(steps[::2] + steps[1::2])
    assert sorted(map(_name, ordered)) == ["S_1", "S_2", "T_1", "T_2"]
    assert [step.equation.bodies for step in ordered] == 2 * [("one",)] + 2 * [("other",)]


def _name(step: Step) -> str:
    return step.unknown


def test_a_condition_on_data_stands_with_the_body_that_uses_it() -> None:
    """The beam that tips, with N_A = 0, is done before the other one."""
    said = _step("N_A", ())
    other, tips = _step("d", ("other",)), _step("x", ("beam",), "N_A")
    ordered = body_by_body([said, other, tips])
    assert [step.unknown for step in ordered] == ["N_A", "x", "d"]


def test_what_is_asked_first_comes_first_where_nothing_else_decides() -> None:
    """Of two bodies, of the steps of one, and of what leads to what is asked."""
    steps = [_step("a", ("one",)), _step("b", ("one",)), _step("c", ("other",), "d")]
    steps.insert(0, _step("d", ("third",)))
    assert _order(steps, ["c", "b", "a"]) == "d c b a"
    assert _order(steps, ["a", "c", "b"]) == "a b d c"  # the body is done before another
    assert _order(steps, ["b", "c", "a"]) == "b a d c"


RULED: list[tuple[Order, str, str]] = [
    ("forces first", "force", "torque"),
    ("torques throughout", "torque", "force"),
]


@pytest.mark.parametrize(("order", "first", "other"), RULED)
def test_a_course_that_takes_forces_or_torques_first_keeps_its_rule(
    order: Order, first: str, other: str
) -> None:
    for method, told in ((Method(order=order), "b a"), (Method(), "a b")):
        steps = [
            _step("a", ("one",), kind=other, method=method),
            _step("b", ("one",), kind=first, method=method),
        ]
        assert _order(steps, ["a", "b"]) == told


def test_what_is_left_out_of_a_step_is_found_to_be_zero_before() -> None:
    """A member that carries nothing, asked last, before the section that crosses it."""
    steps = [_step("idle", ("joint",)), _step("a", ("part",)), _step("b", ("other",))]
    wanted = ["b", "a", "idle"]
    assert [s.unknown for s in body_by_body(steps, wanted)] == ["b", "a", "idle"]
    after = {"a": {"idle"}}
    assert [s.unknown for s in body_by_body(steps, wanted, after)] == ["b", "idle", "a"]


ASKED = [
    ("structures/billboard-truss-wind.toml", "R.x R.y F_DF F_BC F_CE"),
    ("limbs/hip-walking-stick.toml", "J S n F"),
]


@pytest.mark.parametrize(("file", "order"), ASKED)
def test_answers_come_in_the_order_asked(file: str, order: str) -> None:
    text = (ROOT / file).read_text(encoding="utf-8")
    assert " ".join(step.unknown for step in steps_of(text)) == order


def _order(steps: Sequence[Step], wanted: Sequence[str]) -> str:
    return " ".join(step.unknown for step in body_by_body(steps, wanted))


def _step(
    unknown: str,
    bodies: tuple[str, ...],
    *used: str,
    kind: str | None = None,
    method: Method | None = None,
) -> Step:
    kind = kind or ("torque" if bodies else "condition")
    value = total(*((1, Name(name, name)) for name in used), (1, number(1)))
    return Step(unknown, Equation(kind, bodies, "A", (), method or Method()), value)
