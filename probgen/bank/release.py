"""A release of a department's bank: which revision of which template, and by which text.

A TOML file in the bank's folder releases/, named after the release:

    release = "statics-2027.1"
    bank = "statics"
    date = 2027-08-15
    by = "A. Keeper"
    follows = "statics-2026.2"    # the release before; none for the first
    digest = "..."                # of all else in this file: nobody edits a release
    changes = [                   # since then, for colleagues to read
        "reworded: forearm-load (r1 -> r2)",
    ]

    [[template]]
    id = "forearm-load"
    revision = 2
    text = "..."                  # SHA-256 of the template's file
    physics = "..."               # the fingerprint of its system
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from hashlib import sha256
from pathlib import Path
from typing import Any, Final

from probgen.input.fault import Fault, Faults
from probgen.input.table import Table
from probgen.input.toml import read_toml

NAME: Final = re.compile(r"[a-z][a-z0-9]*([.-][a-z0-9]+)*")
"""Of a release, which is its file's name too."""
MOST_TEMPLATES: Final = 10_000
MOST_CHANGES: Final = 20_000
"""Lines that tell of them; what is more is left to a comparison."""
LONGEST_NAME: Final = 60
"""Letters of a release's name."""
_LONGEST: Final = 1000 * MOST_TEMPLATES
"""Characters of a release."""
_DIGEST: Final = re.compile(r"[0-9a-f]{64}")
_FINGERPRINT: Final = re.compile(r"[0-9a-f]{32}")


@dataclass(frozen=True, slots=True)
class Released:
    """A template in a release.

    text: SHA-256 of its file's text; physics: the fingerprint of its system; hexadecimal both.
    """

    id: str
    revision: int
    text: str
    physics: str


@dataclass(frozen=True, slots=True)
class Release:
    """by: who released it; follows: the release before, "" for the first.

    changes: what is other than in that, lines for colleagues to read; templates: by their ids.
    """

    name: str
    bank: str
    date: date
    by: str
    follows: str
    changes: tuple[str, ...]
    templates: Mapping[str, Released]


def text_digest(text: str) -> str:
    """By which a released template's text is known again, whatever ends its lines."""
    return sha256(text.replace("\r\n", "\n").encode("utf-8", "surrogatepass")).hexdigest()


def sealed(content: Mapping[str, Any]) -> str:
    """The digest of a release's fields, as TOML has them, without the digest itself."""
    rest = {key: value for key, value in content.items() if key != "digest"}
    said = json.dumps(rest, ensure_ascii=False, sort_keys=True, default=str)
    return sha256(said.encode("utf-8", "surrogatepass")).hexdigest()


def read_release(path: Path) -> Release:
    """The release in a file.  Raises InputError with every fault, and where it was edited."""
    faults = Faults(str(path))
    content = read_toml(path, "release of a bank", _LONGEST)
    top = Table(content, "", faults)
    name, bank = top.text("release"), top.text("bank")
    if name and name != path.stem:
        top.fault("release", name, f'"{path.stem}", as the file is named', "rename one of them")
    by, follows = top.text("by", ""), top.text("follows", "")
    changes = top.texts("changes", most=MOST_CHANGES)
    day = _day(top)
    rows = [_released(row) for row in top.tables("template", MOST_TEMPLATES)]
    known = {row.id: row for row in rows}
    if len(known) < len(rows):
        top.fault("template", "an id twice", "every template once", "take the release as it was")
    digest = top.text("digest")
    top.close()
    if not faults.found and digest != sealed(content):
        mend = "take it as it was made (the version control has it), or make another release"
        found, expected = "a release that was edited", "one as it was made"
        faults.found.append(Fault(str(path), "digest", found, expected, mend))
    faults.settle()
    return Release(name, bank, day, by, follows, changes, known)


def release_text(release: Release) -> str:
    """The file of a release, as `read_release` reads it."""
    rows = [
        {"id": each.id, "revision": each.revision, "text": each.text, "physics": each.physics}
        for each in release.templates.values()
    ]
    head = {"release": release.name, "bank": release.bank, "date": release.date, "by": release.by}
    head |= {"follows": release.follows} if release.follows else {}
    changes = {"changes": list(release.changes)} if release.changes else {}
    digest = sealed({**head, **changes, "template": rows})
    lines = [*_assigned({**head, "digest": digest}), *_listed(release.changes)]
    for row in rows:
        lines += ["", "[[template]]", *_assigned(row)]
    return "\n".join(
        ("# Nobody edits a release: what is to be other goes into the next.", *lines, "")
    )


def _assigned(fields: Mapping[str, Any]) -> Iterator[str]:
    return (f"{key} = {_typed(value)}" for key, value in fields.items())


def _listed(changes: tuple[str, ...]) -> Iterator[str]:
    if changes:
        yield "changes = ["
        yield from (f"    {_typed(line)}," for line in changes)
        yield "]"


def _typed(value: object) -> str:
    """A value in TOML; its texts are those of JSON, as long as they hold no control character."""
    return json.dumps(value, ensure_ascii=False) if isinstance(value, str) else str(value)


def newest(releases: Iterable[Release]) -> Release | None:
    """The last release: of those that none follows, the one with the latest date."""
    known = tuple(releases)
    followed = {each.follows for each in known}
    last = [each for each in known if each.name not in followed] or known
    return max(last, key=lambda each: (each.date, each.name), default=None)


def _day(top: Table) -> date:
    day = top.value("date", "a date such as 2027-08-15", required=True)
    if type(day) is date:
        return day
    if day is not None:
        top.fault("date", day, "a date such as 2027-08-15, without quotes")
    return date.min


def _released(row: Table) -> Released:
    found = Released(
        row.text("id"), row.whole("revision", 1, 1_000_000), row.text("text"), row.text("physics")
    )
    for key, value, form in (
        ("text", found.text, _DIGEST),
        ("physics", found.physics, _FINGERPRINT),
    ):
        if value and not form.fullmatch(value):
            row.fault(key, value, "a digest in hexadecimal digits", "take the release as it was")
    row.close()
    return found
