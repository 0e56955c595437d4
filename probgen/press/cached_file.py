"""Files kept between builds, named after what they were made from and what they hold.

One that was cut short, exchanged or written by somebody else does not hold what its name says: it
is taken away and made anew, which costs time and no build.
"""

from __future__ import annotations

import hashlib
from contextlib import suppress
from functools import cache
from pathlib import Path

from probgen.input.cache_folder import cache_folder, cached_bytes
from probgen.input.file import write_beside
from probgen.input.outside import OutsideError


def mark_of(*made_from: str) -> str:
    """What tells a kept file from those made from something else."""
    return hashlib.blake2b("\n".join(made_from).encode(), digest_size=16).hexdigest()


def find(kind: str, mark: str) -> Path | None:
    """The file kept under a mark, None when there is none that is whole."""
    for path in sorted(cache_folder(kind).glob(f"{mark}-*")):
        with suppress(OSError):
            found = path.stat()
            if _is_whole(path, (found.st_ino, found.st_mtime_ns, found.st_size)):
                return path
            path.unlink()
    return None


def keep(kind: str, mark: str, content: bytes, suffix: str) -> Path:
    """Writes a file and gives its path.  Raises OutsideError, naming the folder that is full."""
    path = cache_folder(kind) / f"{mark}-{_digest(content)}{suffix}"
    try:
        write_beside(path, content)
    except OSError as error:
        mend = "make room there, or set XDG_CACHE_HOME to another folder"
        raise OutsideError(f"{path.parent} cannot be written: {error.strerror}", mend) from None
    return path


@cache
def _is_whole(path: Path, state: tuple[int, ...]) -> bool:
    """Whether a file holds what its name says.  state: changes when its content does."""
    content = cached_bytes(path)
    return content is not None and path.stem.rpartition("-")[2] == _digest(content)


def _digest(content: bytes) -> str:
    return hashlib.blake2b(content, digest_size=16).hexdigest()
