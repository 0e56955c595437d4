"""The instructor's page: what the class got wrong, drawn as plots; matplotlib writes the PDF."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import TYPE_CHECKING, Any, Final

import numpy as np

from probgen.marking.class_report import ClassReport
from probgen.marking.finding import Finding
from probgen.wording.facts.class_marks import ItemAsked, SlipCounted, StepCounted
from probgen.wording.language import Language
from probgen.wording.nouns import NO_NOUNS
from probgen.wording.sentence import plain_text

if TYPE_CHECKING:
    from matplotlib.axes import Axes

_SIZE: Final = {"letter": (8.5, 11.0), "a4": (8.27, 11.69)}  # inches
_SLIPS: Final = 8
_STEPS: Final = 6
_NOTES: Final = 9
_ITEMS: Final = 24
"""The most that a page has room for; the tables beside it have all."""
_WIDTH: Final = 62  # letters of a line
_LABEL: Final = 48  # letters beside a bar
_GREYS: Final = {
    Finding.RIGHT: "#2b6b3f",
    Finding.CARRIED: "#7fb08d",
    Finding.UNIT: "#e3c567",
    Finding.SIGN: "#d99a4e",
    Finding.SLIP: "#b8562f",
    Finding.WRONG: "#7d2230",
    Finding.UNREAD: "#9a9a9a",
    Finding.EMPTY: "#d9d9d9",
}
"""Colours that differ in lightness too, for black-and-white printers."""


@dataclass(frozen=True, slots=True)
class Heading:
    """What stands above the page; paper: "letter" or "a4"."""

    course: str
    title: str
    paper: str


def notes(report: ClassReport, language: Language) -> tuple[str, ...]:
    """What the numbers say, in sentences."""
    return tuple(plain_text(language.say(fact, NO_NOUNS)) for fact in report.facts)


def slip_lines(report: ClassReport) -> Iterator[tuple[str, int]]:
    """Each slip in words, with its papers, the commonest first."""
    for each in report.slips:
        turning = each.problem.convention.turning
        fact = SlipCounted(each.slips, turning, each.told.place, each.told.papers)
        yield each.problem.tell(fact), each.told.papers


def step_lines(report: ClassReport) -> Iterator[tuple[str, int]]:
    """Each step where papers part from the key, with how many do."""
    for each in report.steps:
        fact = StepCounted(each.step, each.told.place, each.told.papers)
        yield each.problem.tell(fact), each.told.papers


def class_page(report: ClassReport, heading: Heading, language: Language) -> bytes:
    """The page as PDF; the same report gives the same bytes.  ImportError without matplotlib."""
    from matplotlib import rc_context
    from matplotlib.backends.backend_pdf import FigureCanvasPdf
    from matplotlib.figure import Figure

    words = language.page
    letters: dict[Any, Any] = {"font.size": 8, "pdf.fonttype": 42, "axes.titlesize": 9}
    letters |= {"axes.titlelocation": "left", "axes.titleweight": "bold"}
    with rc_context(letters):
        figure = Figure(figsize=_SIZE[heading.paper])
        FigureCanvasPdf(figure)
        figure.text(0.07, 0.965, _plain(heading.title), size=14, weight="bold", va="top")
        figure.text(0.07, 0.942, _plain(heading.course), va="top")
        grid = figure.add_gridspec(
            4, 1, left=0.13, right=0.95, top=0.90, bottom=0.04, hspace=0.45,
            height_ratios=[1.35, 1.2, 0.95, 1.1],
        )  # fmt: skip
        upper = grid[0].subgridspec(1, 3, width_ratios=[1.5, 2.5, 2.3], wspace=0.22)
        _draw_items(figure.add_subplot(upper[1]), report, language)  # what is asked stands beside
        _draw_totals(figure.add_subplot(upper[2]), report, words.marks)
        slips, steps = list(slip_lines(report)), list(step_lines(report))
        _draw_counts(figure.add_subplot(grid[1]), slips[:_SLIPS], words.commonest_slips)
        _draw_counts(figure.add_subplot(grid[2]), steps[:_STEPS], words.teach_again)
        _write_notes(figure.add_subplot(grid[3]), notes(report, language))
        made = BytesIO()
        figure.savefig(made, format="pdf", metadata={"CreationDate": None, "Title": heading.title})
    return made.getvalue()


def _plain(text: str) -> str:
    """Text that matplotlib takes for no formula."""
    return text.replace("$", r"\$")


def _draw_items(axes: Axes, report: ClassReport, language: Language) -> None:
    """A bar an item, cut by verdicts; its facility at the end."""
    items = sorted(report.items, key=lambda each: each.facility)[:_ITEMS]
    items.sort(key=lambda each: report.items.index(each))
    words = dict(language.page.verdicts)
    places, left = np.arange(len(items)), np.zeros(len(items))
    for finding, colour in _GREYS.items():
        counts = [each.verdicts.get(finding, 0) for each in items]
        shares = [n / max(1, sum(e.verdicts.values())) for n, e in zip(counts, items, strict=True)]
        if any(counts):
            axes.barh(places, shares, left=left, color=colour, label=words[finding], height=0.8)
        left += np.array(shares)
    for place, each in zip(places, items, strict=True):
        if np.isfinite(each.facility):
            axes.text(1.01, float(place), f"{100 * each.facility:.0f}", va="center", size=6)
    names = [_plain(_label(each.asked, language)) for each in items]
    axes.set_yticks(places, names, size=6)
    axes.invert_yaxis()
    axes.set_xlim(0.0, 1.0)
    axes.set_xticks([])
    axes.set_title(language.page.verdicts_head)
    axes.legend(ncols=4, loc="upper left", bbox_to_anchor=(-0.8, 0.0), frameon=False,
                fontsize=6, columnspacing=0.8, handlelength=1.0)  # fmt: skip
    _plain_frame(axes)


def _label(asked: ItemAsked, language: Language) -> str:
    """A problem's number and what it asks, its letter last where all of it is too long."""
    told = plain_text(language.say(asked, asked.nouns))
    words, _, letter = told.rpartition(" ")
    if len(told) > _LABEL and words:
        told = f"{words[: _LABEL - len(letter) - 2].rstrip()}… {letter}"
    return f"{asked.problem} {told}"


