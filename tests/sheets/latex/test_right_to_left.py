"""Runs from right to left: where they end, and what in them goes from left to right."""

import pytest

from probgen.sheets.latex.right_to_left import mirrored, parts, run_end

RUNS = {
    "a word": "|אב|a",
    "words": "|אב אב| a",
    "a Latin word between": "|אב abc אב|",
    "brackets in pairs": "|א (ב) א|)",
    "a word in brackets": "|א (ב)| a",
    "a Latin word in brackets": "|א| (a)",
    "a bracket that closes before": "|א|) ב",
    "a bracket that closes behind": "|א ב| (a) (ב",
}

PARTS = {
    "letters": "א,ב",
    "numbers": "א <12> ב",
    "a fraction": "א <12.5> <7> ב",
    "a list of numbers": "<1>, <2>",
    "a word and a number": "א <No. 5> ב",
    "words": "א <a, b> ב <c>.",
    "a number with its unit": "<5kg> א",
    "a percentage": "א <50%> א",
    "digits of the script": "ب <١٢/٣> ب",
}
"""What goes from left to right between < and >: by UAX #9, rules W2 to W7, N1 and N2."""


@pytest.mark.parametrize("shown", RUNS.values(), ids=RUNS)
def test_a_run_ends_behind_its_last_word(shown: str) -> None:
    before, run, behind = shown.split("|")
    text = before + run + behind
    scripts = ["hebrew" if "א" <= letter <= "ת" else "" for letter in text]
    assert text[len(before) : run_end(text, scripts, len(before))] == run


def test_no_other_script_is_in_a_run() -> None:
    assert run_end("אaбא", ["hebrew", "", "cyrillic", "hebrew"], 0) == 1


@pytest.mark.parametrize("shown", PARTS.values(), ids=PARTS)
def test_numbers_and_latin_words_are_turned_back(shown: str) -> None:
    text = shown.replace("<", "").replace(">", "")
    found = "".join(
        f"<{''.join(text[place] for place in places)}>" if rightward else text[places.start]
        for rightward, places in parts(text)
    )
    assert found == shown


def test_brackets_are_mirrored() -> None:
    assert [mirrored(sign) for sign in "([«a"] == [")", "]", "»", "a"]
