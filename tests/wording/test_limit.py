"""Limits told: what each lets happen, which decides, and how much is to spare.

Numbers by hand: a 50 kg cabinet (490 N), 0.50 m deep, pushed 0.80 m above the floor, slides at
0.30 x 490 N = 147 N and tips at 490 N x 0.50/(2 x 0.80) = 153.1 N; pushed at 1.00 m, at 122.5 N.
"""

from __future__ import annotations

import re
from decimal import Decimal

import pytest

from probgen.bank.bank import default_bank
from probgen.draws.draw import completed
from probgen.problem.problem import Worked, prepare, tell_steps, work
from probgen.quantities.printing import plain
from probgen.statics import plan
from probgen.statics.state import utmost_finds
from probgen.wording.answer import Answer
from probgen.wording.block import Display, Itemize, Paragraph, Section
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from probgen.working.verdict import at_limit, governing, holds, margin
from tests import situations
from tests.situations import (
    HOLDS,
    SLIDES,
    SLIPS_DOWN,
    SLIPS_UP,
    SLOPE,
    TIPS,
    cabinet,
    crate,
    finding,
)
from tests.two_states import two_crates
from tests.wording.own_telling import told, told_of

LEAST = '[[limit]]\nid = "least"\nthat = "N >= 500 N"\nname = "it stands too lightly"\n'
DOWN = "That is rounded down, for at 123 N it tips."
LARGEST = finding("P", "largest")


def worked(rest: str, height: str = "0.80", push: str = "") -> tuple[Worked, list[Section]]:
    """The cabinet worked and told; without a push given, the push is to be found."""
    text = cabinet(push, m="50.0", b="0.50", h=height, mu="0.30")
    problem, own = situations.worked(text + rest)
    return own, list(tell_steps(problem, own))


def section(sections: list[Section], title: str) -> str:
    """All that a section says, as plain text, a line each."""
    (found,) = [each for each in sections if each.title == title]
    lines: list[str] = []
    for block in found.blocks:
        match block:
            case Paragraph(inlines):
                lines.append(plain_text(inlines))
            case Itemize(items):
                lines += [plain_text(item) for item in items]
            case Display(rows):
                lines += [f"{plain(r.left)} {r.relation} {plain(r.right)}" for r in rows]
    return "\n".join(lines)


@pytest.mark.parametrize(
    ("height", "first", "value"), [("0.80", "it slides", "147 N"), ("1.00", "it tips", "122 N")]
)
def test_the_limit_reached_first_decides(height: str, first: str, value: str) -> None:
    own, sections = worked(SLIDES + TIPS + LARGEST, height)
    told = section(sections, "Which comes first?")
    tipping = "153.1 N" if height == "0.80" else "122.5 N"
    assert told.split("\n")[:2] == ["it slides at P = 147.0 N", f"it tips at P = {tipping}"]
    wanted = f"The smaller value decides: {first} first, so the largest value is P = {value}."
    assert told.split("\n")[2] == (wanted if height == "0.80" else f"{wanted} {DOWN}")
    assert own.case.labels.limits[governing(own.case, utmost_finds(own.case.system)[0]).id] == first


def test_the_answers_say_what_and_how_much() -> None:
    own, _ = worked(SLIDES + TIPS + LARGEST)
    said = {answer.id: answer.printed for answer in own.answers}
    assert said == {"P": "147 N", "P.limit": "it slides"}


def test_each_limit_has_its_working_under_its_name() -> None:
    _, sections = worked(SLIDES + TIPS + LARGEST)
    titles = [each.title for each in sections]
    slides, tips = "Just before it slides", "Just before it tips"
    assert titles.index(slides) < titles.index(tips) < titles.index("Which comes first?")
    said = "Suppose that it {0} first: when that is about to happen, {1}"
    assert section(sections, slides) == said.format("slides", "f has just reached μ N.")
    reached = "x has just reached its limit:\nx = b\n = 0.500 m"
    assert section(sections, tips) == said.format("tips", reached)


def test_what_just_holds_no_more_has_come_down_to_zero() -> None:
    """The push that a plank no longer gets is left out of what follows, which it turns not."""
    lines = told_of("trestle-plank-walk")
    opening = lines.index("When that is about to happen, N_A has just come down to zero:")
    assert lines[opening + 1] == "N_A = 0 N"
    rest = [line for line in lines[opening + 2 :] if "N_A" in line]
    assert rest == []


def test_a_single_limit_is_not_supposed_to_come_first() -> None:
    _, sections = worked(SLIDES + LARGEST)
    assert section(sections, "Just before it slides") == (
        "When that is about to happen, f has just reached μ N."
    )


def place(height: str, at: str) -> tuple[list[str], list[Section]]:
    """The cabinet where it is also asked where the floor pushes: the titles, and all sections."""
    _, sections = worked(SLIDES + TIPS + LARGEST + finding("x"), height)
    titles = [each.title for each in sections]
    assert f"{at} first, so" in section(sections, "Which comes first?")
    return titles, sections


