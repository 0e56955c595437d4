"""Members of trusses: how they are taken, what a sign says of one, why one is idle; links."""

from __future__ import annotations

from probgen.wording.block import Text
from probgen.wording.english.grammar import agreeing, capitalized, the_bodies
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
    lie = "{joint} holds nothing but members, of which {others} are in line."
    if fact.loaded:
        lie = "All that acts on {joint} is along one line, but for {member}."
    elif len(fact.across) == 1:
        lie = "{joint} holds nothing but {both}, which are not in line."
    told = filled(
        lie
        + " Square to {that}, {member} alone has a part, with nothing to balance it: it carries "
        "nothing, and is a zero-force member.",
        joint=the_bodies([fact.joint], nouns),
        member=the_members([fact.member], nouns),
        both=the_members([fact.member, *fact.across], nouns),
        others=the_members(fact.across, nouns) if fact.across else "",
        that=the_members(fact.across, nouns) if len(fact.across) == 1 else "that line",
    )
    return capitalized(told)


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
