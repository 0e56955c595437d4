"""Makes the pictures of output/gallery, which the README shows.

Run by `make gallery`: two pages of a small class as PNG, figures of single problems as SVG, and a
contact sheet of every part a figure can be made of.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

from probgen.bank.proportions import drawn_sizes
from probgen.build.build import Order, build_assignment
from probgen.build.demo import SECRET, write_demo
from probgen.build.workers import Crew
from probgen.figures.freebody.diagram import free_body
from probgen.figures.situation.drawing import situation
from probgen.figures.situation.shape import look_of
from probgen.figures.writers.svg import svg
from probgen.problem.problem import Worked
from probgen.problem.single import work_single
from tests.gallery.part_scenes import part_scenes

FIGURES = (
    ("forearm-load", "situation"),
    ("forearm-load", "free-body"),
    ("ladder-smooth-wall", "situation"),
    ("beam-stay-cable", "free-body"),
)
"""Template and kind of the figures shown one by one."""
DOTS_PER_INCH = 80
COLUMNS = 5
CELL = 165
CAPTION = 'font-family="serif" font-size="11"'


def pages(folder: Path, into: Path) -> None:
    """A page of a sheet and a page of its key."""
    assignment = write_demo(folder)
    order = Order(seed="gallery", guessable=True, secret=SECRET)
    built = build_assignment(assignment, folder / "class", Crew(1), lambda *_: None, order)
    for name, page in (("sheets", 1), ("keys", 2)):
        pdf = built.folder / name / f"{built.record.versions[0].name}.pdf"
        target = into / name.removesuffix("s")
        pages = ("-f", str(page), "-l", str(page))
        command = ("pdftoppm", "-png", "-singlefile", "-r", str(DOTS_PER_INCH), *pages)
        subprocess.run([*command, str(pdf), str(target)], check=True)


def figure(template: str, kind: str) -> str:
    """One figure as SVG."""
    single = work_single(template, 3)
    own: Worked = single.worked
    labels = own.case.labels
    system, givens, depicts = own.case.system, own.draw.values, single.problem.template.depicts
    known = {name: own.case.values[name] for name in (*givens, "g")}
    tell = single.problem.tell
    sizes = drawn_sizes(single.problem.template, known)
    if kind == "situation":
        return svg(situation(system, labels, known, depicts, givens, tell=tell, drawn=sizes))
    pivot = next(iter(single.problem.plan.pivots), "")
    body = system.bodies[0].id
    look = look_of(depicts, body)
    return svg(
        free_body(system, labels, own.complete, body, pivot, tell=tell, drawn=sizes, look=look)
    )


def contact_sheet() -> str:
    """Every part with its name, in rows, as one SVG."""
    cells = []
    for place, (name, scene) in enumerate(part_scenes()):
        row, column = divmod(place, COLUMNS)
        x, y = column * CELL, row * CELL
        picture = svg(scene).partition("<svg")[2]
        cells.append(f'<svg x="{x + 10}" y="{y + 8}"{picture}')
        cells.append(f'<text x="{x + 10}" y="{y + CELL - 8}" {CAPTION}>{name}</text>')
    height = -(-len(part_scenes()) // COLUMNS) * CELL
    head = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {COLUMNS * CELL} {height}">'
    white = f'<rect width="{COLUMNS * CELL}" height="{height}" fill="white"/>'
    return "\n".join([head, white, *cells, "</svg>"])


def main(into: Path) -> None:
    """Writes every picture into the folder."""
    into.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        pages(Path(folder), into)
    for template, kind in FIGURES:
        (into / f"{template}-{kind}.svg").write_text(figure(template, kind), encoding="utf-8")
    (into / "parts.svg").write_text(contact_sheet(), encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else "output/gallery"))
