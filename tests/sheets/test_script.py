"""Which script a character is of."""

import pytest

from probgen.sheets.script import SCRIPTS, east_asian, script_of, scripts_used

LETTERS = {
    "a": "latin", "é": "latin", "ж": "cyrillic", "θ": "greek", "ş": "latin", "ש": "hebrew",
    "ع": "arabic", "अ": "devanagari", "ท": "thai", "李": "chinese", "た": "japanese",
    "タ": "japanese", "김": "korean", "ა": "georgian", "ጀ": "ethiopic", " ": "", "7": "",
    "!": "", "🙂": "", "ᚠ": "", "\x00": "",
}  # fmt: skip
TEXTS = {
    "ideographs alone": (["chinese", "chinese"], "chinese"),
    "with kana": (["chinese", "japanese"], "japanese"),
    "with Hangul": (["korean", "chinese", ""], "korean"),
    "none": ([], "chinese"),
}
BODIES = {
    "none": ("Ada", frozenset()),
    "two": (r"\inscript{arabic}{x} \inscript{thai}{y} \inscript{thai}{}", {"arabic", "thai"}),
}


@pytest.mark.parametrize(("letter", "name"), LETTERS.items())
def test_scripts_of_letters(letter: str, name: str) -> None:
    assert script_of(letter) == name


@pytest.mark.parametrize(("names", "name"), TEXTS.values(), ids=TEXTS)
def test_east_asian_fonts(names: list[str], name: str) -> None:
    assert east_asian(names) == name


@pytest.mark.parametrize(("body", "names"), BODIES.values(), ids=BODIES)
def test_scripts_used(body: str, names: set[str]) -> None:
    assert scripts_used(body) == names


def test_every_script_has_a_font() -> None:
    assert {script.package for script in SCRIPTS.values()} == {"fonts-noto-core", "fonts-noto-cjk"}
    files = {script.file: script for script in SCRIPTS.values()}
    assert all(script.face is not None for script in files.values() if "CJK" in script.font)
    assert [name for name, script in SCRIPTS.items() if script.leftward] == ["hebrew", "arabic"]
