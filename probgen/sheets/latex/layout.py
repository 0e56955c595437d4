"""Layouts: jinja2 files that loop and print, and never calculate.

A layout prints with `<< ... >>`, loops and asks with `<% ... %>`, and comments with `<# ... #>`.
It has `words`, the language's own (`PageWords`), beside what is given.
What it prints is escaped for LaTeX unless it becomes LaTeX otherwise: running text (a tuple of
inlines) and the results of the filters `picture` (a figure, or none), `blocks(pictures)`,
`step(number, pictures)` (a section), `display` (formulas side by side), `bookmark` (a title) and
`latex` (text that is LaTeX already).
"""

from __future__ import annotations

import traceback
from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from typing import Any, Final

from jinja2 import (
    ChoiceLoader,
    FunctionLoader,
    PackageLoader,
    StrictUndefined,
    TemplateError,
    TemplateRuntimeError,
    TemplateSyntaxError,
    Undefined,
)
from jinja2.sandbox import ImmutableSandboxedEnvironment
from pylatex.utils import NoEscape

from probgen.figures.paper.scene import Scene
from probgen.figures.writers.latex import latex_picture
from probgen.input.fault import Fault, InputError
from probgen.input.time_limit import within
from probgen.quantities.formula import Formula
from probgen.sheets import document
from probgen.sheets.document import (
    AnswerTable,
    Cover,
    Feedback,
    Key,
    Paper,
    Sheet,
    picture_name,
)
from probgen.sheets.house import USUAL, House
from probgen.sheets.latex.blocks import (
    Draw,
    write_blocks,
    write_formulas,
    write_inlines,
    write_step,
)
from probgen.sheets.latex.escape import escape
from probgen.sheets.latex.script import SCRIPTS
from probgen.wording.block import Block, Section
from probgen.wording.english import ENGLISH
from probgen.wording.page_words import PageWords
from probgen.wording.sentence import are_inlines

Pictures = Mapping[str, Scene]

_SECONDS: Final = 4.0
"""Of processor time for one document; the usual layouts take some hundredths."""
_MEND: Final = "look for layouts that include themselves, and for loops in loops"
_ROOM: Final = "probgen.sheets.latex"

_FIELDS: Final = {
    kind: frozenset(field.name for field in fields(kind))
    for kind in (*vars(document).values(), PageWords)
    if isinstance(kind, type) and is_dataclass(kind)
}
"""What the parts of a page are made of, by their kind: plain data, which any layout may read."""


class LayoutError(InputError):
    """A layout cannot be used, for whatever paper."""


class _Sandbox(ImmutableSandboxedEnvironment):
    """A sandbox that does not look twice at plain data."""

    def getattr(self, obj: Any, attribute: str) -> Any:
        if attribute in _FIELDS.get(type(obj), ()):
            return getattr(obj, attribute)
        return super().getattr(obj, attribute)


_WRONG: Final = (
    TemplateError, ArithmeticError, LookupError, TypeError, ValueError, AttributeError,
    RecursionError,
)  # fmt: skip
"""What a layout may end in: it divides by nothing, calls what is no function, includes itself."""


