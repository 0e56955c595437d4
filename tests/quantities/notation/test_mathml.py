"""MathML says what the plain notation says, by a reader that knows the elements alone."""

from decimal import Decimal
from xml.etree import ElementTree

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.problem import draw_class, prepare, tell_steps, work
from probgen.quantities.expression import Call, Name, Number, Power, Product, Quotient, Sum, number
from probgen.quantities.formula import Balance, Difference, Formula, Integral, Relation, Words
from probgen.quantities.printing import mathml, plain
from probgen.quantities.unit import DEGREE, NEWTON
from probgen.wording.block import Block, Display, Itemize, Math, Paragraph
from probgen.working.convention import Convention

RAISED = dict(zip(map(ord, "0123456789−"), "⁰¹²³⁴⁵⁶⁷⁸⁹⁻", strict=True))
ARITY = {"mfrac": 2, "msup": 2, "msub": 2, "msubsup": 3, "mover": 2}
CORE = {"math", "mrow", "mi", "mn", "mo", "mtext", "mspace", "msqrt", *ARITY}
UNSEEN = {"\u2061": "", "\u2062": ""}  # "of" and "times" for readers aloud


def text_of(node: ElementTree.Element) -> str:
    """One line of text that means the same, without spaces, every fraction's parts in brackets."""
    assert node.tag in CORE
    assert len(node) == ARITY.get(node.tag, len(node))
    inner = [text_of(child) for child in node]
    match node.tag:
        case "mfrac":
            return f"({inner[0]})/({inner[1]})"
        case "msub":
            return f"{inner[0]}_{inner[1]}"
        case "msup":
            raised = inner[1].translate(RAISED)
            return inner[0] + (raised if set(raised) <= set(RAISED.values()) else f"^{inner[1]}")
        case "msubsup":
            return f"{inner[0]}({inner[1]} to {inner[2]})"
        case "mover":
            assert inner[1] == "¯"
            return f"{inner[0]}\u0304"
        case "msqrt":
            return f"√({''.join(inner)})"
        case "math" | "mrow":
            return "".join(inner)
        case _:
            return UNSEEN.get(node.text or "", node.text or "")


def bare(text: str) -> str:
    """Without what the notations put differently: spaces, brackets, and commas in subscripts."""
    kept = text.replace("∑", "Σ").replace("_", "").replace(",", "")
    return "".join(each for each in kept if not each.isspace() and each not in "()")


def read(formula: Formula) -> str:
    return text_of(ElementTree.fromstring(f"<math>{mathml(formula)}</math>"))


X, W = Name("x", "x"), Name("W", "W_s")
FORMULAS: dict[str, Formula] = {
    "(x)/(x−2)": (Quotient(X, Sum(((1, X), (-1, number(2))))),),
    "√(x²+W_s²)": (Call("hypot", (X, W)),),
    "−4.9N": (Number(Decimal("-4.9"), NEWTON),),
    "1.2×10⁴N": (Number(Decimal("1.2E+4"), NEWTON),),
    "xsin40°": (Product((Call("sin", (Number(Decimal(40), DEGREE),)), X)),),
    "(x+W_s)²": (Power(Sum(((1, X), (1, W))), 2),),
    "e²x": (Product((Call("exp", (number(2),)), X)),),
    "x<2": (X, Relation("<"), number(2)),
    "a&b": (Words("a&b"),),
    "∑F_x=0": (Balance("force", "x"), Relation("="), number(0)),
    "∑M^(A)=0": (Balance("moment", "A", raised=True), Relation("="), number(0)),
    "∫(0 to W_s)xdx": (Integral(X, X, number(0), W),),
    "∫(0 to 2)(x+W_s)dx": (Integral(Sum(((1, X), (1, W))), X, number(0), number(2)),),
    "[x²](0 to 2)": (Difference(Power(X, 2), number(0), number(2)),),
    "x\u0304": (Name("mean", "xbar"),),
    "arctan|x|": (Call("atan", (Call("abs", (X,)),)),),
}


