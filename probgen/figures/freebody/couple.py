"""The couples of a free-body diagram, as curved arrows the way the equations take them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import MEDIUM, Spot, bearing, dot, heading
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import axes
from probgen.quantities.expression import Expression, Lump, Name, Sum, names_in
from probgen.statics.system import Body, Couple, Role

_RADIUS: Final = 11.0  # of an arc, pt
_CLEAR: Final = 26.0  # from what crosses its circle, which may be an arrow's head, degrees
_APART: Final = 40.0  # the same where that leaves it room enough
_WIDEST: Final = 230.0  # how far it turns at most, degrees
_SHORTEST: Final = 84.0  # and at least, if it keeps clear of all strokes


def draw_couples(field: Field, measured: Survey, body: Body, scale: float) -> None:
    """The couples on a body; an unknown one as it is assumed, whatever sign comes out."""
    for couple in measured.system.couples:
        turn = _turn(measured, couple)
        if couple.body != body.id or not turn:
            continue
        spot = measured.places[couple.point] * scale
        middle, sweep = _free(field, spot)
        tag = Tag(What.COUPLE, couple.id)
        if sweep < _SHORTEST:
            field.add(*axes.turning(spot, _RADIUS, turn, MEDIUM, tag))
        else:
            field.add(*axes.turning(spot, _RADIUS, turn, MEDIUM, tag, middle=middle, sweep=sweep))
        _, moment = _signed(couple.moment)
        symbol = moment.symbol if isinstance(moment, Name) else couple.id
        name = Name(couple.id, symbol)
        ways = (90.0, 270.0) if sweep < _SHORTEST else (middle, 90.0, 270.0)
        anchors = [(spot + 12.0 * heading(way), way) for way in ways]
        field.place(name, around(name, anchors), Tag(What.LABEL, couple.id))


def _free(field: Field, spot: Spot) -> tuple[float, float]:
    """The middle of the widest stretch that no stroke crosses about a spot, and how much of it an
    arc may take, degrees.
    """
    met = sorted(
        bearing(crossing - spot)
        for ax, ay, bx, by in field.segments
        for crossing in _crossings(spot, complex(ax, ay), complex(bx, by))
    )
    if not met:
        return 0.0, 0.0
    gaps = [(b - a, a) for a, b in pairwise([*met, met[0] + 360.0])]
    gap, begin = max(gaps)
    sweep = max(gap - 2 * _APART, min(gap - 2 * _CLEAR, _SHORTEST))
    return (begin + gap / 2) % 360.0, min(sweep, _WIDEST)


def _crossings(spot: Spot, start: Spot, end: Spot) -> Iterator[Spot]:
    """Where a straight piece meets the circle of an arc about a spot."""
    way, off = end - start, start - spot
    length = abs(way)
    if length == 0.0:
        return
    along, across = dot(off, way) / length, abs(off) ** 2 - _RADIUS**2
    root = along**2 - across
    for sign in (-1, 1) if root > 0 else ():
        at = -along + sign * math.sqrt(root)
        if 0.0 <= at <= length:
            yield start + way / length * at


def _turn(measured: Survey, couple: Couple) -> int:
    """Which way a couple is drawn: an unknown one as it is assumed; 0 when there is none."""
    sign, moment = _signed(couple.moment)
    held = names_in(moment)
    if any(measured.system.variables[id].role is Role.UNKNOWN for id in held):
        return sign
    value = measured.number(couple.moment)
    return (value > 0) - (value < 0)


def _signed(expression: Expression) -> tuple[int, Expression]:
    """The sign before an expression, and what it stands before."""
    match expression:
        case Lump(inner):
            return _signed(inner)
        case Sum(((sign, inner),)):
            return sign, inner
    return 1, expression
