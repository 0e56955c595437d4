"""A class's sheets and keys, written by hand: what the press and the layouts are tried on."""

from collections.abc import Callable, Iterator
from decimal import Decimal

import pytest

from probgen.figures.paper.scene import (
    HEAVY,
    LIGHT,
    MEDIUM,
    Arrow,
    Box,
    Label,
    Path,
    circle,
    composed,
    polygon,
)
from probgen.quantities.expression import Call, Expression, Name, Number, Product, Quotient, Sum
from probgen.quantities.formula import Balance, Formula, Relation
from probgen.quantities.unit import DEGREE, KILOGRAM, METRE, NEWTON, NEWTON_METRE, unit_named
from probgen.sheets.document import Answer, Header, Key, Part, Problem, Sheet, Solution
from probgen.sheets.latex.layout import Layouts
from probgen.wording.block import (
    Display,
    Itemize,
    Math,
    Paragraph,
    Picture,
    Row,
    Section,
    Text,
)


def name(symbol: str) -> Name:
    return Name(symbol, symbol)


def force(value: str) -> Number:
    return Number(Decimal(value), NEWTON)


def metres(value: str) -> Number:
    return Number(Decimal(value), METRE)


def math(*pieces: Expression | str) -> Math:
    return Math(tuple(Relation(p) if isinstance(p, str) else p for p in pieces))


def row(left: Expression | Balance | None, right: Formula | Expression, sign: str = "=") -> Row:
    formula = right if isinstance(right, tuple) else (right,)
    return Row(() if left is None else (left,), sign, formula)


def sine(angle: Expression) -> Call:
    return Call("sin", (angle,))


THETA = Number(Decimal(40), DEGREE)
HALF = Quotient(name("L"), Number(Decimal(2)))

MM = 72.27 / 25.4


def spot(x: float, y: float) -> complex:
    """A place in mm as figures have it."""
    return complex(x, y) * MM


def label(x: float, y: float, text: str | Name) -> Label:
    at = spot(x, y)
    return Label(at, text, 9.0, Box(at.real, at.imag, at.real + 9.0, at.imag + 6.0))


def stroke(*spots: tuple[float, float]) -> Path:
    return Path((tuple(spot(*each) for each in spots),), MEDIUM)


def arrow(tail: tuple[float, float], head: tuple[float, float]) -> Arrow:
    return Arrow(spot(*tail), spot(*head), MEDIUM)


SHELF_FIGURE = composed(
    (
        stroke((4, 2), (4, 44)),
        polygon([spot(4, 14), spot(64, 14), spot(64, 16), spot(4, 16)], HEAVY),
        stroke((52, 16), (4, 44)),
        circle(spot(64, 30), 5.5 * MM, MEDIUM),
        Arrow(spot(4, 6), spot(64, 6), LIGHT, both=True),
        label(34, 7.5, name("L")),
        label(38, 18.5, name("theta")),
        label(6.5, 9, name("A")),
        label(52, 9, name("C")),
    )
)
SHELF_FORCES = composed(
    (
        polygon([spot(8, 28), spot(68, 28), spot(68, 30), spot(8, 30)], HEAVY),
        circle(spot(8, 29), 0.8 * MM, MEDIUM, filled=True),
        arrow((38, 29), (38, 13)),
        arrow((68, 29), (68, 2)),
        arrow((56, 30), (24, 54)),
        arrow((8, 29), (32, 29)),
        arrow((8, 29), (8, 21)),
        label(40, 15, name("W_s")),
        label(70, 4, name("W_t")),
        label(36, 50, name("T")),
        label(26, 32, name("R_x")),
        label(2, 20, name("R_y")),
    )
)

STATEMENT = (
    Text("A uniform shelf of length "),
    math(name("L"), "=", metres("1.20")),
    Text(" and mass "),
    math(name("m"), "=", Number(Decimal("4.0"), KILOGRAM)),
    Text(" is hinged to a wall at "),
    math(name("A")),
    Text(". A cable fixed "),
    math(name("d"), "=", metres("0.96")),
    Text(" from the hinge makes "),
    math(name("theta"), "=", THETA),
    Text(" with the shelf. A potted tree of mass "),
    math(name("M"), "=", Number(Decimal("8.0"), KILOGRAM)),
    Text(" stands at the free end. The shelf is at rest."),
)

TORQUES = Sum(
    (
        (1, Product((name("T"), name("d"), sine(name("theta"))))),
        (-1, Product((name("W_s"), HALF))),
        (-1, Product((name("W_t"), name("L")))),
    )
)
TENSION = (
    row(Balance("torque", "A"), (TORQUES, Relation("="), Number(Decimal(0)))),
    row(
        name("T"),
        Quotient(
            Sum(((1, Product((name("W_s"), HALF))), (1, Product((name("W_t"), name("L")))))),
            Product((name("d"), sine(name("theta")))),
        ),
    ),
    row(
        None,
        Quotient(
            Sum(
                (
                    (1, Product((force("39.2"), metres("0.600")))),
                    (1, Product((force("78.4"), metres("1.20")))),
                )
            ),
            Product((metres("0.96"), sine(THETA))),
        ),
    ),
    row(
        None,
        (
            Quotient(Number(Decimal("117.6"), NEWTON_METRE), metres("0.6171")),
            Relation("="),
            force("190.6"),
            Relation("→"),
            name("T"),
            Relation("="),
            force("191"),
        ),
    ),
)
COMPONENTS = (
    row(
        Balance("force", "x"),
        (
            Sum(((1, name("R_x")), (-1, Product((name("T"), Call("cos", (name("theta"),))))))),
            Relation("="),
            Number(Decimal(0)),
        ),
    ),
    row(name("R_x"), (Product((force("190.6"), Call("cos", (THETA,)))),)),
    row(None, (force("146.0"), Relation("→"), name("R_x"), Relation("="), force("146"))),
    row(
        name("R_y"),
        (
            Sum(
                (
                    (1, name("W_s")),
                    (1, name("W_t")),
                    (-1, Product((name("T"), sine(name("theta"))))),
                )
            ),
            Relation("="),
            Sum(
                (
                    (1, force("39.2")),
                    (1, force("78.4")),
                    (-1, Product((force("190.6"), sine(THETA)))),
                )
            ),
            Relation("="),
            force("-4.90"),
        ),
    ),
)

