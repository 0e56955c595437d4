"""Bodies pinned at both ends that carry nothing else, found among the entries of a template.

Only two forces act on such a link, so they are opposite and lie along it: the components of its
pins follow from one force, F_BD between pins at B and D, positive in tension.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import count
from typing import Final

from probgen.bank.direction import direction_between
from probgen.bank.labels import BodyNamed, Coined, Sort
from probgen.bank.scope import is_symbol
from probgen.bank.situation import Situation
from probgen.input.table import Table
from probgen.quantities.expression import Expression, times
from probgen.quantities.unit import NEWTON
from probgen.statics.geometry import angle_of, cosine, opposite, sine
from probgen.statics.link import joined_to
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Body, Definition, Element, Kind, Member, Role

_LETTERS: Final = ("F", "S", "Q")


def find_links(top: Table, situation: Situation) -> None:
    """Makes a two-force member of every body that is one."""
    for body in situation.bodies:
        pins = [element for element in situation.elements if element.body == body.id]
        if _is_link(situation, body, pins):
            _make_link(top, situation, body, pins)


def _is_link(situation: Situation, body: Body, pins: list[Element]) -> bool:
    """Whether two pins and nothing else act on a body, one of them of another body."""
    if body.particle or body.joints or len(pins) != 2:
        return False
    turned = any(couple.body == body.id for couple in situation.couples)
    pinned = all(pin.kind is Kind.HINGE and _open(situation, pin) for pin in pins)
    apart = pins[0].at != pins[1].at
    joined = [joined_to(situation.elements, pin) for pin in pins]
    return pinned and apart and not turned and any(joined)


def _open(situation: Situation, pin: Element) -> bool:
    """Whether a pin's components are looked for, and no other link has settled them."""
    held = (situation.scope.variables[id] for id in Quantity(pin.of or pin.id).components)
    return all(each.role is Role.UNKNOWN for each in held)


def _make_link(top: Table, situation: Situation, body: Body, pins: list[Element]) -> None:
    start, end = sorted(pin.at for pin in pins)
    symbol = next(each for each in _symbols(start, end) if _is_free(situation, each))
    called = BodyNamed(body.id)
    force = situation.unknown(top, symbol, NEWTON, Coined(Sort.MEMBER_FORCE, called))
    along = direction_between(situation.points[start], situation.points[end], situation.scope)
    for pin in pins:
        inward = along if pin.at == start else opposite(along)
        way = angle_of(inward if pin.of else opposite(inward))
        sizes = (times(force, cosine(way)), times(force, sine(way)))
        _settle(situation, pin.of or pin.id, sizes)
        _name_ends(situation, pin)
    situation.members.append(Member(body.id, start, end, force, along))


def _name_ends(situation: Situation, pin: Element) -> None:
    """What a link is pinned to feels the link, and the link feels that."""
    joined = joined_to(situation.elements, pin)
    if joined is not None:
        for one, other in ((pin, joined), (joined, pin)):
            label = situation.named[one.id]
            situation.named[one.id] = replace(label, name=BodyNamed(other.body))


def _symbols(start: str, end: str) -> Iterator[str]:
    """F_BD, or another letter where that is taken."""
    lettered = (f"{letter}_{start}{end}" for letter in _LETTERS)
    yield from filter(is_symbol, lettered)
    yield from (f"F_{n}" for n in count(1))


def _is_free(situation: Situation, symbol: str) -> bool:
    scope = situation.scope
    taken = scope.symbols | scope.variables.keys() | situation.named.keys()
    return symbol not in taken


def _settle(situation: Situation, pin: str, sizes: tuple[Expression, Expression]) -> None:
    """A pin's components as what they are of the force along its link (N)."""
    variables = situation.scope.variables
    for id, size in zip(Quantity(pin).components, sizes, strict=True):
        variables[id] = replace(variables[id], role=Role.DEFINED)
        situation.definitions.insert(0, Definition(id, size))
