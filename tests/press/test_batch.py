"""Batches as they come back from TeX, read with pdfplumber."""

import re
from collections.abc import Callable, Mapping, Sequence
from io import BytesIO
from pathlib import Path
from typing import Any

import pdfplumber
import pikepdf
import pytest

from probgen.press import batch
from probgen.press.batch import Batch, Document, print_batch
from probgen.press.engine import Run, run_tex
from probgen.sheets.document import Key, Paper, Sheet
from probgen.sheets.latex import escape
from probgen.sheets.latex.layout import Layouts
from probgen.sheets.latex.letter import LETTERS

STUDENTS = ("Ada Quill", "Björn Ström-Łabędź", "Chidi Ọkafọr")
HOSTILE = (
    r"\input{/etc/passwd}", "$x_1^2$", "100 % of {it}", "^^5cinput", "A & B # C ~ D",
    "\\", "[a] *", "<<a>> |b|", "\"a\" `b' ''c'' ,,d", "a--b---c", r"\end{document}", "}{", "%",
)  # fmt: skip
BROKEN = {
    "an unknown command": (r"\nosuchcommand", "Undefined control sequence"),
    "an open group": ("{ text", "Too many }'s|Extra|Missing"),
    "one brace too many": ("text }", "Extra|Too many"),
    "open math": ("$x", "Missing"),
    "a condition without end": (r"\iffalse text", "Incomplete"),
    "an early end": (r"text \end{document}", "no pages|ended"),
    "a file outside": (r"\input{/etc/passwd}", "not found|Emergency|passwd"),
    "nothing at all": ("", "no pages"),
}


def words(pdf: bytes) -> str:
    """The text of a PDF without any white space."""
    with pdfplumber.open(BytesIO(pdf)) as opened:
        return "".join("".join((page.extract_text() or "").split()) for page in opened.pages)


def page_texts(pdf: bytes) -> list[str]:
    with pdfplumber.open(BytesIO(pdf)) as opened:
        return [page.extract_text() or "" for page in opened.pages]


def plain(name: str, body: str, pile: str = "", large: bool = False) -> Document:
    return Document(name, name, body, Layouts().preamble("letter", large), pile)


def set_in(paper: Paper, sheets: Mapping[str, str]) -> list[Document]:
    preamble = Layouts().preamble(paper)
    return [
        Document(f"{number}.pdf", f"Set 1, {student}", body, preamble)
        for number, (student, body) in enumerate(sheets.items(), 1)
    ]


@pytest.fixture
def tex_runs(monkeypatch: pytest.MonkeyPatch) -> list[Path]:
    """The folders of the TeX runs of a test."""
    folders: list[Path] = []

    def counted(arguments: Sequence[str], folder: Path, seconds: float, **others: Any) -> Run:
        folders.append(folder)
        return run_tex(arguments, folder, seconds, **others)

    monkeypatch.setattr(batch, "run_tex", counted)
    return folders


@pytest.fixture(scope="module")
def sheets(layouts: Layouts, sheet_for: Callable[..., Sheet]) -> dict[str, str]:
    return {
        student: layouts.sheet(sheet_for(student, number))
        for number, student in enumerate(STUDENTS, 1)
    }


@pytest.fixture(scope="module")
def printed(sheets: dict[str, str]) -> Batch:
    return print_batch(set_in("letter", sheets))


def test_each_sheet_has_its_student_and_no_other(printed: Batch) -> None:
    assert [part.name for part in printed.printed] == ["1.pdf", "2.pdf", "3.pdf"]
    for number, part in enumerate(printed.printed, 1):
        text = words(part.pdf)
        assert f"K7Q2-{number:04d}" in text
        for student in STUDENTS[:2]:
            assert ("".join(student.split()) in text) == (STUDENTS[number - 1] == student)


def test_pages_are_counted_in_each_document(printed: Batch) -> None:
    for part in printed.printed:
        texts = page_texts(part.pdf)
        assert len(texts) == part.pages
        for number, text in enumerate(texts, 1):
            assert f"page {number} of {part.pages}" in text


