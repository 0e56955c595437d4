"""One table of a TOML file, read key by key; every mistake is noted and reading goes on.

Each reading method gives a harmless stand-in after noting a fault, so that the rest of the file is
read too.  What nobody asked for when the table is closed is an unknown field.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from decimal import Decimal
from typing import Any, Final

from probgen.input.fault import Faults, nearest, one_of
from probgen.input.text import LONGEST_TEXT, is_seen

LONGEST_LIST: Final = 200
_NOTHING: Final[Mapping[str, str]] = {}


class Table:
    """A table at `path` ("hinge[0]", "" for the whole file)."""

    def __init__(self, content: Mapping[str, Any], path: str, faults: Faults) -> None:
        self.content = content
        self.path = path
        self.faults = faults
        self._known: list[str] = []

    def field(self, key: str) -> str:
        """The path of one key, for messages."""
        return f"{self.path}.{key}" if self.path else key

    def expect(self, *keys: str) -> None:
        """Names fields that may be read later, after the table is closed."""
        self._known += keys

    def has(self, key: str) -> bool:
        """Whether the field is there."""
        self._known.append(key)
        return key in self.content

    def rename(self, **names: str) -> None:
        """Takes fields by their former names (new = old) for one release, with a remark."""
        for new, old in names.items():
            if old not in self.content:
                continue
            if new in self.content:
                self.fault(old, old, f"{new} alone, which is its new name", f"remove {old}")
            else:
                told = f"is called {new} now, and will be read by that name alone"
                self.faults.remark(self.field(old), told)
            moved = {new if key == old else key: value for key, value in self.content.items()}
            self.content = {**moved, **{new: self.content.get(new, self.content[old])}}

    def fault(self, key: str, found: object, expected: str, mend: str = "") -> None:
        """Notes a fault of one field."""
        self.faults.add(self.field(key), found, expected, mend)

    def faulty(self, key: str) -> bool:
        """Whether the field has a fault already."""
        return any(fault.field == self.field(key) for fault in self.faults.found)

    def value(self, key: str, expected: str, required: bool) -> Any:
        """The raw value, None when there is none (a fault if it is required)."""
        self._known.append(key)
        value = self.content.get(key)
        if value is None and required:
            self.fault(key, None, expected, f"add {key} = ...")
        return value

    def text(
        self,
        key: str,
        default: str | None = None,
        expected: str = "text",
        most: int = LONGEST_TEXT,
    ) -> str:
        """A text; without a default it must be there.  "" stands in after a fault."""
        value = self.value(key, expected, default is None)
        if value is None:
            return default or ""
        if not isinstance(value, str) or (default is None and not is_seen(value)):
            self.fault(key, value, expected, f'write it in quotes: {key} = "..."')
            return default or ""
        if len(value) > most:
            self.fault(key, f"{len(value)} characters", f"at most {most} characters")
            return default or ""
        return value.strip()

    def word(
        self,
        key: str,
        known: Collection[str],
        default: str | None = None,
        meant: Mapping[str, str] = _NOTHING,
    ) -> str:
        """One of the known words; meant: what others stand for, for the mend."""
        value = self.text(key, default, one_of(known))
        if value in known or (value == (default or "") and self.content.get(key) != ""):
            return value
        if not self.faulty(key):
            mend = _did_you_mean(meant.get(value.casefold(), "")) or nearest(value, known)
            self.fault(key, value, one_of(known), mend)
        return default or ""

    def whole(self, key: str, least: int, most: int, default: int | None = None) -> int:
        """A whole number from `least` to `most`."""
        expected = f"a whole number from {least} to {most}"
        value = self.value(key, expected, default is None)
        if value is None:
            return least if default is None else default
        if type(value) is not int or not least <= value <= most:
            self.fault(key, value, expected)
            return least
        return value

    def decimal(self, key: str, required: bool = True) -> Decimal | None:
        """A finite number with its digits; None when there is none, or after a fault."""
        value = self.value(key, "a number", required)
        return None if value is None else self._finite(key, value)

    def number(self, key: str, usual: float, least: str, most: str) -> Decimal:
        """A number with its digits, from `least` to `most`; the usual one when it is not there."""
        found = self.decimal(key, required=False)
        if found is None:
            return Decimal(str(usual))
        if not Decimal(least) <= found <= Decimal(most):
            mend = f"the usual one is {Decimal(str(usual)).normalize():f}"
            self.fault(key, found, f"a number from {least} to {most}", mend)
        return found

    def decimals(self, key: str) -> tuple[Decimal, ...]:
        """A list of finite numbers."""
        values = (self._finite(f"{key}[{i}]", v) for i, v in enumerate(self._list(key, "numbers")))
        return tuple(value for value in values if value is not None)

    def flag(self, key: str, default: bool = False) -> bool:
        """true or false; the default when it is not there."""
        value = self.value(key, "true or false", False)
        if value is None:
            return default
        if not isinstance(value, bool):
            self.fault(key, value, "true or false, without quotes")
        return value is True

    def texts(self, key: str, required: bool = False, most: int = LONGEST_LIST) -> tuple[str, ...]:
        """A list of texts, at most so many."""
        if not required and key not in self.content:
            self._known.append(key)
            return ()
        values = self._list(key, "texts", most)
        for place, value in enumerate(values):
            if not isinstance(value, str):
                self.fault(f"{key}[{place}]", value, "a text in quotes")
            elif len(value) > LONGEST_TEXT:
                found = f"{len(value)} characters"
                self.fault(f"{key}[{place}]", found, f"at most {LONGEST_TEXT} characters")
        return tuple(value for value in values if isinstance(value, str))

    def table(self, key: str) -> Table:
        """A table within this one; an empty one when it is not there."""
        value = self.value(key, "a table", False)
        if value is not None and not isinstance(value, dict):
            self.fault(key, value, f"a table: [{self._heading(key)}]")
        return Table(value if isinstance(value, dict) else {}, self.field(key), self.faults)

    def tables(self, key: str, most: int = LONGEST_LIST) -> list[Table]:
        """The tables of an array of tables, such as [[cable]]; at most so many."""
        value = self.value(key, "tables", False)
        if value is None:
            return []
        if not isinstance(value, list) or not all(isinstance(entry, dict) for entry in value):
            heading = f"[[{self._heading(key)}]]"
            mend = f"write {heading} in double brackets"
            self.fault(key, value, f"entries, each below a line {heading}", mend)
            return []
        if len(value) > most:
            self.fault(key, f"{len(value)} entries", f"at most {most}")
        entries = enumerate(value[:most])
        return [Table(entry, f"{self.field(key)}[{i}]", self.faults) for i, entry in entries]

    def rows(self) -> Iterator[tuple[str, Table]]:
        """Every entry of a table of tables, by its key, such as those of [given]."""
        if len(self.content) > LONGEST_LIST:
            self.faults.add(self.path, f"{len(self.content)} entries", f"at most {LONGEST_LIST}")
        for key in list(self.content)[:LONGEST_LIST]:
            if isinstance(self.content[key], dict):
                yield key, self.table(key)
            else:
                self.fault(key, self.content[key], f"a table: {key} = {{ ... }}")

    def close(self, meant: Mapping[str, str] = _NOTHING) -> bool:
        """Notes every field nobody read; True when there was none.

        meant: fields that other words stand for, for the mend.
        """
        unknown = [key for key in self.content if key not in self._known]
        known = sorted(set(self._known))
        for key in unknown:
            mend = _did_you_mean(meant.get(key.casefold(), "")) or nearest(key, known)
            self.fault(key, key, one_of(known, "the fields "), mend)
        return not unknown

    def _list(self, key: str, what: str, most: int = LONGEST_LIST) -> list[Any]:
        value = self.value(key, f"a list of {what}", True)
        if value is None:
            return []
        if not isinstance(value, list) or not value or len(value) > most:
            self.fault(key, value, f"a list of 1 to {most} {what}")
            return []
        return value

    def _heading(self, key: str) -> str:
        """What stands between brackets above a table within this one."""
        return re.sub(r"\[\d+\]", "", self.field(key))

    def _finite(self, key: str, value: object) -> Decimal | None:
        number = Decimal(value) if type(value) is int else value
        if not isinstance(number, Decimal) or not number.is_finite():
            self.fault(key, value, "a number, without quotes or unit", _as_number(key, value))
            return None
        if number and not -12 <= number.adjusted() <= 12:
            self.fault(key, value, "a number of ordinary size")
            return None
        return number


def _did_you_mean(word: str) -> str:
    return f'did you mean "{word}"?' if word else ""


def _as_number(key: str, value: object) -> str:
    """The mend for a number in quotes, or with a per cent sign."""
    text = value.strip().replace(",", ".") if isinstance(value, str) else ""
    if percent := re.fullmatch(r"(\d{1,9}(?:\.\d{1,9})?)\s*%", text):
        return f"write {key} = {Decimal(percent[1]).scaleb(-2).normalize():f}"
    if start := re.match(r"[+-]?\d{1,9}(\.\d{1,9})?", text):
        return f"write {key} = {start[0]}"
    return ""
