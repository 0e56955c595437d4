"""What of a text is not printed as it was typed is said in words."""

import pytest

from probgen.sheets.latex.remark import remarks_on_text

TOLD = {
    "Zoë Łukasz 李": [],
    "Ada 🙂ᚠ🙂": ["Ada 🙂ᚠ🙂: boxes are printed for 🙂ᚠ, which the fonts do not have"],
    "A\u202ed\ue000a": [
        "A\u202ed\ue000a: boxes are printed for \ue000, which the fonts do not have",
        "A\u202ed\ue000a: left out, as it has no shape: right-to-left override (U+202E)",
    ],
    "a" * 70 + "\ufeff": [
        "a" * 60 + "...: left out, as it has no shape: zero width no-break space (U+FEFF)"
    ],
    "\u200e\u200f\u202a\u202b\u202c\u202d\u202e": [
        "\u200e\u200f\u202a\u202b\u202c\u202d\u202e: left out, as it has no shape: "
        "left-to-right mark (U+200E), right-to-left mark (U+200F), "
        "left-to-right embedding (U+202A), right-to-left embedding (U+202B), "
        "pop directional formatting (U+202C) and 2 others"
    ],
}


@pytest.mark.parametrize("text", TOLD)
def test_remarks_on_a_text(text: str) -> None:
    assert list(remarks_on_text(text)) == TOLD[text]


def test_the_place_is_named_where_there_is_one() -> None:
    assert list(remarks_on_text("🙂", "shelf, title")) == [
        "shelf, title: boxes are printed for 🙂, which the fonts do not have"
    ]
