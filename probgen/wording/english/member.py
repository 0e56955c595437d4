"""Members of trusses: how they are taken, what a sign says of one, why one is idle; links."""

from __future__ import annotations

from probgen.quantities.expression import ZERO
from probgen.quantities.formula import Relation
from probgen.wording.block import Text
from probgen.wording.english.grammar import agreeing, the_bodies
from probgen.wording.english.names import the_body, the_element, the_members
from probgen.wording.english.saying import say
from probgen.wording.facts.balance import MemberIdle, MemberSense, MembersPull, MemberState
from probgen.wording.facts.forces import LinkAlong
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, letter


@say.register
def members_pull(fact: MembersPull, nouns: Nouns) -> Inlines:
    return (
        Text(
            "Every member is taken in tension, so that it pulls at its joints; a negative force "
            "then means compression."
        ),
    )


@say.register
def member_sense(fact: MemberSense, nouns: Nouns) -> Inlines:
    return filled(
        "{F} is {sign}: {member} is in {state}.",
        F=fact.force,
        sign="positive" if fact.pulls else "negative",
        member=the_element(fact.member, nouns),
        state="tension" if fact.pulls else "compression",
    )


@say.register
def member_state(fact: MemberState, nouns: Nouns) -> Inlines:
    return (Text(" (tension)" if fact.pulls else " (compression)"),)


@say.register
def member_idle(fact: MemberIdle, nouns: Nouns) -> Inlines:
    all_there = sorted([fact.member, *fact.across], key=lambda each: the_members([each], nouns))
    lie = "No load acts at {joint}, where only {all} meet, and {others} are in line."
    if fact.loaded:
        lie = "At {joint} all forces but {F} act along one line."
    elif len(fact.across) == 1:
        lie = "No load acts at {joint}, where only {all} meet, and they are not in line."
    return filled(
        lie
        + " Perpendicular to {that} only {F} has a component, so {zero}: {member} is a zero-force "
        "member.",
        joint=the_bodies([fact.joint], nouns),
        F=fact.force,
        zero=(fact.force, Relation("="), ZERO),
        member=the_members([fact.member], nouns),
        all=the_members(all_there, nouns),
        others=the_members(fact.across, nouns) if fact.across else "",
        that=the_members(fact.across, nouns) if len(fact.across) == 1 else "that line",
    )


@say.register
def link_along(fact: LinkAlong, nouns: Nouns) -> Inlines:
    body = the_body(fact.body, nouns)
    one, other = (letter(pin) for pin in fact.pins)
    return filled(
        "{Body} {is_} pinned at {B} and {D} and {carries} nothing else: only two forces act there, "
        "so they are equal and opposite and lie along the line {B}{D}. That leaves one unknown, "
        "{F}, taken as tension: a pull at both pins, and a negative {F} would mean a push.",
        Body=body[:1].upper() + body[1:],
        is_=agreeing([body], "is", "are"),
        carries=agreeing([body], "carries", "carry"),
        B=one,
        D=other,
        F=fact.force,
    )
