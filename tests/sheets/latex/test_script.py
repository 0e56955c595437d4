"""Which script a character is of."""

import pytest

from probgen.sheets.latex.script import (
    SCRIPTS,
    alphabets_used,
    east_asian,
    script_of,
    scripts_needed,
)

LETTERS = {
    "a": "latin", "é": "latin", "ж": "cyrillic", "θ": "greek", "ş": "latin", "ש": "hebrew",
    "ع": "arabic", "अ": "devanagari", "ท": "thai", "李": "chinese", "た": "japanese",
    "タ": "japanese", "김": "korean", "ა": "georgian", "ጀ": "ethiopic", " ": "", "7": "",
    "!": "", "🙂": "", "ᚠ": "", "\x00": "",
    # Half and full width, marks of several scripts, what a script's name does not begin with.
    "ｱ": "japanese", "ﾰ": "korean", "Ａ": "chinese", "（": "chinese", "、": "chinese",
    "ー": "japanese", "々": "chinese", "।": "devanagari", "،": "arabic", "٣": "arabic",
    "ʰ": "latin",
}  # fmt: skip
TEXTS = {
    "ideographs alone": (["chinese", "chinese"], "chinese"),
    "with kana": (["chinese", "japanese"], "japanese"),
    "with Hangul": (["korean", "chinese", ""], "korean"),
    "none": ([], "chinese"),
}
# LaTeX, the scripts that only LuaLaTeX prints, and those that pdfLaTeX prints too.
BODIES = {
    "none": ("Ada", frozenset(), frozenset()),
    "two": (r"\inscript{lao}{x} \inscript{thai}{y} \inscript{thai}{}", {"lao", "thai"}, set()),
    "both kinds": (r"\inalphabet{greek}{\char97}{α} \inscript{thai}{y}", {"thai"}, {"greek"}),
}


@pytest.mark.parametrize(("letter", "name"), LETTERS.items())
def test_scripts_of_letters(letter: str, name: str) -> None:
    assert script_of(letter) == name


@pytest.mark.parametrize(("names", "name"), TEXTS.values(), ids=TEXTS)
def test_east_asian_fonts(names: list[str], name: str) -> None:
    assert east_asian(names) == name


@pytest.mark.parametrize(("body", "needed", "spelled"), BODIES.values(), ids=BODIES)
def test_scripts_of_latex(body: str, needed: set[str], spelled: set[str]) -> None:
    assert scripts_needed(body) == needed
    assert alphabets_used(body) == spelled


def test_every_script_has_a_font() -> None:
    assert {script.package for script in SCRIPTS.values()} == {"fonts-noto-core", "fonts-noto-cjk"}
    files = {script.file: script for script in SCRIPTS.values()}
    assert all(script.face is not None for script in files.values() if "CJK" in script.font)
    assert [name for name, script in SCRIPTS.items() if script.leftward] == ["hebrew", "arabic"]
    assert {name for name, script in SCRIPTS.items() if script.alphabet} == {"greek", "cyrillic"}
