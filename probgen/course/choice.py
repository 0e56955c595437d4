"""Templates chosen by an assignment's rules: seeded, the same again, and with the reason.

Whoever has papers keeps them: a rule that an earlier issue had takes what it took then.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.rule import Chosen, Rule
from probgen.draws.keyed_choice import keyed_choice
from probgen.input.fault import Fault, Faults

_SPREAD = 2**64


@dataclass(frozen=True, slots=True)
class Candidate:
    """A template that may be taken; last: the day of its last use ("2027-01-31"), "" for none."""

    id: str
    family: str
    level: int
    goals: tuple[str, ...]
    last: str = ""


def choose(
    problem_set: ProblemSet,
    candidates: Sequence[Candidate],
    seed: str,
    earlier: Sequence[Assigned],
    faults: Faults,
) -> ProblemSet:
    """The set with templates in the places of its rules.

    earlier: the problems of the issue before; faults: where rules that too few templates fit are
    noted, and templates of a rule's family that there is none of.
    """
    named = {each.template for each in problem_set.problems if not each.rule}
    before = [each for each in earlier if each.chosen]
    taken: list[Assigned] = []
    for place, problem in enumerate(problem_set.problems):
        if problem.rule is None:
            taken.append(problem)
            continue
        kept = [each for each in before if each.chosen and each.chosen.rule == problem.rule]
        kept = kept[: problem.rule.count]
        before = [each for each in before if each not in kept]
        had = {*named, *(each.template for each in (*taken, *before))}
        free = [each for each in candidates if each.id not in had]
        key = (seed, "choice", place)
        taken += kept if kept else _taken(problem, free, key, f"problem[{place}]", faults)
    return replace(problem_set, problems=tuple(taken))


def _taken(
    problem: Assigned,
    free: Sequence[Candidate],
    key: tuple[str | int, ...],
    field: str,
    faults: Faults,
) -> Iterator[Assigned]:
    rule = problem.rule or Rule()
    fitting = [each for each in free if all(_fits(each, rule))]
    if len(fitting) < rule.count:
        found = f"{len(fitting)} that fit"
        mend = f"loosen the rule: {_told(free, rule)}"
        expected = f"at least {rule.count} that the set does not have already"
        faults.found.append(Fault(faults.file, field, found, expected, mend))
        return
    order = sorted(fitting, key=lambda each: (keyed_choice(_SPREAD, *key, each.id), each.id))
    for each in order[: rule.count]:
        chosen = Chosen(rule, len(fitting), each.last)
        yield replace(problem, template=each.id, rule=None, chosen=chosen)


def _fits(candidate: Candidate, rule: Rule) -> Iterator[bool]:
    yield rule.family in ("", candidate.family)
    yield rule.level in (0, candidate.level)
    for goal in rule.goals:
        yield any(goal.casefold() in own.casefold() for own in candidate.goals)
    yield not rule.not_used_since or candidate.last < rule.not_used_since


def _told(free: Sequence[Candidate], rule: Rule) -> str:
    """How many templates fit each part of a rule by itself."""
    parts = {
        f'family "{rule.family}"': Rule(family=rule.family),
        f"level {rule.level}": Rule(level=rule.level),
        **{f'goal "{goal}"': Rule(goals=(goal,)) for goal in rule.goals},
        f"not used since {rule.not_used_since}": Rule(not_used_since=rule.not_used_since),
    }
    counts = (
        f"{name} fits {sum(all(_fits(each, part)) for each in free)}"
        for name, part in parts.items()
        if part != Rule()
    )
    return ", ".join(counts)
