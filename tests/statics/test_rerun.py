"""What follows from a stated value: beside numbers worked by hand, and over all templates."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, coherent_values, draw_class, prepare
from probgen.quantities.expression import Value, evaluate, names_in
from probgen.statics.plan import Plan, find_plan
from probgen.statics.rerun import first_limit_id, rerun
from probgen.statics.system import Form, System
from probgen.working.convention import Convention

ROOT = Path(__file__).parents[2]
TEMPLATES = {path.stem: path for path in sorted(ROOT.glob("templates/*/*.toml"))}
Values = dict[str, np.ndarray]
DRAWS = 4


# By hand: the shelf of length 1.2 m on a stay cable, W_s = 39.2 N in its middle, W_t = 78.4 N at
# its end; the cable pulls at 40° back towards the wall.


@pytest.fixture
def first(beam_values: Values) -> dict[str, Value]:
    return {id: float(values[0]) for id, values in beam_values.items()}


def hinge_force(tension: float, weights: float = 117.6) -> dict[str, float]:
    """R_x = T cos 40°, R_y = W - T sin 40°, and what is made of them."""
    x = tension * math.cos(math.radians(40.0))
    y = weights - tension * math.sin(math.radians(40.0))
    direction = math.degrees(math.atan2(y, x))
    return {"R.x": x, "R.y": y, "R.magnitude": math.hypot(x, y), "R.direction": direction}


@pytest.mark.parametrize("tension", [190.6, 100.0, 250.0])
def test_the_hinge_force_follows_from_a_stated_tension(
    stayed: System, beam_values: Values, first: dict[str, Value], tension: float
) -> None:
    found = rerun(find_plan(stayed, beam_values), first, {"T": tension})
    assert {id: found[id] for id in hinge_force(tension)} == pytest.approx(hinge_force(tension))
    assert found["T"] == tension


def test_a_stated_weight_changes_the_tension_and_the_hinge_force(
    stayed: System, beam_values: Values, first: dict[str, Value]
) -> None:
    """8 kg written for their weight: T = (39.2 x 0.6 + 8 x 1.2)/(0.96 sin 40°)."""
    found = rerun(find_plan(stayed, beam_values), first, {"W_t": 8.0})
    tension = (39.2 * 0.6 + 8.0 * 1.2) / (0.96 * math.sin(math.radians(40.0)))
    assert found["T"] == pytest.approx(tension)
    force = hinge_force(tension, 39.2 + 8.0)
    assert {id: found[id] for id in force} == pytest.approx(force)


def test_a_stated_component_changes_magnitude_and_direction_only(
    stayed: System, beam_values: Values, first: dict[str, Value]
) -> None:
    plan = find_plan(stayed, beam_values)
    right, found = rerun(plan, first), rerun(plan, first, {"R.y": 4.9})
    assert changed(right, found) == {"R.y", "R.direction"}  # the sign turned: its size is the same
    assert found["R.direction"] == pytest.approx(math.degrees(math.atan2(4.9, found["R.x"])))


def test_a_stated_datum_is_put_in_everywhere(
    stayed: System, beam_values: Values, first: dict[str, Value]
) -> None:
    plan = find_plan(stayed, beam_values)
    assert rerun(plan, first, {"M": 6.0}) == rerun(plan, {**first, "M": 6.0})


def test_the_limit_stated_as_first_and_the_size_stated_in_the_end_are_kept() -> None:
    problem, values = of_template(limited()[0])
    plan, find = problem.plan, problem.plan.system.finds[0]
    sought, first_limit = find.quantity, first_limit_id(find)
    right = rerun(plan, values)
    at_each = [rerun(branch.plan, values) for branch in plan.branches]
    for place, found in enumerate(at_each):
        other = rerun(plan, values, {first_limit: float(place)})
        np.testing.assert_allclose(other[sought], found[sought])
    size = 0.5 * np.asarray(right[sought])
    stated = rerun(plan, values, {sought: size})
    np.testing.assert_array_equal(stated[sought], size)
    np.testing.assert_array_equal(stated[first_limit], right[first_limit])


@pytest.mark.parametrize("onward", [True, False])
def test_the_limit_that_is_reached_is_passed_on_going_on_and_only_there(onward: bool) -> None:
    for id in limited():
        problem, values = of_template(id)
        right, sought = rerun(problem.plan, values), problem.plan.system.finds[0]
        for draw in range(DRAWS):
            one = at(values, draw)
            size = float(np.broadcast_to(right[sought.quantity], DRAWS)[draw])
            place = int(np.broadcast_to(right[first_limit_id(sought)], DRAWS)[draw])
            branch = problem.plan.branches_to(sought)[place]
            if not onward:
                turned = Form.SMALLEST if sought.form is Form.LARGEST else Form.LARGEST
                branch = replace(branch, utmost=replace(sought, form=turned))
            assert bool(branch.is_passed(size, one)) is onward, id


# Over all templates.


@pytest.mark.parametrize("id", TEMPLATES)
def test_a_batch_is_worked_as_one_by_one(id: str) -> None:
    problem, values = of_template(id)
    plan = problem.plan
    for stated in ({}, *({each: 1.1 * value} for each, value in reached(plan, values).items())):
        batch = rerun(plan, values, stated)
        for place in range(DRAWS):
            single = rerun(plan, at(values, place), at(stated, place))
            assert at(batch, place) == pytest.approx(single, nan_ok=True)


@pytest.mark.parametrize("id", TEMPLATES)
def test_stating_what_is_right_changes_nothing(id: str) -> None:
    problem, values = of_template(id)
    right = rerun(problem.plan, values)
    assert {line.id for line in problem.plan.lines} <= right.keys()
    for told in (*({name: value} for name, value in right.items()), right):
        found = rerun(problem.plan, values, told)
        assert [*found] == [*right]
        for name, value in right.items():
            np.testing.assert_allclose(found[name], value, rtol=1e-12, err_msg=f"{name}: {told}")


@pytest.mark.parametrize("id", TEMPLATES)
def test_stating_a_wrong_value_changes_what_is_made_of_it_and_nothing_else(id: str) -> None:
    problem, values = of_template(id)
    for plan in [branch.plan for branch in problem.plan.branches] or [problem.plan]:
        right = rerun(plan, values)
        for name in right:
            wrong = 1.0 + 1.07 * np.asarray(right[name])
            found = rerun(plan, values, {name: wrong})
            np.testing.assert_array_equal(found[name], wrong)
            for other in right.keys() - made_of(plan, name):
                np.testing.assert_array_equal(found[other], right[other], err_msg=name)
            for line in plan.lines:
                if line.id != name:  # every line holds among the new values, so none is left out
                    due = evaluate(line.expression, found)
                    np.testing.assert_array_equal(found[line.id], due, err_msg=name)


def made_of(plan: Plan, name: str) -> set[str]:
    """A quantity and all that hold it, or one that holds it."""
    held = {name}
    for line in plan.lines:
        if names_in(line.expression) & held:
            held.add(line.id)
    return held


def changed(right: Mapping[str, Value], found: Mapping[str, Value]) -> set[str]:
    """What is another number in some draw."""
    return {id for id in right if not np.allclose(found[id], right[id], rtol=1e-9, atol=0)}


def limited() -> list[str]:
    """The templates that ask how far something may go."""
    return [id for id in TEMPLATES if of_template(id)[0].plan.branches]


def reached(plan: Plan, values: Values) -> dict[str, Value]:
    return {id: value for id, value in rerun(plan, values).items() if id not in values}


def at(values: Mapping[str, Value], place: int) -> dict[str, float]:
    return {id: float(np.broadcast_to(value, DRAWS)[place]) for id, value in values.items()}


@cache
def of_template(id: str) -> tuple[Problem, Values]:
    """A template's problem, and coherent values of a few draws."""
    convention = Convention()
    template = read_template(TEMPLATES[id].read_text(encoding="utf-8"), id)
    problem = prepare(template, convention)
    draws = draw_class(problem, "rerun", [str(place) for place in range(DRAWS)]).draws
    return problem, coherent_values(draws, convention)
