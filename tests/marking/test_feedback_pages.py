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
    assert not (tmp_path / "new-feedback.pdf").exists()


def test_pages_of_an_earlier_marking_are_among_all_and_the_new_ones_apart(tmp_path: Path) -> None:
    """Ada was marked before, Bea is late; Cy has no page, and that of Di is spoilt."""
    assert list(print_feedback({"ada": feedback(0)}, tmp_path, Typesetter(), "W", False)) == []
    (tmp_path / "feedback/di.pdf").write_bytes(b"%PDF-1.7")
    late, before = {"bea": feedback(1)}, ["ada", "cy", "di"]
    (told,) = print_feedback(late, tmp_path, Typesetter(), "W", False, before=before)
    assert "di.pdf is no whole PDF" in told
    (ada,), (bea,) = (text_of(tmp_path / f"feedback/{name}.pdf") for name in ("ada", "bea"))
    assert text_of(tmp_path / "all-feedback.pdf") == [bea, ada]
    assert text_of(tmp_path / "new-feedback.pdf") == [bea]
    again = {"ada": feedback(0), "bea": feedback(1)}
    assert list(print_feedback(again, tmp_path, Typesetter(), "W", False)) == []
    assert text_of(tmp_path / "all-feedback.pdf") == [ada, bea]
    assert not (tmp_path / "new-feedback.pdf").exists(), "all of them are new"
