"""HTML pages: whole, escaped, needing no other file, and saying what the LaTeX says."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.papers.page import Copy, key_of, sheet_of
from probgen.problem.problem import draw_class, prepare, work
from probgen.sheets.document import Cover
from probgen.sheets.formula_page import formula_page
from probgen.sheets.html.pages import HtmlPages
from probgen.sheets.latex.layout import Layouts
from probgen.sheets.writer import Writer
from probgen.working.convention import Convention
from tests.markup import read

IDS = sorted(default_bank().files)
NUMBER = re.compile(r"\d+(?:\.\d+)?")


def copy_of(id: str) -> Copy:
    problem = prepare(default_bank().read(id), Convention())
    worked = work(problem, draw_class(problem, "html", ["ada"]).draws)
    problem_set = ProblemSet("A < B & C", "<script>x</script>", "class.csv", (Assigned(id, 10),))
    version = Version("CODE", "01-ada-1", Student('"Ada" <b>', "1"))
    return Copy(problem_set, version, (problem,), worked)


def page_of(copy: Copy) -> str:
    pages = HtmlPages()
    return pages.whole("Sheet & key", pages.sheet(sheet_of(copy)), pages.key(key_of(copy)))


def numbers(text: str) -> set[str]:
    return set(NUMBER.findall(text))


def numbers_in_latex(body: str) -> set[str]:
    """What is printed as a number: neither in a picture nor in the names of commands."""
    words = re.sub(r"\\begin\{picture\}.*?\\end\{picture\}", "", body, flags=re.DOTALL)
    words = re.sub(r"\\(?:nextmark|addvspace)\{[^}]*\}|\\penalty\d+ ", "", words)
    return numbers(words.replace(r"\,", "").replace("{,}", ","))


@pytest.mark.one_in(3)
@pytest.mark.parametrize("id", IDS)
def test_every_number_of_the_key_is_there(id: str) -> None:
    copy = copy_of(id)
    page = HtmlPages().key(key_of(copy))
    wanted = numbers_in_latex(Layouts().key(key_of(copy)))
    found = numbers(" ".join(read(page).words).replace("\u202f", ""))
    assert len(wanted) > 10
    assert wanted - found == set()


@pytest.mark.one_in(3)
@pytest.mark.parametrize("id", IDS)
def test_figures_say_in_words_what_they_show(id: str) -> None:
    copy = copy_of(id)
    page = page_of(copy)
    drawings = re.findall(r"<svg.*?</svg>", page, re.DOTALL)
    (solution,) = key_of(copy).solutions
    assert len(drawings) >= 2 + len(solution.pictures)
    for drawing in drawings:
        root = ElementTree.fromstring(drawing)
        assert root.get("role") == "img"
        title = root.find("{http://www.w3.org/2000/svg}title")
        assert title is not None
        assert root.get("aria-label") == title.text
    for formula in re.findall(r"<math>.*?</math>", page):
        ElementTree.fromstring(formula)


def test_nothing_is_fetched_and_nothing_runs() -> None:
    page = page_of(copy_of("forearm-load"))
    reader = read(page)
    assert not {"script", "link", "img", "iframe"} & {tag for tag, _ in reader.found}
    for _, attributes in reader.found:
        assert not {"src", "href", "onload", "onclick"} & attributes.keys()
    assert "url(" not in page
    assert "@import" not in page
    assert "prefers-color-scheme: dark" in page
    assert "@media print" in page


def test_what_was_typed_stands_there_as_typed() -> None:
    page = page_of(copy_of("forearm-load"))
    assert "<script>" not in page
    words = "".join(read(page).words)
    for typed in ("A < B & C", "<script>x</script>", '"Ada" <b>', "Sheet & key"):
        assert typed in words


def test_a_cover_and_a_page_of_formulas() -> None:
    sheet = sheet_of(copy_of("forearm-load"))
    cover = Cover(sheet.header, notes=("Write <here>.",))
    page = HtmlPages().sheet(replace(sheet, formulas=formula_page("moment"), cover=cover))
    words = "".join(read(page).words)
    assert "Write <here>." in words
    assert "no net moment, about any point" in words


@pytest.mark.parametrize("writer", [HtmlPages(), Layouts()], ids=["html", "latex"])
def test_both_writers_write(writer: Writer) -> None:
    copy = copy_of("forearm-load")
    assert writer.sheet(sheet_of(copy)) != writer.key(key_of(copy))


def test_letters_in_headings_are_formulas() -> None:
    page = HtmlPages().key(key_of(copy_of("forearm-load")))
    heads = re.findall(r"<h3>.*?</h3>", page)
    (head,) = (each for each in heads if "direction of" in each)
    assert "<mi>J</mi>" in head
    assert "<math>" not in heads[0]
