"""Greek and Cyrillic letters at their places in TeX's fonts."""

import re
import subprocess
import unicodedata
from pathlib import Path

import pytest
from pdfminer.encodingdb import name2unicode

from probgen.sheets.latex.alphabet import ALPHABETS

# What the languages written with it need, by their own alphabets; stresses are not marked.
LANGUAGES = {
    "modern Greek": ("greek", "αάβγδεέζηήθιίϊΐκλμνξοόπρσςτυύϋΰφχψωώ"),
    "polytonic Greek": ("greek", "ἀἁἂἃἄἅἆἇὰᾀᾁᾂᾃᾄᾅᾆᾇᾲᾳᾴᾶᾷἐἑἒἓἔἕἠἡἢἣἤἥἦἧᾐᾗῃἰἷῒὀὅὐὗῢῤῥὠᾧῳῷ"),
    "Russian": ("cyrillic", "абвгдеёжзийклмнопрстуфхцчшщъыьэюя"),
    "Ukrainian but for ґ": ("cyrillic", "абвгдеєжзиіїйклмнопрстуфхцчшщьюя"),
    "Belarusian": ("cyrillic", "абвгдеёжзійклмнопрстуўфхцчшыьэюя"),
    "Bulgarian": ("cyrillic", "абвгдежзийклмнопрстуфхцчшщъьюя"),
    "Serbian": ("cyrillic", "абвгдђежзијклљмнњопрстћуфхцчџш"),
    "Macedonian": ("cyrillic", "абвгдѓежзѕијклљмнњопрстќуфхцчџш"),
}
NO_CAPITAL = "ΐΰῒῢῤᾲᾴᾶᾷἆὐῷὗ"  # letters that no word begins with, or without a composed capital


@pytest.mark.parametrize(("script", "letters"), LANGUAGES.values(), ids=LANGUAGES)
def test_languages_have_their_letters(script: str, letters: str) -> None:
    capitals = {letter.title() for letter in letters if letter not in NO_CAPITAL}
    assert {*letters, *capitals} <= ALPHABETS[script].letters.keys()


@pytest.mark.parametrize("name", ALPHABETS)
def test_letters_are_composed_and_of_their_script(name: str) -> None:
    for letter in ALPHABETS[name].letters:
        assert unicodedata.normalize("NFC", letter) == letter
        assert unicodedata.name(letter).startswith(name.upper())


def test_places_of_greek_are_those_of_its_fonts() -> None:
    names = re.findall(r"^/(\S+)", _found("CB.enc").read_text("ascii"), re.MULTILINE)[1:]
    for letter, tex in ALPHABETS["greek"].letters.items():
        if place := re.fullmatch(r"\\char(\d+)", tex):
            held = name2unicode(names[int(place[1])])
            assert unicodedata.normalize("NFC", held) == letter


def test_places_of_cyrillic_are_those_of_its_fonts() -> None:
    """By the names the fonts have for their glyphs, which agree in small letters and capitals."""
    alphabet = ALPHABETS["cyrillic"]
    names = re.findall(rb"dup (\d+) */(\w+) put", _found(alphabet.font).read_bytes())
    held = {int(place): name.decode() for place, name in reversed(names)}
    for letter, tex in alphabet.letters.items():
        if place := re.fullmatch(r"\\char(\d+)", tex):
            name = held[int(place[1])]
            assert alphabet.glyphs[name] == f"{ord(letter):04X}"
            other = re.sub(r"^.", lambda first: first[0].swapcase(), name)
            assert alphabet.glyphs[other] == f"{ord(letter.swapcase()):04X}"


def _found(file: str) -> Path:
    found = subprocess.run(["kpsewhich", file], capture_output=True, text=True, check=True)
    return Path(found.stdout.strip())
