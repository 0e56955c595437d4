"""The couples of a free-body diagram, as curved arrows the way the equations take them."""

from __future__ import annotations

from probgen.figures.measured.survey import Survey
from probgen.figures.paper.canvas import Field
from probgen.figures.paper.placement import around
from probgen.figures.paper.scene import MEDIUM
from probgen.figures.paper.tag import Tag, What
from probgen.figures.parts import axes
from probgen.quantities.expression import Expression, Lump, Name, Sum, names_in
from probgen.statics.system import Body, Couple, Role


def draw_couples(field: Field, measured: Survey, body: Body, scale: float) -> None:
    """The couples on a body; an unknown one as it is assumed, whatever sign comes out."""
    for couple in measured.system.couples:
        turn = _turn(measured, couple)
        if couple.body != body.id or not turn:
            continue
        spot = measured.places[couple.point] * scale
        field.add(*axes.turning(spot, 11.0, turn, MEDIUM, Tag(What.COUPLE, couple.id)))
        _, moment = _signed(couple.moment)
        symbol = moment.symbol if isinstance(moment, Name) else couple.id
        name = Name(couple.id, symbol)
        anchors = [(spot + 12j, 90.0), (spot - 12j, 270.0)]
        field.place(name, around(name, anchors), Tag(What.LABEL, couple.id))


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
