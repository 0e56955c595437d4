"""The scripts of the world, and the font each is printed with.

Latin in all its forms is printed by pdfLaTeX with Latin Modern, Greek and Cyrillic with the fonts
of their alphabets; text in any other script asks for LuaLaTeX and a Noto font, by the file names
and packages of Debian and Ubuntu.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Final

from fontTools.unicodedata import script_extension, script_name

from probgen.sheets.latex.alphabet import ALPHABETS, Alphabet

_CORE: Final = "fonts-noto-core"
_CJK: Final = "fonts-noto-cjk"


@dataclass(frozen=True, slots=True)
class Script:
    """A script.

    font: the font's file name; face: the font's place in a file of several; tag: OpenType's name
    of the script; leftward: written from right to left; package: of Debian, that has the font.
    """

    name: str
    font: str
    tag: str
    leftward: bool = False
    package: str = _CORE
    face: int | None = None

    @property
    def file(self) -> str:
        """The font as LuaTeX's font loader is asked for it."""
        return self.font if self.face is None else f"{self.font}({self.face})"

    @property
    def bold(self) -> str:
        """The bold font likewise."""
        return self.file.replace("-Regular", "-Bold")

    @property
    def alphabet(self) -> Alphabet | None:
        """The letters that pdfLaTeX prints too, None when it prints none of the script."""
        return ALPHABETS.get(self.name)


def _serif(name: str, tag: str) -> Script:
    return Script(name, f"NotoSerif{name.capitalize()}-Regular.ttf", tag)


def _cjk(name: str, tag: str, face: int) -> Script:
    return Script(name, "NotoSerifCJK-Regular.ttc", tag, package=_CJK, face=face)


SCRIPTS: Final = {
    script.name: script
    for script in (
        Script("latin", "NotoSerif-Regular.ttf", "latn"),
        Script("greek", "NotoSerif-Regular.ttf", "grek"),
        Script("cyrillic", "NotoSerif-Regular.ttf", "cyrl"),
        _serif("armenian", "armn"),
        _serif("georgian", "geor"),
        Script("hebrew", "NotoSerifHebrew-Regular.ttf", "hebr", leftward=True),
        Script("arabic", "NotoNaskhArabic-Regular.ttf", "arab", leftward=True),
        _serif("devanagari", "dev2"),
        _serif("bengali", "bng2"),
        _serif("gurmukhi", "gur2"),
        _serif("gujarati", "gjr2"),
        Script("oriya", "NotoSansOriya-Regular.ttf", "ory2"),
        _serif("tamil", "tml2"),
        _serif("telugu", "tel2"),
        _serif("kannada", "knd2"),
        _serif("malayalam", "mlm2"),
        _serif("sinhala", "sinh"),
        _serif("thai", "thai"),
        _serif("lao", "lao "),
        _serif("tibetan", "tibt"),
        _serif("myanmar", "mym2"),
        _serif("khmer", "khmr"),
        _serif("ethiopic", "ethi"),
        _cjk("chinese", "hani", 2),
        _cjk("japanese", "kana", 0),
        _cjk("korean", "hang", 1),
    )
}
"""Every script there is a font for, by its name."""

_EAST_ASIAN: Final = {
    "han": "chinese", "bopomofo": "chinese", "hiragana": "japanese", "katakana": "japanese",
    "hangul": "korean",
}  # fmt: skip
"""The font, by the language it is drawn for, of what Unicode calls these scripts."""
_NEEDED: Final = re.compile(r"\\inscript\{(\w+)\}")
_SPELLED: Final = re.compile(r"\\inalphabet\{(\w+)\}")


@cache
def script_of(character: str) -> str:
    """The name of a character's script among `SCRIPTS`, "" when no font here has it.

    By Unicode's property Script_Extensions; of several scripts the first in `SCRIPTS`.
    """
    if unicodedata.category(character) == "Cn":
        return ""  # Python counts what Unicode has not assigned to the wide letters
    if unicodedata.east_asian_width(character) == "F":
        return "chinese"  # Latin letters and signs as wide as an ideograph
    codes = script_extension(character)
    names = [script_name(code, "").lower() for code in codes]
    found = {_EAST_ASIAN.get(name, name) for name in names}
    return next((name for name in SCRIPTS if name in found), "")


def east_asian(names: Iterable[str]) -> str:
    """Which of the East Asian fonts a text wants, whose ideographs alone do not tell."""
    found = set(names)
    return next((name for name in ("japanese", "korean") if name in found), "chinese")


def scripts_needed(body: str) -> frozenset[str]:
    """The scripts in a document's LaTeX that only LuaLaTeX prints."""
    return frozenset(_NEEDED.findall(body))


def alphabets_used(body: str) -> frozenset[str]:
    """The scripts in a document's LaTeX that pdfLaTeX prints too, where it has their fonts."""
    return frozenset(_SPELLED.findall(body))
