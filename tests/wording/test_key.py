"""The told working of every template and published problem, read as a grader would read it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields, replace
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.expression import Expression, Number, evaluate, names_in
from probgen.quantities.formula import Balance, Formula, Relation, Words
from probgen.quantities.printing import plain
from probgen.quantities.rounding import last_place, round_figures
from probgen.quantities.unit import UNITS, US_CUSTOMARY
from probgen.statics.numeric_equations import coordinates
from probgen.wording.answer import Answer
from probgen.wording.block import Display, Itemize, Math, Paragraph, Section
from probgen.wording.sentence import plain_text
from probgen.working.case import Case
from probgen.working.convention import Convention
from probgen.working.direction import quarter_of
from probgen.working.verdict import at_limit

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
CHOICES = [replace(USUAL, **{field: value}) for field in OTHER for value in OTHER[field]]
ABOUT_TURNING = ("torque", "positive", "turning")


def named(convention: Convention) -> str:
    """The one choice that is not the usual one."""
    for field in fields(Convention):
        value = getattr(convention, field.name)
        if value != getattr(USUAL, field.name):
            return f"{field.name}={getattr(value, 'name', value)}"
    return "usual"


@cache
def template(name: str) -> Template:
    path = TEMPLATES[name]
    return read_template(path.read_text(encoding="utf-8"), path.name)


METHOD = ("torque", "positive", "axes")
"""What of a convention decides how a problem is derived; the rest is about its telling."""


@cache
def problem(name: str, convention: Convention = USUAL) -> Problem:
    like = replace(USUAL, **{field: getattr(convention, field) for field in METHOD})
    if convention != like:
        return replace(problem(name, like), convention=convention)
    return prepare(template(name), convention)


TOLD = [
    pytest.param(name, convention, id=f"{name}-{named(convention)}", marks=marks)
    for name in TEMPLATES
    for convention, marks in [
        (USUAL, ()),
        *((choice, () if name in OWN else pytest.mark.proof) for choice in CHOICES),
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
    """What is worked: the case, or the same data at each limit where the first is asked."""
    branches = own.case.plan.branches
    return [at_limit(own.digits, each).case for each in branches] or [own.case]


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
    return not isinstance(piece, Relation | Words | Balance)


def digit(number: Number) -> float:
    """One unit of the last digit printed, coherent."""
    return float(last_place(number.value)) * (number.unit.factor if number.unit else 1.0)


def value(expression: Expression) -> float:
    return float(evaluate(expression, {}))


@pytest.mark.parametrize(("name", "convention"), TOLD)
def test_printed_numbers_give_the_printed_result(name: str, convention: Convention) -> None:
    assert lines_read(keys(name, convention))


@pytest.mark.proof
@pytest.mark.parametrize("convention", [USUAL, *CHOICES], ids=named)
@pytest.mark.parametrize("name", OWN)
def test_so_they_do_for_a_whole_class(name: str, convention: Convention) -> None:
    own = problem(name, convention)
    told = tuple(tell_steps(own, each) for each in works(name, convention, 30))
    assert lines_read(told)
    for sections in told:
        read_sentences(sections)


def lines_read(told: tuple[tuple[Section, ...], ...]) -> int:
    """How many lines of numbers there were; each gives its result within the last digit."""
    checked = 0
    for sections in told:
        for chain in (each for section in sections for each in chains(section)):
            numeric = [(r, e) for r, e in chain if not names_in(e) and r in "=→"]
            ends = [e for r, e in numeric if isinstance(e, Number)]
            for relation, expression in numeric:
                if not isinstance(expression, Number) and relation == "=" and ends:
                    checked += 1
                    gap = abs(value(expression) - value(ends[-1]))
                    assert gap <= digit(ends[-1]) * 1.0001, plain((expression,))
    return checked


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_result_is_its_carried_value_rounded(name: str) -> None:
    for sections in keys(name):
        for chain in (each for section in sections for each in chains(section)):
            for (_, carried), (relation, final) in pairwise(chain):
                if relation == "→":
                    assert isinstance(carried, Number)
                    assert isinstance(final, Number)
                    factor = final.unit.factor if final.unit else 1.0
                    rounded = round_figures(value(carried) / factor, USUAL.figures, USUAL.rounding)
                    assert rounded == final.value, plain((carried, Relation("→"), final))


@pytest.mark.parametrize("name", TEMPLATES)
def test_every_answer_stands_in_the_key(name: str) -> None:
    for sections, own in zip(keys(name), works(name), strict=True):
        text = whole(sections)
        for answer in own.answers:
            assert answer.printed in text, answer.id


def coherent(answer: Answer) -> float:
    """An answer's value in coherent units: a customary course prints pounds-force and feet."""
    return answer.value * UNITS[answer.unit or "1"].factor


