"""What a build has made in its folder, so that a later one replaces that and nothing else.

The list bears the mark of the user whose build wrote it.  One without, as of another machine or put
there by somebody else, tells what may have been made; nothing is taken away on its word.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from types import MappingProxyType
from typing import Final

from probgen.build.file_digest import file_digest
from probgen.build.seal import is_mark, mark_of
from probgen.input.fault import InputError
from probgen.input.file import naming, read_text

MANIFEST: Final = ".made.json"
"""Lies in the folder: the digest of each file made, by its path."""
_MARK: Final = ""
"""Where the mark stands among the paths."""


def write_manifest(folder: Path, known: Mapping[str, str] = MappingProxyType({})) -> None:
    """Notes what is in a folder as made by a build; known: digests of files, by their paths."""
    names = {path.relative_to(folder).as_posix(): path for path in _files(folder)}
    made = {name: known.get(name) or file_digest(path) for name, path in names.items()}
    made = dict(sorted(made.items()))
    text = json.dumps({_MARK: mark_of(_content(made)), **made}, indent=0, ensure_ascii=False)
    with naming(folder / MANIFEST):
        (folder / MANIFEST).write_text(text, encoding="utf-8")


def made_in(folder: Path) -> Mapping[str, str]:
    """The digests of what a build has made in a folder; empty when none has."""
    return {name: digest for name, digest in _read(folder).items() if name != _MARK}


def is_of_this_user(folder: Path) -> bool:
    """Whether a build of this user has written the list of what was made in a folder."""
    return is_mark(_read(folder).get(_MARK, ""), _content(made_in(folder)))


def made_by_this_user(folder: Path) -> Mapping[str, str]:
    """The digests of what a build of this user has made in a folder; empty for another's."""
    return made_in(folder) if is_of_this_user(folder) else {}


def is_as_made(path: Path, digest: str | None) -> bool:
    """Whether a file is still the one of a digest; None for one that no build has made."""
    return digest is not None and _is_plain(path) and file_digest(path) == digest


def own_files(folder: Path) -> Iterator[str]:
    """The files in a folder that no build has made there."""
    made = made_in(folder)
    names = (path.relative_to(folder).as_posix() for path in _files(folder))
    return (name for name in names if name not in made)


def edited_files(folder: Path) -> Iterator[str]:
    """The files that a build has made and somebody has changed since."""
    made = made_in(folder)
    for path in _files(folder):
        name = path.relative_to(folder).as_posix()
        if name in made and not is_as_made(path, made[name]):
            yield name


def _read(folder: Path) -> Mapping[str, str]:
    with suppress(InputError, ValueError, RecursionError):
        made = json.loads(read_text(folder / MANIFEST, "list of what a build has made"))
        if isinstance(made, dict):
            return {str(name): str(digest) for name, digest in made.items()}
    return {}


def _content(made: Mapping[str, str]) -> bytes:
    return json.dumps(sorted(made.items())).encode()


def _files(folder: Path) -> Iterator[Path]:
    """Every file below a folder but its manifest; links stand for themselves."""
    for path in sorted(folder.rglob("*")):
        if (path.is_symlink() or not path.is_dir()) and path != folder / MANIFEST:
            yield path


def _is_plain(path: Path) -> bool:
    """Whether it is a file, and no link, device or pipe, which might never end."""
    return not path.is_symlink() and path.is_file()
