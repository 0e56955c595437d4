"""JSON read within bounds, with one clear fault for what is wrong."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any, Final, NoReturn

from probgen.input.fault import Fault, InputError
from probgen.input.file import read_text
from probgen.input.text import unfit

MOST_VALUES: Final = 4_000_000
"""Values in a file.  10,000 students with 20 problems of 8 values each are 1.6 million."""
DEEPEST: Final = 12
"""Objects and lists in each other; a record has five."""
LONGEST_NUMBER: Final = 40
"""Characters of a number, as in TOML."""
# Control characters and half a surrogate pair, which JSON mostly escapes; the backslash may be an
# escaped one itself.
_SUSPECT: Final = re.compile(r"\\[bf]|\\u(?:00[0189]|007[fF]|[dD][89a-fA-F])|[\x7f-\x9f]")


def read_json(path: Path, kind: str, mend: str) -> Any:
    """The content of a JSON file; `kind` is what it should be, `mend` what to do when it is not.

    Raises InputError when it cannot be read, is no JSON, or exceeds a bound.
    """
    text = read_text(path, kind)
    try:
        return _parsed(text)
    except json.JSONDecodeError as error:
        found = f"{error.msg[:1].lower()}{error.msg[1:]}"
        raise InputError(
            [Fault(str(path), f"line {error.lineno}", found, f"a {kind} as JSON", mend)]
        ) from None
    except _UnfitError as error:
        raise InputError([Fault(str(path), "", str(error), f"a {kind} as JSON", mend)]) from None


class _UnfitError(Exception):
    """What JSON may hold and no file of ours does."""


def _parsed(text: str) -> Any:
    if text.count(",") + text.count("[") + text.count("{") > MOST_VALUES:
        raise _UnfitError(f"more than {MOST_VALUES} values")
    try:
        content = json.loads(
            text,
            parse_int=_whole,
            parse_float=_decimal,
            parse_constant=_constant,
            object_pairs_hook=_object,
        )
    except RecursionError:
        raise _UnfitError("lists nested too deeply") from None
    _judge(content, bool(_SUSPECT.search(text)))
    return content


def _whole(typed: str) -> int:
    if len(typed) > LONGEST_NUMBER:
        raise _UnfitError(f"a number of {len(typed)} digits")
    return int(typed)


def _decimal(typed: str) -> float:
    number = float(typed) if len(typed) <= LONGEST_NUMBER else float("inf")
    if number in (float("inf"), float("-inf")):
        raise _UnfitError(f"the number {typed[:LONGEST_NUMBER]}")
    return number


def _constant(typed: str) -> NoReturn:
    raise _UnfitError(f"{typed}, which is no number")


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        keys = [key for key, _ in pairs]
        double = next(key for key in keys if keys.count(key) > 1)
        raise _UnfitError(f"the field {double[:LONGEST_NUMBER]!a} twice")
    return found


def _judge(content: Any, texts: bool) -> None:
    """Refuses deep nesting and, where there can be any, texts that are none; no recursion."""
    level: list[Any] = [content]
    for _ in range(DEEPEST + 1):
        inner: list[Any] = []
        for value in level:
            if isinstance(value, dict):
                inner += value.values()
                inner += value.keys() if texts else ()
            elif isinstance(value, list):
                inner += value
            elif texts and isinstance(value, str) and (found := unfit(value, len(value))):
                raise _UnfitError(f"a text with {found} in it")
        level = inner if texts else [each for each in inner if isinstance(each, dict | list)]
        if not level:
            return
    raise _UnfitError("lists nested too deeply")
