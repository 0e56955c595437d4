"""Names in the world's scripts, printed and read back."""

import re
import subprocess
import unicodedata
from collections.abc import Callable
from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pdfplumber
import pikepdf
import pytest

from probgen.input.outside import OutsideError
from probgen.press import lualatex
from probgen.press.batch import Document, print_batch
from probgen.press.lualatex import scripts_used
from probgen.sheets.document import Sheet
from probgen.sheets.latex.alphabet import ALPHABETS
from probgen.sheets.latex.escape import escape, unprintable
from probgen.sheets.latex.layout import Layouts
from probgen.sheets.latex.script import SCRIPTS

# Invented names in twenty-six scripts, by the engine that prints them.
FAST = (
    "Zoë Łukasiewicz", "Ștefan Țepeș", "Ķērsta Āboliņa", "Jūratė Žąsytė", "Chidi Ọkáfọ̀r",
    "Şebnem Işık", "Ĝis Ĉielo", "Þóra Ægisdóttir", "Leilani Kaʻai",
    "Nguyễn Thị Ánh", "Đặng Hữu Phước", "Lê Quỳnh Như", "Trương Mỹ Hoà", "Vũ Đỗ Ngọc Diễm",
    "Γιώργος Παπαδόπουλος", "Ελένη Βασιλείου", "Άννα Ωραιοπούλου", "Ζωή Χ. Ψαρρού",
    "Ὀδυσσεὺς Λαερτιάδης", "Ἄρτεμις ᾍδου", "ΜΑΪΟΣ ΤΑΫΓΕΤΗΣ",
    "Анастасия Ковалёва", "Юрий Щукин-Объездчиков", "Схимник Тсанов", "Олексій Лукʼяненко",
    "Їжак Єфименко", "Алесь Быкаў", "Цветелина Ъглова", "Ђорђе Љубић", "Џордан Ћосић",
    "Ѓорѓи Ќосев", "Ѕвездан Њагов", "Анна Quill",
)  # fmt: skip
OTHERS = (
    "Ġorġ Ħabib", "Їжак Ґалаґан", "Сәбит Қожахмет", "Өнөрмаа Түвдэн", "Айгүл Ырысова",
    "Рөстәм Җиһаншин", "Արամ Սարգսյան", "ნინო ბერიძე", "דוד בן־גוריון",
    "محمد علي الحسن", "فاطمه رضایی", "अनुष्का शर्मा", "प्रियंका क्षत्रिय", "সুমন চট্টোপাধ্যায়",
    "ਗੁਰਪ੍ਰੀਤ ਸਿੰਘ", "ગીતા પટેલ", "தமிழ்ச்செல்வன் முருகன்", "శ్రీనివాస రావు",
    "ಪುನೀತ್ ರಾಜಕುಮಾರ", "ശ്രീജ മേനോൻ", "නිමල් පෙරේරා", "สมชาย ใจดี", "ສົມພອນ ວົງສາ",
    "ဒေါ်ခင်ကြည်", "សុខ សុភា", "ከበደ ታደሰ", "བསྟན་འཛིན", "李小龍", "王秀英", "山田 たろう",
    "ﾔﾏﾀﾞ ﾀﾛｳ", "김민준",
)  # fmt: skip
FEW = ("Сәбит Қожахмет", "محمد علي الحسن", "अनुष्का शर्मा", "李小龍")
MIXED = "李小龍 (Ἄννα Κόρη, Юлия)"
HOSTILE = (
    r"""李\directlua{os.exit()} a-b a--b a---b <<c>> ,,d ''e'' !`f ?`g "h" 'i' ^^5c """
    "100% {it} 李"
)
_TURNS = re.compile(r"[\u200b-\u200f\u202a-\u202e\u2066-\u2069\s]")


def bare(text: str) -> str:
    """Text without white space and marks of direction, in one form.

    The hyphen of Latin Modern is read as U+2010.
    """
    return unicodedata.normalize("NFKC", _TURNS.sub("", text)).replace("\u2010", "-")


def read_back(pdf: bytes, folder: Path) -> str:
    """A PDF's text in the order it is read, which pdfplumber does not know of."""
    path = folder / "read.pdf"
    path.write_bytes(pdf)
    read = subprocess.run(["pdftotext", path, "-"], capture_output=True, text=True, check=True)
    return bare(read.stdout)


def named(name: str) -> Document:
    return Document(name, name, f"Name: {escape(name)} end", Layouts().preamble())


def font_kinds(pdf: bytes) -> set[str]:
    """The kinds of fonts in a PDF: pdfLaTeX's are Type 1, LuaLaTeX's are composite (Type 0)."""
    with pikepdf.open(BytesIO(pdf)) as opened:
        held = [thing for thing in opened.objects if isinstance(thing, pikepdf.Dictionary)]
        found = [thing for thing in held if thing.get("/Type") == "/Font"]
        return {str(font.Subtype) for font in found if "/CIDSystemInfo" not in font}


def check_names(names: tuple[str, ...], kind: str, folder: Path) -> None:
    batch = print_batch([named(name) for name in names])
    assert [part.name for part in batch.printed] == list(names)
    for part in batch.printed:
        assert bare(f"Name:{part.name}end") in read_back(part.pdf, folder)
        assert font_kinds(part.pdf) == {kind}


def test_names_of_the_fast_engine(tmp_path: Path) -> None:
    assert not any(unprintable(name) for name in FAST)
    check_names(FAST, "/Type1", tmp_path)


