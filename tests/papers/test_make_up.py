"""How the pages of keys are made up: nothing alone, nothing apart, none half empty."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

import pypdfium2
import pytest

from probgen.bank.bank import default_bank
from probgen.papers.handout import copy_of_one
from probgen.papers.page import Copy
from probgen.papers.typesetter import Kind, Typesetter
from probgen.press.batch import Document, Printed, print_batch
from probgen.problem.single import work_single
from probgen.working.convention import Convention
from tests.papers.ink import MM, whites
from tests.papers.looks import LOOKS, Look, copies, printed, reprinted, written
from tests.papers.make_up import (
    TOP,
    Line,
    Page,
    answers_apart,
    begun_anew,
    begun_late,
    lone_lines,
    pages,
    white_feet,
)
from tests.papers.test_ink import strays

IDS = sorted(default_bank().files)
WHITE = 0.15  # of the height for text
SPREAD = 2
LONGER = {
    "stepladder-tie": 3,  # four things asked
    "bent-back-toolbox": 3,  # 1 draw in 100
    "billboard-truss-wind": 3,  # four members, by joints and by a section
    "climbing-triangle": 3,  # two frictions, each at its limit
    "folding-table-strap": 3,  # three bodies, each with its diagram
    "footbridge-inside": 3,  # the beam, a part of it, and what acts along it drawn and written
    "footbridge-truss-crowd": 3,  # three members by a section, after the reactions
    "shed-three-hinges": 3,  # 1 draw in 10: two halves, and four things asked
    "loft-beam-bales": 3,  # the same, and why the moment is largest where it is
}
LINE = 12.0  # pt, of a key's text
SHORT = 0.20  # what the last page of a problem that goes over it holds at least


def key_alone(id: str, number: int) -> tuple[Page, ...]:
    """The key to one draw of a problem on its own, without the head of a class's."""
    single = work_single(id, number, {}, Convention(), template_from="", values_from="")
    document = Typesetter().document(Kind.KEYS, copy_of_one(single))
    (each,) = print_batch([document]).printed
    return pages(each.pdf)


def faults(key: Sequence[Page], id: str = "") -> Iterator[str]:
    """What a page should not have, in a key to a problem alone where that is named."""
    if not any(line.begins_problem for line in key[0].lines):
        yield "page 1 has a head and nothing more"
    yield from (f"page {n} begins with the answers" for n in answers_apart(key))
    yield from (f"page {n} begins with a line alone" for n in lone_lines(key))
    for n, white in white_feet(key):
        if white > WHITE:
            yield f"page {n}: {white:.0%} are white at its foot"
    for n, white, count in begun_anew(key):
        if white > WHITE and count > SPREAD:
            yield f"page {n} begins anew for nothing: {white:.0%} are white before it"
    for n, white in begun_late(key):
        yield f"page {n} begins with a problem that had room before it: {white:.0%} are white"
    if id and len(key) > LONGER.get(id, SPREAD):
        yield f"{len(key)} pages"
    if len(key) > 1 and key[-1].filled < SHORT:
        yield f"the last page is {key[-1].filled:.0%} full"


def torn(key: Sequence[Page]) -> Iterator[str]:
    """Pages that end with a balance's heading, whose equation is on the next one or ends there."""
    for number, (page, following) in enumerate(pairwise(key), start=1):
        heads = [place for place, line in enumerate(page.lines) if line.begins_step]
        last = page.lines[heads[-1] :] if heads else ()
        balance = any("balance" in line.text for line in last[:1])
        equations = sum("=" in line.text for line in last)
        goes_on = following.lines[0].text.startswith("=")
        if balance and (not equations or (goes_on and equations == 1)):
            yield f"page {number}: {last[0].text}, {following.lines[0].text}"


@pytest.mark.parametrize(("filled", "late"), [(0.9, []), (0.5, [2])], ids=["spread", "room"])
def test_a_problem_begins_late_only_to_stay_a_spread(filled: float, late: list[int]) -> None:
    """After a page of which 60 % are white, a page and so much of another."""
    head = Line(TOP, 50.0, "2 A board", bold=True, size=14.0)
    steps = [Line(100.0 + n, 110.0 + n, f"{n} Step", bold=True, size=10.0) for n in (1, 2, 3)]
    end = Line(300.0, 310.0, "Answers", bold=True, size=10.0)
    key = (
        Page((), 0.4, 700.0),
        Page((head, *steps), 1.0, 700.0),
        Page((end,), filled, 700.0),
    )
    assert [number for number, _ in begun_late(key)] == late


