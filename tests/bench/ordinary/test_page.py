"""The ordinary pages say what ours say: every number of a sheet and a key, and every drawing."""

import re

import pytest

from probgen.papers.page import key_of, sheet_of
from probgen.sheets.latex.layout import Layouts
from tests.bench.ordinary.page import OrdinaryPages
from tests.sheets.html.test_pages import IDS, copy_of, numbers, numbers_in_latex

_PICTURE = re.compile(r"\\begin\{tikzpicture\}.*?\\end\{tikzpicture\}", re.DOTALL)
_UNSEEN = re.compile(r"\\step(?:over)?\{\d+\}|\\writein\{\d+mm\}|[0-9a-f]{24,}")
"""Numbers of steps, which ordinary sections do not have, lengths, bookmarks in hex."""
_POWER = re.compile(r"(\\(?:num|qty)\{-?[\d.]+)e(-?\d+)\}")


def ordinary(page: str) -> set[str]:
    """What is printed as a number; siunitx sets 1.2e3 as 1.2 x 10^3."""
    body = page.partition(r"\begin{document}")[2]
    return numbers(_POWER.sub(r"\1} 10 \2 ", _PICTURE.sub("", body)))


def ours(body: str) -> set[str]:
    """The same of our LaTeX."""
    return numbers_in_latex(_UNSEEN.sub("", body))


@pytest.mark.one_in(8)
@pytest.mark.parametrize("id", IDS)
def test_every_number_and_every_drawing_is_there(id: str) -> None:
    copy = copy_of(id)
    sheet, key = sheet_of(copy), key_of(copy)
    pages, layouts = OrdinaryPages(), Layouts()
    of_sheet, of_key = pages.sheet(sheet), pages.key(key)
    assert len(ours(layouts.key(key))) > 10
    assert ours(layouts.sheet(sheet)) - ordinary(of_sheet) == set()
    assert ours(layouts.key(key)) - ordinary(of_key) == set()
    (solution,) = key.solutions
    shown = len(solution.pictures) + (solution.figure is not None)
    assert len(_PICTURE.findall(of_key)) == shown
    assert len(_PICTURE.findall(of_sheet)) == sum(p.figure is not None for p in sheet.problems)