def _draw_totals(axes: Axes, report: ClassReport, title: str) -> None:
    """How many papers have how many points, of those of which all is known."""
    from matplotlib.ticker import MaxNLocator

    _, table = report.scores.whole()
    totals = table.sum(axis=1)
    most = sum(item.most for item in report.scores.items)
    bins = np.linspace(0.0, most, min(most, 20) + 1)
    axes.hist(totals, bins=list(bins), color="#44546a")
    axes.set_title(title)
    if len(totals):
        axes.axvline(float(totals.mean()), color="black", linewidth=1)
        shown = f"{totals.mean():.1f} ± {totals.std():.1f} / {most}"
        axes.set_title(f"{title}: {shown}")
    axes.yaxis.set_major_locator(MaxNLocator(integer=True))
    _plain_frame(axes)


def _draw_counts(axes: Axes, lines: Sequence[tuple[str, int]], title: str) -> None:
    """A bar a line, its words on the bar; nothing at all where nothing was counted."""
    if not lines:
        axes.axis("off")
        return
    for place, (line, count) in enumerate(lines):
        axes.barh(place, count, color="#9fb1c7", height=0.86)
        axes.text(0.0, place, " " + _plain(textwrap.shorten(line, 2 * _WIDTH)), va="center", size=7)
    axes.set_yticks([])
    axes.set_xticks([])
    axes.set_ylim(len(lines) - 0.4, -0.6)
    axes.set_title(title)
    _plain_frame(axes)


def _write_notes(axes: Axes, lines: Sequence[str]) -> None:
    axes.axis("off")
    wrapped = [textwrap.fill(f"– {line}", 2 * _WIDTH, subsequent_indent="   ")
               for line in lines[:_NOTES]]  # fmt: skip
    axes.text(-0.05, 1.0, _plain("\n".join(wrapped)), va="top", size=7.5, linespacing=1.3)


def _plain_frame(axes: Axes) -> None:
    for side in ("top", "right", "bottom"):
        axes.spines[side].set_visible(False)
