"""Files kept between builds, named after what they were made from and what they hold.

One that was cut short, exchanged or written by somebody else does not hold what its name says: it
is taken away and made anew, which costs time and no build.
"""

from __future__ import annotations

import hashlib
from contextlib import suppress
from functools import cache
from pathlib import Path
from tempfile import gettempdir

from probgen.input.cache_folder import cache_folder, cached_bytes, folder_for_this_process
from probgen.input.file import write_beside
from probgen.input.outside import OutsideError


def mark_of(*made_from: str) -> str:
    """What tells a kept file from those made from something else."""
    return hashlib.blake2b("\n".join(made_from).encode(), digest_size=16).hexdigest()


_spare: dict[tuple[str, str], Path] = {}
"""What this process keeps elsewhere, by kind and mark, as the cache folder has no room."""


def find(kind: str, mark: str) -> Path | None:
    """The file kept under a mark, None when there is none that is whole."""
    spare = [_spare[kind, mark]] if (kind, mark) in _spare else []
    for path in [*sorted(cache_folder(kind).glob(f"{mark}-*")), *spare]:
        with suppress(OSError):
            found = path.stat()
            if _is_whole(path, (found.st_ino, found.st_mtime_ns, found.st_size)):
                return path
            path.unlink()
    return None


def keep(kind: str, mark: str, content: bytes, suffix: str) -> Path:
    """Writes a file and gives its path: in the cache folder, or for this process alone.

    Raises OutsideError, naming the folder, where there is no room for either.
    """
    name = f"{mark}-{_digest(content)}{suffix}"
    try:
        with suppress(OSError):
            return _written(cache_folder(kind) / name, content)
        path = _spare[kind, mark] = _written(folder_for_this_process(kind) / name, content)
    except OSError as error:
        failed = f"{cache_folder(kind)} and {gettempdir()} cannot be written: {error.strerror}"
        mend = "make room there, or set XDG_CACHE_HOME or TMPDIR to other folders"
        raise OutsideError(failed, mend) from None
    return path


def _written(path: Path, content: bytes) -> Path:
    write_beside(path, content)
    return path


@cache
def _is_whole(path: Path, state: tuple[int, ...]) -> bool:
    """Whether a file holds what its name says.  state: changes when its content does."""
    content = cached_bytes(path)
    return content is not None and path.stem.rpartition("-")[2] == _digest(content)


def _digest(content: bytes) -> str:
    return hashlib.blake2b(content, digest_size=16).hexdigest()