@pytest.mark.parametrize("convention", CHOICES, ids=named)
@pytest.mark.parametrize("name", OWN)
def test_a_convention_changes_the_key_and_no_answer(name: str, convention: Convention) -> None:
    changed = works(name, convention)
    usual = works(name)[: len(changed)]
    for mine, theirs in zip(usual, changed, strict=True):
        assert mine.draw == theirs.draw
        for one, other in zip(mine.answers, theirs.answers, strict=True):
            if one.angle_from_x is not None:
                assert other.angle_from_x == pytest.approx(one.angle_from_x, rel=1e-9)
            else:
                assert other.id == one.id
                assert coherent(other) == pytest.approx(coherent(one), rel=1e-9, abs=1e-9)
    texts = zip(usual, keys(name)[: len(changed)], keys(name, convention), strict=True)
    for own, one, other in texts:
        assert (whole(one) != whole(other)) == concerns(convention, own)


def concerns(convention: Convention, own: Worked) -> bool:
    """Whether what a course chooses otherwise occurs in a problem at all.

    A direction along an axis is told alike from the horizontal and from the vertical.
    """
    choice, _, chosen = named(convention).partition("=")
    if choice in ABOUT_TURNING:
        return turns(own)
    if choice == "direction":
        ways = [a.angle_from_x for a in own.answers if a.angle_from_x is not None]
        return any(chosen == "axis" or quarter_of(way) is None for way in ways)
    return True


def test_every_choice_concerns_most_problems() -> None:
    for convention in CHOICES:
        concerned = [name for name in OWN if concerns(convention, works(name)[0])]
        assert len(concerned) > len(OWN) / 3, named(convention)


def test_an_exact_half_is_rounded_the_course_s_way() -> None:
    """A stretch of 0.1225 m, exactly."""
    even = replace(USUAL, rounding="half even")
    printed = [works("cp2e-16.8-p44", c)[0].answers[0].printed for c in (USUAL, even)]
    assert printed == ["0.123 m", "0.122 m"]
    assert "0.123 m" in whole(keys("cp2e-16.8-p44")[0])
    assert "0.122 m" in whole(keys("cp2e-16.8-p44", even)[0])


def test_gravity_is_the_course_s() -> None:
    other = replace(USUAL, gravity="9.81")
    text = whole(keys("seesaw-two-riders", other)[0])
    assert "9.81 m/s²" in text
    assert "9.80" not in text
    usual, changed = works("seesaw-two-riders")[0], works("seesaw-two-riders", other)[0]
    ratio = [b.value / a.value for a, b in zip(usual.answers, changed.answers, strict=True)]
    assert dict(zip([a.id for a in usual.answers], ratio, strict=True)) == {
        "distance_2": pytest.approx(1.0),
        "P": pytest.approx(9.81 / 9.80),
    }


def test_every_choice_of_a_course_is_tried() -> None:
    tried = {*OTHER, "rounding", "gravity", "axes"}
    assert {field.name for field in fields(Convention)} - tried == {"tolerance"}  # marks only


def test_level_axes_keep_to_x_and_y() -> None:
    """A smooth ramp: the rope's pull along it, or by two balances along x and y."""
    told = {axes: whole(keys("up1-5.6-p67b", replace(USUAL, axes=axes))[0]) for axes in AXES}
    assert "ΣF_∥" in told["simplest"]
    assert "ΣF_∥" not in told["level"]
    both = [works("up1-5.6-p67b", replace(USUAL, axes=axes))[0].answers for axes in AXES]
    assert [a.value for a in both[0]] == pytest.approx([a.value for a in both[1]])


AXES = ("simplest", "level")

SENSE = re.compile(
    r"(?P<names>\S+(?:, \S+)*(?: and \S+)?) turns? the .+? "
    r"(?P<word>counter-clockwise|clockwise) \((?P<sign>positive|negative)\)\."
)


def turns_told(section: Section) -> dict[str, tuple[str, str]]:
    """For each force or couple named: which way, and with which sign, it is said to turn."""
    told: dict[str, tuple[str, str]] = {}
    for run in runs(section):
        for found in SENSE.finditer(plain_text(run)):
            for symbol in re.split(r", | and ", found["names"]):
                assert symbol not in told
                told[symbol] = (found["word"], found["sign"])
    return told


def turns_computed(case: Case, bodies: tuple[str, ...], pivot: str) -> dict[str, float]:
    """Torque per newton, or couple per newton metre, about a point, by its printed letter."""
    system, values = case.system, case.values
    places = coordinates(system, values)
    reach = max(float(np.hypot(*place)) for place in places.values()) or 1.0
    inner = {force.id for force in system.forces if force.body in bodies}
    computed = {}
    for force in system.forces:
        if force.body in bodies and force.pair not in inner:
            x, y = (p - o for p, o in zip(places[force.point], places[pivot], strict=True))
            angle = np.radians(float(evaluate(force.direction, values)))
            turn = float(x * np.sin(angle) - y * np.cos(angle)) / reach
            computed[plain((force.magnitude,))] = turn if abs(turn) > 1e-9 else 0.0
    for couple in system.couples:
        if couple.body in bodies:
            computed[plain((couple.moment,))] = 1.0
    return computed


