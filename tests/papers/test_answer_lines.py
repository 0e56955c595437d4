"""What is asked on a sheet and the lines to answer on: together, and alike for all of a problem."""

from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO

import pdfplumber
import pytest

from probgen.papers.typesetter import Kind
from tests.papers.ink import MM
from tests.papers.looks import LOOKS, copies, printed

IDS = (
    "ladder-raised",  # the figure's foot stood between two of the things asked
    "climbing-triangle",
    "flood-wall-base",
    "derrick-hoist-rope",  # a size, and components
    "gate-two-hinges",  # components alone
    "cabinet-slide-or-tip",  # what happens first
    "kneecap-squat",  # one thing, by its size and direction
    "sign-l-plate",
    "panel-pressed-wall",
)


WIDTHS = (20, 26)  # mm


@dataclass(frozen=True)
class Blank:
    """A line to write on; before: the words on its line, to its left."""

    left: float
    width: float
    before: tuple[str, ...]


def blanks(pdf: bytes) -> Iterator[Blank]:
    """Those of the first page that has a problem."""
    with pdfplumber.open(BytesIO(pdf)) as opened:
        page = next(page for page in opened.pages if "Find" in page.extract_text())
        words = page.extract_words()
        for rule in page.lines:
            if abs(rule["linewidth"] - 0.3) > 0.02 or round(rule["width"] / MM) not in WIDTHS:
                continue
            before = (
                word["text"]
                for word in words
                if word["x1"] <= rule["x0"] and abs(word["bottom"] - rule["top"]) < 5.0
            )
            yield Blank(rule["x0"], rule["width"], tuple(before))


@pytest.mark.parametrize("look", ["letter", "A4, sans", "letter, large"])
@pytest.mark.parametrize("id", IDS)
def test_lines_to_write_on_are_alike_and_stand_behind_what_is_asked(id: str, look: str) -> None:
    for each in printed(copies([id], 6), LOOKS[look], (Kind.SHEETS,)):
        found = list(blanks(each.pdf))
        assert len({(round(blank.left), round(blank.width)) for blank in found}) == 1
        assert all(blank.before for blank in found)


def test_words_to_choose_from_stand_whole_on_a_line() -> None:
    """Beside a figure there is no room for them behind what they answer."""
    for each in printed(copies(["feeder-cord-strength"], 3), LOOKS["letter"], (Kind.SHEETS,)):
        with pdfplumber.open(BytesIO(each.pdf)) as opened:
            lines = opened.pages[0].extract_text().splitlines()
        assert "the thin cord breaks / the thicker cord breaks" in "\n".join(lines)
        assert not any(line.strip().endswith("/") for line in lines)