def test_a_pdf_says_what_it_is_and_nothing_else(printed: Batch) -> None:
    for number, part in enumerate(printed.printed):
        with pikepdf.open(BytesIO(part.pdf)) as opened:
            assert dict(opened.docinfo) == {"/Title": f"Set 1, {STUDENTS[number]}"}
            assert opened.Root.Lang == "en"
            assert set(opened.Root.keys()) == {
                "/Lang", "/Outlines", "/PageLabels", "/Pages", "/Type", "/ViewerPreferences",
            }  # fmt: skip
            with opened.open_outline() as outline:
                titles = [item.title for item in outline.root]
            assert titles == [f"{number} Shelf held by a stay cable" for number in range(1, 5)]
            held = (obj for obj in opened.objects if isinstance(obj, pikepdf.Dictionary))
            kinds = [str(obj.get("/Type")) for obj in held]
            assert kinds.count("/Page") == part.pages
            assert not any("/PressDocument" in page.obj for page in opened.pages)


def test_all_fonts_are_embedded(printed: Batch) -> None:
    with pikepdf.open(BytesIO(printed.together[""])) as opened:
        fonts = [
            obj for obj in opened.objects
            if isinstance(obj, pikepdf.Dictionary) and obj.get("/Type") == "/FontDescriptor"
        ]  # fmt: skip
        assert fonts
        assert all("/FontFile" in font for font in fonts)


def test_together_tells_whose_pages_are_whose(printed: Batch) -> None:
    with pikepdf.open(BytesIO(printed.together[""])) as opened:
        with opened.open_outline() as outline:
            assert [item.title for item in outline.root] == [f"Set 1, {s}" for s in STUDENTS]
        labels = [page.label for page in opened.pages]
    assert labels == [str(n) for part in printed.printed for n in range(1, part.pages + 1)]


def test_together_holds_all_pages_in_order(printed: Batch) -> None:
    apart = [text for part in printed.printed for text in page_texts(part.pdf)]
    assert page_texts(printed.together[""]) == apart


def test_same_documents_same_bytes(printed: Batch, sheets: dict[str, str]) -> None:
    assert print_batch(set_in("letter", sheets)) == printed


def test_a_key_is_marked_and_tells_its_answers(
    layouts: Layouts, key_for: Callable[..., Key]
) -> None:
    key = plain("key", layouts.key(key_for("Ada Quill")))
    (part,) = print_batch([key]).printed
    text = " ".join(page_texts(part.pdf))
    assert text.count("Worked key") == 1
    assert text.count("Answers") == 4
    assert text.count("1.92° below the horizontal, to the right") == 4


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595.28, 841.89))])
def test_paper(paper: Paper, size: tuple[float, float], sheets: dict[str, str]) -> None:
    part = print_batch(set_in(paper, sheets)).printed[0]
    with pdfplumber.open(BytesIO(part.pdf)) as opened:
        page = opened.pages[0]
        assert (float(page.width), float(page.height)) == pytest.approx(size, abs=0.1)
        inked = page.chars + page.lines + page.rects
        assert min(thing["x0"] for thing in inked) > 36
        assert max(thing["x1"] for thing in inked) < size[0] - 36


def test_hostile_names_are_only_printed(layouts: Layouts, sheet_for: Callable[..., Sheet]) -> None:
    documents = [plain(name, layouts.sheet(sheet_for(name))) for name in HOSTILE]
    printed = print_batch(documents)
    assert printed.failures == ()
    for name, part in zip(HOSTILE, printed.printed, strict=True):
        shown = "".join(name.split()).replace("'", "’")
        assert shown in words(part.pdf)


