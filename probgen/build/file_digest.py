"""By what a file is known again: its size and a digest of its content."""

from __future__ import annotations

import hashlib
from pathlib import Path

_Stamp = tuple[int, int, int, int]
_known: dict[_Stamp, str] = {}
"""Digests of files read before in this process, by disk, number, size and time of the file itself:
what lies at two places, or is asked for by the build and then by its delivery, is read once."""


def digest_of_content(content: bytes) -> str:
    """What `file_digest` gives for a file with this content."""
    return hashlib.blake2b(content, digest_size=16).hexdigest()


def file_digest(path: Path) -> str:
    """The digest of a file's content.  Raises OSError when it cannot be read."""
    state = path.stat()
    stamp = (state.st_dev, state.st_ino, state.st_size, state.st_mtime_ns)
    if stamp not in _known:
        _known[stamp] = digest_of_content(path.read_bytes())
    return _known[stamp]


def file_mark(path: Path) -> tuple[int, str]:
    """Size and digest of a file.  Raises OSError when it cannot be read."""
    return path.stat().st_size, file_digest(path)
