"""Names in the world's scripts, printed and read back."""

import re
import subprocess
import unicodedata
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pdfplumber
import pikepdf
import pytest

from probgen.press import manyscripts
from probgen.press.batch import Document, print_batch
from probgen.press.outside import OutsideError
from probgen.sheets.document import Sheet
from probgen.sheets.escape import escape, unprintable
from probgen.sheets.layout import Layouts
from probgen.sheets.script import SCRIPTS, scripts_used

# Forty invented names and one of letters no fast font has, in twenty-six scripts.
LATIN = (
    "Zoë Łukasiewicz", "Nguyễn Thị Ánh", "Đặng Hữu Phước", "Ștefan Țepeș", "Ķērsta Āboliņa",
    "Jūratė Žąsytė", "Chidi Ọkáfọ̀r", "Şebnem Işık", "Ĝis Ĉielo", "Þóra Ægisdóttir",
)  # fmt: skip
OTHERS = (
    "Ġorġ Ħabib", "Γιώργος Παπαδόπουλος", "Ελένη Βασιλείου", "Анастасия Ковалёва",
    "Ђорђе Љубић", "Їжак Ґалаґан", "Արամ Սարգսյան", "ნინო ბერიძე", "דוד בן־גוריון",
    "محمد علي الحسن", "فاطمه رضایی", "अनुष्का शर्मा", "प्रियंका क्षत्रिय", "সুমন চট্টোপাধ্যায়",
    "ਗੁਰਪ੍ਰੀਤ ਸਿੰਘ", "ગીતા પટેલ", "தமிழ்ச்செல்வன் முருகன்", "శ్రీనివాస రావు",
    "ಪುನೀತ್ ರಾಜಕುಮಾರ", "ശ്രീജ മേനോൻ", "නිමල් පෙරේරා", "สมชาย ใจดี", "ສົມພອນ ວົງສາ",
    "ဒေါ်ခင်ကြည်", "សុខ សុភា", "ከበደ ታደሰ", "བསྟན་འཛིན", "李小龍", "王秀英", "山田 たろう", "김민준",
)  # fmt: skip
FEW = ("Анастасия Ковалёва", "محمد علي الحسن", "अनुष्का शर्मा", "李小龍")
HOSTILE = r"李\directlua{os.exit()} a--b <<x>> ^^5c 100% {it} ''c'' 李"
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
    return Document(name, name, f"Name: {escape(name)} end")


def check_names(names: tuple[str, ...], layouts: Layouts, folder: Path) -> None:
    batch = print_batch([named(name) for name in names], layouts.preamble())
    assert [part.name for part in batch.printed] == list(names)
    for part in batch.printed:
        assert bare(f"Name:{part.name}end") in read_back(part.pdf, folder)


def test_latin_names_need_no_other_engine(layouts: Layouts, tmp_path: Path) -> None:
    assert not any(scripts_used(escape(name)) for name in LATIN)
    check_names(LATIN, layouts, tmp_path)


def test_a_few_names_and_one_that_is_code(layouts: Layouts, tmp_path: Path) -> None:
    check_names((*FEW, HOSTILE), layouts, tmp_path)


@pytest.mark.proof
def test_forty_names(layouts: Layouts, tmp_path: Path) -> None:
    assert len(LATIN + OTHERS) > 40
    assert set().union(*(scripts_used(escape(name)) for name in OTHERS)) >= SCRIPTS.keys() - {
        "oriya"
    }
    assert not any(unprintable(name) for name in LATIN + OTHERS)
    check_names(LATIN + OTHERS, layouts, tmp_path)


def test_sheets_of_both_engines_keep_their_order(
    layouts: Layouts, sheet_for: Callable[..., Sheet]
) -> None:
    students = ("Ada Quill", "李小龍", "Bo Quill")
    documents = [
        Document(str(number), student, layouts.sheet(sheet_for(student, number)))
        for number, student in enumerate(students)
    ]
    batch = print_batch(documents, layouts.preamble(), duplex=True)
    assert batch == print_batch(documents, layouts.preamble(), duplex=True)
    assert [part.pages for part in batch.printed] == [2, 2, 2]
    with pdfplumber.open(BytesIO(batch.together)) as opened:
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
    documents = [Document("bad", "bad", r"\inscript{thai}{x} \nosuch"), named("王")]
    batch = print_batch(documents, layouts.preamble())
    assert [part.name for part in batch.printed] == ["王"]
    (failure,) = batch.failures
    assert "Undefined control sequence" in failure.complaint


def test_missing_fonts_name_their_packages(
    layouts: Layouts, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(manyscripts, "_is_there", lambda font: "CJK" not in font)
    with pytest.raises(OutsideError, match=r"Chinese text was not found.*\n.*fonts-noto-cjk;"):
        print_batch([named("Ada"), named("李")], layouts.preamble())
    assert print_batch([named("Ada")], layouts.preamble()).failures == ()


def test_a_missing_engine_names_all_packages(
    layouts: Layouts, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(manyscripts, "PROGRAM", "no-such-engine")
    packages = "fonts-noto-cjk fonts-noto-core texlive-luatex"
    with pytest.raises(OutsideError, match=packages):
        print_batch([named("李"), named("علي")], layouts.preamble())
