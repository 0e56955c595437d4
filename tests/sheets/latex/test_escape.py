"""Typed text for LaTeX: every character shown as itself, or known beforehand to be lost."""

import pytest

from probgen.sheets.latex.escape import MISSING, escape, unprintable

WRITTEN = {
    "specials": ("50% of $3 & #1_a", r"50\% of \$3 \& \#1\_a"),
    "commands": (r"\input{/etc/passwd}", r"\textbackslash{}input\{/etc/passwd\}"),
    "caret escapes": ("^^5cinput", r"\textasciicircum{}\textasciicircum{}5cinput"),
    "tilde": ("a~b", r"a\textasciitilde{}b"),
    "brackets after a line end": ("[2cm]", r"{[}2cm{]}"),
    "hyphens stay hyphens": ("a--b", "a{-}{-}b"),
    "comparisons": ("<<a>>|", r"\textless{}\textless{}a\textgreater{}\textgreater{}\textbar{}"),
    "quotes": ("\"a\" ``b'' ,,", r"\textquotedbl{}a\textquotedbl{} \textasciigrave{}"
               r"\textasciigrave{}b{'}{'} {,}{,}"),
    "line ends": ("Ada\r\n\n  Quill\tX", "Ada Quill X"),
    "control characters": ("A\x00d\x07a\x85a", f"A{MISSING}d{MISSING}a a"),
    "no width": ("A\u200dd\ufeffa\u202e", "Ada"),
    "where a line may end": ("a\u00adb\u200bc", r"a\-b\hskip0pt\relax{}c"),
    "combining marks": ("Zoe\u0308", "Zoë"),
    "signs of the trade": ("−3 N·m, 40°", r"\ensuremath{-}3 N\ensuremath{\mathord{\cdot}}m{,} "
                           r"40\textdegree{}"),
    "a power of ten": ("10⁴ 10⁻⁵", r"10\ensuremath{^{4}} 10\ensuremath{^{-}}\ensuremath{^{5}}"),
    "a lowered figure": ("x₁", r"x\ensuremath{_{1}}"),
    "units kept with numbers": ("5\u202fN 6\u00a0kg", r"5\,N 6~kg"),
    "accents not in the font": (
        "ḃ ǐ", r"\oneletter{1E03}{\.{b}} \oneletter{01D0}{\v{\i}}",
    ),
    "two accents": ("ọ́", r"\oneletter{1ECD0301}{\'{\d{o}}}"),
    "letters of other cuts": ("ậț", r"\lettercut{T5}{170}{ậ}\oneletter{021B}{\textcommabelow{t}}"),
    "a name in Cyrillic": ("Ada Ли", r"Ada \inalphabet{cyrillic}{\char76\char105}{Ли}"),
    "words of an alphabet": ("Я, я", r"\inalphabet{cyrillic}{\char23}{Я}{,} "
                                     r"\inalphabet{cyrillic}{\char31}{я}"),
    "a letter the alphabet lacks": ("Ли, Ґ.", r"\inscript{cyrillic}{Ли}{,} "
                                    r"\inscript{cyrillic}{Ґ}."),
    "words of a script": ("ไทย ไทย", r"\inscript{thai}{ไทย ไทย}"),
    "a space between words of a script": ("علي حسن!", r"\inscript{arabic}{علي حسن}!"),
    "ideographs let lines end": ("李小", r"\inscript{chinese}{李\inbreak{}小}"),
    "ideographs among kana": ("山た", r"\inscript{japanese}{山\inbreak{}た}"),
    "Greek words": ("θέτω", r"\inalphabet{greek}{\char106\char232\char116\char119}{θέτω}"),
    "a Greek initial": ("Γ. Ζη", r"\inalphabet{greek}{\char71}{Γ}. "
                                 r"\inalphabet{greek}{\char90\char104}{Ζη}"),
    "a Greek letter of two parts": ("ἐν Ἄρ", r"\inalphabet{greek}{\char226\char110}{ἐν} "
                                    r"\inalphabet{greek}{\oneletter{1F0C}{\char94\char65}\char114}{Ἄρ}"),
    "Greek letters no alphabet has": ("ϡϟ", r"\inscript{greek}{ϡϟ}"),
    "commands beside a script": (r"李\x李", r"\inscript{chinese}{李}\textbackslash{}x"
                                 r"\inscript{chinese}{李}"),
    "Persian parted": ("می\u200cشود", "\\inscript{arabic}{می\u200cشود}"),
    "the form of an ideograph": ("葛\U000e0100城", r"\inscript{chinese}{葛\inbreak{}城}"),
    "a number among words from right to left": (
        "علي 12.5 علي", r"\inscript{arabic}{علي \rightward{\inlatin{12.5}} علي}",
    ),
    "Latin words there": (
        "علي A. B علي", r"\inscript{arabic}{علي \rightward{\inlatin{A.} \inlatin{B}} علي}",
    ),
    "own digits there": ("ب ١٢ ب", r"\inscript{arabic}{ب \rightward{١٢} ب}"),
    "a sign around a number": ("\u0600١", "\\inscript{arabic}{\\rightward{\u0600١}}"),
    "brackets there": ("א (ב) א", r"\inscript{hebrew}{א \inlatin{)}ב\inlatin{(} א}"),
    "brackets around": ("(א) [ב]", r"(\inscript{hebrew}{א}) {[}\inscript{hebrew}{ב}{]}"),
    "letters by name": ("θ", r"\ensuremath{\theta}"),
    "symbols among words": ("Ω, μ of 5 μm", r"\ensuremath{\Omega}{,} \ensuremath{\mu} of 5 "
                            r"\textmu{}m"),
    "apostrophes that are letters": ("Oʻo", r"O\oneletter{02BB}{‘}o"),
}  # fmt: skip

PRINTABLE = (
    "O’Brien-Łukasiewicz", "Đặng", "José Ñúñez", "Þóra Ægisdóttir", "Ştefănescu", "Țepeș",
    "Nguyễn Văn", "İbrahim Işık", "Лукʼяненко", "Ἀχιλλεύς", "Dvořák", "Žižek",
    "Ĳsbrand", "Søren", "Māra Ķikure",
)  # fmt: skip


@pytest.mark.parametrize(("typed", "latex"), WRITTEN.values(), ids=WRITTEN)
def test_escaped(typed: str, latex: str) -> None:
    assert escape(typed) == latex


@pytest.mark.parametrize("name", PRINTABLE)
def test_names_print(name: str) -> None:
    assert unprintable(name) == ""
    assert MISSING not in escape(name)


def test_what_no_font_has_is_named_once_and_boxed() -> None:
    assert unprintable("Ada 李 🙂ᚠ🙂") == "🙂ᚠ"
    assert escape("Aᚠ") == "A" + MISSING


def test_stray_surrogates_are_boxed() -> None:
    assert escape("a\ud800b") == f"a{MISSING}b"


def test_what_is_unassigned_or_private_is_boxed() -> None:
    for character in "\u0378\U00050000\ue000\U0010ffff":
        assert escape(f"a{character}") == f"a{MISSING}"
        assert unprintable(character) == character
