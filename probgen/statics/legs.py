"""Lengths by their legs, where a direction that lengths tell crosses them."""

from __future__ import annotations

from probgen.quantities.cancelling import cancelled
from probgen.quantities.expression import Call, Expression, Quotient, number, over, times, total
from probgen.quantities.factors import terms_of
from probgen.statics.geometry import Angle, angle_of, cosine, sine
from probgen.statics.system import Link


def with_legs(links: tuple[Link, ...], direction: Angle) -> tuple[Link, ...]:
    """Links by their legs, to the right and up, where a direction that lengths tell crosses them.

    The sine of an angle between both would be that of a difference with an arctangent in it.
    """
    return tuple(leg for link in links for leg in _legs(link, direction))


def _legs(link: Link, direction: Angle) -> tuple[Link, ...]:
    own = angle_of(link.direction)
    between = direction.minus(own)
    by_lengths = any(_is_slope(part) for part, _ in between.multiples)
    if not by_lengths or [abs(factor) for _, factor in between.multiples] == [1]:
        return (link,)
    across, up = (_leg(link.length, part(own)) for part in (cosine, sine))
    return Link(across, number(0)), Link(up, number(90))


def _leg(length: Expression, share: Expression) -> Expression:
    """A share of a length: p of a slant times p over that slant."""
    terms = [
        (sign, over(times(length, part.top), part.bottom))
        if isinstance(part, Quotient)
        else (sign, times(length, part))
        for sign, part in terms_of(share)
    ]
    return cancelled(total(*terms))


def _is_slope(part: Expression) -> bool:
    return isinstance(part, Call) and part.function in ("atan2", "atan")
