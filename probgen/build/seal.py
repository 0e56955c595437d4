"""A seal by which a working folder is known as begun by this user, and not put there by another."""

from __future__ import annotations

import hashlib
import hmac
import os
import secrets
from pathlib import Path
from typing import Final

from probgen.input.cache_folder import cache_folder, cached_bytes
from probgen.input.file import write_beside

_SEAL: Final = "seal"
_KEY_BYTES: Final = 32


def seal(folder: Path) -> None:
    """Seals a folder, at the place where it lies."""
    (folder / _SEAL).write_text(_expected(folder), encoding="ascii")


def is_sealed(folder: Path) -> bool:
    """Whether this user has sealed a folder, and it lies where it did then; no link to one has."""
    if folder.is_symlink():
        return False
    found = cached_bytes(folder / _SEAL)
    return found is not None and hmac.compare_digest(found, _expected(folder).encode())


def _expected(folder: Path) -> str:
    place = os.fsencode(folder.resolve())
    return hmac.new(_key(), place, hashlib.sha256).hexdigest()


def _key() -> bytes:
    """A secret of this user, drawn when there is none."""
    path = cache_folder("builds") / "key"
    key = cached_bytes(path)
    if key is None or len(key) != _KEY_BYTES:
        key = secrets.token_bytes(_KEY_BYTES)
        write_beside(path, key)
        path.chmod(0o600)
    return key
