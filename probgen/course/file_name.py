"""Names of the files that people get: in their own script, and the same on every system.

Parts are lower-case letters, marks and digits of any script with hyphens between, in composed form
(NFC); codes stand as they are printed.  No two of a class are alike by case or normal form, since
each holds a code, and no code is given twice.
"""

from __future__ import annotations

import sys
import unicodedata
from typing import Final

_LONGEST: Final = 80
"""Bytes of one part: names of files have 255 at most, with their endings."""
_OWN_SCRIPT: Final = sys.getfilesystemencoding().lower().replace("-", "") == "utf8"
"""Whether names of files can have any letter here."""


def file_name(*parts: str, code: str = "", own_script: bool = _OWN_SCRIPT) -> str:
    """A file's name without its ending: "zoë-müller-s_8-7K3M-Q9TX".

    own_script: False writes Latin letters without accents, and leaves all others out.
    """
    return "-".join(filter(None, (*(_plain(part, own_script) for part in parts), code)))


def _plain(text: str, own_script: bool) -> str:
    """Letters, marks, digits and low lines; everything else is a hyphen, none of them double."""
    if own_script:
        text = unicodedata.normalize("NFC", text)
    else:
        text = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    kept = "".join(each if _is_kept(each) else "-" for each in text.lower())
    return _cut("-".join(filter(None, kept.split("-"))))


def _is_kept(letter: str) -> bool:
    return letter == "_" or unicodedata.category(letter)[0] in "LMN"


def _cut(text: str) -> str:
    """At most `_LONGEST` bytes, cut between letters and before none of their marks."""
    while len(text.encode()) > _LONGEST:
        text = text[:-1]
        while text and unicodedata.category(text[-1])[0] == "M":
            text = text[:-1]
    return text.strip("-")
