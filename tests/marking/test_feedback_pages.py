"""Feedback as PDF: a page a student with all that is to be told, and all pages in one."""

from __future__ import annotations

from pathlib import Path

import pdfplumber

from probgen.marking.feedback_pages import print_feedback
from probgen.papers.typesetter import Typesetter
from tests.marking.test_feedback import feedback


def text_of(path: Path) -> list[str]:
    with pdfplumber.open(path) as pdf:
        return [" ".join(page.extract_text().split()) for page in pdf.pages]


def test_a_page_a_student_and_all_in_one(tmp_path: Path) -> None:
    pages = {"ada": feedback(0), "bea": feedback(1)}
    assert list(print_feedback(pages, tmp_path, Typesetter(), "Week 1", False)) == []
    (own,) = text_of(tmp_path / "feedback/ada.pdf")
    for told in ("Feedback", "Points 16/20", "a known slip", "2/4",
                 "masses used as weights, without g"):  # fmt: skip
        assert told in own
    (other,) = text_of(tmp_path / "feedback/bea.pdf")
    assert "?/4" in other
    assert "Points open/20" in other
    assert list(print_feedback(pages, tmp_path, Typesetter(), "Week 1", False, {"bea"})) == []
    with pdfplumber.open(tmp_path / "feedback/bea.pdf") as pdf:
        assert 18 in {round(char["size"]) for char in pdf.pages[0].chars}
    assert text_of(tmp_path / "feedback/ada.pdf") == [own]
    assert text_of(tmp_path / "all-feedback.pdf") == [own, other]
