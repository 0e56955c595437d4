"""The instructor's page: one page, which tells the slips and the steps, always the same bytes."""

from __future__ import annotations

import re
from dataclasses import replace
from io import BytesIO
from itertools import product

import pdfplumber
import pytest

from probgen.bank.bank import default_bank
from probgen.marking.class_page import Heading, class_page, notes, slip_lines, step_lines
from probgen.wording.english import ENGLISH
from probgen.wording.facts.class_marks import ItemAgainst, ItemAsked, ItemsHard, ValueMatters
from probgen.wording.nouns import NO_NOUNS, Nouns
from probgen.wording.sentence import plain_text
from tests.marking.test_class_report import report
from tests.marking.test_marks import marked
from tests.situations import HUNG_ASIDE, worked

PAPERS = marked(("2.00", "30"), ("2.00", "30"), ("12.3", "30"), ("a", "30"))
RIGHT = marked(("19.6", "30"), ("19.6", "30"))
REPORT = report(PAPERS)
NAMED = ["tension in the cable T", "lean θ"]


def test_slips_and_steps_in_words() -> None:
    lines = [line for line, _ in slip_lines(REPORT)]
    assert lines[0] == "Problem 1, two papers: masses used as weights, without g"
    (first, *_) = step_lines(REPORT)
    assert first[0].startswith("Problem 1, one paper: T from the balance")
    assert notes(REPORT, ENGLISH)[0].startswith("One paper with answers that a person has to")


def test_one_page_with_what_there_is_to_tell() -> None:
    heading = Heading("Mechanics", "Week 1: $5 and $6", "a4")
    made = class_page(REPORT, heading, ENGLISH)
    assert made == class_page(REPORT, heading, ENGLISH)
    with pdfplumber.open(BytesIO(made)) as pdf:
        assert len(pdf.pages) == 1
        text = pdf.pages[0].extract_text()
    assert "Week 1: $5 and $6" in text
    assert "masses used as weights" in text
    assert ENGLISH.page.teach_again in text


def test_what_nobody_did_has_no_heading() -> None:
    made = class_page(report(RIGHT), Heading("Mechanics", "Week 1", "letter"), ENGLISH)
    with pdfplumber.open(BytesIO(made)) as pdf:
        text = pdf.pages[0].extract_text()
    assert ENGLISH.page.verdicts_head in text
    assert ENGLISH.page.commonest_slips not in text
    assert ENGLISH.page.teach_again not in text


def test_what_is_asked_is_called_as_on_paper() -> None:
    """By the bars and in the notes: nobody has to know an id."""
    told = [item.asked for item in REPORT.items]
    assert [plain_text(ENGLISH.say(each, NO_NOUNS)) for each in told[:2]] == NAMED
    made = class_page(REPORT, Heading("Mechanics", "Week 1", "letter"), ENGLISH)
    with pdfplumber.open(BytesIO(made)) as pdf:
        text = pdf.pages[0].extract_text()
    for place, name in product((1, 2), NAMED):
        assert f"{place} {name}" in text
    few = replace(REPORT, facts=(ItemsHard((told[1],), 0.4), ItemAgainst(told[0], -0.3)))
    hard, against = notes(few, ENGLISH)
    assert f"in problem 1, {NAMED[1]}." in hard
    assert f"in problem 1, {NAMED[0]} (" in against


def test_a_long_name_keeps_its_letter() -> None:
    told = [replace(item.asked, nouns=NO_NOUNS, answer=f"{'long ' * 20}F") for item in REPORT.items]
    items = tuple(item._replace(asked=own) for item, own in zip(REPORT.items, told, strict=True))
    made = class_page(replace(REPORT, items=items), Heading("M", "W", "a4"), ENGLISH)
    with pdfplumber.open(BytesIO(made)) as pdf:
        assert re.search(r"1 long (long )+l?o?n?g?… F", pdf.pages[0].extract_text())


CALLED = {
    ("beam-stay-cable", "T"): "tension in the cable T",
    ("beam-stay-cable", "R.magnitude"): "force from the hinge R",
    ("beam-stay-cable", "R.direction"): "direction of the force from the hinge R",
    ("ladder-holds", "slips"): "whether it holds (if not, the foot slips)",
    ("cabinet-slide-or-tip", "P.limit"): "what happens first",
    ("diving-board", "R.x"): "x-component of the force from the bolt R_x",
    ("ladder-smooth-wall", "nothing of the kind"): "nothing of the kind",
}


@pytest.mark.parametrize(("id", "answer"), CALLED)
def test_every_kind_of_answer_has_a_name(id: str, answer: str) -> None:
    template = default_bank().read(id)
    asked = ItemAsked(1, answer, Nouns(template.system, template.labels))
    assert plain_text(ENGLISH.say(asked, NO_NOUNS)) == CALLED[id, answer]


def test_a_value_that_goes_with_the_points_is_called_as_on_paper() -> None:
    problem, _ = worked(HUNG_ASIDE)
    for nouns, called in ((problem.nouns, "counterweight mass M"), (NO_NOUNS, "M")):
        said = plain_text(ENGLISH.say(ValueMatters(2, "M", 0.4, 0.01, nouns), NO_NOUNS))
        assert said.startswith(f"In problem 2, papers with a larger {called} earn more points")