@pytest.mark.parametrize(("told", "formula"), FORMULAS.items(), ids=FORMULAS)
def test_what_it_says(told: str, formula: Formula) -> None:
    expected = told.replace("arctan|x|", "arctan(|x|)")
    assert read(formula) == expected


SLANTS = {
    "T": "<mi>T</mi>",
    "theta": "<mi>θ</mi>",
    "Delta": '<mi mathvariant="normal">Δ</mi>',
    "ab": '<mi style="font-style: italic">ab</mi>',
    "W_s": '<msub><mi>W</mi><mrow><mi mathvariant="normal">s</mi></mrow></msub>',
    "R_x": "<msub><mi>R</mi><mrow><mi>x</mi></mrow></msub>",
    "m_1": "<msub><mi>m</mi><mrow><mn>1</mn></mrow></msub>",
    "r_⊥": "<msub><mi>r</mi><mrow><mo>⊥</mo></mrow></msub>",
}


@pytest.mark.parametrize(("short", "elements"), SLANTS.items(), ids=SLANTS)
def test_letters_slant_as_in_latex(short: str, elements: str) -> None:
    """NIST SP 811 (2008), 10.1 to 10.2; one letter alone is slanted by every reader of MathML."""
    assert mathml(Name(short, short)) == elements


def test_a_fraction_has_its_full_size_where_it_is_set_apart() -> None:
    fraction = (Quotient(X, X),)
    assert 'displaystyle="true"' in mathml(fraction)
    assert "displaystyle" not in mathml(fraction, display=False)


def test_brackets_grow_with_what_they_hold_and_only_then() -> None:
    whole, low = Sum(((1, X), (1, Quotient(X, X)))), Sum(((1, X), (1, X)))
    assert "<mo>(</mo>" in mathml(Power(whole, 2))
    assert '<mo stretchy="false">(</mo>' in mathml(Power(low, 2))
    assert '<mo stretchy="false">(</mo>' not in mathml(Power(whole, 2))


def test_a_space_of_a_sixth_of_an_em_stands_before_a_unit_but_for_the_degree_sign() -> None:
    assert mathml(Number(Decimal("4.9"), NEWTON)) == (
        '<mrow><mn>4.9</mn><mspace width="0.167em"/><mtext>N</mtext></mrow>'
    )
    assert mathml(Number(Decimal(40), DEGREE)) == "<mrow><mn>40</mn><mtext>°</mtext></mrow>"
    assert mathml(number(40)) == "<mn>40</mn>"


@pytest.mark.parametrize(
    ("value", "elements"),
    [
        ("-2", "<mrow><mo>−</mo><mn>2</mn></mrow>"),
        ("2E+4", "<mrow><mn>2</mn><mo>×</mo><msup><mn>10</mn><mn>4</mn></msup></mrow>"),
        (
            "2E-4",
            "<mrow><mn>2</mn><mo>×</mo><msup><mn>10</mn>"
            "<mrow><mo>−</mo><mn>4</mn></mrow></msup></mrow>",
        ),
        ("21192", "<mn>21\u202f192</mn>"),
    ],
)
def test_signs_and_powers_of_ten_of_a_number(value: str, elements: str) -> None:
    assert mathml(number(value)) == elements


def formulas_in(blocks: tuple[Block, ...]) -> list[Formula]:
    found: list[Formula] = []
    for block in blocks:
        match block:
            case Display(rows):
                for row in rows:
                    sign = (Relation(row.relation),) if row.relation else ()
                    found.append((*row.left, *sign, *row.right))
            case Paragraph(inlines):
                found += [each.formula for each in inlines if isinstance(each, Math)]
            case Itemize(items):
                found += [each.formula for item in items for each in item if isinstance(each, Math)]
    return found


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", sorted(default_bank().files))
def test_every_working_says_the_same_in_plain_text(id: str) -> None:
    problem = prepare(default_bank().read(id), Convention())
    (own,) = work(problem, draw_class(problem, "mathml", ["ada"]).draws)
    formulas = [f for section in tell_steps(problem, own) for f in formulas_in(section.blocks)]
    assert len(formulas) >= 5
    for formula in formulas:
        assert bare(read(formula)) == bare(plain(formula))
