"""How much room a label takes: the widths, heights and depths of its characters.

Lengths are printer's points.  The widths are those of the TeX font metric files cmr9, cmr6, cmmi9
and cmmi6 (Computer Modern, D. E. Knuth; read with tftopl from TeX Live 2022), in thousandths of
the size; italic corrections are added, as math mode does.  Latin Modern (lmr9, lmmi9, ...) keeps
the same widths.  LaTeX sets the subscripts of 9 pt math in 6 pt.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from typing import Final, Literal

from probgen.figures.paper.scene import Stated, Text
from probgen.quantities.expression import Expression, Name, Number
from probgen.quantities.printing import marked, plain
from probgen.quantities.symbol import in_words
from probgen.quantities.symbol import runs as faces

SIZE: Final = 9.0
"""The size labels are set in, pt."""

_SUBSCRIPT: Final = 6.0 / 9.0
_DROP: Final = 0.165  # how far a subscript's baseline lies below, of the size (cmsy9, sub1)
_THIN: Final = 1 / 6  # a thin space, of the size
_WORD_SPACE: Final = 0.343 - _THIN  # cmr9's space beyond a thin one, of the size
_SCRIPT_SPACE: Final = 0.5  # pt, TeX's space after a subscript (plain and LaTeX: 0.5pt)

_EQUALS: Final = "\u2005=\u2005"  # between the spaces TeX leaves about a relation

_WORDS: Final = re.compile(r"([^\W\d_]\w*)|([\W\d_]+)")
_FUNCTIONS: Final = frozenset({"sin", "cos", "tan", "arcsin", "arccos", "arctan"})

Face = Literal["roman", "italic"]


@dataclass(frozen=True, slots=True)
class Run:
    """Characters set in one face; `low` for a subscript."""

    text: str
    face: Face
    low: bool = False


@dataclass(frozen=True, slots=True)
class Extent:
    """Width, height above and depth below the baseline, pt."""

    width: float
    height: float
    depth: float


def runs(text: Text) -> tuple[Run, ...]:
    """The label's characters with the face each is set in (NIST SP 811, 10.1 to 10.2)."""
    if isinstance(text, Number):
        return (Run(plain(text), "roman"),)
    if isinstance(text, str):
        return tuple(Run(part, "italic" if it else "roman") for part, it in in_words(text))
    if isinstance(text, Stated):
        return (*runs(text.symbol), Run(_EQUALS, "roman"), *runs(text.number))
    if not isinstance(text, Name):
        return tuple(_pieces(text))
    return _letter(marked(text))


def _pieces(expression: Expression) -> Iterator[Run]:
    """An expression on one line: its letters italic, functions, digits and signs upright."""
    shown = re.sub(" (?=arc|sin|cos|tan)", "\u2005", marked(expression))
    shown = re.sub(" ([+−]) ", "\u2005\\1\u2005", shown)
    for word, other in _WORDS.findall(shown):
        if word and word not in _FUNCTIONS:
            yield from _letter(word)
        else:
            yield Run(word or other, "roman")


def _letter(symbol: str) -> tuple[Run, ...]:
    """A symbol as plain text, W_s: the letter italic, what stands low behind it."""
    head, *subscripts = symbol.split("_")
    digits = len(head) - len(head.rstrip("0123456789"))
    pieces = [Run(head[: len(head) - digits], "italic")]
    if digits:
        pieces.append(Run(head[-digits:], "roman"))
    for place, part in enumerate(subscripts):
        if place:
            pieces.append(Run(",", "roman", low=True))
        pieces += [
            Run(text, "italic" if italic else "roman", low=True) for text, italic in faces(part)
        ]
    return tuple(pieces)


def extent(text: Text, size: float = SIZE) -> Extent:
    """The room a label takes when set at `size` pt."""
    return _extent(text, _shown(text), size)


def _shown(text: Text) -> str:
    """What tells labels apart that are equal: the digits of a number (1.7, 1.70), a letter."""
    match text:
        case Number(value):
            return str(value)
        case Name():
            return text.symbol
        case Stated(symbol, number):
            return f"{symbol.symbol} {number.value}"
        case str():
            return text
        case _:
            return marked(text)


@lru_cache(maxsize=4096)
def _extent(text: Text, shown: str, size: float) -> Extent:
    pieces = runs(text)
    width = height = depth = 0.0
    for run in pieces:
        scale = size * (_SUBSCRIPT if run.low else 1.0)
        drop = size * _DROP if run.low else 0.0
        width += scale * sum(_width(run, c, size) for c in run.text)
        height = max(height, scale * max(map(_height, run.text)) - drop)
        depth = max(depth, scale * max(map(_depth, run.text)) + drop)
    if isinstance(text, str):  # between words there is more than the thin space of a number
        width += size * _WORD_SPACE * text.count(" ")
    low = any(run.low for run in pieces)
    return Extent(width + (_SCRIPT_SPACE if low else 0.0), height, depth)


