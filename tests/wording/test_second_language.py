"""A second language is a second module: a made-up one tells keys and sheets with nothing else."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from probgen.bank.reading import read_template
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.figures.paper.scene import Scene
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import Copy, key_of, sheet_of
from probgen.problem.problem import draw_class, prepare, work
from probgen.quantities.expression import (
    Call,
    Lump,
    Name,
    Number,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)
from probgen.quantities.formula import Balance, Relation, Words
from probgen.quantities.unit import UNITS
from probgen.sheets.document import Cover, Key, Sheet
from probgen.sheets.html.pages import HtmlPages
from probgen.sheets.latex.layout import Layouts
from probgen.wording.block import Inline, Math, Text
from probgen.wording.english import ENGLISH
from probgen.wording.language import Language
from probgen.wording.nouns import Nouns
from probgen.wording.page_words import PageWords
from probgen.working.convention import Convention
from probgen.working.fact import Fact
from tests.situations import HEAD

ROOT = Path(__file__).parents[2]
TEMPLATES = [
    "beams/porch-roof-snow",
    "ladders/ladder-holds",
    "ladders/ladder-how-far-up",
    "levers/cabinet-slide-or-tip",
    "limbs/bent-back-toolbox",
    "structures/footbridge-two-beams",
    "structures/table-pulley-sand",
]
# What these say no names and no reasons of, the language has to have words for.
UNNAMED = {
    "shared": HEAD
    + """
[given]
L = { name = "length", choices = [1.20], unit = "m" }
m = { name = "mass", choices = [4.0], unit = "kg" }
[points]
A = [0, 0]
B = ["L", 0]
C = ["0.8*L", 0]
[body.shelf]
along = ["A", "B"]
[[weight]]
uniform = true
mass = "m"
[[hinge]]
at = "A"
symbol = "R"
[[cable]]
at = "C"
direction = 140
symbol = "T_1"
[[cable]]
at = "B"
direction = 120
symbol = "T_2"
[[share]]
of = "T_2"
to = "T_1"
ratio = 2
[[find]]
quantity = "T_1"
[[find]]
quantity = "R"
as = "magnitude and direction"
""",
    "slipping": HEAD
    + """
[given]
m = { name = "mass", choices = [4.0], unit = "kg" }
P = { name = "push", choices = [12.0], unit = "N" }
mu = { name = "coefficient", choices = [0.40], unit = "1" }
[body.crate]
particle = true
[[weight]]
mass = "m"
[[force]]
magnitude = "P"
direction = 0
[[rough]]
normal = "N"
friction = "f"
coefficient = "mu"
verge = false
[[find]]
quantity = "f.limit"
as = "holds"
[[find]]
quantity = "f"
""",
    "verge": HEAD
    + """
