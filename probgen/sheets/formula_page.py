"""The page of formulas that a sheet may end with, the same for everybody of a course."""

from __future__ import annotations

from collections.abc import Iterator

from probgen.quantities.expression import Call, Expression, Name, Power, Quotient, number
from probgen.quantities.expression import times as product
from probgen.quantities.expression import total as plus
from probgen.quantities.formula import Balance, Formula, Piece, Relation
from probgen.sheets.document import FormulaGroup, FormulaRow, Formulas
from probgen.wording.sentence import Inlines, filled


def _symbol(short: str) -> Name:
    return Name(short, short)


F, R, N, W, X, Y = map(_symbol, ("F", "r", "N", "W", "x", "y"))
F_X, F_Y, ARM = map(_symbol, ("F_x", "F_y", "r_⊥"))
PHI, THETA, TAU = map(_symbol, ("phi", "theta", "tau"))
SIDES = tuple(map(_symbol, ("a", "b", "c")))
ANGLES = tuple(map(_symbol, ("alpha", "beta", "gamma")))


def formula_page(turning: str = "torque", clockwise: bool = False) -> Formulas:
    """The page in a course's words.

    turning: "torque" or "moment"; clockwise: whether that is positive.
    """
    groups = (
        FormulaGroup(filled("Equilibrium"), tuple(_equilibrium(turning))),
        FormulaGroup(
            filled(
                f"{turning.capitalize()} of a force {{F}} that acts at ({{x}},{{y}}) "
                "from the pivot, a distance {r} away",
                F=F, x=X, y=Y, r=R,
            ),
            tuple(_turning(clockwise)),
        ),
        FormulaGroup(filled("Components, magnitude, direction"), tuple(_components())),
        FormulaGroup(filled("Forces"), tuple(_forces())),
        FormulaGroup(
            filled(
                "Triangles, sides {a}, {b}, {c} opposite to {alpha}, {beta}, {gamma}",
                **{name.id: name for name in (*SIDES, *ANGLES)},
            ),
            (_row((), _sines(), _cosines()),),
        ),
    )  # fmt: skip
    return Formulas(turning, clockwise, groups)


def _equilibrium(turning: str) -> Iterator[FormulaRow]:
    along, upward = Balance("force", "x"), Balance("force", "y")
    yield _row(filled("no net force"), _is(along, number(0)), _is(upward, number(0)))
    yield _row(filled(f"no net {turning}, about any point"), _is(Balance("torque", ""), number(0)))


def _turning(clockwise: bool) -> Iterator[FormulaRow]:
    by_angle = filled("{phi}: angle between {F} and the line to the pivot", phi=PHI, F=F)
    yield _row(by_angle, _is(TAU, product(R, F, _of("sin", PHI))))
    by_arm = "{arm}: lever arm, the distance from the pivot to the line of action"
    yield _row(filled(by_arm, arm=ARM), _is(TAU, product(ARM, F)))
    about = (product(X, F_Y), product(Y, F_X))
    gain, loss = reversed(about) if clockwise else about
    sense = "clockwise" if clockwise else "counter-clockwise"
    yield _row(filled(f"by components, {sense} positive"), _is(TAU, plus((1, gain), (-1, loss))))


def _components() -> Iterator[FormulaRow]:
    words = filled("{theta} measured from +{x}, counter-clockwise", theta=THETA, x=X)
    along = _is(F_X, product(F, _of("cos", THETA)))
    yield _row(words, along, _is(F_Y, product(F, _of("sin", THETA))))
    slope = _is(_of("tan", THETA), Quotient(F_Y, F_X))
    yield _row((), _is(F, Call("hypot", (F_X, F_Y))), slope)


def _forces() -> Iterator[FormulaRow]:
    mass, spread, length, s = map(_symbol, ("m", "w", "ell", "s"))
    yield _row(filled("weight"), _is(W, product(mass, _symbol("g"))))
    most = product(_symbol("mu_s"), N)
    yield _row(filled("static friction"), (_symbol("f"), Relation("≤"), most))
    yield _row(filled("spring stretched by {s}", s=s), _is(F, product(_symbol("k"), s)))
    evenly = filled("load spread evenly over a length {ell}: at its middle", ell=length)
    yield _row(evenly, _is(W, product(spread, length)))
    each = _symbol("m_i")
    middle = Quotient(_of("sum", product(each, _symbol("x_i"))), _of("sum", each))
    yield _row(filled("centre of mass"), _is(_symbol("x_cm"), middle))


def _sines() -> Formula:
    """The law of sines."""
    ratios = [Quotient(_of("sin", angle), side) for side, angle in zip(SIDES, ANGLES, strict=True)]
    return _is(*ratios)


def _cosines() -> Formula:
    """The law of cosines."""
    a, b, c = SIDES
    apart = product(number(2), a, b, _of("cos", ANGLES[2]))
    return _is(Power(c, 2), plus((1, Power(a, 2)), (1, Power(b, 2)), (-1, apart)))


def _of(function: str, argument: Expression) -> Call:
    return Call(function, (argument,))


def _is(*equal: Piece) -> Formula:
    """Things that are equal to each other."""
    pieces: list[Piece] = [equal[0]]
    for piece in equal[1:]:
        pieces += (Relation("="), piece)
    return tuple(pieces)


def _row(words: Inlines, *formulas: Formula) -> FormulaRow:
    return FormulaRow(words, formulas)
