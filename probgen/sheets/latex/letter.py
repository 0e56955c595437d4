"""Latin letters that the T1 fonts lack and other cuts of the same fonts have as one glyph.

Đ is among them, because T1 has one glyph for it and for the Icelandic Ð.
"""

from __future__ import annotations

from typing import Final

# First slot and letters from there on, in the encodings that Latin Modern is cut for: T5 for
# Vietnamese, L7x for Baltic languages, QX for Romanian (lm-t5.enc, lm-l7x.enc, lm-qx.enc).
_CUTS: Final = {
    "T5": (
        (26, "ỶỷỴỵĐ"), (131, "ẢẠ"), (134, "ẦẤẪẨẬ"), (140, "ẰẮẴẲẶ"), (147, "ẼẺẸ"), (151, "ỀẾỄỂỆ"),
        (158, "ĨỈ"), (163, "ảạ"), (166, "ầấẫẩậ"), (172, "ằắẵẳặ"), (179, "ẽẻẹ"), (183, "ềếễểệ"),
        (190, "ĩỉỊ"), (196, "ỎỌ"), (199, "ỒỐỖỔỘƠỜỚỠỞỢ"), (212, "ŨỦỤƯỪỨỮỬỰỲ"), (223, "Ỹị"),
        (228, "ỏọ"), (231, "ồốỗổộơờớỡởợ"), (244, "ũủụưừứữửựỳ"), (255, "ỹ"),
    ),
    "L7x": (
        (131, "ƒ"), (170, "Ŗ"), (186, "ŗ"), (193, "ĮĀ"), (199, "Ē"), (203, "ĖĢĶĪĻ"), (210, "Ņ"),
        (212, "Ō"), (216, "Ų"), (219, "Ū"), (225, "įā"), (231, "ē"), (235, "ėģķīļ"), (242, "ņ"),
        (244, "ō"), (248, "ų"), (251, "ū"),
    ),
    "QX": (
        (147, "Ș"), (179, "ș"),
    ),
}  # fmt: skip

LETTERS: Final = {
    letter: (encoding, first + place)
    for encoding, runs in _CUTS.items()
    for first, letters in runs
    for place, letter in enumerate(letters)
}
"""Encoding and slot of each letter."""
