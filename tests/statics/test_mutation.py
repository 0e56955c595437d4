"""The engine broken on purpose, one part at a time: each break must be noticed, and by what.

A break in the derivation is noticed by the proof.  One in what derivation and proof share, the
reading of a template, or in how an answer is told, can only be noticed by published values.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from probgen.bank import load, reaction, support
from probgen.input.fault import InputError
from probgen.quantities.expression import (
    Call,
    Expression,
    Product,
    Quotient,
    Value,
    negative,
    number,
    times,
    total,
)
from probgen.statics import (
    cross_check,
    derivation,
    elimination,
    equation,
    numeric_equations,
    off_body_pivot,
    plan,
    rerun,
    solution,
    solve_for,
)
from probgen.statics.equation import Equation, Term
from probgen.statics.geometry import Angle, cosine, sine, way
from probgen.statics.quantity_id import Quantity
from probgen.statics.step import Step
from probgen.statics.system import Couple, Find, Force, Kind, Link, System
from probgen.working import case
from tests.situations import (
    HEAD,
    SLIDES,
    THREE_CABLES,
    TIPS,
    ball_on_a_cord,
    cabinet,
    finding,
    worked,
)

PUBLISHED = Path(__file__).parents[1] / "published"

STRUT = "up1-12.2-cyu8"  # University Physics vol. 1, check your understanding 12.8
LADDER = "up1-12.2-ex5"  # University Physics vol. 1, example 12.5
TRESTLE = "cp2e-9.3-p14"  # College Physics 2e, section 9.3, problem 14
SEESAW = "cp2e-9.2-ex1"  # College Physics 2e, section 9.2, example 9.1
ROPES = "cp2e-4.7-p42"  # College Physics 2e, section 4.7, problem 42
SLOPE = "up1-6.2-p55b"  # University Physics vol. 1, section 6.2, problem 55(b)

OWN = {
    "three cables": THREE_CABLES,
    "slide or tip": cabinet() + SLIDES + TIPS + finding("P", "largest"),
    "built in": HEAD
    + """
