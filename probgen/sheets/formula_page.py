"""The page of formulas that a sheet may end with, the same for everybody of a course."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from probgen.quantities.expression import Call, Expression, Name, Power, Quotient, number
from probgen.quantities.expression import times as product
from probgen.quantities.expression import total as plus
from probgen.quantities.formula import Balance, Formula, Piece, Relation
from probgen.quantities.symbol import italic
from probgen.sheets.document import FormulaGroup, FormulaRow, Formulas
from probgen.wording.english import ENGLISH
from probgen.wording.facts.formulas import FormulaTopic, Topic
from probgen.wording.language import Language
from probgen.wording.nouns import NO_NOUNS
from probgen.wording.sentence import Inlines
from probgen.working.convention import Rotation, Turning


def _symbol(short: str) -> Name:
    return Name(short, short)


F, R, N, W, X, Y = map(_symbol, ("F", "r", "N", "W", "x", "y"))
F_X, F_Y, ARM = map(_symbol, ("F_x", "F_y", "r_⊥"))
PHI, THETA, TAU = map(_symbol, ("phi", "theta", "tau"))
SIDES = tuple(map(_symbol, ("a", "b", "c")))
ANGLES = tuple(map(_symbol, ("alpha", "beta", "gamma")))


@dataclass(frozen=True, slots=True)
class _Course:
    """How a course says what formulas are about."""

    turning: Turning
    positive: Rotation
    language: Language

    def words(self, topic: Topic, *letters: Name) -> Inlines:
        fact = FormulaTopic(topic, self.turning, self.positive, letters)
        return self.language.say(fact, NO_NOUNS)


def formula_page(
    turning: Turning = "torque", clockwise: bool = False, language: Language = ENGLISH
) -> Formulas:
    """The page in a course's words; clockwise: whether that is positive."""
    course = _Course(turning, "clockwise" if clockwise else "counter-clockwise", language)
    words = course.words
    groups = (
        FormulaGroup(words(Topic.EQUILIBRIUM), tuple(_equilibrium(course))),
        FormulaGroup(words(Topic.TORQUE, F, X, Y, R), tuple(_turning(course))),
        FormulaGroup(words(Topic.COMPONENTS), tuple(_components(course))),
        FormulaGroup(words(Topic.FORCES), tuple(_forces(course))),
        FormulaGroup(words(Topic.TRIANGLES, *SIDES, *ANGLES), (_row((), _sines(), _cosines()),)),
    )
    return Formulas(groups)


def _equilibrium(course: _Course) -> Iterator[FormulaRow]:
    along, upward = Balance("force", "x"), Balance("force", "y")
    none = number(0)
    yield _row(course.words(Topic.NO_NET_FORCE), _is(along, none), _is(upward, none))
    yield _row(course.words(Topic.NO_NET_TORQUE), _is(Balance("torque", ""), none))


def _turning(course: _Course) -> Iterator[FormulaRow]:
    by_angle = course.words(Topic.BY_ANGLE, PHI, F)
    yield _row(by_angle, _is(TAU, product(R, F, _of("sin", PHI))))
    yield _row(course.words(Topic.BY_ARM, ARM), _is(TAU, product(ARM, F)))
    about = (product(X, F_Y), product(Y, F_X))
    gain, loss = reversed(about) if course.positive == "clockwise" else about
    turned = _is(TAU, plus((1, gain), (-1, loss)))
    yield _row(course.words(Topic.BY_COMPONENTS), turned)


def _components(course: _Course) -> Iterator[FormulaRow]:
    along = _is(F_X, product(F, _of("cos", THETA)))
    upward = _is(F_Y, product(F, _of("sin", THETA)))
    yield _row(course.words(Topic.FROM_X, THETA, X), along, upward)
    slope = _is(_of("tan", THETA), Quotient(F_Y, F_X))
    yield _row((), _is(F, Call("hypot", (F_X, F_Y))), slope)


def _forces(course: _Course) -> Iterator[FormulaRow]:
    words = course.words
    mass, spread, length, s = map(_symbol, ("m", "w", "ell", "s"))
    yield _row(words(Topic.WEIGHT), _is(W, product(mass, _symbol("g"))))
    most = product(_symbol("mu_s"), N)
    yield _row(words(Topic.FRICTION), (_symbol("f"), Relation("≤"), most))
    yield _row(words(Topic.SPRING, s), _is(F, product(_symbol("k"), s)))
    yield _row(words(Topic.SPREAD_LOAD, length), _is(W, product(spread, length)))
    each, place = (_symbol(f"{letter}_{italic('i')}") for letter in "mx")  # i counts the parts
    middle = Quotient(_of("sum", product(each, place)), _of("sum", each))
    yield _row(words(Topic.CENTRE_OF_MASS), _is(_symbol("x_cm"), middle))


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
