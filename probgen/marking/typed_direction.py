"""Directions as people type them: every reading as an angle, counter-clockwise from +x.

An angle by itself is taken from +x where only that can be meant: a minus sign, or more than a right
angle.  A plain acute angle may be one in any quarter, and so has four readings.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from itertools import product
from typing import Final

from probgen.marking.typed_number import readings as numbers

_FULL, _HALF, _QUARTER = Decimal(360), Decimal(180), Decimal(90)
_RIGHT, _UP, _LEFT, _DOWN = (_QUARTER * n for n in range(4))
_WAYS: Final = {
    _RIGHT: ("right", "rightward", "rightwards", "east", "e", "→"),
    _UP: ("up", "upward", "upwards", "above", "over", "north", "n", "↑"),
    _LEFT: ("left", "leftward", "leftwards", "west", "w", "←"),
    _DOWN: ("down", "downward", "downwards", "below", "under", "beneath", "south", "s", "↓"),
}
_WAY_OF: Final = {word: way for way, words in _WAYS.items() for word in words}
_COMPASS: Final = frozenset({"east", "e", "north", "n", "west", "w", "south", "s"})
_LEVEL: Final = ("horizontal", "level", "horizontally", "x", "+x")
_PLUMB: Final = ("vertical", "vertically", "y", "+y", "plumb")
_FROM_LEVEL: Final = ("above", "over", "below", "under", "beneath")
_BACKWARD: Final = ("clockwise", "cw")
_FORWARD: Final = (
    "counterclockwise",
    "counter-clockwise",
    "anticlockwise",
    "anti-clockwise",
    "ccw",
)
_FILL: Final = frozenset([
    "the", "to", "and", "of", "from", "with", "at", "an", "angle", "is", "line", "axis", "straight",
    "pointing", "points", "point", "toward", "towards", "direction", "degrees", "degree", "deg",
    "side", "measured", "makes", "a", "in",
])  # fmt: skip
_WORD: Final = re.compile(r"[+\-]?[a-z]+(?:-[a-z]+)?|[→↑←↓]|[+\-]x|[+\-]y")
_NEGATIVE: Final = re.compile(r"\b(?:negative|minus)\s+(?=[xy]\b)")
_POSITIVE: Final = re.compile(r"\b(?:positive|plus)\s+(?=[xy]\b)")
_AXIS: Final = re.compile(r"\b([xy])[- ]?axis\b")
_ANGLE: Final = re.compile(r"[+\-−–]?\s*\d[\d.,]*\s*(?:°|º|deg(?:rees?)?\b|rad(?:ians?)?\b)?")


@dataclass(frozen=True, slots=True)
class TypedDirection:
    """angle_from_x: degrees counter-clockwise from +x, 0 up to 360."""

    angle_from_x: Decimal


def readings(text: str) -> tuple[TypedDirection, ...]:
    """Every direction that a text may mean; none where it is no direction."""
    text = _NEGATIVE.sub("-", _POSITIVE.sub("+", text.strip().lower()))
    text = _AXIS.sub(r"\1", text)
    angles = list(_ANGLE.finditer(text))
    if len(angles) > 1 or len(text) > 200:
        return ()
    if not angles:
        words = _words(text)
        return _all(_straight(words)) if words else ()
    start, end = angles[0].span()
    words = [*_words(text[:start]), "#", *_words(text[end:])]
    if not _known(words):
        return ()
    found = []
    for number in numbers(angles[0][0]):
        size = number.value * Decimal(str(number.unit.factor)) if number.unit else number.value
        found += _turned(size, words)
    return _all(found)


def _all(angles: list[Decimal]) -> tuple[TypedDirection, ...]:
    return tuple(dict.fromkeys(TypedDirection(_once(angle)) for angle in angles))


def _once(angle: Decimal) -> Decimal:
    """The same direction from 0 up to 360."""
    return (angle % _FULL + _FULL) % _FULL  # of Decimals, % has the sign of the angle


def _words(text: str) -> list[str]:
    """What is said beside the angle, without words that say nothing; ["?"] for other signs."""
    rest = _WORD.sub(" ", text)
    if re.sub(r"[\s,.;:=()φθ°º]", "", rest):
        return ["?"]
    return [word for word in _WORD.findall(text) if word not in _FILL]


def _known(words: list[str]) -> bool:
    known = {*_WAY_OF, *_LEVEL, *_PLUMB, *_BACKWARD, *_FORWARD, "-x", "-y", "#"}
    return all(word in known for word in words)


def _straight(words: list[str]) -> list[Decimal]:
    """A direction along an axis: "straight down", "to the left", "+x"."""
    axes = {"+x": _RIGHT, "x": _RIGHT, "-x": _LEFT, "+y": _UP, "y": _UP, "-y": _DOWN}
    if len(words) == 1 and words[0] in axes:
        return [axes[words[0]]]
    ways = [_WAY_OF[word] for word in words if word in _WAY_OF]
    others = [word for word in words if word not in _WAY_OF]
    lying = all(word in (*_LEVEL, *_PLUMB) for word in others)
    return ways if len(ways) == 1 and lying else []


def _turned(size: Decimal, words: list[str]) -> list[Decimal]:
    """The angles from +x that a size and words beside it allow; "#" stands for the size."""
    beside = [word for word in words if word != "#"]
    if not beside:
        return _bare(size)
    axes = [word for word in beside if word in ("+x", "x", "-x", "+y", "y", "-y")]
    sense = [1 for w in beside if w in _FORWARD] + [-1 for w in beside if w in _BACKWARD]
    ways = [word for word in beside if word in _WAY_OF]
    if sense and not ways:
        start = {"-x": _LEFT, "+y": _UP, "y": _UP, "-y": _DOWN}.get((axes or ["x"])[0], _RIGHT)
        return [start + sense[0] * size] if len(sense) == 1 and len(axes) <= 1 else []
    if sense or len(ways) != 2 or not 0 <= size <= _QUARTER:
        return _one_way(size, beside, ways) if not sense and len(ways) == 1 else []
    if all(word in _COMPASS for word in ways):
        return _by_compass(size, words)
    return _by_sides(size, beside, ways)


def _bare(size: Decimal) -> list[Decimal]:
    """An angle alone."""
    if size < 0 or size > _QUARTER:
        return [size] if abs(size) <= _FULL else []
    return [size, _HALF - size, _HALF + size, -size]


def _one_way(size: Decimal, beside: list[str], ways: list[str]) -> list[Decimal]:
    """ "30 above the horizontal": on either side; "30 below +x": on one."""
    if not 0 <= size <= _QUARTER:
        return []
    way = _WAY_OF[ways[0]]
    if way in (_UP, _DOWN):
        sign = 1 if way == _UP else -1
        if "+x" in beside or "-x" in beside:
            return [sign * size if "+x" in beside else _HALF - sign * size]
        return [sign * size, _HALF - sign * size] if set(beside) & set(_LEVEL) else []
    if set(beside) & set(_PLUMB):
        toward = -1 if way == _RIGHT else 1
        return [_UP + toward * size, _DOWN - toward * size]
    return []


def _by_compass(size: Decimal, words: list[str]) -> list[Decimal]:
    """ "S 30 W": from south toward west; "30 south of west": from west toward south."""
    place = words.index("#")
    first, second = (_WAY_OF[word] for word in words if word in _WAY_OF)
    start, toward = (first, second) if place == 1 else (second, first)
    turn = _once(toward - start)
    return [start + size] if turn == _QUARTER else [start - size] if turn == 270 else []


def _by_sides(size: Decimal, beside: list[str], ways: list[str]) -> list[Decimal]:
    """ "9.9 below the horizontal, to the left"; from the vertical where that is said."""
    upright = [way for way in map(_WAY_OF.__getitem__, ways) if way in (_UP, _DOWN)]
    level = [way for way in map(_WAY_OF.__getitem__, ways) if way in (_RIGHT, _LEFT)]
    from_level = bool(set(beside) & {*_LEVEL, *_FROM_LEVEL})
    from_plumb = bool(set(beside) & set(_PLUMB))
    if from_level and from_plumb:
        return []
    sizes = [_QUARTER - size] if from_plumb else [size]
    if not from_level and not from_plumb:  # "30 up and to the left" may be from either
        sizes = [size, _QUARTER - size]
    return [
        _in_quarter(each, up=up == _UP, right=right == _RIGHT)
        for each, up, right in product(sizes, upright, level)
    ]


def _in_quarter(size: Decimal, *, up: bool, right: bool) -> Decimal:
    """An angle from the level, on two sides."""
    turned = size if right else _HALF - size
    return turned if up else -turned
