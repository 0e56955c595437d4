"""LuaLaTeX, for documents in scripts that pdfLaTeX has no fonts for."""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Final

from probgen.input.outside import OutsideError
from probgen.press.enclosure import there
from probgen.press.engine import Run, run_tex, tex_trees
from probgen.press.font_cache import PROGRAM, places, unpack_fonts
from probgen.press.format_cache import source
from probgen.sheets.latex.alphabet import ALPHABETS
from probgen.sheets.latex.script import SCRIPTS, Script, alphabets_used, scripts_needed

DEBIAN_PACKAGE: Final = "texlive-luatex"
_FOLDERS: Final = (
    "/usr/share/fonts", "/usr/local/share/fonts", "~/.fonts", "~/.local/share/fonts",
    "/Library/Fonts", "~/Library/Fonts",
)  # fmt: skip
_CLOSED: Final = "closed.lua"
_CLOSE: Final = rf"\directlua{{dofile('{_CLOSED}')}}"
_TAKE_AWAY: Final = r"\AtBeginDocument{\directlua{closelua()}}"


def run_scripts(
    preamble: str, main: str, folder: Path, seconds: float, scripts: Iterable[str]
) -> Run:
    """Runs LuaLaTeX on a main part with its preamble, as run.tex in a folder.

    What is read of the system is what pdfLaTeX reads, and fonts; Lua is closed (`closed.lua`), and
    for the main part gone.  No format is dumped, as LuaTeX's fonts cannot be.  Raises OutsideError
    as `run_tex` does.
    """
    readable = there(_font_folders())
    unpack_fonts(scripts, folder, _fonts(), readable)
    open_to_lua = ";".join([*tex_trees(), *map(str, (folder, *readable))])
    surroundings = {**_fonts(), **places(folder), "press_readable": open_to_lua}
    parts = (_CLOSE, source(preamble), _TAKE_AWAY, main)
    (folder / "run.tex").write_text("\n".join(parts), encoding="utf-8")
    (folder / _CLOSED).write_bytes((files("probgen.press") / _CLOSED).read_bytes())
    return run_tex(["-nosocket", "run.tex"], folder, seconds, PROGRAM, surroundings, readable)


def scripts_used(body: str) -> frozenset[str]:
    """The scripts LuaLaTeX needs fonts for to print a document's LaTeX, none if pdfLaTeX can."""
    needed, spelled = scripts_needed(body), alphabets_used(body)
    if needed or (spelled and not spelled <= fast_scripts()):  # what is there takes long to see
        return needed | spelled
    return frozenset()


@cache
def fast_scripts() -> frozenset[str]:
    """The scripts beside Latin that pdfLaTeX has the fonts for on this machine."""
    return frozenset(name for name, alphabet in ALPHABETS.items() if _is_there(alphabet.font))


def require_scripts(names: Iterable[str]) -> None:
    """Raises OutsideError, naming Debian's packages, when LuaLaTeX or a font is missing.

    names: of scripts, as in `SCRIPTS`; those there are not are TeX's to complain about.
    """
    wanted = [SCRIPTS[name] for name in sorted(names) if name in SCRIPTS]
    if shutil.which(PROGRAM) is None:
        failed = f"{PROGRAM} was not found, which {_told(wanted)} text needs"
        packages = {DEBIAN_PACKAGE, *(script.package for script in wanted)}
        raise OutsideError(failed, _install(packages))
    missing = [script for script in wanted if not _is_there(script.font)]
    if missing:
        fonts = ", ".join(dict.fromkeys(script.font for script in missing))
        failed = f"the font for {_told(missing)} text was not found: {fonts}"
        raise OutsideError(failed, _install({script.package for script in missing}))


def _told(scripts: Iterable[Script]) -> str:
    return " and ".join(script.name.capitalize() for script in scripts)


def _install(packages: Iterable[str]) -> str:
    return (
        f"on Debian or Ubuntu: apt-get install {' '.join(sorted(packages))}; "
        "elsewhere install TeX Live in full and the Noto fonts"
    )


def _fonts() -> dict[str, str]:
    return {"OSFONTDIR": os.pathsep.join(f"{folder}//" for folder in _font_folders())}


def _font_folders() -> list[str]:
    return [os.path.expanduser(folder) for folder in _FOLDERS]


@cache
def _is_there(font: str) -> bool:
    kpsewhich = shutil.which("kpsewhich")
    if kpsewhich is None:
        return True  # LuaTeX will tell
    surroundings = os.environ | _fonts()
    found = subprocess.run([kpsewhich, font], capture_output=True, env=surroundings, check=False)
    return bool(found.stdout.strip())
