"""Torques written the course's way, and the algebra of every printed line.

What is written out first has to be worth what the shorter balance is worth, at the numbers drawn
and at others: an identity, not a lucky case.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.expression import (
    Call,
    Expression,
    Product,
    Quotient,
    Sum,
    evaluate,
    is_number,
    parts,
)
from probgen.quantities.formula import Balance, Difference, Integral, Relation, Words
from probgen.quantities.like_terms import collected
from probgen.quantities.printing import plain
from probgen.wording.block import Display
from probgen.wording.torque_forms import written_out
from probgen.working.convention import Convention
from tests.wording.own_telling import told_of

ROOT = Path(__file__).parents[2]
TEMPLATES = {path.stem: path for path in sorted((ROOT / "templates").glob("*/*.toml"))}
METHODS = {
    "angle": Convention(torque="angle"),
    "arm": Convention(torque="arm", positive="clockwise"),
    "components": Convention(torque="components", axes="level"),
    "components, clockwise": Convention(torque="components", positive="clockwise"),
}


@cache
def problem(name: str, method: str) -> Problem:
    path = TEMPLATES[name]
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), METHODS[method])


@cache
def works(name: str, method: str) -> tuple[Worked, ...]:
    of = problem(name, method)
    return work(of, draw_class(of, "forms", ["0", "1", "2"]).draws)


@pytest.mark.one_in(6)
@pytest.mark.parametrize("method", ["angle", "components", "components, clockwise"])
@pytest.mark.parametrize("name", TEMPLATES)
def test_what_is_written_out_first_is_the_same_sum(name: str, method: str) -> None:
    for own in works(name, method):
        for step in own.case.plan.steps:
            for equation in step.equations:
                if equation.kind != "torque":
                    continue
                first = written_out(own.digits, equation)
                if first is None:
                    continue
                for values in (own.case.values, _others(own)):
                    size = sum(abs(float(evaluate(t.expression(equation.method), values)))
                               for t in equation.terms)  # fmt: skip
                    difference = evaluate(first, values) - evaluate(equation.expression, values)
                    assert abs(float(difference)) <= 1e-9 * size


def _others(own: Worked) -> dict[str, float]:
    """Numbers that satisfy no balance, of the same signs."""
    return {id: value * 1.07 for id, value in own.case.values.items()}


def first_lines(name: str, method: str) -> list[str]:
    """The lines a torque balance opens with."""
    told = tell_steps(problem(name, method), works(name, method)[0])
    blocks = (block for section in told for block in section.blocks)
    rows = [row for block in blocks if isinstance(block, Display) for row in block.rows]
    return [plain(row.right) for row in rows if isinstance((row.left or ("",))[0], Balance)]


def test_by_angle_the_angle_stands_first_as_it_is() -> None:
    assert first_lines("forearm-load", "angle")[0] == (
        "B d_m sin(90° + α) − W_f d_f sin 90° − W_b d_b sin 90°"
    )


def test_by_components_it_is_x_f_y_less_y_f_x() -> None:
    """The trunk leans by theta, its muscles by beta less."""
    assert first_lines("bent-back-toolbox", "components")[0].startswith(
        "−(d_m cos θ) F sin(θ − β) + (d_m sin θ) F cos(θ − β)"
    )


def test_a_slope_told_along_level_axes_needs_no_sine_square() -> None:
    lines = [line for line, _ in symbolic("crate-ramp-strap", "components")]
    assert "W (sin θ − μ cos θ)" in lines
    assert not any("sin θ sin θ" in line or "cos θ cos θ" in line for line in lines)


_UNVALUED = Balance | Relation | Words | Integral | Difference


def symbolic(name: str, method: str) -> Iterator[tuple[str, Expression]]:
    """Every expression on a printed line."""
    for own in works(name, method)[:1]:
        for section in tell_steps(problem(name, method), own):
            for block in section.blocks:
                for row in block.rows if isinstance(block, Display) else ():
                    for piece in (*row.left, *row.right):
                        if not isinstance(
                            piece, Balance | Relation | Words | Integral | Difference
                        ):
                            yield plain((piece,)), piece


def inside(expression: Expression) -> Iterator[Expression]:
    yield expression
    for part in parts(expression):
        yield from inside(part)


def _negated(term: Expression) -> bool:
    return isinstance(term, Sum) and len(term.terms) == 1 and term.terms[0][0] < 0


@pytest.mark.one_in(4)
@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("name", TEMPLATES)
def test_no_line_holds_a_double_minus_or_a_factor_of_nought_or_one(name: str, method: str) -> None:
    for line, expression in symbolic(name, method):
        for part in inside(expression):
            match part:
                case Sum(terms):
                    assert not any(s < 0 and _negated(term) for s, term in terms), line
                case Product(factors):
                    assert not any(is_number(f, 0) or is_number(f, 1) for f in factors), line
                case Quotient(_, bottom):
                    assert not is_number(bottom, 1), line


@pytest.mark.one_in(4)
@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("name", TEMPLATES)
def test_like_terms_are_collected_in_every_solution(name: str, method: str) -> None:
    for own in works(name, method)[:1]:
        for step in own.case.plan.steps:
            value = step.expression
            tops = [value.top, value.bottom] if isinstance(value, Quotient) else [value]
            for part in tops:
                assert collected(part) == part, plain((value,))
            assert "atan2" not in {p.function for p in inside(value) if isinstance(p, Call)}


def test_parts_of_a_torque_stand_in_the_order_of_its_rule() -> None:
    """Clockwise, y F_x - x F_y: of a crank's push, (c sin a)(F sin a) comes first."""
    turned = Convention(torque="components", positive="clockwise")
    (said,) = (line for line in told_of("well-windlass", turned) if "acts at (" in line)
    assert "y F_x − x F_y = (c sin θ) F sin θ + (c cos θ) F cos θ" in said
