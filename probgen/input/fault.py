"""What is wrong with something a person typed, said once, with the mend; all faults together.

faults = Faults("templates/beams/shelf.toml")
faults.add("hinge[0].at", "Q", "one of the points A, B, C", nearest("Q", "ABC"))
faults.settle()         # raises InputError when there are any
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date, time
from difflib import get_close_matches
from itertools import islice
from typing import Final

from probgen.input.remedy import Remedy
from probgen.input.text import is_seen, visible

MOST_TOLD: Final = 200
"""Faults of one message; more than that have one cause."""
_LONGEST_SHOWN: Final = 80
_MOST_LISTED: Final = 24
"""Words that a message lists; of more it gives the first few and their number."""
_FEW: Final = 12
_NEAR: Final = 0.7
"""How alike two words are, from 0 to 1, for one to be a slip of the other."""
_LONG: Final = 4
"""Letters of a word that is looked for within others."""
_PLACED: Final = re.compile(r"\[(\d{1,9})\](\.)?")


@dataclass(frozen=True, slots=True)
class Fault:
    """One mistake in one place.

    file: or whatever else was read; field: where in it ("hinge[0].at", for people "hinge 1, at"),
    "" for the whole.
    found: the value as typed, "" when something is missing; expected: what would be right.
    mend: what to do about it, "" when `expected` says it all.
    remedy: what the front end has to offer besides, in its own words.
    asked: whether it was typed with what is asked for, and stands in no file: `field` is then what
    the task calls it ("note"), and the front end puts its own name for it there.
    """

    file: str
    field: str
    found: str
    expected: str
    mend: str = ""
    remedy: Remedy | None = None
    asked: bool = False

    def __str__(self) -> str:
        place = ": ".join(filter(None, (self.file, counted_from_one(self.field))))
        lines = [f"found     {self.found}" if self.found else "found     nothing"]
        lines.append(f"expected  {self.expected}")
        lines += [f"mend      {self.mend}"] if self.mend else []
        return "\n    ".join([place, *lines])


class InputError(Exception):
    """Input that cannot be used, with every fault found in it."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__(self.faults)

    def __str__(self) -> str:
        count = len(self.faults)
        head = "1 problem:" if count == 1 else f"{count} problems:"
        more = [f"and {count - MOST_TOLD} more"] if count > MOST_TOLD else []
        return "\n".join([head, *map(str, self.faults[:MOST_TOLD]), *more])


@dataclass(slots=True)
class Faults:
    """Faults gathered while reading one file goes on, and remarks on what is no fault.

    asked: as each fault has it.
    """

    file: str
    found: list[Fault] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    asked: bool = False

    def add(self, field: str, found: object, expected: str, mend: str = "") -> None:
        """Notes a fault; None as `found` means that something is missing."""
        own = Fault(self.file, field, shown(found), expected, mend, asked=self.asked)
        self.found.append(own)

    def remark(self, field: str, text: str) -> None:
        """Notes what a person should know, and need not mend at once."""
        self.remarks.append(f"{self.file}: {counted_from_one(field)}: {text}")

    def take(self, error: InputError) -> None:
        """Adds what another reading found."""
        self.found += error.faults

    def settle(self) -> None:
        """Raises InputError when there are faults."""
        if self.found:
            raise InputError(self.found)


def counted_from_one(field: str) -> str:
    """A field for people: "problem[0].template" is problem 1, template."""
    named = _PLACED.sub(lambda found: f" {int(found[1]) + 1}{', ' if found[2] else ''}", field)
    return named.strip()


def shown(value: object) -> str:
    """A value as its author would recognise it, cut short; "" for None."""
    return "" if value is None else _cut(_typed(value))


def _typed(value: object) -> str:
    """A value as it stands in a file."""
    match value:
        case str() if value.strip() and not is_seen(value):
            return f'"{ascii(value[:_LONGEST_SHOWN])[1:-1]}"'
        case str():
            return f'"{value[:_LONGEST_SHOWN]}{"..." if value[_LONGEST_SHOWN:] else ""}"'
        case bool():
            return str(value).lower()
        case dict():
            pairs = (f"{key} = {_typed(each)}" for key, each in islice(value.items(), 8))
            return f"{{ {', '.join(pairs)}{', ...' if len(value) > 8 else ''} }}"
        case list() | tuple():
            listed = ", ".join(map(_typed, value[:8]))
            return f"[{listed}{', ...' if len(value) > 8 else ''}]"
        case date() | time():
            return value.isoformat()
        case None:
            return "null"
        case _:
            return str(value)


def _cut(text: str) -> str:
    """A text on one line, as long as a line, with marks for what no terminal can show."""
    one_line = " ".join(text.split())
    if len(one_line) > _LONGEST_SHOWN:
        one_line = f"{one_line[: _LONGEST_SHOWN - 3]}..."
    return visible(one_line)


def nearest(word: object, known: Iterable[str]) -> str:
    """A suggestion for a misspelt word, "" when nothing is near or it is no word at all."""
    if not isinstance(word, str) or len(word) > _LONGEST_SHOWN:
        return ""
    small, by_small = word.lower(), {name.lower(): name for name in known}
    found = get_close_matches(small, by_small, 1, cutoff=_NEAR)
    found = found or [name for name in by_small if _parts(name) == _parts(small)]
    if not found and len(small) >= _LONG:
        found = [name for name in by_small if small in name]
    return f'did you mean "{by_small[found[0]]}"?' if len(found) == 1 else ""


def _parts(words: str) -> list[str]:
    """The words of a name whatever their order."""
    return sorted(re.findall(r"[^\W_]+", words))


def one_of(known: Iterable[str], what: str = "") -> str:
    """The words "one of a, b, c", for `expected`."""
    words = list(known)
    listed = ", ".join(words if len(words) <= _MOST_LISTED else words[:_FEW])
    if len(words) > _MOST_LISTED:
        listed += f" and {len(words) - _FEW} more"
    return f"one of {what}{listed}" if listed else f"nothing, for there are no {what or 'choices'}"