def test_every_character_the_escaping_lets_through_prints() -> None:
    ascii_ = [chr(code) for code in range(33, 127)]
    letters = [*ascii_, *sorted(escape._CORK), *escape._SYMBOLS, *escape._GREEK, *LETTERS, "ḃ"]
    documents = [plain(letter, f"X{escape.escape(letter)}X") for letter in letters]
    one = plain("all", r"\par ".join(document.body for document in documents))
    printed = print_batch([one])
    assert printed.failures == ()
    text = words(printed.printed[0].pdf)
    whole = [*ascii_, *sorted(escape._CORK), *LETTERS]
    lost = [letter for letter in whole if f"X{letter}X" not in text]
    assert lost == ["'"]  # printed as ’
    assert "X’X" in text


@pytest.mark.parametrize(("body", "complaint"), BROKEN.values(), ids=BROKEN)
def test_a_broken_document_is_found_and_the_others_print(body: str, complaint: str) -> None:
    documents = [plain("a", "A"), plain("b", "B"), plain("bad", body), plain("c", "C")]
    printed = print_batch(documents)
    assert [part.name for part in printed.printed] == ["a", "b", "c"]
    assert [words(part.pdf)[0] for part in printed.printed] == ["A", "B", "C"]
    assert "".join(text[0] for text in page_texts(printed.together[""])) == "ABC"
    (failure,) = printed.failures
    assert failure.name == "bad"
    assert re.search(complaint, failure.complaint)


def test_piles_share_a_run_and_are_joined_apart(tex_runs: list[Path]) -> None:
    documents = [
        plain("one", "A"), plain("two", r"B\newpage b"),
        plain("one", "C", "keys"), plain("two", "D", "keys"), plain("three", "E", "keys"),
    ]  # fmt: skip
    printed = print_batch(documents)
    assert len(tex_runs) == 1
    found = [(part.pile, part.name, words(part.pdf)[0]) for part in printed.printed]
    assert found == [
        ("", "one", "A"), ("", "two", "B"),
        ("keys", "one", "C"), ("keys", "two", "D"), ("keys", "three", "E"),
    ]  # fmt: skip
    assert printed.together.keys() == {"", "keys"}
    for pile, firsts in {"": ["A", "B", "b"], "keys": ["C", "D", "E"]}.items():
        assert [text[:1] for text in page_texts(printed.together[pile])] == firsts


def test_a_pile_keeps_its_order_over_several_preambles(tex_runs: list[Path]) -> None:
    documents = [plain(letter, letter, large=letter in "BD") for letter in "ABCDE"]
    printed = print_batch(documents)
    assert len(tex_runs) == 2
    assert [part.name for part in printed.printed] == list("ABCDE")
    assert "".join(text[0] for text in page_texts(printed.together[""])) == "ABCDE"


def test_a_pile_nothing_of_which_can_be_printed_is_empty() -> None:
    printed = print_batch([plain("a", "A"), plain("b", r"\oops", "keys")])
    assert printed.together["keys"] == b""
    assert [(failure.pile, failure.name) for failure in printed.failures] == [("keys", "b")]
    assert len(page_texts(printed.together[""])) == 1


def test_a_document_tex_names_costs_few_runs(tex_runs: list[Path]) -> None:
    documents = [plain(str(number), "text" if number != 5 else r"\oops") for number in range(12)]
    assert len(print_batch(documents).printed) == 11
    assert len(tex_runs) == 4  # all; those before it, it alone, those behind it


def test_a_document_without_end_is_stopped(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(batch, "_SECONDS_A_RUN", 0.5)
    monkeypatch.setattr(batch, "_SECONDS_A_DOCUMENT", 0.5)
    documents = [plain("endless", r"\def\x{\x}\x"), plain("good", "good")]
    printed = print_batch(documents)
    assert [part.name for part in printed.printed] == ["good"]
    assert [failure.name for failure in printed.failures] == ["endless"]
    assert "not done after" in printed.failures[0].complaint


def test_nothing_runs_outside(tmp_path: Path) -> None:
    target = f"{tmp_path}/made"
    body = rf"\immediate\write18{{touch {target}}}text"
    print_batch([plain("shell", body)])
    writing = rf"\newwrite\w\immediate\openout\w={target}.tex \immediate\write\w{{x}}text"
    print_batch([plain("write", writing)])
    assert list(tmp_path.iterdir()) == []
