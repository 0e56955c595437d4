"""Seals by which a working folder and a list are known as this user's, not put there by another."""

from __future__ import annotations

import hashlib
import hmac
import os
import secrets
from functools import cache
from pathlib import Path
from typing import Final

from probgen.input.cache_folder import cache_folder, cached_bytes
from probgen.input.file import is_part, write_beside

SEAL: Final = "seal"
"""The file's name in the folder."""
_KEY_BYTES: Final = 32
_SIGNS: Final = 64


def seal(folder: Path) -> None:
    """Seals a folder, at the place where it lies."""
    write_beside(folder / SEAL, _expected(folder).encode())


def is_being_sealed(folder: Path) -> bool:
    """Whether nothing is in a folder but what a build leaves that was killed as it sealed it."""
    if folder.is_symlink() or not folder.is_dir():
        return False
    return all(_is_part_of_seal(path) for path in folder.iterdir())


def _is_part_of_seal(path: Path) -> bool:
    plain = path.is_file() and not path.is_symlink()
    return plain and is_part(path.name) and path.stat().st_size <= _SIGNS


def is_sealed(folder: Path) -> bool:
    """Whether this user has sealed a folder, and it lies where it did then; no link to one has."""
    if folder.is_symlink():
        return False
    found = cached_bytes(folder / SEAL)
    return found is not None and hmac.compare_digest(found, _expected(folder).encode())


def mark_of(content: bytes) -> str:
    """What nobody else can put beside a content."""
    return hmac.new(_key(), b"content " + content, hashlib.sha256).hexdigest()


def is_mark(found: str, content: bytes) -> bool:
    """Whether that is this user's mark of a content."""
    return hmac.compare_digest(found.encode("utf-8", "replace"), mark_of(content).encode())


def _expected(folder: Path) -> str:
    place = os.fsencode(folder.resolve())
    return hmac.new(_key(), place, hashlib.sha256).hexdigest()


def _key() -> bytes:
    """A secret of this user, drawn when there is none; where it cannot be kept, of this process."""
    path = cache_folder("builds") / "key"
    key = cached_bytes(path)
    if key is not None and len(key) == _KEY_BYTES:
        return key
    key = secrets.token_bytes(_KEY_BYTES)
    try:
        write_beside(path, key)
        path.chmod(0o600)
    except OSError:  # no room: a build that is stopped will not be known again
        return _key_of_this_process()
    return key


@cache
def _key_of_this_process() -> bytes:
    return secrets.token_bytes(_KEY_BYTES)
