"""Keyed choice: the same key gives the same choice on any machine and with any library release.

The choice is made from the BLAKE2b digest (RFC 7693) of the key's parts, each preceded by its
length so that no two keys read alike, and of a counter.  Digests that would favour some choices are
passed over, so every choice is equally likely.  Many numbers at once come from SHAKE-256 (FIPS 202)
of such parts.
"""

from __future__ import annotations

from hashlib import blake2b, shake_256
from typing import Final

import numpy as np
from numpy.typing import NDArray

_BYTES: Final = 16
_SPAN: Final = 1 << (8 * _BYTES)


def keyed_choice(count: int, *key: str | int) -> int:
    """A whole number from 0 to count - 1, fixed by the key.  ValueError when count is below 1."""
    if count < 1:
        raise ValueError("nothing to choose from")
    fair = _SPAN - _SPAN % count
    counter = 0
    while (number := _digest(key, counter)) >= fair:
        counter += 1
    return number % count


def keyed_numbers(count: int, *key: str | int) -> NDArray[np.uint64]:
    """So many whole numbers of 64 bits, fixed by the key."""
    return np.frombuffer(shake_256(_told_apart(key)).digest(8 * count), dtype="<u8")


def _digest(key: tuple[str | int, ...], counter: int) -> int:
    digest = blake2b(_told_apart((*key, counter)), digest_size=_BYTES)
    return int.from_bytes(digest.digest(), "big")


def _told_apart(parts: tuple[str | int, ...]) -> bytes:
    texts = [str(part).encode() for part in parts]
    return b"".join(len(text).to_bytes(8, "big") + text for text in texts)