def test_what_else_is_asked_is_worked_out_at_the_limit_reached_first_alone() -> None:
    """Pushed at 1.00 m it would slide with x = 0.25 m + 0.30 x 1.00 m = 0.55 m, beyond its base."""
    titles, sections = place("0.80", "it slides")
    compared = titles.index("Which comes first?")
    assert titles[compared + 1 : compared + 3] == ["Which forces turn the cabinet about K?",
                                                   "Torque balance"]  # fmt: skip
    assert section(sections, "Which comes first?").endswith(
        "What else is asked is found in this state, just before it slides."
    )
    titles, sections = place("1.00", "it tips")
    assert titles[titles.index("Which comes first?") + 1 :] == ["Check"]
    assert "What else" not in section(sections, "Which comes first?")
    printed = [section([each], each.title) for each in sections]
    assert not any("0.55" in text for text in printed)


def test_the_last_look_knows_what_the_way_to_another_limit_used_and_found() -> None:
    """N is found before it slides, from the forces along y, and is so where it tips first."""
    _, sections = place("1.00", "it tips")
    look = section(sections, "Check")
    assert look.startswith("Torques about O, a point we have not used:")
    assert " N x " in look


def test_forces_are_listed_once() -> None:
    _, sections = worked(SLIDES + TIPS + LARGEST)
    titles = [each.title for each in sections]
    assert titles.count("Axes and signs") == 1
    assert titles.count("Forces on the cabinet") == 1


def test_one_limit_is_not_compared_with_itself() -> None:
    _, sections = worked(SLIDES + LARGEST)
    titles = [each.title for each in sections]
    assert titles[titles.index("Just before it slides") + 1 :] == [
        "Force balance", "Friction from the floor", "Force balance"]  # fmt: skip


@pytest.mark.parametrize(
    ("push", "printed"),
    [("120", "yes, with 27.0 N to spare"), ("160", "no, 13.0 N too much")],
)
def test_yes_or_no_with_the_margin(push: str, printed: str) -> None:
    own, sections = worked(SLIDES + HOLDS, push=push)
    (answer,) = own.answers
    assert answer.printed == printed
    kept = printed.startswith("yes")
    within = f"f is {push} N, within the 147 N of μ N: {printed}."
    beyond = f"f would have to be {push} N, but μ N allows at most 147 N: {printed}. It slides."
    spare, over = "μ N − f = 147 N − 120 N = 27.0 N", "f − μ N = 160 N − 147 N = 13.0 N"
    assert section(sections, "Does it hold?").split("\n") == [
        f"f = {push} N",
        "μ N = (0.30)(490 N) = 147 N",
        spare if kept else over,
        within if kept else beyond,
    ]


def test_the_margin_is_taken_from_the_digits_above_it() -> None:
    """By hand: 0.30 x 490.49 N = 147.147 N, less 104.5 N is 42.647 N; 147 - 105 would be 42."""
    text = cabinet("104.5", m="50.05", b="0.50", h="0.80", mu="0.30") + SLIDES + HOLDS
    problem, own = situations.worked(text)
    told = section(list(tell_steps(problem, own)), "Does it hold?")
    assert "μ N − f = 147.1 N − 104.5 N = 42.6 N\n" in told
    assert told.endswith("f is 104.5 N, within the 147.1 N of μ N: yes, with 42.6 N to spare.")


def test_a_limit_from_below_is_too_little_when_it_is_broken() -> None:
    own, sections = worked(LEAST + HOLDS, push="120")
    assert own.answers[0].printed == "no, 10.0 N too little"
    told = section(sections, "Does it hold?")
    assert "but at least 500 N is allowed: no, 10.0 N too little." in told


def answers_by_id(own: Worked) -> dict[str, Answer]:
    return {answer.id: answer for answer in own.answers}


def test_every_limit_is_judged_where_none_is_named() -> None:
    own, sections = worked(SLIDES + TIPS + HOLDS, push="150")
    assert answers_by_id(own).keys() == {"slides", "tips"}
    told = section(sections, "Does it hold?")
    assert "at most 147 N: no, 3.00 N too much. It slides." in told
    # By hand: x = 0.25 m + 150 N x 0.80 m/490 N = 0.49490 m.
    assert "of b: yes, with 0.00510 m to spare." in told or "5.10 × 10⁻³ m to spare" in told


def test_one_named_limit_is_judged_alone() -> None:
    asked = finding("tips", "holds")
    own, sections = worked(SLIDES + TIPS + asked, push="150")
    assert answers_by_id(own).keys() == {"tips"}
    assert "μ" not in section(sections, "Does it hold?")


def test_the_margin_is_never_negative() -> None:
    for push, kept in (("120", True), ("160", False)):
        own, _ = worked(SLIDES + HOLDS, push=push)
        (limit,) = own.case.system.limits
        assert holds(own.case, limit) is kept
        size = margin(own.digits, limit)
        assert size.value == abs(147 - int(push))


def feeder(figures: int) -> Worked:
    """Cords of 60 N at 20 degrees and of 165 N at 60 degrees."""
    convention = Convention(figures=figures)
    problem = prepare(default_bank().read("feeder-cord-strength"), convention)
    stated = {"left_strength": 60, "right_strength": 165, "left_angle": 20, "right_angle": 60}
    chosen = {id: Decimal(value) for id, value in stated.items()}
    (own,) = work(problem, [completed(problem.template, chosen)])
    return own