@pytest.mark.parametrize(("name", "positive"), SENSES)
def test_the_senses_told_are_those_of_the_torques(name: str, positive: str) -> None:
    convention = replace(USUAL, positive=positive)
    for sections, own in zip(keys(name, convention), works(name, convention), strict=True):
        balances = [
            (case, step.equation)
            for case in cases(own)
            for step in case.plan.steps
            if step.equation.kind == "torque"
        ]
        told = [section for section in sections if section.title.startswith("Which forces turn")]
        assert len(told) == len(balances)
        for section, (case, balance) in zip(told, balances, strict=True):
            computed = turns_computed(case, balance.bodies, balance.about)
            words = {1.0: "counter-clockwise", -1.0: "clockwise"}
            expected = {symbol: words[np.sign(turn)] for symbol, turn in computed.items() if turn}
            found = turns_told(section)
            assert {symbol: word for symbol, (word, _) in found.items()} == expected
            for word, sign in found.values():
                assert (sign == "positive") == (word == positive)


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_negative_force_or_couple_is_explained(name: str) -> None:
    for sections, own in zip(keys(name), works(name), strict=True):
        text = sentences(sections)
        system = own.case.system
        acting = {force.id: force.magnitude for force in system.forces}
        acting |= {couple.id: couple.moment for couple in system.couples}
        found = [
            (step.unknown, case.values[step.unknown] < 0.0)
            for case in cases(own)
            for step in case.plan.steps
            if step.unknown in acting
        ]
        for unknown in {unknown for unknown, _ in found}:
            negative = (unknown, True) in found
            said = f"{plain((acting[unknown],))} is negative" in text
            assert said == negative, unknown


def test_negative_forces_occur() -> None:
    assert "J_y is negative" in sentences(keys("forearm-load")[0])


SLIPS = re.compile(r"  |\{|\}|\b(\w+) \1\b| [.,:;]|\.\.|\bNone\b|\bthe an?\b")


@pytest.mark.parametrize(("name", "convention"), TOLD)
def test_sentences_are_well_formed(name: str, convention: Convention) -> None:
    for sections in keys(name, convention):
        read_sentences(sections)


def read_sentences(sections: tuple[Section, ...]) -> None:
    for section in sections:
        # a letter that stands for a quantity or an axis keeps its case
        assert section.title[0].isupper() or section.title[1] == "-"
        for run in runs(section):
            text = "".join(plain(i.formula) if isinstance(i, Math) else i.text for i in run)
            assert not SLIPS.search(text), text
            assert text == text.strip()


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_key_goes_from_axes_to_answers(name: str) -> None:
    for sections in keys(name):
        titles = [section.title for section in sections]
        assert all(section.blocks for section in sections)
        diagrams = sum(title.startswith("Forces on the ") for title in titles)
        if problem(name).plan.system.unknowns or diagrams:
            assert titles[0] == "Axes and signs"
            assert titles[1].startswith("Forces on the ")
            assert diagrams == len(template(name).system.bodies)


@pytest.mark.parametrize(("name", "positive"), SENSES)
def test_the_positive_sense_is_told_before_torques_are_taken(name: str, positive: str) -> None:
    convention = replace(USUAL, positive=positive)
    for sections, own in zip(keys(name, convention), works(name, convention), strict=True):
        told = f"{positive} torques are positive" in sentences(sections[:1])
        assert told == turns(own)


@pytest.mark.parametrize("name", TEMPLATES)
def test_no_equation_says_the_same_thing_twice(name: str) -> None:
    for sections in keys(name):
        for chain in (each for section in sections for each in chains(section)):
            for (_, one), (_, other) in pairwise(chain):
                assert plain((one,)) != plain((other,))
        for display in (each for section in sections for each in displays(section)):
            for above, below in pairwise(display.rows):
                assert above != below, plain(below.right)


@pytest.mark.parametrize("name", TEMPLATES)
def test_formulas_are_ones_a_student_knows(name: str) -> None:
    for sections in keys(name):
        text = whole(sections)
        assert "atan2" not in text
        assert not re.search(r"(sin|cos|tan)\(arc\w+", text), "a sine of an inverse function"


@pytest.mark.parametrize("name", TEMPLATES)
def test_two_balances_solved_together_are_both_shown_first(name: str) -> None:
    for sections, own in zip(keys(name), works(name), strict=True):
        text = whole(sections)
        for step in (step for case in cases(own) for step in case.plan.steps):
            for partner in step.partners:
                balance = partner.equation
                solved = text.find(plain((step.expression,)))
                shown = [plain((term.magnitude,)) for term in balance.terms]
                other = shown[1] if balance.kind == "condition" else plain((balance.expression,))
                assert -1 < text.find(other) < solved, step.unknown