SECTIONS = (
    Section(
        "Axes",
        (
            Paragraph(
                (
                    math(name("x")),
                    Text(" to the right, "),
                    math(name("y")),
                    Text(" up; counter-clockwise torques positive."),
                )
            ),
        ),
    ),
    Section(
        "Forces on the shelf",
        (
            Paragraph(
                (
                    Text("Four forces act on the shelf. The hinge force is unknown in size and "),
                    Text("direction, so we write its components, both taken positive; "),
                    Text("a negative result means the opposite way."),
                )
            ),
            Itemize(
                (
                    (math(name("W_s")), Text(", the weight of the shelf, at its middle: "),
                     math(name("W_s"), "=", Product((name("m"), name("g"))), "=", force("39.2"))),
                    (math(name("W_t")), Text(", the weight of the tree, at the free end: "),
                     math(name("W_t"), "=", Product((name("M"), name("g"))), "=", force("78.4"))),
                    (math(name("T")), Text(", the pull of the cable at "), math(name("C")),
                     Text(", along the cable, up and to the left;")),
                    (math(name("R_x")), Text(" and "), math(name("R_y")),
                     Text(", the push of the hinge at "), math(name("A")), Text(".")),
                )
            ),
            Picture("free-body", "shelf"),
        ),
    ),
    Section(
        "Which forces turn the shelf?",
        (
            Paragraph(
                (
                    Text("Take torques about the hinge "),
                    math(name("A")),
                    Text(". The hinge force acts there, so its lever arm is zero: it turns "),
                    Text("nothing, and both of its unknowns leave the equation. The weights turn "),
                    Text("the shelf clockwise (negative); the cable turns it counter-clockwise "),
                    Text("(positive)."),
                )
            ),
        ),
    ),
    Section("Torque balance", (Display(TENSION),)),
    Section(
        "Force balance",
        (
            Paragraph((Text("With the unrounded tension:"),)),
            Display(COMPONENTS),
            Paragraph(
                (
                    math(name("R_y")),
                    Text(" is negative: the hinge pulls the shelf "),
                    Text("down"),
                    Text("."),
                )
            ),
        ),
    ),
)  # fmt: skip

ANSWERS = (
    Answer((Text("(a) "), math(name("T"))), (Text("191\u202fN"),)),
    Answer((Text("(b) "), math(name("R"))), (Text("146\u202fN"),)),
    Answer(
        (Text("(c) direction of "), math(name("R"))),
        (Text("1.92° below the horizontal, to the right"),),
    ),
)
G = (
    Text("Use "),
    math(name("g"), "=", Number(Decimal("9.80"), unit_named("m/s^2"))),
    Text(". Give results with three significant figures."),
)
CAUTION = (
    "Idealised models: not for design, rigging, ladder set-up or clinical use; follow local "
    "codes and licensed practice."
)


def header(student: str, number: int = 1) -> Header:
    return Header(
        course="Physics 101: Introductory Mechanics",
        title="Static equilibrium",
        student_name=student,
        student_id=f"2024-{number:03d}",
        code=f"K7Q2-{number:04d}",
        section="B",
        due="12 March, at the start of the lecture",
        institution="Westmere College",
    )


def problem(number: int) -> Problem:
    parts = (
        Part("a", (Text("The tension "), math(name("T")), Text(" in the cable")), "N"),
        Part("b", (Text("The magnitude of the hinge force "), math(name("R"))), "N"),
        Part("c", (Text("The direction of the hinge force"),), ""),
    )
    return Problem(number, "Shelf held by a stay cable", STATEMENT, parts, SHELF_FIGURE, 10)


def solution(number: int) -> Solution:
    return Solution(
        number, "Shelf held by a stay cable", STATEMENT, SHELF_FIGURE, SECTIONS, ANSWERS, 10,
        {"free-body shelf": SHELF_FORCES},
    )  # fmt: skip


@pytest.fixture(scope="session")
def layouts() -> Layouts:
    return Layouts()


@pytest.fixture(scope="session")
def sheet_for() -> Callable[..., Sheet]:
    """A sheet of four problems for the student of that name."""

    def made(student: str, number: int = 1) -> Sheet:
        problems = tuple(problem(n) for n in range(1, 5))
        return Sheet(header(student, number), G, (CAUTION,), problems)

    return made


@pytest.fixture(scope="session")
def key_for() -> Callable[..., Key]:
    """The key to `sheet_for` of the same name."""

    def made(student: str, number: int = 1) -> Key:
        return Key(header(student, number), tuple(solution(n) for n in range(1, 5)), G)

    return made


@pytest.fixture(scope="session", autouse=True)
def _own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Formats are dumped into a folder of this test run."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield
