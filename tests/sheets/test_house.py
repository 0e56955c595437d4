"""A house's own layouts: what is read from a folder, and what a wrong folder gets."""

from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.sheets.house import (
    LARGEST_LAYOUT,
    LAYOUTS,
    MOST_LAYOUTS,
    USUAL,
    House,
    read_house,
    read_layouts,
)
from probgen.sheets.latex.layout import Layouts
from probgen.sheets.style import HouseStyle


def test_the_layouts_named_are_those_there_are() -> None:
    shipped = Path(__file__).parents[2] / "probgen" / "sheets" / "latex" / "layouts"
    assert sorted(LAYOUTS) == sorted(path.name for path in shipped.iterdir())


def test_every_layout_of_a_folder_is_read(tmp_path: Path) -> None:
    (tmp_path / "sheet.tex.j2").write_text("own <% include 'mark.j2' %>", encoding="utf-8")
    (tmp_path / "mark.j2").write_text("mark", encoding="utf-8")
    (tmp_path / "notes.txt").write_text("no layout", encoding="utf-8")
    house = House(layouts=read_layouts(tmp_path), folder=str(tmp_path))
    assert [name for name, _ in house.layouts] == ["mark.j2", "sheet.tex.j2"]
    assert Layouts(house)._print("sheet.tex.j2") == "own mark"


def test_a_house_has_a_style_layouts_both_or_neither(tmp_path: Path) -> None:
    (tmp_path / "mark.j2").write_text("mark", encoding="utf-8")
    (tmp_path / "sheet.tex.j2").write_text("own", encoding="utf-8")
    style = tmp_path / "house.toml"
    style.write_text('text = "sans"\n', encoding="utf-8")
    assert read_house(None, None) == USUAL
    assert read_house(None, tmp_path).layouts == read_layouts(tmp_path)
    assert read_house(None, tmp_path).folder == str(tmp_path)
    assert read_house(style, None) == House(HouseStyle(text="sans"))
    assert read_house(style, tmp_path).style.text == "sans"


def test_a_folder_without_layouts_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"preamble\.tex\.j2"):
        read_layouts(tmp_path)


def test_a_layout_that_is_no_text_is_refused(tmp_path: Path) -> None:
    (tmp_path / "key.tex.j2").write_bytes(b"\xe9")
    with pytest.raises(InputError, match="UTF-8"):
        read_layouts(tmp_path)


def test_a_layout_with_a_sign_that_no_record_holds_is_told_with_its_line(tmp_path: Path) -> None:
    (tmp_path / "key.tex.j2").write_text("one\ntwo\x0c\n")
    with pytest.raises(InputError, match=r"line 2\n.*\\x0c"):
        read_layouts(tmp_path)


def test_layouts_beyond_bounds_are_refused(tmp_path: Path) -> None:
    (tmp_path / "sheet.tex.j2").write_text("x" * (LARGEST_LAYOUT + 1))
    with pytest.raises(InputError, match="layout"):
        read_layouts(tmp_path)
    for number in range(MOST_LAYOUTS):
        (tmp_path / f"{number}.j2").touch()
    with pytest.raises(InputError, match=f"{MOST_LAYOUTS + 1} layouts"):
        read_layouts(tmp_path)
    (tmp_path / "sheet.tex.j2").write_text("x")
    (tmp_path / "0.j2").unlink()
    assert len(read_layouts(tmp_path)) == MOST_LAYOUTS
