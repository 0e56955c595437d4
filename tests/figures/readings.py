"""Figures of whole templates, typeset and read back from the PDF, in the scene's own frame."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import pdfplumber
import pytest

from probgen.bank.reading import read_template
from probgen.figures.paper.scene import Box, Label, Scene, Segment
from probgen.figures.paper.segment import meets
from probgen.figures.paper.type_metrics import extent
from probgen.figures.writers.latex import latex_picture
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.problem.problem_figures import every_scene
from probgen.quantities.unit import US_CUSTOMARY
from probgen.working.convention import Convention

ROOT = Path(__file__).parents[2]
TEMPLATES = sorted((ROOT / "templates").rglob("*.toml"))
PUBLISHED = sorted(
    path for path in (ROOT / "tests" / "published").glob("*.toml")
    if path.stem not in ("answers", "not-yet")
)  # fmt: skip
POINT = 72.0 / 72.27
_PIECES = 12  # that a bend is taken apart into
MARGIN = 1.0  # around a picture, pt
_HEAD = r"""\documentclass{article}
\usepackage[T1]{fontenc}\usepackage{lmodern,amsmath,pict2e}
\pagestyle{empty}\hoffset-1in\voffset-1in\oddsidemargin0pt\topmargin0pt\headheight0pt\headsep0pt
\topskip0pt\parindent0pt\parskip0pt\textwidth500pt\textheight700pt\maxdepth500pt
\begin{document}
"""


@cache
def prepared(path: Path) -> Problem:
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), Convention())


@cache
def customary(path: Path) -> Problem:
    """The problem in US customary units."""
    template = read_template(path.read_text(encoding="utf-8"), path.name, US_CUSTOMARY)
    return prepare(template, Convention(units=US_CUSTOMARY))


def solved(problem: Problem, count: int) -> tuple[Worked, ...]:
    draws = draw_class(problem, "figures", [str(i) for i in range(count)]).draws
    return work(problem, draws)


def scenes_of(problem: Problem, own: Worked) -> list[Scene]:
    """The situation of a sheet, and the free-body diagram of every body."""
    return [scene for _, scene in every_scene(problem, own)]


@dataclass(frozen=True, slots=True)
class Type:
    """A piece of type as the PDF has it: its ends and its baseline (pt, the scene's frame)."""

    text: str
    left: float
    right: float
    baseline: float


@dataclass(frozen=True, slots=True)
class Page:
    """A scene's figure read back: the straight pieces of its strokes, and its type."""

    strokes: tuple[Segment, ...]
    type: tuple[Type, ...]


def typeset(scenes: Sequence[Scene], folder: Path) -> Iterator[Page]:
    """The figures printed one a page and read back."""
    if shutil.which("pdflatex") is None:
        pytest.skip("pdflatex is not installed")
    pages = "\\newpage\n".join(latex_picture(scene) for scene in scenes)
    (folder / "a.tex").write_text(_HEAD + pages + "\\end{document}", encoding="utf-8")
    subprocess.run(
        ["pdflatex", "-interaction=batchmode", "a.tex"],
        cwd=folder, check=True, capture_output=True,
    )  # fmt: skip
    with pdfplumber.open(folder / "a.pdf") as pdf:
        for scene, page in zip(scenes, pdf.pages, strict=True):
            yield _read(scene, page)
            page.close()


def _read(scene: Scene, page: pdfplumber.page.Page) -> Page:
    left, top = scene.box.left - MARGIN, scene.box.top + MARGIN
    strokes = tuple(
        (left + a[0] / POINT, top - a[1] / POINT, left + b[0] / POINT, top - b[1] / POINT)
        for drawn in (*page.lines, *page.curves, *page.rects)
        for a, b in pairwise(_run(drawn))
    )
    height = float(page.height)
    type_ = tuple(
        Type(
            c["text"],
            left + c["x0"] / POINT,
            left + c["x1"] / POINT,
            top - (height - c["matrix"][5]) / POINT,
        )
        for c in page.chars
        if c["text"].strip()
    )
    return Page(strokes, type_)


def _run(drawn: Mapping[str, Any]) -> list[tuple[float, float]]:
    """The places a stroke of the PDF passes through, its bends in straight pieces."""
    run: list[tuple[float, float]] = []
    for command, *points in drawn.get("path") or ():
        if command != "c":
            run += points or run[:1]  # a closed stroke runs back to where it began
            continue
        spots = [complex(*point) for point in (run[-1], *points)]
        for i in range(1, _PIECES + 1):
            t = i / _PIECES
            shares = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3)
            spot = sum((share * spot for share, spot in zip(shares, spots, strict=True)), 0j)
            run.append((spot.real, spot.imag))
    return run or list(drawn["pts"])


def measured_box(label: Label, page: Page) -> Box:
    """The rectangle a label's type fills in the PDF; its height is that of its letters."""
    room = extent(label.text, label.size)
    reach = label.box.grown(0.8)
    own = [
        t for t in page.type
        if reach.left <= t.left and t.right <= reach.right
        and reach.bottom <= t.baseline <= reach.top
    ]  # fmt: skip
    assert own, f"no type found for {label.tag}"
    base = min(own, key=lambda t: t.left).baseline  # degree signs stand higher, subscripts lower
    return Box(
        min(t.left for t in own), base - room.depth, max(t.right for t in own), base + room.height
    )


def overlapping(scene: Scene, page: Page) -> list[str]:
    """Labels of the PDF that overlap another label or a stroke of it."""
    boxes = [(str(label.tag), measured_box(label, page)) for label in scene.labels]
    found = []
    for i, (tag, box) in enumerate(boxes):
        found += [f"{tag} / {other}" for other, b in boxes[i + 1 :] if box.overlaps(b)]
        found += [f"{tag} / {stroke}" for stroke in page.strokes if meets(stroke, box)]
    return found
