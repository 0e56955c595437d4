"""Pages measured: nothing outside the margins, nothing torn apart, whatever the texts are like."""

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO
from typing import Any

import pdfplumber
import pikepdf
import pypdfium2
import pytest

from probgen.figures.paper.scene import HEAVY, composed, polygon
from probgen.press.batch import Document, print_batch
from probgen.sheets.document import AnswerRow, AnswerTable, Cover, Formulas, Key, Part, Sheet
from probgen.sheets.formula_page import formula_page
from probgen.sheets.house import House
from probgen.sheets.latex.layout import Layouts
from probgen.sheets.style import HouseStyle
from probgen.wording.block import Text

MM = 72 / 25.4
SIDE, FOOT, KEY_FOOT = 24 * MM, 25 * MM, 19 * MM  # margins of the preamble layout
LONG = "A heavy uniform beam of unusual length rests on two supports and carries a crate. " * 6
WIDE = composed([polygon([0j, 120 * MM + 0j, (120 + 30j) * MM], HEAVY)])
TALL = composed([polygon([0j, 60 * MM + 0j, (60 + 130j) * MM], HEAVY)])
CAUTION = "Idealised models"

PROBLEMS = {
    "as usual": {},
    "a long title": {"title": LONG[:140]},
    "no figure": {"figure": None},
    "a wide figure": {"figure": WIDE},
    "a tall figure": {"figure": TALL},
    "a long text": {"statement": (Text(f"{LONG}\n\n{LONG}\n\n{LONG}"),)},
    "a text longer than a page": {"statement": (Text(f"{LONG}\n\n" * 16),), "figure": None},
    "more room than a page": {"space": 240.0},
    "no room": {"space": 0.0},
    "nothing asked": {"parts": ()},
    "one thing asked": {"parts": (Part("", (Text("the tension"),), "N"),)},
    "ruled room": {"room": "lines"},
    "squared room": {"room": "grid"},
    "no room wanted": {"room": "none"},
}
ROOMS = {"free": (0, 0), "none": (0, 0), "lines": (10, 0), "grid": (20, 400)}
"""Rules across the page and down it that a sheet of four problems has at the least."""


def pages_of(body: str, layouts: Layouts) -> list[pdfplumber.page.Page]:
    batch = print_batch([Document("a", "a", body, layouts.preamble("letter"))])
    assert batch.failures == ()
    return pdfplumber.open(BytesIO(batch.printed[0].pdf)).pages


def split_foot(
    page: pdfplumber.page.Page, foot_height: float = FOOT
) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
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
def test_sheet(change: dict[str, Any], layouts: Layouts, sheet_for: Callable[..., Sheet]) -> None:
    sheet = sheet_for("Maximiliana Anastasia Wolkenstein-Montgomery de la Cruz y Østergård")
    problems = tuple(replace(problem, **change) for problem in sheet.problems)
    pages = pages_of(layouts.sheet(replace(sheet, problems=problems)), layouts)
    for page in pages:
        check_margins(page)
    texts = [page.extract_text() for page in pages]
    assert [CAUTION in text for text in texts] == [False] * (len(pages) - 1) + [True]
    assert "Shelf" in texts[-1] or "beam" in texts[-1]  # a caution never stands alone


