"""In how many ways a solution is set: none twice, and its pages are those of one of them."""

import re

import pypdfium2
import pytest

from probgen.press.batch import Document, print_batch
from probgen.sheets.latex.layout import Layouts

PREAMBLE = Layouts().preamble("letter") + r"\newcount\settings"
SHORT = "A line."
MEDIUM = "Some words of a text. " * 24
LONG = "Some words of a text. " * 60


def solution(*blocks: str, figure: str = "") -> str:
    """A solution that counts how often it is set, then that number and how many pages it took."""
    made = rf"\solution{{1}}{{Shelf}}{{10}}{{A shelf.}}{{{figure}}}" + "".join(blocks)
    results = r"\results{}{}{}{}"
    return (
        rf"\keytext\makesolution{{\global\advance\settings 1 {made}{results}}}"
        r"\par \the\settings\ ways"
    )


def bar(height: int) -> str:
    """A figure so many mm high."""
    return rf"\rule{{60mm}}{{{height}mm}}"


def step(text: str, height: int = 0) -> str:
    hung = rf"\hangfigure{{{bar(height)}}}" if height else ""
    return hung + rf"\step{{1}}{{Forces}}{{{text}}}"


WAYS = {
    "no figure": ((step(SHORT),), 1),
    "text as high as its figure": ((step(LONG, 40),), 1),
    # As it is, and with three sizes of the figure: neither other limits of what hangs together nor
    # steps below it would change anything.
    "a figure higher than its text": ((step(SHORT, 30),), 4),
    # The least limit parts them as well.
    "two figures": ((step(SHORT, 35), step(MEDIUM, 30)), 5),
    # A step that might begin beside its foot begins below it as well.
    "a figure somewhat higher than its text": ((step(SHORT, 16), step(LONG)), 5),
}


def texts(*bodies: str) -> list[str]:
    documents = [Document(str(n), "a", body, PREAMBLE) for n, body in enumerate(bodies)]
    batch = print_batch(documents)
    assert batch.failures == ()
    return [_text(each.pdf) for each in batch.printed]


def _text(printed: bytes) -> str:
    with pypdfium2.PdfDocument(printed) as pdf:
        return "\n".join(page.get_textpage().get_text_range() for page in pdf)


@pytest.mark.parametrize(("blocks", "count"), WAYS.values(), ids=WAYS)
def test_no_way_is_set_twice(blocks: tuple[str, ...], count: int) -> None:
    (shown,) = texts(solution(*blocks))
    assert f"{count} ways" in shown


def test_each_solution_has_its_own_answers_which_are_set_once() -> None:
    """In four ways, two to a document, two documents in a run."""
    answers = r"\global\advance\settings 1 \answer{T}{%s N}{}"
    blocks = WAYS["a figure higher than its text"][0]
    solutions = [
        rf"\makesolution{{\solution{{1}}{{Shelf}}{{}}{{}}{{}}{''.join(blocks)}"
        rf"\results{{{answers % number}}}{{}}{{}}{{}}}}"
        for number in (11, 22, 33, 44)
    ]
    bodies = [r"\keytext" + "".join(some) for some in (solutions[:2], solutions[2:])]
    first, second = texts(*(body + r"\par \the\settings\ settings" for body in bodies))
    assert [re.findall(r"(\d\d) N", shown) for shown in (first, second)] == [
        ["11", "22"],
        ["33", "44"],
    ]
    assert "4 settings" in first  # measured, then set, for each of two
