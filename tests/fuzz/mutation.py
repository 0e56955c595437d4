"""Files spoilt at random, by what the formats are made of; the same seed spoils the same way."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from copy import deepcopy
from random import Random
from typing import Any

VALUES = (
    "0", "-1", "1", "1e999999", "-1e-999999", "nan", "inf", "-inf", "9" * 40, "9" * 5000,
    "0x" + "f" * 99,
    "1_000", "0.1e12", "1e12", "-1e12", "1e-12", "true", '""', '" "', '"x"', "[]", "{}", "[[]]",
    "[1, 2]",
    '["A", "B"]', "{ a = 1 }", "2026-03-09", "12:00:00", "10000-01-01", '"0"', '"nan"', '"L"',
    '"g"', '"A"',
    '"1 m"', '"90 deg"', '"L / 0"', '"L - L"', '"L * m"', '"sqrt(-1)"', '"(("',
    '"' + "(" * 3000 + '"',
    '"1e400"', '"-L"', '"asin(2)"', '"' + "9" * 300 + '"', '"{{ x }}"', '"{% raw %}"', "'''x'''",
    '"\\u0000"',
    '"' + "x" * 5000 + '"', "[" * 300 + "]" * 300, '"../../x"', '"/dev/zero"', '"C:\\x"', "“x”",
    "1,5",
)  # fmt: skip
LETTERS = (
    "\u0301", "\u202e", "\u200b", "\ufeff", "\ue000", "\ue001", "\U0010ffff", "\u0378", "\x00",
    "\x1b", "é",
    "漢", "ا", "\\", "{", "}", "%", "$", "#", "&", "_", "^", "~", '"', "'", "\n", "\r", "\t", "=",
    "-", "`", "ß",
    "\ud7ff", "{{", "}}", "<<", ">>", "<%", "%>",
)  # fmt: skip


def spoilt(content: bytes, random: Random) -> bytes:
    """The content with one to four things changed."""
    for _ in range(random.choice((1, 1, 1, 2, 2, 4))):
        change = random.choice(_CHANGES)
        content = change(content, random)
    return content


def spoilt_json(content: bytes, random: Random) -> bytes:
    """As `spoilt`; mostly a value, key or entry changed where JSON has one."""
    if random.random() < 0.2:
        return spoilt(content, random)
    try:
        data = json.loads(content)
    except ValueError:
        return spoilt(content, random)
    for _ in range(random.choice((1, 1, 2, 3))):
        _change_inside(data, random)
    return json.dumps(data, ensure_ascii=random.random() < 0.5).encode("utf-8", "surrogatepass")


def _change_inside(data: Any, random: Random) -> None:
    while True:
        if isinstance(data, dict) and data:
            place: Any = random.choice(list(data))
        elif isinstance(data, list) and data:
            place = random.randrange(len(data))
        else:
            return
        inner = data[place]
        if isinstance(inner, dict | list) and inner and random.random() < 0.75:
            data = inner
            continue
        _change_entry(data, place, random)
        return


def _change_entry(data: Any, place: Any, random: Random) -> None:
    match random.randrange(4):
        case 0:
            del data[place]
        case 1:
            data[place] = deepcopy(random.choice(JSON_VALUES))  # may be changed further
        case 2 if isinstance(data, list):
            data.insert(place, deepcopy(data[place]))
        case 2:
            data[f"{place}{random.choice('xs_ ')}"] = data.pop(place)
        case _ if isinstance(data[place], str):
            whole = data[place].encode("utf-8", "replace")
            data[place] = _letters(whole, random).decode("utf-8", "replace")
        case _ if isinstance(data[place], int | float):
            data[place] = data[place] * random.choice((-1, 0, 10**6, 0.5, 10**15))
        case _:
            data[place] = None


JSON_VALUES: tuple[Any, ...] = (
    None, True, False, 0, -1, 1, 2, 27, 1e308, 10**15, 10**30, 0.5, "", " ", "x", "\ud800",
    "\x00", [], {}, [[]],
    [None], {"a": 1}, "1", "1.20", "1e999999", "NaN", "../x", ".tex", "<%", "x" * 2000,
    ["x"] * 300, [1, 2],
)  # fmt: skip


def _flip(content: bytes, random: Random) -> bytes:
    changed = bytearray(content or b"x")
    for _ in range(random.choice((1, 2, 8))):
        changed[random.randrange(len(changed))] = random.randrange(256)
    return bytes(changed)


def _cut(content: bytes, random: Random) -> bytes:
    start = random.randrange(len(content) + 1)
    return content[:start] + content[start + random.choice((1, 5, 50, 10**6)) :]


def _letters(content: bytes, random: Random) -> bytes:
    text = content.decode("utf-8", "replace")
    place = random.randrange(len(text) + 1)
    letters = "".join(random.choice(LETTERS) for _ in range(random.choice((1, 2, 4))))
    return f"{text[:place]}{letters}{text[place:]}".encode("utf-8", "replace")


def _lines(content: bytes, random: Random) -> bytes:
    lines = content.split(b"\n")
    place, other = random.randrange(len(lines)), random.randrange(len(lines))
    match random.randrange(4):
        case 0:
            del lines[place]
        case 1:
            lines.insert(other, lines[place])
        case 2:
            lines[place], lines[other] = lines[other], lines[place]
        case _:
            lines[place : place + random.randrange(6)] = []
    return b"\n".join(lines)


def _value(content: bytes, random: Random) -> bytes:
    """Another value behind one of the equal signs, or another cell between separators."""
    places = [match.span(1) for match in _VALUE.finditer(content)]
    if not places:
        return _flip(content, random)
    start, end = random.choice(places)
    if random.random() < 0.3:
        from_start, from_end = random.choice(places)
        value = content[from_start:from_end]
    else:
        value = random.choice(VALUES).encode()
    return content[:start] + value + content[end:]


_VALUE = re.compile(rb"(?:=|,|\[)\s*([^\s,\]\}][^,\n\]\}]*)")


def _word(content: bytes, random: Random) -> bytes:
    """A word in place of another of the same file."""
    words = [match.span() for match in re.finditer(rb"[A-Za-z_]\w*", content)]
    if len(words) < 2:
        return _flip(content, random)
    (start, end), (a, b) = random.choice(words), random.choice(words)
    return content[:start] + content[a:b] + content[end:]


def _number(content: bytes, random: Random) -> bytes:
    numbers = [match.span() for match in re.finditer(rb"\d+(\.\d+)?", content)]
    if not numbers:
        return _flip(content, random)
    start, end = random.choice(numbers)
    value = random.choice(b"0 0.0 -1 1e12 1e-12 1e5 180 90 1 1e99".split())
    return content[:start] + value + content[end:]


_CHANGES: tuple[Callable[[bytes, Random], bytes], ...] = (
    _flip, _cut, _letters, _letters, _lines, _lines, _value, _value, _value, _value, _word, _word,
    _word, _number, _number,
)  # fmt: skip
