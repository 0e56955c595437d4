"""The told working of every template and published problem, in pieces that tests look at."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from probgen.bank.customary import systems_of
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.toml import parse_toml
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.expression import Expression, Number, evaluate
from probgen.quantities.formula import (
    Balance,
    Difference,
    Formula,
    Integral,
    Relation,
    Words,
)
from probgen.quantities.printing import plain
from probgen.quantities.rounding import last_place
from probgen.quantities.unit import SI, US_CUSTOMARY, UnitSystem
from probgen.statics.state import utmost_finds
from probgen.wording.block import Display, Itemize, Math, Paragraph, Section
from probgen.wording.sentence import plain_text
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.verdict import at_limit, reached_first

ROOT = Path(__file__).parents[2]
DATA = ("answers.toml", "not-yet.toml")
FILES = [*ROOT.glob("templates/*/*.toml"), *ROOT.glob("tests/published/*.toml")]
TEMPLATES = {path.stem: path for path in sorted(FILES) if path.name not in DATA}
OWN = [name for name, path in TEMPLATES.items() if path.parent.name != "published"]
USUAL = Convention()
CLASS, FEW = ([str(each) for each in range(size)] for size in (6, 2))
OTHER: dict[str, list[Any]] = {
    "torque": ["arm", "components"],
    "positive": ["clockwise"],
    "figures": [4],
    "direction": ["vertical", "axis"],
    "turning": ["moment"],
    "units": [US_CUSTOMARY],
}
"""Choices that show in every key which holds a torque and a direction."""
CHOICES = [Convention(**{field: value}) for field in OTHER for value in OTHER[field]]
ORDERS = [
    replace(USUAL, order="forces first"),
    replace(USUAL, order="torques throughout"),
    replace(USUAL, pivot="support"),
    replace(USUAL, order="torques throughout", pivot="support"),
]
"""Choices of balances and of pivots; where a problem has one way only, its key stays the same."""
ABOUT_TURNING = ("torque", "positive", "turning")


def named(convention: Convention) -> str:
    """What is not as usual."""
    values = {field.name: getattr(convention, field.name) for field in fields(Convention)}
    own = {name: value for name, value in values.items() if value != getattr(USUAL, name)}
    told = (f"{name}={getattr(value, 'name', value)}" for name, value in own.items())
    return ",".join(told) or "usual"


@cache
def template(name: str, units: UnitSystem = SI) -> Template:
    """As a set in a system of units has it; converted where it is written for none but SI."""
    text, where = TEMPLATES[name].read_text(encoding="utf-8"), TEMPLATES[name].name
    known = systems_of(parse_toml(text, where))
    return read_template(text, where, units if units in known else SI)


METHOD = ("torque", "positive", "axes", "order", "pivot", "units")
"""What of a convention decides how a problem is derived; the rest is about its telling."""


@cache
def problem(name: str, convention: Convention = USUAL) -> Problem:
    like = replace(USUAL, **{field: getattr(convention, field) for field in METHOD})
    if convention != like:
        return replace(problem(name, like), convention=convention)
    return prepare(template(name, convention.units), convention)


TOLD = [
    pytest.param(name, convention, id=f"{name}-{named(convention)}", marks=marks)
    for name in TEMPLATES
    for convention, marks in [
        (USUAL, ()),
        *((choice, () if name in OWN else pytest.mark.proof) for choice in CHOICES),
        *((order, pytest.mark.proof) for order in ORDERS),
    ]
]
"""Every problem as usual, those of the project in every other way too, the rest when proving."""
SENSES = [
    pytest.param(name, positive, id=f"{name}-{positive}", marks=marks)
    for name in TEMPLATES
    for positive, marks in [
        ("counter-clockwise", ()),
        ("clockwise", () if name in OWN else pytest.mark.proof),
    ]
]


@cache
def works(name: str, convention: Convention = USUAL, size: int = 0) -> tuple[Worked, ...]:
    """The problem worked for a small class; one student where there is one set of numbers."""
    students = CLASS if convention == USUAL else FEW
    students = [str(each) for each in range(size)] or students
    own = problem(name, convention)
    if template(name).room == 1:
        students = students[:1]
    return work(own, draw_class(own, "key", students).draws)


@cache
def keys(name: str, convention: Convention = USUAL) -> tuple[tuple[Section, ...], ...]:
    return tuple(tell_steps(problem(name, convention), own) for own in works(name, convention))


def cases(own: Worked) -> list[Case]:
    """What is worked, in the order told: the case, or the same data at each limit where the first
    is asked, and what else is asked at that one.
    """
    plan = own.case.plan
    if not plan.branches:
        return [own.case]
    told = [(each, each.compared) for each in plan.branches]
    first = [reached_first(own.case, find) for find in utmost_finds(plan.system)]
    told += [(each, each.afterwards) for each in first if each.afterwards]
    reached = [(at_limit(own.digits, each).case, steps) for each, steps in told]
    return [replace(case, plan=replace(case.plan, steps=steps)) for case, steps in reached]


def turns(own: Worked) -> bool:
    """Whether some balance of torques is told."""
    return any(s.equation.kind == "torque" for case in cases(own) for s in case.plan.steps)


def runs(section: Section) -> Iterator[tuple[Any, ...]]:
    """Every run of inlines: paragraphs and list items."""
    for block in section.blocks:
        if isinstance(block, Paragraph):
            yield block.inlines
        elif isinstance(block, Itemize):
            yield from block.items


def sentences(sections: tuple[Section, ...]) -> str:
    return "\n".join(plain_text(run) for section in sections for run in runs(section))


def whole(sections: tuple[Section, ...]) -> str:
    """Everything in a key, as plain text."""
    lines = []
    for section in sections:
        lines += [section.title, *(plain_text(run) for run in runs(section))]
        for display in displays(section):
            lines += [f"{plain(r.left)} {r.relation} {plain(r.right)}" for r in display.rows]
    return "\n".join(lines)


def displays(section: Section) -> list[Display]:
    return [block for block in section.blocks if isinstance(block, Display)]


def split(formula: Formula) -> list[list[Any]]:
    """The pieces between a formula's relations, "=", "→" or "≈" leading each but the first."""
    sides: list[list[Any]] = [["="]]
    for piece in formula:
        if isinstance(piece, Relation):
            sides.append([piece.sign])
        else:
            sides[-1].append(piece)
    return sides


def chains(section: Section) -> Iterator[list[tuple[str, Expression]]]:
    """Runs of equal expressions, each with the relation before it."""
    for display in displays(section):
        chain: list[tuple[str, Expression]] = []
        for row in display.rows:
            if row.left:
                yield chain
                chain = []
            sides = split(row.right)
            sides[0][0] = row.relation
            chain += [(s[0], s[1]) for s in sides if len(s) == 2 and is_expression(s[1])]
        yield chain
    for run in runs(section):
        for inline in run:
            if isinstance(inline, Math):
                sides = split(inline.formula)
                yield [(s[0], s[1]) for s in sides if len(s) == 2 and is_expression(s[1])]


def is_expression(piece: object) -> bool:
    return not isinstance(piece, Relation | Words | Balance | Integral | Difference)


def digit(number: Number) -> float:
    """One unit of the last digit printed, coherent."""
    return float(last_place(number.value)) * (number.unit.factor if number.unit else 1.0)


def value(expression: Expression) -> float:
    return float(evaluate(expression, {}))
