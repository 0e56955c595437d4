"""Pages measured: nothing outside the margins, nothing torn apart, whatever the texts are like."""

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO

import pdfplumber
import pytest

from probgen.press.batch import Document, print_batch
from probgen.sheets.document import Key, Sheet
from probgen.sheets.layout import Layouts
from probgen.wording.block import Text

MM = 72 / 25.4
SIDE, FOOT, KEY_FOOT = 24 * MM, 25 * MM, 22 * MM  # margins of the preamble layout
LONG = "A heavy uniform beam of unusual length rests on two supports and carries a crate. " * 6
WIDE = r"\setlength\unitlength{1mm}\begin{picture}(120,30)\polygon(0,0)(120,0)(120,30)\end{picture}"
TALL = r"\setlength\unitlength{1mm}\begin{picture}(60,130)\polygon(0,0)(60,0)(60,130)\end{picture}"
CAUTION = "Idealised models"

PROBLEMS = {
    "as usual": {},
    "a long title": {"title": LONG[:140]},
    "no figure": {"figure": ""},
    "a wide figure": {"figure": WIDE},
    "a tall figure": {"figure": TALL},
    "a long text": {"statement": (Text(f"{LONG}\n\n{LONG}\n\n{LONG}"),)},
    "a text longer than a page": {"statement": (Text(f"{LONG}\n\n" * 16),), "figure": ""},
    "more room than a page": {"space": 240.0},
    "no room": {"space": 0.0},
    "nothing asked": {"parts": ()},
}


def pages_of(body: str, layouts: Layouts) -> list[pdfplumber.page.Page]:
    batch = print_batch([Document("a", "a", body)], layouts.preamble("letter"))
    assert batch.failures == ()
    return pdfplumber.open(BytesIO(batch.printed[0].pdf)).pages


def split_foot(page: pdfplumber.page.Page, foot_height: float = FOOT) -> tuple[list[dict], list[dict]]:
    """The characters of a page, and those of its foot line."""
    border = float(page.height) - foot_height + 2
    inside = [char for char in page.chars if char["bottom"] <= border]
    return inside, [char for char in page.chars if char["bottom"] > border]


def check_margins(page: pdfplumber.page.Page, foot_height: float = FOOT) -> None:
    inside, foot = split_foot(page, foot_height)
    assert inside
    assert "".join(char["text"] for char in foot).endswith(str(page.pdf.pages[-1].page_number))
    assert min(char["top"] for char in foot) > float(page.height) - foot_height + 5
    for thing in [*page.chars, *page.lines, *page.rects, *page.curves]:
        assert thing["x0"] > SIDE - 3  # hanging punctuation
        assert thing["x1"] < float(page.width) - SIDE + 3
        assert thing["bottom"] < float(page.height) - 10 * MM


@pytest.mark.parametrize("change", PROBLEMS.values(), ids=PROBLEMS)
def test_sheet(change: dict, layouts: Layouts, sheet_for: Callable[..., Sheet]) -> None:
    sheet = sheet_for("Maximiliana Anastasia Wolkenstein-Montgomery de la Cruz y Østergård")
    problems = tuple(replace(problem, **change) for problem in sheet.problems)
    pages = pages_of(layouts.sheet(replace(sheet, problems=problems)), layouts)
    for page in pages:
        check_margins(page)
    texts = [page.extract_text() for page in pages]
    assert [CAUTION in text for text in texts] == [False] * (len(pages) - 1) + [True]
    assert "Shelf" in texts[-1] or "beam" in texts[-1]  # a caution never stands alone


def test_problems_are_not_torn(layouts: Layouts, sheet_for: Callable[..., Sheet]) -> None:
    for page in pages_of(layouts.sheet(sheet_for("Ada Quill")), layouts):
        text = page.extract_text()
        assert text.count("Shelf held") == text.count("direction of the hinge")


@pytest.mark.parametrize("statement", [(Text("Short."),), (Text(LONG),), (Text(LONG * 3),)])
def test_key(statement: tuple, layouts: Layouts, key_for: Callable[..., Key]) -> None:
    key = key_for("Ada Quill")
    solutions = tuple(replace(solution, statement=statement) for solution in key.solutions)
    for page in pages_of(layouts.key(replace(key, solutions=solutions)), layouts):
        check_margins(page, KEY_FOOT)
        inside, _ = split_foot(page, KEY_FOOT)
        last = max(char["bottom"] for char in inside)
        bold = [char for char in inside if char["bottom"] > last - 4 and "Bold" in char["fontname"]]
        assert bold == []  # no heading at the foot


def test_a_sheet_without_names_leaves_lines_to_write_on(
    layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    sheet = sheet_for("")
    blank = replace(sheet, header=replace(sheet.header, student_id="", section="", code=""))
    text = pages_of(layouts.sheet(blank), layouts)[0].extract_text()
    assert "Name" in text
    assert "Section" not in text
    assert "Version" not in text
