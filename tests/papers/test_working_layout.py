"""Equations in a column: what is too wide to stand there, however it is broken, is noticed."""

from dataclasses import replace

import pypdfium2
import pytest

from probgen.papers.typesetter import Kind
from probgen.press.batch import Document, print_batch
from tests.papers.looks import LOOKS, copies, written

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
