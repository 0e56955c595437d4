"""What LuaTeX's font loader works out about a font it meets first, kept between runs.

Every run unpacks it into a folder of its own: what a run writes there, no other run will read.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Final

from probgen.press.cached_file import find, keep, mark_of
from probgen.press.engine import engine, engine_version, run_tex
from probgen.press.temp_folder import workroom
from probgen.sheets.latex.script import SCRIPTS, Script

PROGRAM: Final = "lualatex"
_FOLDER: Final = "var"
"""TeX's own variable files, in the folder of a run."""
_SECONDS: Final = 120.0
_LATIN: Final = ("regular", "bold", "italic", "bolditalic")


def unpack_fonts(
    names: Iterable[str], folder: Path, surroundings: Mapping[str, str], readable: Iterable[Path]
) -> None:
    """Puts what is known of the fonts of some scripts into the folder of a run.

    surroundings, readable: as LuaTeX needs them, for fonts that are met first.
    """
    (folder / _FOLDER).mkdir()
    for name in sorted(names):
        if name in SCRIPTS:
            with zipfile.ZipFile(_kept(SCRIPTS[name], surroundings, readable)) as kept:
                kept.extractall(folder / _FOLDER)


def places(folder: Path) -> dict[str, str]:
    """Where the font loader finds what is known, as environment variables."""
    return dict.fromkeys(("TEXMFVAR", "TEXMFCACHE"), str(folder / _FOLDER))


def _kept(script: Script, surroundings: Mapping[str, str], readable: Iterable[Path]) -> Path:
    begin, end = r"\documentclass{article}\begin{document}", r"\end{document}"
    body = "\n".join([begin, *_fonts(script), end])
    mark = mark_of(engine_version(engine(PROGRAM)), body)
    found = find("fonts", mark)
    if found:
        return found
    with workroom() as folder:
        (folder / _FOLDER).mkdir()
        (folder / "run.tex").write_text(body, encoding="utf-8")
        surroundings = {**surroundings, **places(folder)}
        run_tex(["run.tex"], folder, _SECONDS, PROGRAM, surroundings, readable)
        return keep("fonts", mark, _packed(folder / _FOLDER), ".zip")


def _fonts(script: Script) -> Iterator[str]:
    r"""TeX that loads each font once: Latin Modern, and that of a script."""
    for shape in _LATIN:
        yield rf'\font\met="file:lmroman10-{shape}.otf:mode=node;+kern;+liga;"'
        yield r"\setbox0\hbox{\met x}"
    for file in (script.file, script.bold):
        yield rf'\font\met="file:{file}:mode=harf;script={script.tag};"'
        yield r"\setbox0\hbox{\met x}"


def _packed(folder: Path) -> bytes:
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as archive:
        for path in folder.rglob("*"):
            archive.write(path, path.relative_to(folder))
    return packed.getvalue()