[given]
L = { name = "length", choices = [2.0], unit = "m" }
m = { name = "mass", choices = [60], unit = "kg" }
[points]
A = [0, 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
[[fixed]]
at = "A"
symbol = "R"
couple = "M_A"
[[couple]]
at = "B"
moment = "50 N*m"
symbol = "M_B"
[[find]]
quantity = "M_A"
""",
    "ball on a cord": ball_on_a_cord(0, 90),
}

CLOSES, SECOND, VALUE = (
    "the balances do not close",
    "the second solver finds other values",
    "another value than the published one",
)

# -- what notices ------------------------------------------------------------------------------


@cache
def published() -> dict[str, list[dict[str, Any]]]:
    problems = tomllib.loads((PUBLISHED / "answers.toml").read_text(encoding="utf-8"))["problem"]
    return {problem["template"]: problem["answer"] for problem in problems}


def complaints(name: str) -> set[str]:
    """What proof and published values say of the engine's solution of one problem."""
    text = OWN[name] if name in OWN else (PUBLISHED / f"{name}.toml").read_text("utf-8")
    try:
        _, own = worked(text)
    except InputError as error:
        return {reason for fault in error.faults for reason in fault.field.split("; ")}
    answers = {answer.id: answer for answer in own.answers}
    wrong = [
        told
        for told in published().get(name, ())
        if not agrees(told, answers[told["id"]].value, answers[told["id"]].angle_from_x)
    ]
    return {VALUE} if wrong else set()


def agrees(told: Mapping[str, Any], value: float, angle: float | None) -> bool:
    wanted = told.get("computed", float(told["printed"]))
    half = 1e-5 * abs(wanted) if "computed" in told else told["half"] * (1 + 1e-9)
    if angle is not None:
        turned = angle - told.get("start", 0.0)
        found = (turned if told.get("turn") != "clockwise" else -turned) % 360.0
    else:
        found = told.get("sign", 1) * value
    return bool(abs(found - wanted) <= half)


# -- the breaks --------------------------------------------------------------------------------

_turning, _way, _put_into = equation._turning, way, elimination._put_into
_cosine, _couple_term, _direction = cosine, equation._couple_term, case._direction
_meeting, _entries, _sums = off_body_pivot._meeting, cross_check._entries, numeric_equations._sums
_physical = derivation._physical
_outcomes, _isolated, _pruned = plan._outcomes, solve_for.isolated, equation.pruned


def torque_sign(system: System, force: Force, pivot: str, turn: int) -> Iterator[Term]:
    """Weights turn the wrong way."""
    return _turning(system, force, pivot, -turn if force.kind is Kind.WEIGHT else turn)


def lever_arm(system: System, force: Force, pivot: str, turn: int) -> Iterator[Term]:
    """Weights act at twice their distance."""
    for term in _turning(system, force, pivot, turn):
        assert term.length is not None
        twice = times(number(2), term.length)
        yield replace(term, length=twice) if force.kind is Kind.WEIGHT else term


def short_way(points: Mapping[str, Any], start: str, end: str) -> tuple[Link, ...]:
    """Only the first part of a way is gone."""
    return _way(points, start, end)[:1]


def oblique(angle: Angle) -> Expression:
    """Sine for cosine, of forces that are neither level nor upright."""
    return sine(angle) if angle.multiples or angle.constant % 90 else _cosine(angle)


def dropped_term(equation: Equation, absent: frozenset[str]) -> Equation:
    """The last term of a longer balance is forgotten."""
    kept = _pruned(equation, absent)
    return replace(kept, terms=kept.terms[:-1]) if len(kept.terms) > 2 else kept


def couple_sign(couple: Couple, turn: int) -> Term:
    return _couple_term(couple, -turn if couple.id == "M_B" else turn)


def wrong_isolation(slope: Expression, rest: Expression) -> Expression:
    return negative(_isolated(slope, rest))


def elimination_sign(
    expression: Expression, unknown: str, taken_out: tuple[Expression, Expression]
) -> Expression | None:
    return _put_into(expression, unknown, (taken_out[0], negative(taken_out[1])))


def wrong_meeting(system: System, one: Force, other: Force) -> tuple[Link, ...] | None:
    """Lines meet as far behind as they do ahead."""
    found = _meeting(system, one, other)
    return found and (*found[:-1], replace(found[-1], length=negative(found[-1].length)))


def added_components(system: System) -> Iterator[plan.Outcome]:
    """A magnitude is the sum of its components."""
    for outcome in _outcomes(system):
        match outcome.expression:
            case Call("hypot", (x, y)):
                yield replace(outcome, expression=total((1, x), (1, y)))
            case _:
                yield outcome


def swapped_sides(system: System) -> Iterator[plan.Outcome]:
    """A direction with the components exchanged in the tangent."""
    for outcome in _outcomes(system):
        match outcome.expression:
            case Call("atan2", (y, x)):
                yield replace(outcome, expression=Call("atan2", (x, y)))
            case _:
                yield outcome


def swapped_angle(known: Mapping[str, float], of: Quantity) -> float:
    """The angle from the other axis."""
    return 90.0 - _direction(known, of)


def wrong_root(step: Step, *rest: Any) -> Step:
    """A root that lies where the quantity may not."""
    right = _physical(step, *rest)
    return replace(right, expression=right.others[0], others=()) if right.others else right


def last_limit(
    utmost: Find, branches: Sequence[plan.Branch], values: Mapping[str, Value], *_: object
) -> dict[str, Value]:
    """The limit reached last instead of the one reached first."""
    reached = [solution.solve(branch.plan, values) for branch in branches]
    sizes = [float(np.max(each[utmost.quantity])) for each in reached]
    last = int(np.argmax(sizes))
    return {**reached[last], rerun.first_limit_id(utmost): float(last)}


def entries_sign(*arguments: Any) -> Iterator[tuple[int, Expression, Value]]:
    """The second solver turns every force that is not along x the other way."""
    for place, (row, size, factor) in enumerate(_entries(*arguments)):
        yield row, size, np.negative(factor) if place % 3 == 1 and place < 6 else factor


def torques_assembled(*arguments: Any) -> dict[str, list[Any]]:
    """The proof's own torques with the first one turned."""
    sums = _sums(*arguments)
    turns = [-turn if place == 0 else turn for place, turn in enumerate(sums["turn"])]
    return {**sums, "turn": turns}


def massless_g(row: Any, situation: Any, key: str, noun: str, words: str) -> tuple[Expression, str]:
    """A mass is taken for a weight."""
    found = _weight(row, situation, key, noun, words)
    for at, each in enumerate(situation.definitions):
        if isinstance(each.expression, Product) and key == "mass":
            situation.definitions[at] = replace(
                each, expression=times(*each.expression.factors[:-1], number(1))
            )
    return found


_weight, _grip_limit = load._weight, support._grip_limit


def same_way(direction: Expression, degrees: int) -> Expression:
    """A reaction that acts the way its action does."""
    return direction


def inverted_friction(row: Any, situation: Any, *rest: Any) -> None:
    """N = mu f for f = mu N."""
    _grip_limit(row, situation, *rest)
    for at, each in enumerate(situation.conditions):
        match each.right:
            case Product((coefficient, push)):
                inverted = Quotient(push, coefficient)
                situation.conditions[at] = replace(each, right=inverted)


@dataclass(frozen=True)
class Break:
    """One part broken: where, what takes its place, on which problem it shows, who notices."""

    name: str
    place: tuple[Any, str]
    instead: Callable[..., Any]
    problem: str
    noticed: str

    def __str__(self) -> str:
        return self.name


BREAKS = [
    Break("a sign of a torque", (equation, "_turning"), torque_sign, STRUT, CLOSES),
    Break("a lever arm", (equation, "_turning"), lever_arm, LADDER, CLOSES),
    Break("sine for cosine along an axis", (equation, "cosine"), oblique, STRUT, CLOSES),
    Break("cosine for sine about a pivot", (equation, "sine"), cosine, STRUT, CLOSES),
    Break("a way cut short", (equation, "way"), short_way, TRESTLE, CLOSES),
    Break("a dropped term", (derivation, "pruned"), dropped_term, STRUT, CLOSES),
    Break("the sign of a couple", (equation, "_couple_term"), couple_sign, "built in", CLOSES),
    Break("the sign of an isolated quantity", (solve_for, "isolated"), wrong_isolation, STRUT,
          SECOND),
    Break("the sign of what is put in", (elimination, "_put_into"), elimination_sign, ROPES,
          CLOSES),
    Break("a wrong root", (derivation, "_physical"), wrong_root, "ball on a cord",
          "lean (t) is above 90 °"),
    Break("a wrong limit", (rerun, "_at_first_limit"), last_limit, "slide or tip", "it slides"),
    Break("a sign in the second solver", (cross_check, "_entries"), entries_sign, STRUT, SECOND),
    Break("a sign in the proof", (numeric_equations, "_sums"), torques_assembled, STRUT, CLOSES),
    Break("components added", (plan, "_outcomes"), added_components, STRUT, SECOND),
    Break("components exchanged", (plan, "_outcomes"), swapped_sides, STRUT, SECOND),
    Break("a wrong angle of a resultant", (case, "_direction"), swapped_angle, STRUT, VALUE),
    Break("a weight without g", (load, "_weight"), massless_g, SEESAW, VALUE),
    Break("a reaction that is not opposite", (reaction, "turned"), same_way, TRESTLE, CLOSES),
    Break("friction inverted", (support, "_grip_limit"), inverted_friction, SLOPE, VALUE),
]  # fmt: skip


@pytest.mark.parametrize("name", sorted({each.problem for each in BREAKS}))
def test_the_whole_engine_passes(name: str) -> None:
    assert complaints(name) == set()


@pytest.mark.parametrize("broken", BREAKS, ids=str)
def test_a_break_is_noticed(broken: Break, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(*broken.place, broken.instead)
    assert broken.noticed in complaints(broken.problem)


def test_a_wrong_meeting_point_only_costs_steps(monkeypatch: pytest.MonkeyPatch) -> None:
    """A balance about any point is true: one that keeps nothing out is not preferred."""
    right, own = worked(OWN["three cables"])
    monkeypatch.setattr(off_body_pivot, "_meeting", wrong_meeting)
    wrong, same = worked(OWN["three cables"])
    assert same.case.values["T_1"] == pytest.approx(own.case.values["T_1"], rel=1e-9)
    assert not any(step.partners for step in right.plan.steps)
    assert any(step.partners for step in wrong.plan.steps)
