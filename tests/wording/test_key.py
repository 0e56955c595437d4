"""The told working of every template and published problem, read as a grader would read it."""

from __future__ import annotations

import re
from dataclasses import fields, replace
from decimal import Decimal
from itertools import pairwise
from typing import Literal

import pytest

from probgen.problem.problem import Worked, draw_class, tell_steps, work
from probgen.quantities.expression import Number, names_in
from probgen.quantities.formula import Relation
from probgen.quantities.printing import plain
from probgen.quantities.rounding import RoundingRule, round_figures, round_places
from probgen.quantities.unit import DEGREE, SI, UNITS, US_CUSTOMARY
from probgen.statics.state import utmost_finds
from probgen.statics.system import Form
from probgen.wording.answer import Answer
from probgen.wording.block import Math, Section, Text
from probgen.working.bodies_used import bodies_used
from probgen.working.convention import Convention
from probgen.working.direction import quarter_of
from tests.situations import HEAD
from tests.wording.own_telling import told as told_lines
from tests.wording.told_keys import (
    ABOUT_TURNING,
    CHOICES,
    OTHER,
    OWN,
    TEMPLATES,
    TOLD,
    USUAL,
    cases,
    chains,
    digit,
    displays,
    keys,
    named,
    problem,
    runs,
    sentences,
    template,
    turns,
    value,
    whole,
    works,
)


@pytest.mark.one_in(6)
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


def test_lengths_that_are_converted_have_digits_enough_for_their_angle() -> None:
    """Of data in metres told in feet, as an author's own are who gives no others."""
    own = replace(problem("sign-arm-strut"), convention=replace(USUAL, units=US_CUSTOMARY))
    drawn = draw_class(own, "key", [str(each) for each in range(30)]).draws
    assert lines_read(tuple(tell_steps(own, each) for each in work(own, drawn)))


def lines_read(told: tuple[tuple[Section, ...], ...]) -> int:
    """How many lines of numbers there were; each gives its result within the last digit."""
    checked = 0
    for sections in told:
        for chain in (each for section in sections for each in chains(section)):
            bare = [(r, e) for r, e in chain if not names_in(e)]
            numeric = [(r, e) for r, e in bare if r in "=" or (r == "≈" and value(e))]
            ends = [e for r, e in numeric if isinstance(e, Number)]
            for relation, expression in numeric:
                if not isinstance(expression, Number) and relation == "=" and ends:
                    checked += 1
                    gap = abs(value(expression) - value(ends[-1]))
                    assert gap <= digit(ends[-1]) * 1.0001, plain((expression,))
    return checked


@pytest.mark.one_in(4)
@pytest.mark.parametrize("name", TEMPLATES)
def test_a_result_is_its_carried_value_rounded(name: str) -> None:
    for sections in keys(name):
        for chain in (each for section in sections for each in chains(section)):
            for (_, carried), (relation, final) in pairwise(chain):
                if relation == "≈" and value(final):  # and no sum that is all but zero
                    assert isinstance(carried, Number)
                    assert isinstance(final, Number)
                    factor = final.unit.factor if final.unit else 1.0
                    assert final.value in _rounded(name, value(carried) / factor, final), plain(
                        (carried, Relation("≈"), final)
                    )


def _rounded(name: str, carried: float, final: Number) -> list[Decimal]:
    """What a value may be printed as: the utmost before a limit, to the side that holds."""
    if final.unit == DEGREE:
        return [round_places(carried, 1, USUAL.rounding)]
    sides: dict[Form, RoundingRule] = {Form.LARGEST: "down", Form.SMALLEST: "up"}
    utmost = utmost_finds(template(name).system)
    rules = [USUAL.rounding, *(sides[find.form] for find in utmost)]
    return [round_figures(carried, USUAL.figures, rule) for rule in rules]


@pytest.mark.parametrize("name", TEMPLATES)
def test_every_answer_stands_in_the_key(name: str) -> None:
    for sections, own in zip(keys(name), works(name), strict=True):
        text = whole(sections)
        for answer in own.answers:
            assert answer.printed in text, answer.id


def coherent(answer: Answer) -> float:
    """An answer's value in coherent units: a customary course prints pounds-force and feet."""
    return answer.value * UNITS[answer.unit or "1"].factor


@pytest.mark.one_in(7)
@pytest.mark.parametrize(
    "convention", [each for each in CHOICES if each.units == SI], ids=named
)  # in US customary units a template has other ranges
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
    for own, before, after in texts:
        assert (whole(before) != whole(after)) == concerns(convention, own)


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


MANY = 11
"""Templates, so that a fault in a choice of the course shows in some."""


def test_every_choice_concerns_many_problems() -> None:
    for convention in CHOICES:
        concerned = [name for name in OWN if concerns(convention, works(name)[0])]
        assert len(concerned) >= MANY, named(convention)


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
    tried = {*OTHER, "rounding", "gravity", "axes", "order", "pivot", "trusses"}
    assert {field.name for field in fields(Convention)} - tried == {"tolerance"}  # marks only