def _width(run: Run, character: str, size: float) -> float:
    """Of the size; small print is wider in proportion, between the metrics for 9 pt and 6 pt."""
    other = _OTHER.get(character, 0.75)
    small = _FACES[run.face, True].get(character, other)
    if run.low:
        return small
    share = min(max((SIZE - size) / (SIZE - SIZE * _SUBSCRIPT), 0.0), 1.0)
    return (1.0 - share) * _FACES[run.face, False].get(character, other) + share * small


def _height(character: str) -> float:
    return 0.45 if character in _SHORT else 0.75 if character in "()/°" else 0.7


def _depth(character: str) -> float:
    if character in "()/":
        return 0.25
    return 0.2 if character in _DEEP else 0.1 if character == "−" else 0.0


_SHORT: Final = frozenset("acemnorsuvwxzgpqy.,-αεικνπστυωγημρχ")
_DEEP: Final = frozenset("gpqyjQ,fγημρχβζξφψ")


def _table(rows: str) -> dict[str, float]:
    return {entry[0]: int(entry[1:]) / 1000 for entry in rows.split()}


# One entry a character: the character, then its width in thousandths of the size.
_ROMAN_9 = """\
0514 1514 2514 3514 4514 5514 6514 7514 8514 9514 A771 B728 C742 D785 E699 F671 G806 H771 I371
J528 K799 L642 M942 N771 O799 P699 Q799 R756 S571 T742 U771 V771 W1056 X771 Y771 Z628 a514
b571 c457 d571 e457 f314 g514 h571 i285 j314 k542 l285 m856 n571 o514 p571 q542 r402 s405 t400
u571 v542 w742 x542 y542 z457 .285 ,285 +799 -343 =799 /514 (400 )400 '285
"""
_ROMAN_6 = """\
0611 1611 2611 3611 4611 5611 6611 7611 8611 9611 A896 B851 C870 D916 E819 F786 G942 H896 I443
J624 K929 L754 M1091 N896 O935 P819 Q935 R883 S676 T870 U896 V896 W1220 X896 Y896 Z741 a611
b676 c546 d676 e546 f384 g611 h676 i352 j384 k644 l352 m1000 n676 o611 p676 q644 r481 s488
t481 u676 v644 w870 x644 y644 z546 .352 ,352 +935 -417 =935 /611 (481 )481 '352
"""
_ITALIC_9 = """\
A771 B828 C805 D876 E813 F799 G805 H930 I528 J662 K942 L699 M1101 N930 O811 P799 Q811 R785
S685 T742 U807 V828 W1113 X927 Y825 Z770 a544 b440 c445 d533 e478 f608 g526 h592 i352 j477
k564 l323 m905 n620 o498 p516 q495 r492 s479 t371 u591 v535 w763 x583 y542 z521 α659 β631 γ588
δ494 ε416 ζ522 η549 θ510 ι364 κ592 λ600 μ619 ν571 ξ494 π624 ρ529 σ624 τ567 υ592 φ612 χ641 ψ706
ω675
"""
_ITALIC_6 = """\
A924 B974 C953 D1031 E953 F937 G953 H1075 I625 J776 K1095 L846 M1269 N1075 O966 P942 Q966 R926
S810 T893 U946 V989 W1313 X1079 Y986 Z907 a675 b548 c559 d642 e589 f715 g644 h726 i446 j570
k682 l402 m1094 n770 o612 p642 q607 r612 s584 t477 u737 v661 w920 x698 y669 z635 α805 β749
γ717 δ601 ε523 ζ632 η680 θ623 ι466 κ726 λ736 μ750 ν690 ξ599 π763 ρ639 σ752 τ698 υ726 φ742 χ767
ψ855 ω816
"""

_FACES: Final[dict[tuple[Face, bool], dict[str, float]]] = {
    ("roman", False): _table(_ROMAN_9),
    ("roman", True): _table(_ROMAN_6),
    ("italic", False): _table(_ITALIC_9),
    ("italic", True): _table(_ITALIC_6),
}
_OTHER: Final = {
    " ": _THIN, "\u2005": 0.278, "\u202f": _THIN, "−": 0.799, "·": 0.285, "×": 1.25, "°": 0.48,
    "ℓ": 0.43,
    "²": 0.41, "³": 0.41, "⁰": 0.41, "¹": 0.41, "⁴": 0.41, "⁵": 0.41, "⁶": 0.41,
    "⁷": 0.41, "⁸": 0.41, "⁹": 0.41, "⁻": 0.52, "Δ": 0.86, "Σ": 0.75, "Ω": 0.75, "Φ": 0.75,
}  # fmt: skip