@pytest.mark.parametrize("shape", [r"\bfseries", r"\itshape", r"\sffamily", r"\sffamily\bfseries"])
def test_the_fast_engine_has_all_shapes(shape: str, tmp_path: Path) -> None:
    names = ("Юрий Їжак", "Ἄννα Κόρη")
    document = named(" ".join(names))
    (part,) = print_batch([replace(document, body=f"{shape} {document.body}")]).printed
    assert bare("".join(names)) in read_back(part.pdf, tmp_path)
    assert font_kinds(part.pdf) == {"/Type1"}


@pytest.mark.parametrize("script", ALPHABETS)
def test_every_letter_of_an_alphabet_is_read_back(script: str, tmp_path: Path) -> None:
    letters = re.sub("(.{8})", r"\1 ", "".join(ALPHABETS[script].letters))  # lines end at spaces
    (part,) = print_batch([named(letters)]).printed
    assert bare(letters) in read_back(part.pdf, tmp_path)
    assert font_kinds(part.pdf) == {"/Type1"}


def test_the_other_engine_has_bold_letters(tmp_path: Path) -> None:
    name = "Ґалаґан 李"
    (part,) = print_batch([replace(named(name), body=rf"\bfseries {escape(name)}")]).printed
    assert bare(name) in read_back(part.pdf, tmp_path)
    with pdfplumber.open(BytesIO(part.pdf)) as opened:
        fonts = {char["fontname"].partition("+")[2] for char in opened.pages[0].chars}
    noto = {font for font in fonts if font.startswith("Noto")}
    assert len(noto) == 2
    assert all(font.endswith("-Bold") for font in noto)


def test_a_few_names_of_the_other_engine(tmp_path: Path) -> None:
    check_names((*FEW, MIXED, HOSTILE), "/Type0", tmp_path)


@pytest.mark.proof
@pytest.mark.parametrize("shape", [r"\bfseries", r"\itshape", r"\sffamily", r"\small"])
def test_no_signs_join_to_others(shape: str, tmp_path: Path) -> None:
    (part,) = print_batch([replace(named(HOSTILE), body=f"{shape} {escape(HOSTILE)}")]).printed
    assert bare(HOSTILE) in read_back(part.pdf, tmp_path)


@pytest.mark.proof
def test_all_names_of_the_other_engine(tmp_path: Path) -> None:
    assert set().union(*(scripts_used(escape(name)) for name in OTHERS)) == SCRIPTS.keys() - {
        "oriya", "greek"
    }  # fmt: skip
    assert not any(unprintable(name) for name in OTHERS)
    check_names(OTHERS, "/Type0", tmp_path)


def test_alphabets_without_their_fonts_go_to_the_other_engine(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    assert lualatex.fast_scripts() == ALPHABETS.keys()
    monkeypatch.setattr(lualatex, "fast_scripts", lambda: frozenset({"cyrillic"}))
    names = ("Ἄννα Κόρη", "Ζωή und Юлия")
    assert [scripts_used(escape(name)) for name in names] == [{"greek"}, {"greek", "cyrillic"}]
    assert not scripts_used(escape("Юлия"))
    check_names(names, "/Type0", tmp_path)


def test_sheets_of_both_engines_keep_their_order(
    layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    students = ("Ada Quill", "李小龍", "Bo Quill")
    preamble = layouts.preamble()
    documents = [
        Document(str(number), student, layouts.sheet(sheet_for(student, number)), preamble)
        for number, student in enumerate(students)
    ]
    batch = print_batch(documents)
    assert batch == print_batch(documents)
    assert [part.pages for part in batch.printed] == [2, 2, 2]
    with pdfplumber.open(BytesIO(batch.together[""])) as opened:
        codes = [re.search(r"K7Q2-\d+", page.extract_text() or "-") for page in opened.pages]
    found = [code[0] if code else "" for code in codes]
    assert found == [f"K7Q2-000{number}" for number in (0, 0, 1, 1, 2, 2)]
    with pikepdf.open(BytesIO(batch.printed[1].pdf)) as opened:
        assert dict(opened.docinfo) == {"/Title": "李小龍"}
        fonts = [
            held for held in opened.objects
            if isinstance(held, pikepdf.Dictionary) and held.get("/Type") == "/FontDescriptor"
        ]  # fmt: skip
        assert fonts
        assert all(any(key.startswith("/FontFile") for key in font.keys()) for font in fonts)  # noqa: SIM118


def test_a_broken_document_is_found(layouts: Layouts) -> None:
    bad = Document("bad", "bad", r"\inscript{thai}{x} \nosuch", layouts.preamble())
    batch = print_batch([bad, named("王")])
    assert [part.name for part in batch.printed] == ["王"]
    (failure,) = batch.failures
    assert "Undefined control sequence" in failure.complaint


def test_missing_fonts_name_their_packages(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(lualatex, "_is_there", lambda font: "CJK" not in font)
    with pytest.raises(OutsideError, match=r"Chinese text was not found.*\n.*fonts-noto-cjk;"):
        print_batch([named("Ada"), named("李")])
    assert print_batch([named("Ada")]).failures == ()


def test_a_missing_engine_names_all_packages(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(lualatex, "PROGRAM", "no-such-engine")
    packages = "fonts-noto-cjk fonts-noto-core texlive-luatex"
    with pytest.raises(OutsideError, match=packages):
        print_batch([named("李"), named("علي")])
    for names in (["greek", "thai"], ["thai", "greek"]):
        with pytest.raises(OutsideError, match="which Greek and Thai text needs"):
            lualatex.require_scripts(names)


def test_no_fonts_are_looked_for_where_all_is_latin(monkeypatch: pytest.MonkeyPatch) -> None:
    def looked_for() -> frozenset[str]:
        raise AssertionError("this takes a process a font")

    monkeypatch.setattr(lualatex, "fast_scripts", looked_for)
    assert scripts_used(escape("Zoë lifts 4 kg: 39.2 N")) == frozenset()
