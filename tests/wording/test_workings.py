"""Workings of templates, eight in three methods, as text: a change of words is seen in review.

`make workings` writes them anew; read what has changed aloud before you commit it.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from probgen.problem.problem import tell_steps
from probgen.problem.single import work_single
from probgen.quantities.printing import plain
from probgen.wording.block import Block, Display, Itemize, Paragraph
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention

HERE = Path(__file__).parent / "workings"
TEMPLATES = (
    "forearm-load",
    "head-over-phone",
    "sign-arm-strut",
    "ladder-holds",
    "lantern-two-cords",
    "crate-ramp-strap",
    "plank-raised-slowly",
    "gate-two-hinges",
)
METHODS = {
    "angle": Convention(torque="angle"),
    "arm": Convention(torque="arm", positive="clockwise", direction="vertical"),
    "components": Convention(torque="components", axes="level", direction="axis"),
}
OTHERS = (
    "cabinet-slide-or-tip",
    "balcony-built-in",
    "painter-board-seat",
    "footbridge-two-beams",
    "bookcase-centre-tilt",
    "porch-roof-snow",
)
"""What nothing is told of in those: limits, couples, internal forces, several bodies, centres."""
NAMES = [
    *(f"{template}-{method}" for template in TEMPLATES for method in METHODS),
    *(f"{template}-angle" for template in OTHERS),
]


def lines_of(block: Block) -> Iterator[str]:
    match block:
        case Paragraph(inlines):
            yield plain_text(inlines)
        case Itemize(items):
            yield from (f"- {plain_text(item)}" for item in items)
        case Display(rows):
            for row in rows:
                yield f"    {plain(row.left)} {row.relation} {plain(row.right)}"
        case picture:
            yield f"[{picture.kind}]"


def working(name: str) -> str:
    template, method = name.rsplit("-", 1)
    single = work_single(template, 1, None, METHODS[method])
    lines: list[str] = []
    for section in tell_steps(single.problem, single.worked):
        lines += ["", f"## {section.title}"]
        for block in section.blocks:
            lines += lines_of(block)
    return "\n".join(lines).strip() + "\n"


@pytest.mark.parametrize("name", NAMES)
def test_the_working_reads_as_it_was_last_read_aloud(name: str) -> None:
    assert working(name) == (HERE / f"{name}.txt").read_text(encoding="utf-8")


if __name__ == "__main__":
    HERE.mkdir(exist_ok=True)
    for each in NAMES:
        (HERE / f"{each}.txt").write_text(working(each), encoding="utf-8")