@pytest.mark.parametrize(("room", "rules"), ROOMS.items())
def test_room_for_working(
    room: Any, rules: tuple[int, int], layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    sheet = sheet_for("Ada Quill")
    problems = tuple(replace(problem, room=room, figure=None) for problem in sheet.problems)
    grey = [
        rule
        for page in pages_of(layouts.sheet(replace(sheet, problems=problems)), layouts)
        for rule in page.lines
        if rule["stroking_color"] not in [0, (0,)]
    ]
    across = sum(rule["height"] == 0 for rule in grey)
    down = sum(rule["width"] == 0 for rule in grey)
    assert across + down == len(grey)
    assert across >= rules[0]
    assert down >= rules[1]
    assert (across > 0, down > 0) == (rules[0] > 0, rules[1] > 0)


def test_the_lines_of_a_grid_are_alike(layouts: Layouts, sheet_for: Callable[..., Sheet]) -> None:
    """The one on top and the last one too."""
    problems = tuple(replace(each, room="grid", figure=None) for each in sheet_for("Ada").problems)
    body = layouts.sheet(replace(sheet_for("Ada"), problems=problems))
    batch = print_batch([Document("a", "a", body, layouts.preamble())])
    with pypdfium2.PdfDocument(batch.printed[0].pdf) as pdf:
        scale = 10
        shade = pdf[0].render(scale=scale, grayscale=True).to_numpy()
    between = round((SIDE + 2.5 * MM) * scale)  # two lines down
    column = 255.0 - shade.reshape(shade.shape[:2])[:, between]
    cell = round(5 * MM * scale)
    starts = [
        y
        for y in range(4, len(column))
        if column[y] > 8 >= column[y - 4 : y].max() and column[y : y + 8].max() < 150  # grey
    ]
    lines = [
        column[y : y + 8].sum() for y in starts if any(abs(abs(y - z) - cell) < 3 for z in starts)
    ]
    assert len(lines) > 8
    assert max(lines) == pytest.approx(min(lines), rel=0.4)  # 2.0 before, and a pixel is 0.1 pt


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_a_name_in_large_print_stands_on_one_line(
    paper: Any, layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    body = layouts.sheet(sheet_for("Åsa Dvořáková-Nguyễn Wolkenstein"))
    batch = print_batch([Document("a", "a", body, layouts.preamble(paper, large=True))])
    with pdfplumber.open(BytesIO(batch.printed[0].pdf)) as opened:
        lines = opened.pages[0].extract_text().splitlines()
    assert any("Name" in line and "Wolkenstein" in line for line in lines)


def test_the_lines_of_a_longer_name_are_of_about_the_same_length(
    layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    names = [
        *["Maximiliana", "Theodora", "Anastasia", "Genoveva", "von", "Hohenstaufen", "de", "la"],
        "Vega",
    ]
    body = layouts.sheet(sheet_for(" ".join(names)))
    batch = print_batch([Document("a", "a", body, layouts.preamble(large=True))])
    with pdfplumber.open(BytesIO(batch.printed[0].pdf)) as opened:
        lines = opened.pages[0].extract_text().splitlines()
    (last,) = (line.split() for line in lines if "Vega" in line)
    assert last == names[-len(last) :]
    assert 2 < len(last) < len(names)


def test_a_cover_keeps_its_cautions_however_many_problems_are_scored(
    layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    sheet = sheet_for("Ada Quill")
    numbers = tuple((str(number), 10) for number in range(1, 16))
    cover = Cover(sheet.header, scores=numbers)
    body = layouts.sheet(replace(sheet, cover=cover))
    for large in (False, True):
        batch = print_batch([Document("a", "a", body, layouts.preamble(large=large))])
        with pdfplumber.open(BytesIO(batch.printed[0].pdf)) as opened:
            words = opened.pages[0].extract_text().split()
        assert {*(number for number, _ in numbers), "150", *CAUTION.split()[:1]} <= set(words)
        assert words.count("Problem") == 1 + large  # as many tables, side by side


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_large_print(paper: Any, layouts: Layouts, sheet_for: Callable[..., Sheet]) -> None:
    body = layouts.sheet(sheet_for("Ada Quill"))
    batch = print_batch([Document("a", "a", body, layouts.preamble(paper, large=True))])
    with pdfplumber.open(BytesIO(batch.printed[0].pdf)) as opened:
        text = [char for page in opened.pages for char in page.chars if char["text"].isalpha()]
        width = float(opened.pages[0].width)
    assert max(char["x1"] for char in text) < width - 15 * MM
    sizes = sorted(char["size"] for char in text)
    assert sizes[len(sizes) // 2] > 17.9
    assert sizes[0] > 10  # indices


FORMULAS = {
    formula_page(): ("Torque of a force", "components, counter-clockwise", "xF −yF"),
    formula_page("moment", clockwise=True): (
        "Moment of a force",
        "components, clockwise",
        "yF −xF",
    ),
}


@pytest.mark.parametrize(("formulas", "told"), FORMULAS.items())
def test_the_page_of_formulas(
    formulas: Formulas, told: tuple[str, ...], layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    sheet = sheet_for("Ada Quill")
    plain = pages_of(layouts.sheet(sheet), layouts)
    *before, last = pages_of(layouts.sheet(replace(sheet, formulas=formulas)), layouts)
    assert [page.extract_text()[:200] for page in before] == [
        page.extract_text()[:200] for page in plain
    ]
    assert last.extract_text().startswith("Formulas")
    assert all(words in last.extract_text() for words in told)
    check_margins(last)


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("text", ["roman", "sans"])
def test_the_page_of_formulas_is_a_page_in_large_print(
    paper: Any, text: Any, sheet_for: Callable[..., Sheet]
) -> None:
    layouts = Layouts(House(HouseStyle(text, text)))
    sheet = replace(sheet_for("Ada Quill"), problems=())
    for formulas in FORMULAS:
        body = layouts.sheet(replace(sheet, formulas=formulas))
        batch = print_batch([Document("a", "a", body, layouts.preamble(paper, large=True))])
        with pdfplumber.open(BytesIO(batch.printed[0].pdf)) as opened:
            _, page = opened.pages
            signs = [char for char in page.chars if "Extension" in char["fontname"]]
        assert min(char["size"] for char in signs) > 17.9  # of sums: as large as what they sum


def test_an_exam_has_lines_for_the_name_and_a_large_letter(
    layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    sheet = sheet_for("")
    header = replace(sheet.header, student_id="", version="B")
    cover = Cover(header, (("Time", "50 min"),), ("Open it when told.",), (("Shelf", 10),))
    for body in (layouts.sheet(replace(sheet, header=header)), layouts.cover(cover)):
        page, *_ = pages_of(body, layouts)
        check_margins(page)
        (letter,) = (char for char in page.chars if char["size"] > 25)
        assert letter["text"] == "B"
        lines = [rule for rule in page.lines if 70 < rule["width"] < 200 and rule["top"] < 150]
        assert len(lines) == 2  # name and id


@pytest.mark.parametrize(("rows", "columns"), [(4, 3), (60, 12), (200, 5)])
def test_table_of_answers(
    rows: int, columns: int, layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    heads = tuple((Text(f"R{n}"),) for n in range(columns))
    students = [f"Student {n} Wolkenstein" for n in range(rows)]
    direction = (Text("76.9° below the horizontal, to the right"),)
    cells = ((Text("344 N"),), *[direction] * (columns - 1))
    table = AnswerTable(
        sheet_for("").header, ("Name", "Id"), (("Shelf", heads),),
        tuple(AnswerRow((student, f"{n}"), cells) for n, student in enumerate(students)), "Answers",
    )  # fmt: skip
    pages = pages_of(layouts.answer_table(table), layouts)
    text = ""
    for page in pages:
        assert page.width > page.height
        inside = [char for char in page.chars if char["bottom"] < float(page.height) - 15 * MM]
        assert min(char["x0"] for char in page.chars) > 15 * MM - 1
        assert max(char["x1"] for char in page.chars) < float(page.width) - 15 * MM + 1
        assert len(inside) > 100  # no page with a single row
        text += " ".join(page.extract_text().split())
        # Heads on every page; where a problem has too many columns they go on in another table.
        assert any(f"R{n}" in page.extract_text() for n in (2, columns - 1))
    assert (len(pages) == 1) == (rows == 4)
    assert text.replace(" ", "").count("344N") == rows


def test_short_tables_of_answers_follow_each_other_on_a_page(
    layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    direction = (Text("76.9° below the horizontal, to the right"),)
    problems = tuple((f"Shelf {n}", ((Text(f"R{n}"),), (Text(f"S{n}"),))) for n in range(8))
    rows = tuple(AnswerRow((f"Student {n}",), (direction,) * 16) for n in range(3))
    table = AnswerTable(sheet_for("").header, ("Name",), problems, rows, "Answers")
    (page,) = pages_of(layouts.answer_table(table), layouts)
    assert page.extract_text().count("Student 2") > 2
    assert page.extract_text().count("R7") == 1


def test_equations_that_share_a_line_have_room_in_it(layouts: Layouts) -> None:
    """Else TeX breaks it behind a relation; of these widths some just fit, and some just do not."""
    part = r"{=}{\left(\rule{%dpt}{1pt}\right)}"
    rows = rf"\working{{\row{{T}}{part % 200}\row{{}}{part}}}"
    body = "\n".join(rows % width for width in range(160, 260))
    lines = [line for page in pages_of(body, layouts) for line in page.extract_text().splitlines()]
    together = [line for line in lines if line.count("=") == 2]
    assert 20 < len(together) < 80
    assert [line for line in lines if line.rstrip().endswith("=")] == []


def test_a_key_is_short(layouts: Layouts, key_for: Callable[..., Key]) -> None:
    assert len(pages_of(layouts.key(key_for("Ada Quill")), layouts)) <= 4


def test_problems_are_not_torn(layouts: Layouts, sheet_for: Callable[..., Sheet]) -> None:
    for page in pages_of(layouts.sheet(sheet_for("Ada Quill")), layouts):
        text = page.extract_text()
        assert text.count("Shelf held") == text.count("direction of the hinge")


@pytest.mark.parametrize("statement", [(Text("Short."),), (Text(LONG),), (Text(LONG * 3),)])
def test_key(statement: tuple[Text, ...], layouts: Layouts, key_for: Callable[..., Key]) -> None:
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


def test_a_house_style(sheet_for: Callable[..., Sheet]) -> None:
    logo = BytesIO()
    with pikepdf.new() as drawn:
        drawn.add_blank_page(page_size=(100, 50))
        drawn.pages[0].Contents = drawn.make_stream(b"0 0 100 50 re f")
        drawn.save(logo)
    style = HouseStyle("sans", "sans", "#FF0000", "Harbour School", logo.getvalue(), ".pdf", 15)
    layouts = Layouts(House(style))
    sheet = sheet_for("Ada Quill")
    body = layouts.sheet(replace(sheet, header=replace(sheet.header, institution="")))
    preamble = layouts.preamble()
    batch = print_batch([Document("a", "a", body, preamble)], files=style.files)
    assert batch.failures == ()
    with pdfplumber.open(BytesIO(batch.printed[0].pdf)) as opened:
        page = opened.pages[0]
        check_margins(page)
        assert "Harbour School" in page.extract_text()
        (arms,) = [box for box in page.rects if box["height"] > 20 and box["top"] < 100]
        assert arms["height"] == pytest.approx(15 * MM, abs=0.5)
        assert arms["width"] == pytest.approx(30 * MM, abs=0.5)
        title = [char for char in page.chars if char["size"] > 16]
        words = page.extract_words(extra_attrs=["bottom"])
        (points,) = [word["bottom"] for word in words if word["text"] == "points"][:1]
        assert any(abs(word["bottom"] - points) < 1.0 and word["text"] == "1" for word in words)
        assert {char["non_stroking_color"] for char in title} == {(1, 0, 0)}
        letters = [char for char in page.chars if char["text"].isalpha() and char["size"] > 10.8]
        assert sum("LMSans" in char["fontname"] for char in letters) > len(letters) / 2
