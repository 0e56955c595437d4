"""What a class gets, written in its house's layouts and printed."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Final

from probgen.course.assignment import ProblemSet
from probgen.input.outside import OutsideError
from probgen.papers.page import Copy, key_of, sheet_of, solutions_of
from probgen.press.batch import Batch, Document, print_batch
from probgen.press.engine import engine, engine_version
from probgen.press.format_cache import format_for
from probgen.sheets.document import FEEDBACK, AnswerTable, Cover, Feedback, Paper
from probgen.sheets.house import USUAL, House
from probgen.sheets.latex.layout import Layouts
from probgen.wording.english import ENGLISH
from probgen.wording.language import Language

_OLDEST: Final = 17
"""The first pdfTeX 1.40.x that can leave the clock and random ids out of a PDF (its NEWS file)."""


SOLUTIONS: Final = "solutions"
"""The pile of what students get after a key's time."""


class Kind(StrEnum):
    """What is printed for each version, by the name of its folder."""

    SHEETS = "sheets"
    KEYS = "keys"


@dataclass(frozen=True, slots=True)
class Typesetter:
    """How one class's documents are written and printed."""

    paper: Paper = "letter"
    house: House = USUAL
    language: Language = ENGLISH

    def document(self, kind: Kind, copy: Copy) -> Document:
        """A copy's sheet or key.  Raises InputError when it cannot be told."""
        version, title = copy.version, _title(copy)
        layouts = _layouts(self.house, self.language)
        if kind is Kind.KEYS:
            body = layouts.key(key_of(copy))
            return Document(version.name, title, body, self._preamble(), kind)
        body = layouts.sheet(sheet_of(copy))
        return Document(version.name, title, body, self._preamble(version.large), kind)

    def solutions(self, copy: Copy, note: str = "") -> Document:
        """A copy's solutions for its student.  Raises InputError when they cannot be told."""
        body = _layouts(self.house, self.language).key(solutions_of(copy, note))
        version = copy.version
        return Document(version.name, _title(copy), body, self._preamble(version.large), SOLUTIONS)

    def feedback(self, name: str, page: Feedback, large: bool = False) -> Document:
        """A student's marks; large: in large print.

        Raises InputError when their layout cannot be used.
        """
        title = f"{page.header.title}: {page.header.student_name or page.header.student_id}"
        body = _layouts(self.house, self.language).feedback(page)
        return Document(name, title, body, self._preamble(large), FEEDBACK)

    def page(self, pile: str, name: str, page: Cover | AnswerTable) -> Document:
        """A cover or a table for a pile.  Raises InputError when its layout cannot be used."""
        layouts = _layouts(self.house, self.language)
        body = layouts.cover(page) if isinstance(page, Cover) else layouts.answer_table(page)
        return Document(name, page.header.title, body, self._preamble(), pile)

    def print(self, documents: Sequence[Document]) -> Batch:
        """Raises OutsideError when TeX is not there."""
        return print_batch(documents, files=self.house.style.files)

    def require_tex(self) -> None:
        """Raises OutsideError when TeX is missing, too old or lacks a package."""
        banner = engine_version(engine())
        release = re.search(r"-1\.40\.(\d+)", banner)
        if release and int(release[1]) < _OLDEST:
            found = banner.partition(")")[0]
            raise OutsideError(f"TeX is too old: {found})", "install TeX Live 2016 or a later one")
        format_for(self._preamble())

    def _preamble(self, large: bool = False) -> str:
        return _preamble(self.house, self.language, self.paper, large)


def _title(copy: Copy) -> str:
    version = copy.version
    title = f"{copy.problem_set.title}: {version.student.name or version.owner}"
    return title + (f", {version.code}" if version.code else "")


def typesetter_of(problem_set: ProblemSet, house: House) -> Typesetter:
    """The typesetter an assignment file asks for."""
    return Typesetter(problem_set.paper, house)


@cache
def _layouts(house: House, language: Language) -> Layouts:
    return Layouts(house, language.page)


@cache
def _preamble(house: House, language: Language, paper: Paper, large: bool) -> str:
    return _layouts(house, language).preamble(paper, large)