[given]
m = { name = "mass", choices = [4.0], unit = "kg" }
mu = { name = "coefficient", choices = [0.40], unit = "1" }
[body.crate]
particle = true
[[weight]]
mass = "m"
[[force]]
direction = 0
symbol = "P"
[[rough]]
normal = "N"
friction = "f"
coefficient = "mu"
[[find]]
quantity = "P"
""",
}
METHODS = {
    "usual": Convention(),
    "arms": Convention(torque="arm", direction="vertical", turning="moment"),
    "components": Convention(torque="components", positive="clockwise", direction="axis"),
}

# The language: a fact is called by its kind, and its formulas follow.

EXPRESSIONS = Number | Name | Call | Lump | Power | Product | Quotient | Root | Sum
PIECES = EXPRESSIONS | Relation | Balance | Words


def say(fact: Fact, nouns: Nouns) -> tuple[Inline, ...]:
    return (Text(f"{type(fact).__name__} "), *_formulas(fact))


def _formulas(fact: object) -> Iterator[Inline]:
    for field in fields(fact):  # type: ignore[arg-type]
        yield from _shown(getattr(fact, field.name))


def _shown(value: object) -> Iterator[Inline]:
    if isinstance(value, EXPRESSIONS):
        yield Math((value,))
    elif isinstance(value, tuple) and value and all(isinstance(v, PIECES) for v in value):
        yield Math(value)
    elif isinstance(value, tuple):
        for part in value:
            yield from _shown(part)
    elif isinstance(value, Fact):
        yield Text(f" {type(value).__name__} ")
        yield from _formulas(value)


def page_words() -> PageWords:
    words: dict[str, Any] = {f.name: f"Page{f.name.title()}" for f in fields(PageWords)}
    kinds = (kind for kind, _ in ENGLISH.page.cautions)
    verdicts = tuple((found, f"Verdict{found}") for found, _ in ENGLISH.page.verdicts)
    cautions = tuple((kind, f"Caution{kind}") for kind in kinds)
    return PageWords(**{**words, "cautions": cautions, "verdicts": verdicts})


MADE_UP = Language(say, page_words())


# What is printed.


@cache
def copy(name: str, method: str, language: Language) -> Copy:
    path = ROOT / "templates" / f"{name}.toml"
    text = UNNAMED[name] if name in UNNAMED else path.read_text(encoding="utf-8")
    template = read_template(text, path.name)
    convention = METHODS[method]
    problem = prepare(template, convention, language)
    own = work(problem, draw_class(problem, "language", ["0"]).draws)
    problem_set = ProblemSet("", template.title, "", (Assigned(template.id, 10),))
    problem_set = replace(problem_set, convention=convention, formulas=True, caution=True)
    slips = tuple(class_slips([each.digits for each in own], problem.missteps))
    return Copy(problem_set, Version("", "", Student("", "")), (problem,), own, slips)


def runs(part: object) -> Iterator[str]:
    """All running text of a document, with what its figures say and show; formulas are no words."""
    if isinstance(part, str):
        yield part
    elif isinstance(part, Scene):
        yield part.words
        yield from (label.text for label in part.labels if isinstance(label.text, str))
    elif isinstance(part, Mapping):
        yield from runs(tuple(part.values()))
    elif isinstance(part, tuple):
        for each in part:
            yield from runs(each)
    elif is_dataclass(part) and not isinstance(part, Math | PIECES):
        for field in fields(part):
            if field.name not in ("code", "kind", "room", "body", "relation"):  # not printed
                yield from runs(getattr(part, field.name))


def words(text: str) -> set[str]:
    return set(re.findall(r"[A-Za-z]{3,}", text))


def authors_words(of: Copy) -> set[str]:
    """Of the title, the statement, what is asked and what quantities are called."""
    problem = of.problems[0]
    asked = [problem.nouns.asked(find) for find in problem.template.system.finds]
    called = [
        f"{each.name if isinstance(each.name, str) else ''} {each.measured}"
        for each in problem.nouns.labels.quantities.values()
    ]
    return words(" ".join([problem.template.title, problem.template.statement, *asked, *called]))


def kinds_of_fact() -> set[type]:
    """Those that modules hold; a dataclass with slots leaves its first draft behind."""
    kinds = Fact.__subclasses__()
    return {kind for kind in kinds if vars(sys.modules[kind.__module__])[kind.__name__] is kind}


UNIT_WORDS = set().union(*(words(unit.plain) for unit in UNITS.values()))
MADE_UP_WORDS = {kind.__name__ for kind in kinds_of_fact()} | set().union(
    *(words(text) for text in runs(MADE_UP.page))
)
CASES = [(name, method) for name in (*TEMPLATES, *UNNAMED) for method in METHODS]


@pytest.mark.parametrize(("name", "method"), CASES)
def test_a_document_holds_no_words_but_its_language_s_and_its_author_s(
    name: str, method: str
) -> None:
    made_up = copy(name, method, MADE_UP)
    known = MADE_UP_WORDS | UNIT_WORDS | authors_words(made_up)
    for page in (sheet_of(made_up), key_of(made_up)):
        said = [word for text in runs(page) for word in words(text)]
        assert {word for word in said if word not in known} == set()
        assert "Passage" not in said
    assert len({*said} & MADE_UP_WORDS) > 10  # the key was told, and in this language


@pytest.mark.parametrize(("name", "method"), CASES)
def test_figures_say_and_show_what_the_language_has_for_it(name: str, method: str) -> None:
    made_up = copy(name, method, MADE_UP)
    (solution,) = key_of(made_up).solutions
    nouns = {*made_up.problems[0].nouns.labels.bodies.values()}
    diagrams = [scene for name, scene in solution.pictures.items() if name != "situation"]
    for scene in (solution.figure, *diagrams):
        assert scene is not None
        (said,) = {*words(scene.words)} & {"SituationShown", "DiagramShown"}
        noted = {label.text for label in scene.labels if isinstance(label.text, str)}
        assert noted <= {"ScaleNoted", "PairsNoted", "BodyNamed"} | nouns
        assert said == "SituationShown" or "ScaleNoted" in noted


@pytest.mark.parametrize(("name", "method"), CASES)
def test_a_page_for_the_screen_has_no_words_of_another_language(name: str, method: str) -> None:
    made_up = copy(name, method, MADE_UP)
    pages = HtmlPages(MADE_UP.page)
    articles = pages.sheet(sheet_of(made_up)), pages.key(key_of(made_up))
    read = Read(pages.whole(made_up.problems[0].template.title, *articles))
    known = MADE_UP_WORDS | UNIT_WORDS | FUNCTIONS | authors_words(made_up)
    assert {word for text in read.shown for word in words(text)} - known == set()
    assert {word for text in read.formulas for word in words(text)} - known == set()
    assert read.language == MADE_UP.page.language
    assert len(read.formulas) > 20


@pytest.mark.parametrize(("name", "method"), CASES)
def test_numbers_and_equations_are_the_same(name: str, method: str) -> None:
    """The language changes words only: equations, values and points are those of English."""

    def displays(of: Copy) -> list[object]:
        (solution,) = key_of(of).solutions
        blocks = [block for section in solution.sections for block in section.blocks]
        return [block for block in blocks if type(block).__name__ == "Display"]

    made_up, english = copy(name, method, MADE_UP), copy(name, method, ENGLISH)
    assert displays(made_up) == displays(english)
    assert displays(english)


class Read(HTMLParser):
    """What a reader gets of a page, on the screen or read aloud: text, labels, formulas' text."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.shown: list[str] = []
        self.formulas: list[str] = []
        self.language = ""
        self._within: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._within.append(tag)
        given = dict(attrs)
        self.language = self.language or given.get("lang") or ""
        self.shown += [given[name] or "" for name in LABELLING if name in given]

    def handle_endtag(self, tag: str) -> None:
        while self._within.pop() != tag:
            pass

    def handle_data(self, data: str) -> None:
        if "style" not in self._within:
            (self.formulas if "math" in self._within else self.shown).append(data)


