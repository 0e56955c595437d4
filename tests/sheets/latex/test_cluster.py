"""Letters with their marks, and what of a text is not set as it has no shape."""

import pytest

from probgen.sheets.latex.cluster import clusters, left_out

READ = {
    "marks": ("e\u0301a\u0323\u0308", ["é", "ạ\u0308"], ""),
    "spaces": ("a \t\n\u2003b\u2028\u3000", ["a", " ", "b", " "], ""),
    "a mark without a letter": (" \u0301", [" ", "\u0301"], ""),
    "what turns the direction": ("\u202ea\u202c\u2066b\u2069", ["a", "b"],
                                 "\u202e\u202c\u2066\u2069"),
    "a mark that was parted from its letter": ("e\ufeff\u0301", ["é"], "\ufeff"),
    "spaces that were parted": ("a \u200e b", ["a", " ", "b"], "\u200e"),
    "joiners of letters that join": ("ا\u200cب", ["ا\u200c", "ب"], ""),
    "joiners of Latin letters": ("f\u200ci\u200d", ["f", "i"], "\u200c\u200d"),
    "forms of letters": ("葛\U000e0100❤\ufe0f", ["葛", "❤"], "\U000e0100\ufe0f"),
    "joiners of nothing": ("\u200d", [], "\u200d"),
    "ends of lines": ("a\u00ad\u200b", ["a", "\u00ad", "\u200b"], ""),
    "signs around numbers": ("\u0600١", ["\u0600", "١"], ""),
    "spaces that hold": ("5\u202fN", ["5", "\u202f", "N"], ""),
    "the micro of a unit": ("5 μm μ", ["5", " ", "µ", "m", " ", "μ"], ""),
}  # fmt: skip


@pytest.mark.parametrize(("text", "letters", "lost"), READ.values(), ids=READ)
def test_clusters(text: str, letters: list[str], lost: str) -> None:
    assert clusters(text) == letters
    assert left_out(text) == lost
