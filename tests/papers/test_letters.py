"""The letters of points and axes are italic all over a page, in words, tables and figures."""

from __future__ import annotations

import re
from typing import Final

import pytest

from probgen.bank.bank import default_bank
from probgen.papers.handout import copy_of_one
from probgen.papers.page import key_of, sheet_of
from probgen.papers.typesetter import Kind, Typesetter
from probgen.problem.single import work_single
from probgen.quantities.symbol import italic
from probgen.sheets.html.pages import HtmlPages
from probgen.wording.english import ENGLISH

_FORMULA: Final = re.compile(r"\$[^$]*\$|\\row\{.*|\\put.*|.*csname.*")
_LOW: Final = re.compile(r"_\{[^{}]*\\mathrm\{([^{}]*)\}")
_WORDS: Final = frozenset("AIN")  # an article, a pronoun and a unit
_MARKS: Final = re.compile(f"[{italic('A')}-{italic('z')}{italic('h')}]|{{{{")


@pytest.mark.parametrize("id", sorted(default_bank().files))
@pytest.mark.one_in(4)
def test_a_letter_of_a_point_is_never_upright(id: str) -> None:
    single = work_single(id)
    copy, typesetter = copy_of_one(single), Typesetter()
    written = "\n".join(typesetter.document(kind, copy).body for kind in Kind)
    assert not _MARKS.search(written)
    assert "missingglyph" not in written  # what a mark becomes in words that have no formulas
    points = [point for point in single.problem.template.system.points if len(point) == 1]
    assert [low for low in _LOW.findall(written) if set(low) & set(points)] == []
    title = single.problem.template.title
    spoken = _FORMULA.sub("", written.replace(title, ""))
    letters = [letter for letter in (*points, "x", "y") if letter not in _WORDS]
    words = "|".join((*letters, f"[{''.join(points) or '-'}]{{2,}}"))  # a member AB too
    said = re.findall(rf"[^\n]{{0,20}}(?<![\w\\{{])(?:{words})(?![\w])[^\n]*", spoken)
    assert said == []


@pytest.mark.parametrize("id", ["gate-two-hinges", "footbridge-truss-crowd", "footbridge-inside"])
def test_so_it_is_on_a_screen(id: str) -> None:
    copy, pages = copy_of_one(work_single(id)), HtmlPages(ENGLISH.page)
    written = pages.sheet(sheet_of(copy)) + pages.key(key_of(copy))
    assert not _MARKS.search(written)
    assert {"gate-two-hinges": "<mn>1</mn><mi>x</mi>"}.get(id, "<mi>D</mi>") in written
