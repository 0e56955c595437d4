"""What the font loader finds out is found out once, and put into the folder of every run."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

import pytest

from probgen.press import font_cache
from probgen.press.font_cache import PROGRAM, places, unpack_fonts
from probgen.sheets.latex.script import SCRIPTS

GREEK, THAI = SCRIPTS["greek"], SCRIPTS["thai"]


class Loader:
    """LuaTeX as far as it matters here: it writes what it finds out into its own folder."""

    def __init__(self) -> None:
        self.sources: list[str] = []
        self.asked: list[tuple[Sequence[str], str, Mapping[str, str], list[Path]]] = []

    def run(
        self, arguments: Sequence[str], folder: Path, seconds: float, program: str,
        surroundings: Mapping[str, str], readable: Iterable[Path],
    ) -> None:  # fmt: skip
        self.sources.append((folder / "run.tex").read_text(encoding="utf-8"))
        self.asked.append((arguments, program, surroundings, list(readable)))
        (inner := Path(surroundings["TEXMFVAR"], "luatex-cache", "fonts")).mkdir(parents=True)
        assert inner.is_relative_to(folder)
        (inner / f"{len(self.sources)}.luc").write_text("found")


@pytest.fixture
def loader(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Loader:
    own = Loader()
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr(font_cache, "run_tex", own.run)
    monkeypatch.setattr(font_cache, "engine", lambda program: program)
    monkeypatch.setattr(font_cache, "engine_version", lambda path: f"{path} 1.15")
    return own


def unpacked(folder: Path, *names: str) -> set[str]:
    folder.mkdir()
    unpack_fonts(names, folder, {"OSFONTDIR": "fonts"}, [Path("/fonts")])
    return {path.name for path in folder.rglob("*.luc")}


def test_fonts_are_met_once_and_known_ever_after(loader: Loader, tmp_path: Path) -> None:
    assert unpacked(tmp_path / "one", "greek") == {"1.luc"}
    assert unpacked(tmp_path / "two", "greek") == {"1.luc"}
    assert len(loader.sources) == 1
    assert unpacked(tmp_path / "three", "greek", "thai") == {"1.luc", "2.luc"}
    assert len(loader.sources) == 2
    assert unpacked(tmp_path / "four", "none of this name") == set()
    assert unpacked(tmp_path / "five") == set()
    for folder in ("one", "five"):
        assert Path(places(tmp_path / folder)["TEXMFVAR"]).is_dir()


def test_the_loader_meets_latin_letters_and_those_of_the_script(
    loader: Loader, tmp_path: Path
) -> None:
    unpacked(tmp_path / "one", "thai")
    (source,) = loader.sources
    fonts = re.findall(r'file:([^:"]+):', source)
    latin = [f"lmroman10-{shape}.otf" for shape in ("regular", "bold", "italic", "bolditalic")]
    assert fonts == [*latin, THAI.file, THAI.bold]
    assert source.count(f"script={THAI.tag};") == 2
    assert source.count(r"\setbox0\hbox{\met x}") == 6  # a font is loaded where it is used
    ((arguments, program, surroundings, readable),) = loader.asked
    assert (arguments, program, readable) == (["run.tex"], PROGRAM, [Path("/fonts")])
    assert surroundings["OSFONTDIR"] == "fonts"


def test_another_loader_meets_them_anew(
    loader: Loader, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    unpacked(tmp_path / "one", "greek")
    monkeypatch.setattr(font_cache, "engine_version", lambda path: f"{path} 1.16")
    unpacked(tmp_path / "two", "greek")
    assert len(loader.sources) == 2


def test_every_run_has_what_it_writes_to_itself(tmp_path: Path) -> None:
    assert places(tmp_path / "one") != places(tmp_path / "two")
    assert set(places(tmp_path)) == {"TEXMFVAR", "TEXMFCACHE"}
    assert all(Path(path).parent == tmp_path for path in places(tmp_path).values())