def test_a_value_at_its_limit_is_printed_equal_to_it() -> None:
    """With two figures 165 N would be 170 N, more than the cord holds."""
    own = feeder(2)
    reached = at_limit(own.digits, own.case.plan.branches[1])
    assert plain(reached.final("T_2")) == "165 N"


@pytest.mark.parametrize(("figures", "printed"), [(2, "12 kg"), (3, "12.0 kg"), (4, "12.05 kg")])
def test_the_largest_value_is_not_rounded_past_what_holds(figures: int, printed: str) -> None:
    """By hand: 60 N (sin 20 + cos 20 tan 60)/(9.80 m/s^2) = 12.0589 kg."""
    assert plain(feeder(figures).digits.final("mass")) == printed


def test_a_body_that_tips_stands_on_its_edge_where_the_floor_then_pushes() -> None:
    (opening,) = (
        line for line in told_of("cabinet-slide-or-tip") if "Suppose" in line and "tip" in line
    )
    assert opening.endswith("it stands on its edge at B alone, so Q, where N acts, is at B:")


def test_what_is_rounded_to_the_side_that_holds_says_so_where_it_is_rounded() -> None:
    """The cabinet tips at 122.5 N, which is 123 N rounded as usual: the answer, once compared."""
    _, sections = worked(SLIDES + TIPS + LARGEST, "1.00")
    assert section(sections, "Torque balance").endswith("\n = 122.5 N")
    _, alone = worked(TIPS + LARGEST, "1.00")
    assert section(alone, "Torque balance").split("\n")[-2:] == [" = 122.5 N ≈ 122 N", DOWN]


def test_values_at_several_limits_stand_beside_each_other_in_like_digits() -> None:
    """One of them 4.810 kg to four figures, and none rounded off before they are compared."""
    lines = [line for n in range(1, 41) for line in told_of("feeder-cord-strength", draw=n)]
    values = [line.rpartition("m = ")[2] for line in lines if " cord breaks at m = " in line]
    figures = [len(re.sub(r"\D", "", value)) for value in values]
    assert figures[::2] == figures[1::2]
    assert any(value.endswith("0 kg") for value in values)
    found = [line for line in lines if "≈" in line and "kg" in line]
    assert found == []


def test_each_state_is_told_to_its_own_limit() -> None:
    """By hand: 50 kg at 25 degrees with 0.25 stays from 96.06 N to 318.1 N."""
    lines = told(two_crates())
    down, up = lines.index("# Just before it slips down"), lines.index("# Just before it slips up")
    assert any(line.endswith("≈ 96.1 N") for line in lines[down:up])
    assert any(line.endswith("≈ 318 N") for line in lines[up:])


def test_a_limit_from_the_other_side_is_said_to_be_one(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where it bounds in some draws, and in this one does not."""
    monkeypatch.setattr(plan, "_met", lambda branches, probe: branches)
    text = crate() + SLOPE + SLIPS_DOWN + SLIPS_UP + finding("T", "largest")
    lines = told(text)
    assert lines[lines.index("# Largest tension in the cable") + 1] == (
        "It slips down only as T shrinks: T = 96.06 N bounds it from the other side. "
        "It slips up at T = 318 N."
    )


def test_a_state_without_a_limit_is_told_after_that_which_goes_to_one() -> None:
    """One crate about to slip down; the other slides up steadily."""
    up = '[[limit]]\nid = "up"\nthat = "f_2 <= mu*N_2"\nname = "it slips up"\n'
    text = two_crates().replace(up, "").replace(finding("T_2", "largest"), finding("T_2"))
    lines = told(text.replace('friction = "f_2"', 'friction = "f_2"\ncoefficient = "mu"'))
    headings = [line for line in lines if line.startswith("# ")]
    first, second = (
        headings.index("# Just before it slips down"),
        headings.index("# Forces on the second"),
    )
    assert headings[1] == "# Forces on the crate"
    assert first < second
    before, after = headings[:first], headings[second:]
    assert not any("second" in heading for heading in before)
    assert not any("crate" in heading for heading in after)
    assert headings.count("# Forces on the second") == 1


def test_what_several_equations_give_says_so_too() -> None:
    """The trough's balances along level axes are solved together."""
    level = Convention(torque="components", axes="level")
    told_in_all = [line for n in range(1, 5) for line in told_of("trough-ramp-winch", level, n)]
    rounded = [line for line in told_in_all if "That is rounded" in line]
    assert rounded
    assert all(told_in_all[told_in_all.index(line) - 1].startswith("= ") for line in rounded)


def test_what_the_way_to_another_limit_found_is_no_unknown() -> None:
    """N is found where the cabinet slides, and is so where it tips."""
    lines = [line for line in told_of("cabinet-slide-or-tip") if "leaves the equation" in line]
    assert [line.partition("and the ")[2] for line in lines] == ["unknown f leaves the equation."]
