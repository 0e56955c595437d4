"""The mend of a line that is no TOML, by the slips that people make: the line as it should be."""

from __future__ import annotations

import re
from collections.abc import Sequence

_QUOTES = str.maketrans("“”„‟‘’‚«»", '""""\'\'\'""')
_DATE = re.compile(r"(\d{1,4})[./-](\d{1,2})[./-](\d{1,4})")
_KEY = re.compile(r"\s*([\w.\"'-]+?)\s*=")


def last_open(lines: Sequence[str]) -> int:
    """The line, counted from 1, of what is not closed until the end: the last one otherwise."""
    for number in range(len(lines), 0, -1):
        line = lines[number - 1]
        if line.count("'") % 2 or line.count('"""') % 2 or line.count("[") > line.count("]"):
            return number
    return len(lines)


def mend_of(lines: Sequence[str], number: int, reason: str) -> str:
    """What to do about a line, counted from 1, of which the library says `reason`."""
    line = lines[number - 1].strip()
    key, sign, value = (part.strip() for part in line.partition("="))
    if line != line.translate(_QUOTES):
        return f"type straight quotation marks: {_short(line.translate(_QUOTES))}"
    if re.search("overwrite|twice|already|mutate", reason):
        return _of_double(lines, number)
    if "\\" in line:
        return f"write / in paths: {_short(line.replace(chr(92), '/'))}"
    if sign and (date := _DATE.match(value)) and "," not in value:
        return _of_date(key, date)
    if re.match(r"[+-]?\d+,\d+$", value.partition("#")[0].strip()):
        return f"write a decimal point: {_short(line.replace(',', '.', 1))}"
    if opened := next((mark for mark in "\"'" if line.count(mark) % 2), ""):
        return f"close the quotation mark: {_short(line)}{opened}"
    if brackets := re.fullmatch(r"\[{1,2}([\w.]+)\]{0,2}", line):
        double = line.startswith("[[")
        return f"write {'[[' if double else '['}{brackets[1]}{']]' if double else ']'}"
    if re.fullmatch(r"[\w.-]+\s*:.*", line):
        return f"write = between a field and its value: {_short(line.replace(':', ' =', 1))}"
    return _of_value(key, value) if sign else _LAST


_LAST = "correct the line; words stand between quotes, lists between [ and ]"


def _of_double(lines: Sequence[str], number: int) -> str:
    """A field or a table that is there already, and in which line."""
    line = lines[number - 1].strip()
    named = _KEY.match(line)
    for place in range(number - 1, 0, -1):
        other = lines[place - 1].strip()
        known = _KEY.match(other)
        if other == line or (named and known and known[1] == named[1]):
            return f"line {place} has it already: remove one of them"
    return "the same field or table is there already: remove one of them"


def _of_date(key: str, found: re.Match[str]) -> str:
    """A date as TOML has it, where its order is beyond doubt; else how one is written."""
    first, second, third = (int(part) for part in found.groups())
    if len(found[1]) == 4:
        year, month, day = first, second, third
    elif len(found[3]) == 4 and (first > 12) != (second > 12):
        year, month, day = third, min(first, second), max(first, second)
    else:
        return f'write year, month and day, as in 2026-03-09, or in your words: {key} = "9 March"'
    if not (1 <= month <= 12 and 1 <= day <= 31) or found[0] == f"{year}-{month:02}-{day:02}":
        return "write a day that there is, as in 2026-03-09"
    return f"write {key} = {year}-{month:02}-{day:02}"


def _of_value(key: str, value: str) -> str:
    value = value.partition("#")[0].strip()
    if value.count("[") > value.count("]") or value.count("{") > value.count("}"):
        return "close the list with ], or the table with }"
    bare = value.rstrip(";,").strip()
    if bare.lower() in ("true", "false", "yes", "no", "on", "off"):
        return f"write {key} = {'true' if bare.lower() in ('true', 'yes', 'on') else 'false'}"
    if bare != value and bare:
        return f"take the {value[-1]} at the end away: {_short(f'{key} = {bare}')}"
    if re.match(r"[+-]?[\d.]+\s*[^\d\s.,\]}#]", bare):
        return f'put a number with its unit between quotes: {key} = "{bare}"'
    if re.match(r"[^\W\d]", bare) and not re.search("[\"'\\[\\]{}]", bare):
        return f'put words between quotes: {key} = "{_short(bare)}"'
    return _LAST


def _short(text: str) -> str:
    return text if len(text) <= 80 else f"{text[:77]}..."