def test_level_axes_keep_to_x_and_y() -> None:
    """A smooth ramp: the rope's pull along it, or by two balances along x and y."""
    told = {axes: whole(keys("up1-5.6-p67b", replace(USUAL, axes=axes))[0]) for axes in AXES}
    assert "ΣF_∥" in told["simplest"]
    assert "ΣF_∥" not in told["level"]
    both = [works("up1-5.6-p67b", replace(USUAL, axes=axes))[0].answers for axes in AXES]
    assert [a.value for a in both[0]] == pytest.approx([a.value for a in both[1]])


AXES: tuple[Literal["simplest", "level"], ...] = ("simplest", "level")


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_negative_force_or_couple_is_explained(name: str) -> None:
    for sections, own in zip(keys(name), works(name), strict=True):
        text = sentences(sections)
        system = own.case.system
        acting = {force.id: force.magnitude for force in system.forces}
        acting |= {each.id: system.variables[each.id].as_name for each in system.couples}
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


@pytest.mark.one_in(6)
@pytest.mark.parametrize(("name", "convention"), TOLD)
def test_sentences_are_well_formed(name: str, convention: Convention) -> None:
    for sections in keys(name, convention):
        read_sentences(sections)


def read_sentences(sections: tuple[Section, ...]) -> None:
    for section in sections:
        # a letter that stands for a quantity or an axis keeps its case
        assert section.title[0].isupper() or section.title[1] == "-"
        assert "_" not in section.title  # it is no formula
        for run in runs(section):
            text = "".join(plain(i.formula) if isinstance(i, Math) else i.text for i in run)
            assert not SLIPS.search(text), text
            assert text == text.strip()


@pytest.mark.parametrize("name", TEMPLATES)
def test_a_key_goes_from_axes_to_answers(name: str) -> None:
    for sections in keys(name):
        titles = [section.title for section in sections]
        assert all(section.blocks for section in sections)
        diagrams = sum(title.startswith("Forces on ") for title in titles)
        if problem(name).plan.system.unknowns or diagrams:
            assert titles[0] == "Axes and signs"
            idle = titles[1].startswith("Force in member ")  # what a truss does without
            integrated = titles[1].startswith("Resultant of ")  # what stands for a load
            assert titles[1].startswith("Forces on ") or idle or integrated
            assert diagrams == len(bodies_used(problem(name).plan))


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


def test_force_balances_of_each_body_stand_by_themselves() -> None:
    """Two lamps on a cord each: the one balance follows the other, under a heading of its own."""
    lamps = "".join(
        f"""[body.{body}]
particle = true
[[weight]]
body = "{body}"
mass = "m"
of = "lamp"
symbol = "W_{body[0]}"
[[cable]]
body = "{body}"
direction = 90
symbol = "T_{body[0]}"
[[find]]
quantity = "T_{body[0]}"
"""
        for body in ("left", "right")
    )
    mass = '[given]\nm = { name = "mass", choices = [2.0], unit = "kg" }\n'
    lines = told_lines(HEAD + mass + lamps)
    headings = [line for line in lines if line.startswith("# Force balance")]
    assert headings == ["# Force balance on the left", "# Force balance on the right"]


LETTER = re.compile(r"(?<![\w'’])(?<!\d )[B-Zb-z](?![\w'’])")
"""A letter by itself that is no word, nor the unit of the number before it."""


@pytest.mark.parametrize("name", OWN)
def test_letters_of_points_axes_and_forces_are_symbols(name: str) -> None:
    texts = [
        inline.text
        for section in keys(name)[0]
        for run in runs(section)
        for inline in run
        if isinstance(inline, Text)
    ]
    named = (re.sub(r"\b[Jj]oint [A-Z]\b", "", text) for text in texts)  # a joint's name
    assert [text for text in named if LETTER.search(text)] == []


GATE = (
    HEAD
    + """
[given]
b = { name = "width", choices = [1.5], unit = "m" }
h = { name = "height of the gate", choices = [2.0], unit = "m" }
w = { name = "specific weight", choices = [9.8], unit = "kN/m^3" }
[points]
A = [0, "h"]
B = [0, 0]
[body.gate]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[contact]]
at = "B"
direction = 180
symbol = "N"
name = "stop"
[[distributed]]
from = "A"
to = "B"
start = "w*h*b"
end = "2*w*h*b"
direction = 0
symbol = "F"
name = "water"
[[find]]
quantity = "N"
[[find]]
quantity = "F"
"""
)


def test_a_load_that_is_asked_is_worked_out_before_it_is_put_into_a_balance() -> None:
    lines = told_lines(GATE)
    found, balance = (next(i for i, x in enumerate(lines) if x.startswith(start))
                      for start in ("# Resultant of the water", "# Torque balance"))  # fmt: skip
    assert found < balance
