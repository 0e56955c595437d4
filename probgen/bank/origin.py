"""Where a template comes from, and what using it takes: never on a sheet, always in a catalogue."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

from probgen.input.fault import InputError
from probgen.input.table import Table
from probgen.input.toml import parse_toml

_LANGUAGE: Final = re.compile(r"[a-z]{2,3}(-[A-Za-z0-9]{2,8})*")
FIELDS: Final = ("minutes", "origin")
"""What is read here, and is on no paper."""
LONGEST_WORK: Final = 600
"""Minutes."""


@dataclass(frozen=True, slots=True)
class Origin:
    """Who wrote a template, after what, and how others may use it; "" for what nobody said.

    language: of its texts, a tag as in BCP 47 ("en", "pt-BR").
    replaces: the id of the template that it takes the place of.
    minutes: of a student's work, 0 where nobody said.
    """

    author: str = ""
    source: str = ""
    licence: str = ""
    language: str = ""
    replaces: str = ""
    minutes: int = 0

    @property
    def lacking(self) -> Iterator[str]:
        """The fields that a release needs and that say nothing."""
        for name in ("author", "source", "licence", "language"):
            if not getattr(self, name):
                yield f"origin.{name}"
        if not self.minutes:
            yield "minutes"


UNSAID: Final = Origin()


def read_origin(top: Table) -> Origin:
    """The fields of [origin], and minutes, of a template's file; all may be left out."""
    own = top.table("origin")
    language = own.text("language", "")
    if language and not _LANGUAGE.fullmatch(language):
        own.fault("language", language, 'a language\'s tag, such as "en" or "pt-BR"')
    found = Origin(
        author=own.text("author", ""),
        source=own.text("source", ""),
        licence=own.text("licence", ""),
        language=language,
        replaces=own.text("replaces", ""),
        minutes=top.whole("minutes", 1, LONGEST_WORK, default=0),
    )
    own.close()
    return found


def same_on_paper(one: str, other: str) -> bool:
    """Whether two texts of a template differ at most in what is on no paper of a class: where it
    comes from, what time it takes, what of its answers may vary, comments.
    """
    try:
        return _rest(one) == _rest(other)
    except InputError:
        return one == other


def _rest(text: str) -> str:
    """All else that a text says, in its order: quantities are drawn in theirs."""
    content = parse_toml(text, "")
    rest = {key: content[key] for key in content if key not in FIELDS}
    if isinstance(rest.get("find"), list):
        rest["find"] = [_without_varies(row) for row in rest["find"]]
    return json.dumps(rest, default=str)


def _without_varies(row: Any) -> Any:
    return {key: row[key] for key in row if key != "varies"} if isinstance(row, dict) else row
