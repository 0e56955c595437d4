"""Equations in a column: what is too wide to stand there, however it is broken, is noticed."""

from dataclasses import replace
from io import BytesIO

import pdfplumber
import pypdfium2
import pytest

from probgen.papers.typesetter import Kind
from probgen.press.batch import Document, print_batch
from probgen.quantities.expression import Name, Quotient, number, times, total
from probgen.quantities.unit import METRE, NEWTON
from probgen.sheets.latex.blocks import write_rows
from probgen.wording.block import Row
from tests.papers.looks import LOOKS, copies, written

TWO = number(2)
FRACTION = r"\dfrac{(24\,500\,\mathrm{N/m^3})(1.25\,\mathrm{m})(2.60\,\mathrm{m})}{2}"
SUM = "+".join([r"(250\,\mathrm{N})(1.20\,\mathrm{m})"] * 4)
"""Wider than a fraction, but it may go on below."""


@pytest.fixture(scope="module")
def key() -> Document:
    (found,) = written(copies(["lantern-two-cords"], 1), LOOKS["letter"], (Kind.KEYS,))
    return found


@pytest.mark.parametrize(
    ("width", "right", "said"),
    [(50, FRACTION, "broad"), (90, FRACTION, "fits"), (50, SUM, "fits"), (20, SUM, "broad")],
)
def test_a_part_that_cannot_be_broken_waits_for_the_whole_width(
    key: Document, width: int, right: str, said: str
) -> None:
    told = r"\ifunbreakable broad\else fits\fi\par"
    column = rf"\parbox{{{width}mm}}{{\working{{\row{{W}}{{=}}{{{right}}}}}}}"
    body = rf"\makeatletter\global\unbreakablefalse {column}\par {told}\makeatother"
    batch = print_batch([replace(key, body=body)])
    assert batch.failures == ()
    with pypdfium2.PdfDocument(batch.printed[0].pdf) as pdf:
        assert said in pdf[0].get_textpage().get_text_range()


@pytest.mark.parametrize("width", [60, 56])
def test_a_part_too_wide_for_its_line_is_set_smaller(key: Document, width: int) -> None:
    body = rf"\parbox{{{width}mm}}{{\working{{\row{{W}}{{=}}{{{FRACTION}}}}}}}"
    (page,) = print_batch([replace(key, body=body)]).printed
    assert page.blemishes == ()


LONG = Quotient(
    total(*((1, times(number(250 + i, NEWTON), number("1.20", METRE))) for i in range(6))),
    number("0.045", METRE),
)
"""A fraction that is wider than a page of keys."""


@pytest.mark.parametrize("width", [165, 110, 70])
def test_a_fraction_much_too_wide_for_its_line_is_broken(key: Document, width: int) -> None:
    """In letters as large as elsewhere, its terms on lines of their own."""
    working = write_rows([Row((Name("F", "F"),), "=", (LONG,))])
    (page,) = print_batch([replace(key, body=rf"\parbox{{{width}mm}}{{{working}}}")]).printed
    assert page.blemishes == ()
    with pdfplumber.open(BytesIO(page.pdf)) as opened:
        sizes = {round(char["size"], 1) for char in opened.pages[0].chars if char["text"] == "2"}
    assert len(sizes) == 1
    assert sizes.pop() > 9.5


def test_a_fraction_that_fits_is_not_broken() -> None:
    assert r"\orbroken" not in write_rows([Row((), "=", (Quotient(Name("F", "F"), TWO),))])


@pytest.mark.parametrize(
    ("width", "lines"),
    [
        (90, ["F = 0", "W = abc = (25 N/m)(1.25 m)(2.60 m) = 81 N"]),
        (70, ["F = 0", "W = abc = (25 N/m)(1.25 m)(2.60 m)", "= 81 N"]),
        (55, ["F = 0", "W = abc", "= (25 N/m)(1.25 m)(2.60 m)", "= 81 N"]),
    ],
)
def test_a_chain_that_is_too_wide_is_broken_before_its_relations(
    key: Document, width: int, lines: list[str]
) -> None:
    numbers = r"(25\,\mathrm{N/m})(1.25\,\mathrm{m})(2.60\,\mathrm{m})"
    links = rf"\row{{W}}{{=}}{{abc}}\row{{}}{{=}}{{{numbers}}}\row{{}}{{=}}{{81\,\mathrm{{N}}}}"
    working = rf"\working{{\row{{F}}{{=}}{{0}}\chain{{{links}}}}}"
    batch = print_batch([replace(key, body=rf"\parbox{{{width}mm}}{{{working}}}")])
    assert batch.failures == ()
    with pypdfium2.PdfDocument(batch.printed[0].pdf) as pdf:
        told = pdf[0].get_textpage().get_text_range().splitlines()
    assert [" ".join(line.split()) for line in told[: len(lines)]] == lines


def test_a_form_of_a_balance_goes_on_in_the_line_before_as_a_whole_or_not(key: Document) -> None:
    """There is room for what it equals, but not for the zero behind."""
    form = r"\row{}{=}{Sabcdefghijkl - Wabcdefghijkl}"
    working = rf"\working{{\row{{F}}{{=}}{{S - W}}\chain{{{form}\row{{}}{{=}}{{0}}}}}}"
    batch = print_batch([replace(key, body=rf"\parbox{{84mm}}{{{working}}}")])
    with pypdfium2.PdfDocument(batch.printed[0].pdf) as pdf:
        told = pdf[0].get_textpage().get_text_range().splitlines()
    assert told[0].split() == ["F", "=", "S", "\N{MINUS SIGN}", "W"]
    assert told[1].endswith("= 0")