def test_a_balance_is_not_parted_from_its_equation() -> None:
    """The balance along a ramp, whose axis is told before it."""
    documents = printed(copies(["crate-ramp-strap"], 8), LOOKS["letter"], (Kind.KEYS,))
    assert [fault for each in documents for fault in torn(pages(each.pdf))] == []


def test_text_goes_on_beside_the_next_figure() -> None:
    """The reel in its place and the forces on it, below each other: no white between the steps."""
    documents = printed(copies(["cable-reel-ramp"], 8), LOOKS["letter"], (Kind.KEYS,))
    for each in documents:
        axes, forces, *_ = (line for line in pages(each.pdf)[0].lines if line.begins_step)
        # By their feet, as a figure's label may stand higher on the line of a heading; in pt, and
        # the axes are told in three lines.
        assert abs(forces.bottom - axes.bottom) < 80.0


@pytest.mark.parametrize("number", [1, 2, 3])
def test_no_step_waits_for_the_foot_of_a_high_figure(number: int) -> None:
    """The axes are told in two lines; the forces were 20 mm further down, below the figure."""
    (first, *_) = key_alone("cabinet-slide-or-tip", number)
    axes, forces, *_ = (line for line in first.lines if line.begins_step)
    assert forces.bottom - axes.bottom < 2 * LINE + WIDEST


@pytest.mark.parametrize("id", ["diving-board", "jetty-mooring", "safety-valve-lever"])
def test_no_zero_stands_alone_below_its_numbers(id: str) -> None:
    documents = printed(copies([id], 3), LOOKS["letter"], (Kind.KEYS,))
    lines = [line.text for each in documents for page in pages(each.pdf) for line in page.lines]
    assert [text for text in lines if text.startswith("= 0")] == []


def test_a_chain_of_equations_in_a_text_ends_no_line_with_a_relation() -> None:
    documents = printed(copies(["mast-guy-wind", "sign-arm-strut"], 3), LOOKS["letter"])
    lines = [line.text for each in documents for page in pages(each.pdf) for line in page.lines]
    assert [text for text in lines if text.endswith(("=", "= "))] == []


def test_a_page_takes_a_figure_as_high_as_its_room() -> None:
    """White shared out below a line of some depth made the page too high by that: it broke before
    the problem, behind a head alone.
    """
    documents = printed(copies(["press-toggle-tiles"], 8), LOOKS["letter"], (Kind.KEYS,))
    assert [fault for each in documents for fault in faults(pages(each.pdf))] == []


def test_a_balance_in_two_forms_stays_whole() -> None:
    """With the angles between forces and arms, and with simpler ones."""
    documents = printed(copies(["ladder-tied"], 16), LOOKS["letter"], (Kind.KEYS,))
    assert [fault for each in documents for fault in torn(pages(each.pdf))] == []


@pytest.mark.parametrize(
    ("id", "count"),
    [
        ("raft-two-boats", 1),
        ("ring-three-ropes", 1),
        ("seesaw-two-riders", 1),
        ("shed-three-hinges", 2),  # too long by its answers and its marks
    ],
)
def test_a_key_that_is_a_little_too_long_for_its_pages_is_set_closer(id: str, count: int) -> None:
    documents = printed(copies([id], 8), LOOKS["letter"], (Kind.KEYS,))
    assert [len(pages(each.pdf)) for each in documents] == [count] * 8


def test_a_high_line_of_equations_stays_with_the_line_before_it() -> None:
    """A fraction that ends a working, higher than two plain lines."""
    documents = printed(copies(["sled-push-or-pull"], 2), LOOKS["A4"], (Kind.KEYS,))
    assert [fault for each in documents for fault in faults(pages(each.pdf))] == []


@pytest.mark.parametrize("id", ["piano-guide-rope", "plank-raised-slowly", "billboard-truss-wind"])
def test_white_is_between_steps_and_at_the_foot(id: str) -> None:
    """Pages that turn early, at equations: their foot takes what is over, and no lines of one step
    are as far apart as two lines."""
    documents = printed(copies([id], 3), LOOKS["letter"], (Kind.KEYS,))
    gaps = [
        line.top - before.bottom
        for each in documents
        for page in pages(each.pdf)
        for before, line in pairwise(page.lines)
        if not (line.begins_problem or line.begins_step or line.begins_answers)
    ]
    assert max(gaps) < 2 * LINE


