"""Templates chosen by rule."""

from collections import Counter
from dataclasses import replace

import pytest

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.choice import Candidate, choose
from probgen.course.rule import Chosen, Rule
from probgen.input.fault import Faults

MANY = tuple(
    Candidate(
        f"t{i}", "limbs" if i % 2 else "beams", i % 3 + 1, (f"Goal {i % 4}",), f"202{i}-05-01"
    )
    for i in range(8)
)
NEVER = Candidate("never", "beams", 1, ("Goal 9",))


def taken(
    rules: list[Rule | str], seed: str = "s", earlier: tuple[Assigned, ...] = ()
) -> ProblemSet:
    problems = tuple(
        Assigned(each, 5) if isinstance(each, str) else Assigned("", 5, rule=each) for each in rules
    )
    faults = Faults("a.toml")
    found = choose(ProblemSet("M", "W", "c.csv", problems), (*MANY, NEVER), seed, earlier, faults)
    faults.settle()
    return found


def ids(problem_set: ProblemSet) -> list[str]:
    return [each.template for each in problem_set.problems]


def test_what_fits_is_taken_with_the_reason_and_nothing_twice() -> None:
    found = taken(["t1", Rule(family="limbs", count=3), Rule(goals=("goal 9",))])
    assert ids(found)[0] == "t1"
    assert sorted(ids(found)[1:4]) == ["t3", "t5", "t7"]
    assert found.problems[4].template == "never"
    assert found.problems[4].chosen == Chosen(Rule(goals=("goal 9",)), 1, "")
    chosen = found.problems[1].chosen
    assert chosen is not None
    assert (chosen.of, chosen.last) == (3, f"202{found.problems[1].template[1]}-05-01")
    assert {each.points for each in found.problems} == {5}
    assert {each.rule for each in found.problems} == {None}


def test_each_part_of_a_rule_counts() -> None:
    assert set(ids(taken([Rule(level=2, family="limbs", count=2)]))) == {"t1", "t7"}
    assert set(ids(taken([Rule(not_used_since="2021-05-01", count=2)]))) == {"t0", "never"}
    assert ids(taken([Rule(goals=("Goal 1", "goal"), level=3)])) == ["t5"]


def test_the_choice_follows_from_the_seed_and_is_spread() -> None:
    rule = Rule(family="beams")
    assert taken([rule], "one") == taken([rule], "one")
    counts = Counter(ids(taken([rule], f"seed {i}"))[0] for i in range(500))
    assert set(counts) == {"t0", "t2", "t4", "t6", "never"}
    assert min(counts.values()) > 60


def test_who_has_papers_keeps_the_choice() -> None:
    rule = Rule(family="limbs")
    first = taken([rule, rule], "one")
    again = taken(["never", rule, rule], "another", first.problems)
    assert ids(again)[1:] == ids(first)
    other = replace(rule, level=2)
    changed = taken([other, rule], "another", first.problems)
    assert changed.problems[1].template == first.problems[0].template
    assert changed.problems[0].chosen is not None
    assert changed.problems[0].chosen.rule == other


def test_too_few_is_told_with_what_each_part_leaves() -> None:
    faults = Faults("a.toml")
    rule = Rule(family="limbs", level=2, goals=("goal 3",), not_used_since="2020-01-01", count=2)
    problem_set = ProblemSet("M", "W", "c.csv", (Assigned("", 5, rule=rule),))
    assert choose(problem_set, MANY, "s", (), faults).problems == ()
    (fault,) = faults.found
    assert (fault.field, fault.found) == ("problem[0]", "0 that fit")
    left = 'family "limbs" fits 4, level 2 fits 3, goal "goal 3" fits 2, not used since'
    assert fault.mend.endswith(f"{left} 2020-01-01 fits 0")


@pytest.mark.parametrize("count", [4, 5])
def test_as_many_as_there_are(count: int) -> None:
    rule = Rule(family="beams", count=count)
    assert len(set(ids(taken([rule])))) == count