LABELLING = ("alt", "aria-label", "title", "placeholder")
FUNCTIONS = {"sin", "cos", "tan", "arcsin", "arccos", "arctan"}

# What layouts print.

COMMAND = re.compile(r"\\bookmark\{[0-9a-f]*\}|\\[A-Za-z@]+")


def empty(of: Copy) -> tuple[Sheet, Key]:
    """Pages with nothing on them that anybody said."""
    sheet, key = sheet_of(of), key_of(of)
    part = replace(sheet.problems[0].parts[0], asked=(), unit="")
    problem = replace(sheet.problems[0], title="", statement=(), figure=None, parts=(part, part))
    header = replace(sheet.header, title="")
    cover = Cover(header, scores=(("1", 10),))
    solution = replace(
        key.solutions[0], title="", statement=(), figure=None, sections=(), pictures={}
    )
    solution = replace(solution, given=(), asked=(), answers=(), slips=())
    solution = replace(solution, scheme=(), other_routes=())
    shown = replace(
        sheet, header=header, preface=(), problems=(problem,), formulas=None, cautions=("",)
    )
    return replace(shown, cover=cover), replace(
        key, header=header, preface=(), solutions=(solution,)
    )


def test_layouts_print_no_words_of_their_own() -> None:
    layouts = Layouts(words=MADE_UP.page)
    sheet, key = empty(copy(TEMPLATES[0], "usual", MADE_UP))
    bodies = [layouts.sheet(sheet), layouts.sheet(replace(sheet, cover=None)), layouts.key(key)]
    for body in bodies:
        left = words(COMMAND.sub(" ", body)) - MADE_UP_WORDS
        assert left <= {"free"}  # the kind of a room


def test_commands_of_layouts_print_the_language_s_words() -> None:
    preamble = re.sub(r"(?<!\\)%.*", "", Layouts(words=MADE_UP.page).preamble())
    english = [text for text in runs(ENGLISH.page) if text[:1].isupper()]
    english += ["full marks", r"page \thepage"]
    assert [text for text in english if re.search(rf"(?<!\\)\b{re.escape(text)}", preamble)] == []
    for name in ("answers", "full_marks", "marks", "goes_wrong", "caution", "page", "sum"):
        assert getattr(MADE_UP.page, name) in preamble.replace(r"\_", "_")


def test_english_has_words_for_every_fact() -> None:
    said = ENGLISH.words.registry  # type: ignore[attr-defined]
    assert {kind for kind in kinds_of_fact() if kind not in said} == set()
    assert len(kinds_of_fact()) > 60