WIDEST = 9.0 * MM  # between a step's heading and the line above it
NARROWEST = 2.5 * MM


@pytest.mark.parametrize(
    "id",
    [
        "leg-traction",
        "footbridge-two-beams",
        "loft-beam-bales",
        "bookcase-centre-tilt",  # a step and the answers on its last page
        "joist-bathtub",
    ],
)
def test_gaps_between_steps_are_neither_wide_nor_narrow(id: str) -> None:
    """The foot of a page that turns early takes what they do not."""
    documents = printed(copies([id], 3), LOOKS["letter"], (Kind.KEYS,))
    gaps = [
        line.column[0] - before.column[1]
        for each in documents
        for page in pages(each.pdf)
        for before, line in pairwise(page.lines)
        if line.begins_step
    ]
    assert [gap / MM for gap in gaps if not NARROWEST < gap < WIDEST] == []


EQUATION = re.compile(r"\S+ = ")


@pytest.mark.parametrize(
    "id", ["garland-two-lanterns", "ladder-carried", "ladder-holds", "ladder-smooth-wall"]
)
def test_no_page_begins_between_the_equations_of_a_step(id: str) -> None:
    documents = printed(copies([id], 3), LOOKS["letter"], (Kind.KEYS,))
    tops = [page.lines[0].text for each in documents for page in pages(each.pdf)]
    assert [top for top in tops if EQUATION.match(top)] == []


BEGINS = re.compile(r"\d+ |[A-Z][a-z]+ ")  # a step, or a sentence


@pytest.mark.parametrize(
    ("id", "number"),
    [("garland-two-lanterns", 3), ("garland-two-lanterns", 4), ("press-toggle-tiles", 3)],
)
def test_a_page_begins_with_a_step_or_a_sentence(id: str, number: int) -> None:
    """No line of a text, nor one of two equations below each other that follow from one text."""
    tops = [page.lines[0].text for page in key_alone(id, number)[1:]]
    assert [top for top in tops if not BEGINS.match(top)] == []


def test_what_is_given_stands_on_the_page_of_its_statement() -> None:
    """A long panel of answers leaves room for the second problem's text and figure only."""
    ids = ["stepladder-tie", "triceps-band", "bent-back-toolbox", "crate-ramp-strap"]
    documents = printed(copies(ids, 2), LOOKS["letter"], (Kind.KEYS,))
    tops = [page.lines[0].text for each in documents for page in pages(each.pdf)]
    assert "Given" not in tops


ON_A_RESULT = ("With it:", "and put this", "Rx")


def test_what_is_said_of_a_result_stands_on_its_page() -> None:
    ids = ["ladder-least-angle", "garland-two-lanterns", "sliding-arm-post", "kneecap-squat"]
    documents = [
        each for id in ids for each in printed(copies([id], 3), LOOKS["letter"], (Kind.KEYS,))
    ]
    tops = [page.lines[0].text for each in documents for page in pages(each.pdf)]
    assert [top for top in tops if top.startswith(ON_A_RESULT)] == []


def told(ids: Sequence[str], draws: int) -> list[str]:
    documents = printed(copies(ids, draws), LOOKS["letter"], (Kind.KEYS,))
    id = ids[0] if len(ids) == 1 else ""
    keys = [(each.name, pages(each.pdf)) for each in documents]
    return [f"draw {name}: {fault}" for name, key in keys for fault in faults(key, id)]


@pytest.mark.parametrize(
    "ids",
    [
        ("diving-board",),
        ("roof-truss-snow",),  # hardly more than two pages
        ("lantern-two-cords",),  # just a page, or hardly more
        ("stepladder-tie",),
        ("balcony-built-in", "leg-raise-cuff", "plank-over-edge", "well-windlass"),
        ("forearm-load", "sign-arm-strut", "table-pulley-sand"),
        ("arm-held-out", "crate-ramp-strap", "painter-board-seat", "ring-three-ropes"),
        ("boom-level-cable", "footbridge-two-beams", "lantern-two-cords", "spring-scales-baskets"),
        ("plank-raised-slowly", "stepladder-tie", "box-pulled-from-under", "jaw-bites-nut"),
        ("tiptoe-achilles", "bookcase-centre-tilt", "head-over-phone"),  # what is asked, alone
        # A page in the middle that takes from the one before; a line that would stand alone; a
        # figure that reaches below the step it begins beside.
        ("ladder-how-far-up", "leg-traction", "porch-roof-snow", "shed-three-hinges"),
        ("road-sign-wind", "sled-push-or-pull", "triceps-band", "billboard-truss-wind"),
        ("triceps-band", "band-brake-hoist", "cable-reel-ramp", "folding-table-strap"),
    ],
    ids=" ".join,
)
def test_pages_are_made_up_well(ids: tuple[str, ...]) -> None:
    assert told(ids, 5) == []


