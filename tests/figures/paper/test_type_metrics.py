"""The table of character sizes against what TeX itself measures."""

from __future__ import annotations

import re
import shutil
import subprocess
from decimal import Decimal
from pathlib import Path

import pytest

from probgen.figures.paper.type_metrics import SIZE, extent
from probgen.quantities.expression import Name, Number
from probgen.quantities.printing import latex
from probgen.quantities.unit import UNITS

SYMBOLS = ("theta", "R_x", "W_shelf", "d_2", "N_w", "B", "J_y", "f", "mu", "m_1", "ell", "T")
NUMBERS = (
    ("1.70", "m"), ("36.5", "cm"), ("40", "deg"), ("245", "N"), ("12000", "N"), ("22.5", "kg"),
    ("-4.90", "N*m"),
)  # fmt: skip
TEXTS: tuple[Name | Number, ...] = (
    *(Name(symbol, symbol) for symbol in SYMBOLS),
    *(Number(Decimal(digits), UNITS[unit]) for digits, unit in NUMBERS),
)


@pytest.fixture(scope="module")
def measured(tmp_path_factory: pytest.TempPathFactory) -> list[tuple[float, float, float]]:
    """Width, height and depth of each text as pdfLaTeX sets it (pt)."""
    if shutil.which("pdflatex") is None:
        pytest.skip("pdflatex is not installed")
    folder: Path = tmp_path_factory.mktemp("metrics")
    boxes = "".join(
        rf"\setbox0\hbox{{${latex(text)}$}}\typeout{{SIZE \the\wd0 \the\ht0 \the\dp0}}"
        for text in TEXTS
    )
    (folder / "a.tex").write_text(
        r"\documentclass{article}\usepackage[T1]{fontenc}\usepackage{lmodern,amsmath}"
        rf"\begin{{document}}\fontsize{{{SIZE}}}{{11}}\selectfont {boxes}\end{{document}}",
        encoding="utf-8",
    )
    subprocess.run(
        ["pdflatex", "-interaction=batchmode", "a.tex"], cwd=folder, check=True, capture_output=True
    )
    log = (folder / "a.log").read_text(encoding="latin-1")
    found = re.findall(r"^SIZE ([\d.]+)pt([\d.]+)pt([\d.]+)pt", log, re.MULTILINE)
    return [(float(w), float(h), float(d)) for w, h, d in found]


def test_sizes_are_those_of_tex(measured: list[tuple[float, float, float]]) -> None:
    assert len(measured) == len(TEXTS)
    for text, (width, height, depth) in zip(TEXTS, measured, strict=True):
        room = extent(text)
        assert width - 0.4 <= room.width <= width + 1.1, text
        assert height - 0.1 <= room.height <= height + 0.8, text
        assert depth - 0.1 <= room.depth <= depth + 2.0, text


def test_equal_values_with_more_digits_take_more_room() -> None:
    short, long = (Number(Decimal(digits), UNITS["m"]) for digits in ("1.7", "1.70"))
    assert extent(long).width > extent(short).width + 4.0


def test_small_print_is_wider_in_proportion() -> None:
    """A box of these words in lmr at 7 pt, as TeX Live 2022 sets it: 66.1 and 89.5 pt."""
    assert 66.1 - 0.4 <= extent("arrows not to scale", 7.0).width <= 66.1 + 3.0
    assert 89.5 - 0.4 <= extent("ticks: action and reaction", 7.0).width <= 89.5 + 3.0