class Layouts:
    """The page layouts: the package's own, each replaced by that of the house where it has one."""

    def __init__(self, house: House = USUAL, words: PageWords = ENGLISH.page) -> None:
        self._house = house
        own = dict(house.layouts)

        def load(name: str) -> tuple[str, str, None] | None:
            return (own[name], f"{house.folder}/{name}", None) if name in own else None

        self._environment = _Sandbox(
            loader=ChoiceLoader([FunctionLoader(load), PackageLoader(_ROOM, "layouts")]),
            undefined=StrictUndefined,
            finalize=self._printed,
            block_start_string="<%",
            block_end_string="%>",
            variable_start_string="<<",
            variable_end_string=">>",
            comment_start_string="<#",
            comment_end_string="#>",
            trim_blocks=True,
            lstrip_blocks=True,
            autoescape=False,  # HTML's; `finalize` escapes for LaTeX
        )
        self._environment.globals["words"] = words
        self._environment.filters.update(
            picture=self._picture,
            latex=self._latex,
            blocks=self._blocks,
            step=self._step,
            display=_display,
            bookmark=_bookmark,
        )

    def preamble(self, paper: Paper = "letter", large: bool = False) -> str:
        """Everything before a print run's first document; large: print of 18 pt.

        Errors as for `sheet`.
        """
        style = self._house.style
        given = {"paper": style.paper or paper, "large": large, "style": style}
        return self._print("preamble.tex.j2", **given, scripts=tuple(SCRIPTS.values()))

    def sheet(self, sheet: Sheet) -> str:
        """LaTeX of one sheet, without preamble.

        Raises LayoutError naming file and line when a department's layout cannot be used.
        """
        return self._print("sheet.tex.j2", sheet=sheet)

    def key(self, key: Key) -> str:
        """LaTeX of one key, without preamble.  Errors as for `sheet`."""
        return self._print("key.tex.j2", key=key)

    def cover(self, cover: Cover) -> str:
        """LaTeX of a cover page, without preamble.  Errors as for `sheet`."""
        return self._print("cover.tex.j2", cover=cover)

    def answer_table(self, table: AnswerTable) -> str:
        """LaTeX of a table of answers, without preamble.  Errors as for `sheet`."""
        return self._print("answers.tex.j2", table=table)

    def feedback(self, feedback: Feedback) -> str:
        """LaTeX of one student's marks, without preamble.  Errors as for `sheet`."""
        return self._print("feedback.tex.j2", feedback=feedback)

    def _printed(self, value: object) -> str:
        """What a layout prints, as LaTeX."""
        match value:
            case NoEscape():
                return str(value)
            case str():
                return escape(value)
            case Scene():
                return str(self._picture(value))
            case bool() | None:
                raise TemplateRuntimeError(f"{value} cannot be printed")
            case int() | float():
                return str(value)
            case tuple() if are_inlines(value):
                return write_inlines(value)
            case Undefined():
                return str(value)  # raises, naming what is not defined
            case _:
                raise TemplateRuntimeError(f"a {type(value).__name__} cannot be printed")

    def _picture(self, scene: Scene | None) -> NoEscape:
        """A figure, and nothing for none."""
        return NoEscape(latex_picture(scene, self._house.style.colours) if scene else "")

    def _latex(self, value: object) -> NoEscape:
        """Text that is LaTeX already; figures too, as they once were such text."""
        return self._picture(value) if isinstance(value, Scene | None) else NoEscape(value)

    def _blocks(self, blocks: Iterable[Block], pictures: Pictures) -> NoEscape:
        return NoEscape(write_blocks(blocks, self._draw(pictures)))

    def _step(self, section: Section, number: int, pictures: Pictures) -> NoEscape:
        return NoEscape(write_step(section, number, self._draw(pictures)))

    def _draw(self, pictures: Pictures) -> Draw:
        """How the figures are drawn that blocks stand for; KeyError when one is missing."""
        return lambda picture: self._picture(pictures[picture_name(picture)])

    def _print(self, name: str, **given: object) -> str:
        try:
            with within(_SECONDS, f"{self._house.folder}/{name}", "filling it in", "layout", _MEND):
                return self._environment.get_template(name).render(given)
        except InputError as error:
            raise LayoutError(error.faults) from None
        except _WRONG as error:
            raise LayoutError([_fault(name, error)]) from None


def _display(formulas: Iterable[Formula]) -> NoEscape:
    return NoEscape(write_formulas(formulas))


def _bookmark(title: str) -> NoEscape:
    r"""A title for `\bookmark`, as it is found in the PDF by `probgen.press.bookmark`."""
    return NoEscape(" ".join(title.split()).encode().hex())


def _fault(name: str, error: Exception) -> Fault:
    """Where a layout went wrong: jinja2 puts layout files and lines into its tracebacks."""
    file, line = name, 0
    if isinstance(error, TemplateSyntaxError):
        file, line = error.filename or name, error.lineno
    else:
        for frame in traceback.extract_tb(error.__traceback__):
            if frame.filename.endswith(".j2"):
                file, line = frame.filename, frame.lineno or 0
    field = f"line {line}" if line else ""
    expected = "a layout that only prints what a sheet or key has"
    return Fault(file, field, _found(error), expected, "correct the line")


def _found(error: Exception) -> str:
    match error:
        case TemplateError(message=str(message)) if message:
            return message
        case RecursionError():
            return "layouts or loops in each other without end"
        case ArithmeticError():
            return "arithmetic without a result"
        case _:
            return "something that cannot be done with what a page holds"
