"""The instructor's page: one page, which tells the slips and the steps, always the same bytes."""

from __future__ import annotations

from io import BytesIO

import pdfplumber

from probgen.marking.class_page import Heading, class_page, notes, slip_lines, step_lines
from probgen.wording.english import ENGLISH
from tests.marking.test_class_report import report
from tests.marking.test_marks import marked

PAPERS = marked(("2.00", "30"), ("2.00", "30"), ("12.3", "30"), ("a", "30"))
RIGHT = marked(("19.6", "30"), ("19.6", "30"))
REPORT = report(PAPERS)


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
