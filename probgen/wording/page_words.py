"""The words that pages print beside what is told: labels, headings, heads of columns."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class PageWords:
    """One language's words, as plain text; layouts have them as `words`.

    language: its tag by BCP 47, "en".
    page, page_of: "page 2 of 5"; continued: behind a problem's title, where it goes on to a page.
    drawn: before the number of a draw; by_hand: behind it, where some values are not of that draw.
    points: behind a number, with points_head as a label.
    find: before what is asked; given, asked: heads of both in a key.
    verdicts: on answers that were marked, pairs of a finding and its words.
    caution: before the cautions, pairs of a kind and a sentence, which several may share.
    origins: before who wrote what.
    key, key_mark: of a key, in its foot and in its head; solutions: in both, of what students get.
    feedback: of a student's marks, with typed and verdict as heads of its columns.
    verdicts_head, commonest_slips, teach_again: heads of an instructor's page of marks.
    papers to print: what a cover counts; paper to seat: heads of the columns of a list.
    """

    language: str
    name: str
    id: str
    section: str
    code: str
    version: str
    versions: str
    draft: str
    date: str
    due: str
    page: str
    page_of: str
    continued: str
    drawn: str
    by_hand: str
    points: str
    points_head: str
    find: str
    given: str
    asked: str
    caution: str
    origins: str
    cautions: tuple[tuple[str, str], ...]
    verdicts: tuple[tuple[str, str], ...]
    decided: str
    still_open: str
    feedback: str
    typed: str
    verdict: str
    verdicts_head: str
    commonest_slips: str
    teach_again: str
    key: str
    key_mark: str
    solutions: str
    answers: str
    full_marks: str
    marks: str
    goes_wrong: str
    formulas: str
    problem: str
    out_of: str
    sum: str
    papers: str
    keys: str
    problems: str
    paper: str
    seat: str
    needs: str
    spare: str
    large: str
