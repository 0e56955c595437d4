"""Points as a course shares them: by parts, and by kinds of steps."""

from __future__ import annotations

import pytest

from probgen.wording.english import ENGLISH
from probgen.wording.sentence import plain_text
from probgen.working.criteria import criteria
from probgen.working.scheme import WEIGHTS, Mark, scheme
from probgen.working.shares import GROUPS, Share, Shares, by_part, of_group
from tests.situations import worked
from tests.two_states import two_crates
from tests.working.test_scheme import OWN, USUAL, problem

SHARED = Shares(marks=(Share("diagrams", 2), Share("torques", 5), Share("results", 3)))


def marks_of(name: str, points: int, shares: Shares) -> tuple[Mark, ...]:
    return scheme(problem(name).plan, USUAL, points, shares)


def test_every_kind_of_step_has_one_group() -> None:
    kinds = [kind for group in GROUPS.values() for kind in group]
    assert sorted(kinds) == sorted(WEIGHTS)


def test_kinds_of_steps_get_what_they_are_given() -> None:
    marks = marks_of("beam-stay-cable", 10, SHARED)
    found = {"diagrams": 0, "torques": 0, "results": 0}
    for mark in marks:
        (group,) = {name for name, own in GROUPS.items() for kind in mark.kinds if kind in own}
        found[group] += mark.points
    assert found == {"diagrams": 2, "torques": 5, "results": 3}


@pytest.mark.parametrize("name", OWN)
def test_no_criterion_is_lost_or_doubled_among_parts(name: str) -> None:
    own = problem(name)
    found = tuple(criteria(own.plan, USUAL))
    parts = by_part(own.plan, found)
    assert len(parts) == len(own.plan.system.finds)
    assert sorted(map(repr, found)) == sorted(repr(each) for part in parts for each in part)
    assert parts[0], "what is asked first has steps of its own"


@pytest.mark.parametrize("name", OWN)
def test_parts_get_what_they_are_given(name: str) -> None:
    own = problem(name)
    parts = by_part(own.plan, tuple(criteria(own.plan, USUAL)))
    if not all(parts):
        pytest.skip("a part without steps of its own is refused")
    points = tuple(range(4, 4 + len(parts)))
    marks = marks_of(name, sum(points), Shares(parts=points))
    letters = "abcdefgh"[: len(parts)]
    given = [sum(mark.points for mark in marks if mark.part == letter) for letter in letters]
    assert given == [*points]


def test_a_part_has_the_steps_that_lead_to_it() -> None:
    # (a) asks for the distance, from torques about the pivot; (b) for the pivot's force, from
    # the balance of forces.
    own = problem("seesaw-two-riders")
    first, second = by_part(own.plan, tuple(criteria(own.plan, USUAL)))
    assert {each.kind for each in first} == {"diagram", "torque", "substitution", "result"}
    assert {each.kind for each in second} == {"force"}


def test_a_mark_says_its_part() -> None:
    own = problem("seesaw-two-riders")
    marks = marks_of("seesaw-two-riders", 9, Shares(parts=(6, 3)))
    told = [plain_text(ENGLISH.say(mark, own.nouns)) for mark in marks]
    assert told[0].startswith("(a) free-body diagram")
    assert told[-1].startswith("(b) ")


def test_sums_that_are_not_the_points() -> None:
    assert list(SHARED.complaints(10)) == []
    assert list(SHARED.complaints(12)) == [("marks", "2 + 5 + 3 = 10")]
    assert list(Shares(parts=(4, 5)).complaints(8)) == [("parts", "4 + 5 = 9")]


def test_a_group_keeps_the_order_of_the_working() -> None:
    found = tuple(criteria(problem("beam-stay-cable").plan, USUAL))
    assert of_group(found, "results") == tuple(
        each for each in found if each.kind in ("result", "magnitude", "direction")
    )


def test_each_first_limit_is_marked_with_what_it_bounds() -> None:
    """Two states, either before one of two limits."""
    slack = '[[limit]]\nid = "slack"\nthat = "T >= 60 N"\nname = "the cable goes slack"\n'
    tears = '[[limit]]\nid = "tears"\nthat = "T_2 <= 900 N"\nname = "the cable tears"\n'
    _, own = worked(two_crates() + slack + tears)
    plan = own.case.plan
    assert [len(plan.branches_to(find)) for find in plan.system.finds] == [2, 2]
    parts = by_part(plan, tuple(criteria(plan, USUAL)))
    kinds = [[each.kind for each in part].count("limit") for part in parts]
    assert kinds == [1, 1]


def test_what_is_found_at_the_first_limit_is_of_the_part_that_asks_it() -> None:
    """The way to tipping needs x for the push, which (a) asks; x itself is asked in (b)."""
    own = problem("cabinet-slide-or-tip")
    first, second = by_part(own.plan, tuple(criteria(own.plan, USUAL)))
    assert [each.quantity for each in second] == ["x"]
    assert "limit" in {each.kind for each in first}


def test_what_has_one_limit_has_no_first_one_to_be_marked() -> None:
    """Of two states the second alone may end in two ways."""
    tears = '[[limit]]\nid = "tears"\nthat = "T_2 <= 900 N"\nname = "the cable tears"\n'
    _, own = worked(two_crates() + tears)
    plan = own.case.plan
    assert [len(plan.branches_to(find)) for find in plan.system.finds] == [1, 2]
    parts = by_part(plan, tuple(criteria(plan, USUAL)))
    kinds = [[each.kind for each in part].count("limit") for part in parts]
    assert kinds == [0, 1]