def test_a_page_says_which_problem_goes_on_there() -> None:
    """Where one does, and no other; a page that begins with a problem has its head."""
    ids = ("jaw-bites-nut", "climbing-triangle", "crate-ramp-strap", "seesaw-two-riders")
    titles = {str(n): default_bank().read(id).title for n, id in enumerate(ids, start=1)}
    for each in printed(copies(ids, 3), LOOKS["letter"], (Kind.KEYS,)):
        at = "0"
        for page in pages(each.pdf):
            goes_on = not page.lines[0].begins_problem and at != "0"
            assert page.head == ((f"{at} {titles[at]} (continued)",) if goes_on else ())
            at = [at, *(line.text[0] for line in page.lines if line.begins_problem)][-1]


@pytest.mark.parametrize(
    ("id", "look"), [("wing-wind-tunnel", "letter"), ("crate-ramp-strap", "A4, large")]
)
def test_room_for_working_on_a_further_page_says_whose_it_is(id: str, look: str) -> None:
    """Squared room of 20 cm behind a problem that fills more than half a page."""
    (copy,) = copies([id], 1)
    problem_set = replace(copy.problem_set, room="grid", working=20)
    made = replace(copy, problem_set=problem_set)
    (each,) = printed([made], LOOKS[look], (Kind.SHEETS,))
    with pypdfium2.PdfDocument(each.pdf) as pdf:
        *_, before, last = (page.get_textpage().get_text_range() for page in pdf)
    assert f"{default_bank().read(id).title} (continued)" in last
    assert "(continued)" not in before


EDGE = 9.8  # mm, 10 but for a pixel


def test_a_running_line_and_a_foot_keep_clear_of_the_papers_edge() -> None:
    """Of a key that goes on to a second page, and in large print of a sheet that does."""
    made = copies(["crate-ramp-strap"], 1)
    wide = [replace(m, problem_set=replace(m.problem_set, room="grid", working=20)) for m in made]
    (key,) = printed(made, LOOKS["letter"], (Kind.KEYS,))
    (sheet,) = printed(wide, LOOKS["letter, large"], (Kind.SHEETS,))
    assert min(white.top for each in (key, sheet) for white in whites(each.pdf)) > EDGE
    assert min(white.bottom for white in whites(key.pdf)) > EDGE


def overlong(documents: Sequence[Printed]) -> Iterator[str]:
    """Sheets in large print that go on over the page of their one problem, after the cover."""
    for each in documents:
        if (count := len(list(whites(each.pdf)))) > 1 + 1:
            yield f"draw {each.name}: {count} pages"


def test_a_problem_in_large_print_is_a_page() -> None:
    """The one with the longest text, whose figure makes room; half its draws went on."""
    documents = printed(copies(["bent-back-toolbox"], 12), LOOKS["letter, large"])
    assert list(overlong(documents)) == []


@pytest.mark.proof
@pytest.mark.parametrize("start", range(len(IDS)))
def test_pages_of_whole_keys_are_made_up_well(start: int) -> None:
    """Keys of four problems that have little in common."""
    four = [IDS[(start + step) % len(IDS)] for step in (0, 7, 18, 29)]
    assert told(four, 12) == []


@pytest.mark.proof
@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("id", IDS)
def test_pages_over_many_draws(id: str, look: str) -> None:
    """Sheets and keys: all ink in its place, nothing to remark, and the pages of keys made up."""
    shown = LOOKS[look]
    made, documents = hundred(id, large=shown.large)
    found: list[str] = []
    for each in reprinted(documents, made[0], shown):
        found += strays([each], shown)
        if shown.large:
            found += overlong([each])
        if each.pile == Kind.KEYS:
            found += [f"draw {each.name}: {fault}" for fault in faults(pages(each.pdf), id)]
    assert found == []


@lru_cache(maxsize=1)  # letters and papers show the same
def hundred(id: str, *, large: bool) -> tuple[list[Copy], list[Document]]:
    made = copies([id], 100)
    return made, written(made, Look(large=large))
