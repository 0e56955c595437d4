"""House styles, and what is wrong with them."""

from pathlib import Path

import pytest

from probgen.input.fault import InputError
from probgen.sheets.house import House
from probgen.sheets.latex.layout import Layouts
from probgen.sheets.style import HouseStyle, read_style
from tests.sheets.pictures import PNG

WHOLE = """
text = "sans"
headings = "sans"
colour = "#1F3A5F"
header = "Westmere College"
logo = "arms.PNG"
logo_height = 9
figures = "colour"
paper = "a4"
"""
FAULTY = {
    "letters": ('text = "serif"', "text"),
    "colour": ('colour = "blue"', "colour"),
    "figures": ('figures = "grey"', "figures"),
    "paper": ('paper = "a3"', "paper"),
    "logo kind": ('logo = "arms.svg"', "logo"),
    "no logo": ('logo = "other.png"', "logo"),
    "no PDF in it": ('logo = "notes.pdf"', "logo"),
    "height": ("logo_height = 900", "logo_height"),
    "a field there is not": ('color = "#000000"', "color"),
    "no TOML": ("text = sans", "line 1"),
}
INKS = {"": "0,0,0", "#000000": "0,0,0", "#FF8000": "1,0.502,0", "#1f3A5f": "0.122,0.227,0.373"}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "arms.PNG").write_bytes(PNG)
    (tmp_path / "notes.pdf").write_bytes(b"no PDF")
    return tmp_path


def read(text: str, folder: Path) -> HouseStyle:
    path = folder / "style.toml"
    path.write_text(text, encoding="utf-8")
    return read_style(path)


def test_read(folder: Path) -> None:
    style = read(WHOLE, folder)
    assert style == HouseStyle(
        "sans", "sans", "#1F3A5F", "Westmere College", PNG, ".png", 9, "colour", "a4"
    )
    assert style.files == {"logo.png": PNG}


def test_nothing_said_is_the_plain_style(folder: Path) -> None:
    assert read("", folder) == HouseStyle()
    assert Layouts(House(HouseStyle())).preamble() == Layouts().preamble()


@pytest.mark.parametrize(("text", "field"), FAULTY.values(), ids=FAULTY)
def test_faults(text: str, field: str, folder: Path) -> None:
    with pytest.raises(InputError) as caught:
        read(text, folder)
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == (str(folder / "style.toml"), field)


def test_all_faults_at_once(folder: Path) -> None:
    with pytest.raises(InputError) as caught:
        read('text = "x"\ncolour = "y"\nlogo = "z"\nmore = 1', folder)
    assert {fault.field for fault in caught.value.faults} == {"text", "colour", "logo", "more"}


def test_a_file_there_is_not(folder: Path) -> None:
    with pytest.raises(InputError, match="correct the path"):
        read_style(folder / "none.toml")


@pytest.mark.parametrize(("colour", "ink"), INKS.items())
def test_inks(colour: str, ink: str) -> None:
    assert HouseStyle(colour=colour).ink == ink


def test_the_paper_of_the_house_goes_first() -> None:
    assert "a4paper" in Layouts(House(HouseStyle(paper="a4"))).preamble("letter")
