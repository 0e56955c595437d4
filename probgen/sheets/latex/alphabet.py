r"""The Greek and Cyrillic alphabets, as pdfLaTeX prints them from fonts of 256 places.

The fonts are drawn to go with Computer Modern: WNCYR, which is part of AMS's fonts and hence of
every TeX that sets mathematics, and cbfonts, a package of its own.  Letters they do not have, such
as the Kazakh ones, are LuaLaTeX's.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Alphabet:
    r"""The letters of an alphabet in TeX fonts.

    font: the file of the upright font, by which it is seen whether the fonts are there.
    letters: each in composed form (NFC), and the TeX that prints it in such a font, places by
    `\char`.  glyphs: the fonts' own names of letters and the code each stands for, in hexadecimal,
    where the name does not tell it.
    """

    font: str
    letters: Mapping[str, str]
    glyphs: Mapping[str, str]


def _placed(runs: Iterable[tuple[int, str]]) -> dict[str, int]:
    """The place of each letter, from the first place of a run and the letters from there on."""
    return {letter: first + n for first, run in runs for n, letter in enumerate(run)}


# OT2, as listed in ot2enc.def of the LaTeX Project.
_OT2: Final = _placed(
    (
        (0, "ЊЉЏЭІЄЂЋњљџэієђћЮЖЙЁѴѲЅЯюжйёѵѳѕя"), (35, "Ѣ"), (43, "ѣ"),
        (65, "АБЦДЕФГХИЈКЛМНОПЧРСТУВЩШЫЗ"), (94, "ЬЪ"),
        (97, "абцдефгхијклмнопчрстувщшыз"), (126, "ьъ"),
    )
)  # fmt: skip
_ACUTE, _BREVE, _DIAERESIS, _DOTLESS = 38, 36, 32, 61
_ACCENTED: Final = {
    "Ѓ": (_ACUTE, _OT2["Г"]), "ѓ": (_ACUTE, _OT2["г"]), "Ќ": (_ACUTE, _OT2["К"]),
    "ќ": (_ACUTE, _OT2["к"]), "Ў": (_BREVE, _OT2["У"]), "ў": (_BREVE, _OT2["у"]),
    "Ї": (_DIAERESIS, _OT2["І"]), "ї": (_DIAERESIS, _DOTLESS),
}  # fmt: skip
# The names of glyphs in WNCYR; the others are called by the ASCII character of their place.
_NAMED: Final = (
    (0, "Nj Lj Dzh Ze Iroman Ye Dj Tsoft nj lj dzh ze iroman ye dj tsoft "
        "Yu Zhe Ishort Yo Izhitsa Fita Zelo Ya yu zhe ishort yo izhitsa fita zelo ya"),
    (35, "Yatz"), (43, "yatz"), (94, "Soft Hard"), (126, "soft hard"),
)  # fmt: skip

# LGR, as listed in CB.enc of cbfonts: accented small letters have places of their own.
_LGR: Final = _placed(
    (
        (9, "ᾼῌῼ"), (65, "ΑΒ"), (68, "ΔΕΦΓΗΙΘΚΛΜΝΟΠΧΡΣΤΥ"), (87, "ΩΞΨΖ"),
        (97, "αβςδεφγηιθκλμνοπχρστυ"), (119, "ωξψζ"), (128, "ὰἁἀἃᾲᾁᾀᾃάἅἄἂᾴᾅᾄᾂᾶἇἆ"),
        (148, "ᾷᾇᾆ"), (152, "ὴἡἠ"), (156, "ῂᾑᾐ"),
        (160, "ήἥἤἣῄᾕᾔᾓῆἧἦἢῇᾗᾖᾒὼὡὠὣῲᾡᾠᾣώὥὤὢῴᾥᾤᾢῶὧὦ"), (196, "ῷᾧᾦ"),
        (200, "ὶἱἰἳὺὑὐὓίἵἴἲύὕὔὒῖἷἶΪῦὗὖΫ"),
        (224, "ὲἑἐἓὸὁὀὃέἕἔἒόὅὄὂϊῒΐῗϋῢΰῧᾳῃῳῥῤ"),
    )
)  # fmt: skip
# The accents that stand before a capital: dasia, psili, oxia, varia, perispomeni and pairs of them.
_BEFORE: Final = {
    "\u0314": 60, "\u0313": 62, "\u0301": 39, "\u0300": 96, "\u0314\u0301": 86,
    "\u0314\u0300": 67, "\u0314\u0342": 64, "\u0313\u0301": 94, "\u0313\u0300": 95,
    "\u0313\u0342": 92,
}  # fmt: skip


def _greek() -> Iterator[tuple[str, str]]:
    for letter, place in _LGR.items():
        yield letter, rf"\char{place}"
        if not letter.islower():
            apart = unicodedata.normalize("NFD", letter)
            for marks, before in _BEFORE.items():
                yield from _composed(apart[0] + marks + apart[1:], rf"\char{before}\char{place}")


def _composed(apart: str, tex: str) -> Iterator[tuple[str, str]]:
    """A letter of several parts, copied as one, where Unicode has it."""
    letter = unicodedata.normalize("NFC", apart)
    if len(letter) == 1:
        yield letter, rf"\oneletter{{{ord(letter):04X}}}{{{tex}}}"


def _cyrillic() -> Iterator[tuple[str, str]]:
    for letter, place in _OT2.items():
        yield letter, rf"\char{place}"
    for letter, (accent, place) in _ACCENTED.items():
        yield from _composed(letter, rf"\accent{accent}\char{place}")


def _glyphs() -> dict[str, str]:
    names = {first + n: name for first, run in _NAMED for n, name in enumerate(run.split())}
    return {names.get(place, chr(place)): f"{ord(letter):04X}" for letter, place in _OT2.items()}


ALPHABETS: Final = {
    "greek": Alphabet("grmn1000.pfb", dict(_greek()), {}),
    "cyrillic": Alphabet("wncyr10.pfb", dict(_cyrillic()), _glyphs()),
}
"""The alphabets, by the names of their scripts."""
