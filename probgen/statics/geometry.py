"""Geometry in symbols: sines of angles, and the way from one point to another.

A direction is a number of degrees plus a sum of named angles.  Sines are reduced the way one does
it by hand: sin(180° - theta) is sin theta, sin(-90° - theta) is -cos theta.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from probgen.quantities.expression import (
    UNITY,
    ZERO,
    Call,
    Expression,
    Lump,
    Number,
    Power,
    Product,
    Quotient,
    Sum,
    negative,
    number,
    over,
    positive_first,
    times,
    total,
)
from probgen.quantities.factors import factored, factors_of, without_factors
from probgen.quantities.like_terms import collected, collected_sum, multiple
from probgen.quantities.unit import DEGREE
from probgen.statics.slope import by_tangent, downward, slant_of, slope_of
from probgen.statics.system import Link, Point

_QUARTER = Decimal(90)
_HALF = Decimal(180)
_FULL = Decimal(360)
_LARGEST_DENOMINATOR = 12


@dataclass(frozen=True, slots=True)
class Angle:
    """A direction in normal form: `constant` degrees plus multiples of named angles."""

    constant: Decimal
    multiples: tuple[tuple[Expression, Decimal], ...]

    @property
    def expression(self) -> Expression:
        """The angle as it is printed: what is added first, a constant before the names."""
        terms = [_multiple(part, factor) for part, factor in self.multiples]
        if self.constant:
            constant = number(_short(abs(self.constant)), DEGREE)
            terms.insert(0, (1 if self.constant > 0 else -1, constant))
        terms.sort(key=lambda term: -term[0])
        return total(*terms)

    @property
    def along_axis(self) -> bool:
        """Whether it is along x or y, either way."""
        return not self.multiples and not self.constant % _QUARTER

    def minus(self, other: Angle) -> Angle:
        return _collected(
            self.constant - other.constant,
            (*self.multiples, *((part, -factor) for part, factor in other.multiples)),
        )

    def turned(self, degrees: Decimal) -> Angle:
        return Angle(self.constant + degrees, self.multiples)


def _short(value: Decimal) -> Decimal:
    """90, where somebody wrote 90.0."""
    return value.to_integral_value() if value == value.to_integral_value() else value


def _multiple(part: Expression, factor: Decimal) -> tuple[int, Expression]:
    size = Fraction(abs(factor))
    short = size.limit_denominator(_LARGEST_DENOMINATOR)  # a third is written with 28 threes
    exact = short if abs(short - size) < Fraction(1, 10**12) else size
    return 1 if factor > 0 else -1, multiple(part, exact)


def _collected(constant: Decimal, multiples: Sequence[tuple[Expression, Decimal]]) -> Angle:
    sums: dict[Expression, Decimal] = {}
    for part, factor in multiples:
        sums[part] = sums.get(part, Decimal(0)) + factor
    return Angle(constant, tuple((part, factor) for part, factor in sums.items() if factor))


def angle_of(expression: Expression) -> Angle:
    """The normal form of a direction (degrees)."""
    match expression:
        case Number(value, unit):
            in_degrees = unit is None or unit == DEGREE
            return Angle(value if in_degrees else value * Decimal(repr(unit.factor)), ())  # type: ignore[union-attr]
        case Lump(inner):
            return angle_of(inner)
        case Sum(terms):
            constant, multiples = Decimal(0), []
            for sign, term in terms:
                angle = angle_of(term)
                constant += sign * angle.constant
                multiples += [(part, sign * factor) for part, factor in angle.multiples]
            return _collected(constant, multiples)
        case Product((Number(value, None), other)) | Product((other, Number(value, None))):
            return _scaled(angle_of(other), value)
        case Quotient(top, Number(value, None)):
            return _scaled(angle_of(top), 1 / value)
        case _:
            return Angle(Decimal(0), ((expression, Decimal(1)),))


def opposite(direction: Expression) -> Expression:
    """The direction (degrees) turned half round."""
    angle = angle_of(direction)
    return Angle(_turned_once(angle.constant + _HALF), angle.multiples).expression


def _turned_once(degrees: Decimal) -> Decimal:
    """Degrees from 0 up to 360 (Decimal's own remainder keeps the sign of the dividend)."""
    rest = degrees % _FULL
    return rest + _FULL if rest < 0 else rest


def _scaled(angle: Angle, factor: Decimal) -> Angle:
    return Angle(angle.constant * factor, tuple((p, f * factor) for p, f in angle.multiples))


def sine(angle: Angle) -> Expression:
    """sin of the angle, reduced; the sign comes out as that of a one-term sum."""
    constant = _turned_once(angle.constant)
    quarter, rest = divmod(constant, _QUARTER)
    if not angle.multiples:
        return _sine_of_number(constant)
    varying = Angle(Decimal(0), angle.multiples)
    if rest:
        return _sine_of_mixed(Angle(constant, angle.multiples))
    sides = _sides(angle.multiples)
    if sides is not None:
        return _sine_by_sides(*sides, int(quarter))
    flipped = _leads_negative(varying)
    if flipped:
        varying = _scaled(varying, Decimal(-1))
    if quarter % 2:
        shown: Expression = Call("cos", (varying.expression,))
        return negative(shown) if quarter == 3 else shown
    shown = Call("sin", (varying.expression,))
    return negative(shown) if (quarter == 2) != flipped else shown


def _sides(
    multiples: tuple[tuple[Expression, Decimal], ...],
) -> tuple[Expression, Expression] | None:
    """(sine, cosine) of an angle that is given by lengths, such as atan2(h, L); else None."""
    if len(multiples) != 1 or abs(multiples[0][1]) != 1:
        return None
    part, factor = multiples[0]
    match part:
        case Call("atan2", (rise, run)) | Call("atan", (Quotient(rise, run),)):
            high, wide = (positive_first(collected(side)) for side in (rise, run))
            slant = slant_of(wide, high)
            slant = slant if isinstance(slant, Number) else Lump(slant)
            found = _share(high, slant), _share(wide, slant)
        case Call("asin", (ratio,)):
            found = ratio, _other_side(ratio)
        case Call("acos", (ratio,)):
            found = _other_side(ratio), ratio
        case _:
            return None
    return (found[0] if factor > 0 else negative(found[0]), found[1])


def inclined(links: tuple[Link, ...], direction: Angle) -> tuple[Link, ...]:
    """A way to the right and then up as one link, where the direction holds its slope.

    So is a force square to a bar reached in one straight step, and not in two; what else the way
    has comes after that.
    """
    ways = [angle_of(link.direction) for link in links]
    legs = [Angle(Decimal(0), ()), Angle(_QUARTER, ())]
    if [way for way in ways if way in legs] != legs:
        return links
    run, rise = (links[ways.index(leg)].length for leg in legs)
    slope = slope_of(run, rise)
    if slope not in [part for part, _ in direction.multiples]:
        return links
    rest = (link for link, way in zip(links, ways, strict=True) if way not in legs)
    match slope:
        case Call():
            return (Link(slant_of(run, rise), slope), *rest)
        case _:
            return (Link(_one_fraction(run, Call("cos", (slope,))), slope), *rest)


def _one_fraction(top: Expression, bottom: Expression) -> Expression:
    """(a/b)/c as a/(b c)."""
    if isinstance(top, Quotient):
        return over(top.top, times(top.bottom, bottom))
    return over(top, bottom)


def _share(side: Expression, slant: Expression) -> Expression:
    """A side of a slant as a part of it, its sign in front: -((b + c)/s)."""
    return negative(over(negative(side), slant)) if downward(side) else over(side, slant)


def _other_side(ratio: Expression) -> Expression:
    """sqrt(1 - ratio^2)."""
    return Call("sqrt", (total((1, UNITY), (-1, Power(ratio, 2))),))


def _sine_by_sides(sines: Expression, cosines: Expression, quarter: int) -> Expression:
    """sin of the angle plus so many quarter turns."""
    shown = cosines if quarter % 2 else sines
    return negative(shown) if quarter >= 2 else shown


def cosine(angle: Angle) -> Expression:
    """The cosine of an angle, as `sine` writes it; that of a number stays one: cos 60°."""
    if not angle.multiples:
        return _cosine_of_number(_turned_once(angle.constant))
    return sine(angle.turned(_QUARTER))


def _leads_negative(angle: Angle) -> bool:
    """Whether the angle reads better with its sign changed (no term with a plus sign)."""
    return all(factor < 0 for _, factor in angle.multiples) or (
        angle.multiples[0][1] < 0 and sum(f for _, f in angle.multiples) <= 0
    )


def _sine_of_number(constant: Decimal) -> Expression:
    sign = -1 if constant > _HALF else 1
    folded = constant % _HALF
    folded = min(folded, _HALF - folded)
    if not folded:
        return ZERO
    shown = UNITY if folded == _QUARTER else Call("sin", (number(folded, DEGREE),))
    return shown if sign > 0 else negative(shown)


def _cosine_of_number(constant: Decimal) -> Expression:
    folded = min(constant, _FULL - constant)
    sign = -1 if folded > _QUARTER else 1
    folded = min(folded, _HALF - folded)
    if folded == _QUARTER:
        return ZERO
    shown = Call("cos", (number(folded, DEGREE),)) if folded else UNITY
    return shown if sign > 0 else negative(shown)


def _sine_of_mixed(angle: Angle) -> Expression:
    """sin(c + s) with c no quarter turn: bring c into -90 to 90 degrees."""
    constant, sign = angle.constant, 1
    if _QUARTER < constant < 3 * _QUARTER:
        constant, sign = constant - _HALF, -1
    elif constant > 3 * _QUARTER:
        constant -= _FULL
    shown = Call("sin", (Angle(constant, angle.multiples).expression,))
    return shown if sign > 0 else negative(shown)


def way(points: Mapping[str, Point], start: str, end: str) -> tuple[Link, ...]:
    """The links that lead from one point to another, those along one line joined to one.

    Lengths are signed: a link of negative value leads backwards along its direction.
    """
    first, last = points[start].links, points[end].links
    while first and last and first[0] == last[0]:
        first, last = first[1:], last[1:]
    signed = [(-1, link) for link in reversed(first)] + [(1, link) for link in last]
    joined: dict[Angle, list[tuple[int, Expression]]] = {}
    for sign, link in sorted(signed, key=lambda pair: -pair[0]):
        angle = angle_of(link.direction)
        angle = Angle(_turned_once(angle.constant), angle.multiples)
        opposite = Angle(_turned_once(angle.constant + _HALF), angle.multiples)
        if opposite in joined:
            angle, sign = opposite, -sign
        joined.setdefault(angle, []).append((sign, link.length))
    links = []
    for angle, terms in joined.items():
        length = collected_sum(*terms)
        if length == ZERO:
            continue
        if isinstance(length, Sum) and all(sign < 0 for sign, _ in length.terms):
            length, angle = negative(length), angle.turned(_HALF)
        links.append(Link(length, angle.expression))
    return tuple(links) if len(links) < 2 else _as_one(links) or tuple(links)


def _as_one(links: Sequence[Link]) -> tuple[Link] | None:
    """A way with bends as one link, where it runs r cos t and rises r sin t, whatever their signs,
    or h/tan t and h, or s and s tan t, where it has no such two legs.

    So a leg of a frame is reached from its other end, though that is placed from elsewhere.
    """
    run_and_rise = (
        total(*((1, times(link.length, part(angle_of(link.direction)))) for link in links))
        for part in (cosine, sine)
    )
    (right, run), (above, rise) = (_one_term(factored(collected(leg))) for leg in run_and_rise)
    for factor in factors_of(rise):
        match factor:
            case Call("sin", (slope,)) if (level := Call("cos", (slope,))) in factors_of(run):
                high, wide = without_factors(rise, [factor]), without_factors(run, [level])
                if collected_sum((1, high), (1, wide)) == ZERO:
                    above, high = -above, wide
                if collected_sum((1, high), (-1, wide)) == ZERO:
                    return (_sloping(wide, slope, right, above),)
    if all(angle_of(link.direction).along_axis for link in links):
        return None
    found = by_tangent(run, rise)
    return found and (_sloping(*found, right, above),)


def _sloping(length: Expression, slope: Expression, right: int, above: int) -> Link:
    """A link that rises at a slope to the right, or to the side that the signs say."""
    angle = _scaled(angle_of(slope), Decimal(right * above))
    return Link(length, (angle if right > 0 else angle.turned(_HALF)).expression)


def _one_term(expression: Expression) -> tuple[int, Expression]:
    """A sign, and what is left without it."""
    if isinstance(expression, Sum) and len(expression.terms) == 1:
        return expression.terms[0]
    return 1, expression
