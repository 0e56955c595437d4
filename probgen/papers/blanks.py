"""The places a sheet has for the answers to one thing asked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from probgen.problem.problem import Problem, Worked
from probgen.quantities.expression import Name, Number
from probgen.sheets.document import Blank
from probgen.statics.plan import limits_asked
from probgen.statics.system import Find
from probgen.wording.answer import Answer
from probgen.wording.block import Inline
from probgen.wording.facts.asked import (
    AnswerNamed,
    LimitOffered,
    MarginNamed,
    SidesOffered,
    WaysOffered,
    YesOrNo,
)
from probgen.working.fact import Fact
from probgen.working.result import ResultKind, Target
from probgen.working.verdict import Verdict

Inlines = tuple[Inline, ...]


def label(problem: Problem, target: Target) -> Inlines:
    """What an answer is called beside its value: the letter of a quantity, or words."""
    several = len(limits_asked(problem.plan.system, target.find)) > 1
    limit = target.owner if target.kind is ResultKind.VERDICT and several else ""
    return _say(problem, AnswerNamed(target.kind, Name(target.id, target.symbol), limit))


def unit_printed(answer: Answer) -> str:
    """The unit a key's answer has, "" for none."""
    match answer.shown:
        case Number(unit=unit) if unit is not None:
            return unit.plain
        case _:
            return ""


def blanks_of(problem: Problem, own: Worked, find: Find) -> Iterator[Blank]:
    """A place for each answer to a find: size, angle and side; what happens first; yes or no.

    The words to choose from are the same whatever the answer is.
    """
    limits = tuple(limit.id for limit in limits_asked(own.case.system, find))
    for answer in own.answers:
        if not answer.asked or answer.find != find:
            continue
        called = label(problem, answer)
        match answer.kind:
            case ResultKind.DIRECTION:
                yield Blank(called, "°", tuple(_ways(problem)))
            case ResultKind.LIMIT:
                all_limits = tuple(each.limit.id for each in problem.plan.branches_to(find))
                yield Blank(called, choices=tuple(_offered(problem, all_limits)), written=False)
            case ResultKind.VERDICT:
                choice = YesOrNo(answer.owner if len(limits) > 1 else None)
                yield Blank((), choices=(_say(problem, choice),), written=False)
                yield Blank(_say(problem, MarginNamed()), _margin_unit(answer))
            case ResultKind.QUANTITY | ResultKind.MAGNITUDE:
                yield Blank(called, unit_printed(answer))


def _ways(problem: Problem) -> Iterator[Inlines]:
    """Which way an angle is taken, and to which side, where one angle could be either."""
    reference = problem.convention.direction
    yield _say(problem, WaysOffered(reference))
    if reference != "axis":
        yield _say(problem, SidesOffered())


def _offered(problem: Problem, limits: Sequence[str]) -> Iterator[Inlines]:
    for limit in limits:
        yield _say(problem, LimitOffered(limit, limit == limits[-1]))


def _margin_unit(answer: Answer) -> str:
    match answer.shown:
        case Verdict(margin=Number(unit=unit)) if unit is not None:
            return unit.plain
        case _:
            return ""


def _say(problem: Problem, fact: Fact) -> Inlines:
    return problem.language.say(fact, problem.nouns)
