"""Trusses told: facts of sections, of members that carry nothing, of tension and compression."""

from __future__ import annotations

from functools import cache

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, tell_steps, work
from probgen.quantities.expression import Name, names_in
from probgen.quantities.printing import plain
from probgen.wording.block import Itemize, Paragraph, Picture, Section
from probgen.wording.facts.balance import (
    MemberIdle,
    MemberSense,
    MembersPull,
    MemberState,
    QuantityHeading,
)
from probgen.wording.facts.forces import SectionLaid
from probgen.wording.passage import Sentences
from probgen.wording.sentence import plain_text
from probgen.wording.truss import (
    idle_passage,
    member_sense,
    member_state,
    section_laid,
    taken_in_tension,
)
from probgen.working.bodies_used import is_piece
from probgen.working.convention import Convention
from tests.wording.own_telling import told_of
from tests.wording.told_keys import OWN, TEMPLATES

ROOF, BRIDGE, BRACKET = "roof-truss-snow", "footbridge-truss-crowd", "wall-bracket-board"


@cache
def worked(template: str) -> tuple[Problem, Worked]:
    problem = prepare(default_bank().read(template), Convention())
    (own,) = work(problem, draw_class(problem, "told", ["1"]).draws)
    return problem, own


@cache
def sections(template: str) -> tuple[Section, ...]:
    return tell_steps(*worked(template))


def text_of(section: Section) -> str:
    told = [plain_text(block.inlines) for block in section.blocks if isinstance(block, Paragraph)]
    for block in section.blocks:
        if isinstance(block, Itemize):
            told += map(plain_text, block.items)
    return " ".join(told)


def test_members_are_taken_in_tension_where_there_are_any() -> None:
    assert list(taken_in_tension(worked(ROOF)[1].case.system)) == [MembersPull()]
    assert "a negative force then means compression" in text_of(sections(ROOF)[0])


def test_joints_and_parts_are_pieces_and_the_whole_is_none() -> None:
    system = worked(BRIDGE)[1].case.system
    pieces = {body.id for body in system.bodies if is_piece(system, body)}
    assert {"joint-A", "part-A-B-C"} <= pieces
    assert "truss" not in pieces


def test_a_section_is_told_by_the_members_it_cuts() -> None:
    system = worked(BRIDGE)[1].case.system
    part = SectionLaid("part-A-B-C", ("F_CE", "F_BD", "F_BE"))
    assert list(section_laid(system, system.body("part-A-B-C"))) == [part]
    assert list(section_laid(system, system.body("truss"))) == []
    assert list(section_laid(system, system.body("joint-A"))) == []


def test_an_idle_member_is_told_with_its_reason() -> None:
    _, own = worked(BRACKET)
    step = own.case.plan.steps[0]
    passage = idle_passage(own.digits, step)
    assert passage.heading == QuantityHeading("F_BE")
    (told, _) = passage.parts
    assert isinstance(told, Sentences)
    name = Name("F_BE", "F_BE")
    assert told.facts == (MemberIdle(name, "F_BE", "joint-B", ("F_AB'", "F_BC"), loaded=False),)


@pytest.mark.parametrize(
    ("template", "quantity", "pulls"),
    [(ROOF, "F_AE", False), (ROOF, "F_AD", True), (BRIDGE, "F_BD", False), (BRACKET, "F_AE", True)],
)
def test_what_the_sign_means(template: str, quantity: str, pulls: bool) -> None:
    _, own = worked(template)
    step = next(each for each in own.case.plan.steps if each.unknown == quantity)
    name = Name(quantity, quantity)
    assert list(member_sense(own.digits, step)) == [MemberSense(name, quantity, pulls)]
    assert member_state(own.case, quantity) == MemberState(pulls)


def test_a_support_and_an_idle_member_have_no_such_state() -> None:
    _, own = worked(BRACKET)
    assert member_state(own.case, "F_BE") is None
    assert member_state(own.case, "R.x") is None


def test_the_forces_on_a_piece_come_before_its_balances() -> None:
    """Heading by heading: the whole, then each joint where it is worked, none of them twice."""
    titles = [section.title for section in sections(ROOF)]
    for joint in ("joint E", "joint A"):
        first = titles.index(f"Forces on {joint}")
        assert titles[first + 1] == f"Force balance on {joint}"
    assert titles.count("Forces on the roof truss") == 1


def test_nothing_is_drawn_or_listed_of_a_member_known_to_carry_nothing() -> None:
    listed = next(each for each in sections(BRACKET) if each.title == "Forces on joint E")
    assert "BE" not in text_of(listed)
    drawn = [
        block for each in sections(BRACKET) for block in each.blocks if isinstance(block, Picture)
    ]
    assert [picture.body for picture in drawn] == ["joint-C", "joint-E"]


def test_the_force_of_a_support_is_not_explained_again_at_its_joint() -> None:
    told = {each.title: text_of(each) for each in sections(ROOF)}
    assert "unknown in size and direction" in told["Forces on the roof truss"]
    assert "unknown in size and direction" not in told["Forces on joint A"]


def test_two_members_alone_at_a_joint_are_named_together() -> None:
    (said,) = [line for line in told_of("billboard-truss-wind") if "zero-force" in line]
    assert said == (
        "No load acts at joint F, where only members DF and EF meet, and they are not in line. "
        "Perpendicular to member EF only F_DF has a component, so F_DF = 0: member DF is a "
        "zero-force member."
    )


def test_a_member_that_meets_two_in_line_is_told_by_them() -> None:
    (said,) = [line for line in told_of(BRACKET) if "zero-force" in line]
    assert said == (
        "No load acts at joint B, where only members AB, BC and BE meet, and members AB and BC are "
        "in line. Perpendicular to that line only F_BE has a component, so F_BE = 0: member BE is "
        "a zero-force member."
    )


def test_a_member_across_the_line_of_all_other_forces_is_told_by_that() -> None:
    problem, _ = worked(BRACKET)
    fact = MemberIdle(Name("F_BE", "F_BE"), "F_BE", "joint-B", ("F_BC",), loaded=True)
    said = plain_text(problem.language.say(fact, problem.nouns))
    assert said.startswith("At joint B all forces but F_BE act along one line. Perpendicular to ")


def test_a_section_crosses_members_that_carry_nothing_too() -> None:
    """Of the three members between BD and EF, DF is idle; the other sections cross no such one."""
    laid = [line for line in told_of("billboard-truss-wind") if "We cut through" in line]
    assert [line.split(". ")[0] for line in laid] == [
        "We cut through members AC, BD and BC and keep the part CDEF; the members that we cut "
        "pull on it",
        "We cut through members CE, DE and DF and keep the part EF; the members that we cut "
        "pull on it, all but member DF, which carries nothing",
    ]


@pytest.mark.parametrize("id", OWN)
def test_what_the_data_settle_is_worked_out_before_it_is_used(id: str) -> None:
    """Every weight and length in an equation has a line of its own, at a truss's joint too."""
    template = read_template(TEMPLATES[id].read_text(encoding="utf-8"), id)
    plan = prepare(template, Convention()).plan
    steps = [step for way in plan.ways for step in way.steps]
    used = {name for s in steps for e in s.equations for name in names_in(e.expression)}
    lines = told_of(id)
    for settled in (each.variable for each in plan.definitions if each.variable in used):
        letter = plain(plan.system.variables[settled].as_name)
        assert any(line.startswith(f"{letter} =") for line in lines), settled
