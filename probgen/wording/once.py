"""Reasons that hold again and again are given once in a key, then in short or not at all."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from probgen.wording.facts.balance import ForceSplit, PullsSeveral, WeightTurned
from probgen.wording.facts.ending import RoundedWithin
from probgen.wording.facts.forces import PartExpected, StrutAlong
from probgen.wording.facts.level_part import LevelPartShared
from probgen.wording.facts.torque import CoupleAnywhere, TurnsNothing
from probgen.wording.passage import Items, Part, Passage, Sentences
from probgen.working.fact import Fact


def said_once(passages: Iterable[Passage]) -> tuple[Passage, ...]:
    """The passages, with a reason in full only the first time.

    So it is with forces that turn nothing, struts that push along themselves and, in one passage,
    weights on a slope and what is drawn against the way it acts; how a force lies to the axes, and
    why a value is rounded to one side, is not said again of the same.
    """
    said: set[object] = set()
    return tuple(replace(passage, parts=tuple(_parts(passage, said))) for passage in passages)


def _parts(passage: Passage, said: set[object]) -> Iterator[Part]:
    here: set[object] = set()
    for part in passage.parts:
        if not isinstance(part, Sentences | Items):
            yield part
            continue
        facts = tuple(_shortened(part.facts, said, here))
        if facts:
            yield replace(part, facts=facts)


def _shortened(facts: Iterable[Fact], said: set[object], here: set[object]) -> Iterator[Fact]:
    """here: what was said in the same passage."""
    for fact in facts:
        match fact:
            case CoupleAnywhere() if CoupleAnywhere in said:
                pass
            case TurnsNothing():
                yield replace(fact, again=TurnsNothing in said)
            case PartExpected(drawn=False):
                yield replace(fact, again=PartExpected in here)
                here.add(PartExpected)
            case StrutAlong(force=force):
                if (StrutAlong, force) not in said:
                    yield replace(fact, again=StrutAlong in said)
                said.add((StrutAlong, force))
            case WeightTurned(angle=angle, body=body, element=on) if fact not in said:
                yield replace(fact, again=(angle, body, on) in here)
                here.add((angle, body, on))
            case (
                ForceSplit() | WeightTurned() | PullsSeveral() | RoundedWithin() | LevelPartShared()
            ) if fact in said:
                pass
            case _:
                yield fact
        said |= {fact, type(fact)}
