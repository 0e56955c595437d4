"""One problem on its own: a sheet, and the key behind it, as PDF or as HTML."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.input.outside import OutsideError
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import Copy, key_of, sheet_of
from probgen.papers.typesetter import Kind, Typesetter
from probgen.problem.single import Single

_POINTS: Final = 10
_ON: Final = {Kind.SHEETS: "on the sheet", Kind.KEYS: "in the key"}


@dataclass(frozen=True, slots=True)
class Handout:
    """Sheet and key as one PDF, and what TeX could set, but not as it should be."""

    pdf: bytes
    remarks: tuple[str, ...]


def print_handout(single: Single, typesetter: Typesetter) -> Handout:
    """Sheet and key printed.

    Raises InputError when the problem cannot be told, OutsideError when TeX fails.
    """
    copy = copy_of_one(single)
    written = (typesetter.document(kind, copy) for kind in Kind)
    batch = typesetter.print([replace(each, name=each.pile, pile="") for each in written])
    if batch.failures:
        told = "; ".join(f"{failure.name}: {failure.complaint}" for failure in batch.failures)
        mend = "look at the texts of the template; nothing was written"
        raise OutsideError(f"TeX could not set {told}", mend)
    remarks = (
        f"{_ON[Kind(printed.name)]}: {blemish.words}"
        for printed in batch.printed
        for blemish in printed.blemishes
    )
    return Handout(batch.together[""], tuple(remarks))


def html_handout(single: Single, reloads: bool = False) -> str:
    """Sheet and key as one page of HTML.  Raises InputError when the problem cannot be told.

    reloads: whether a browser is to look again and again for a newer one.
    """
    from probgen.sheets.html.pages import HtmlPages  # heavy, and not needed for a PDF

    copy, pages = copy_of_one(single), HtmlPages(single.problem.language.page)
    articles = pages.sheet(sheet_of(copy)), pages.key(key_of(copy))
    return pages.whole(copy.problem_set.title, *articles, reloads=reloads)


def copy_of_one(single: Single) -> Copy:
    """The problem as a set of one, for nobody in particular, with what goes wrong in it."""
    problem, own = single.problem, single.worked
    title = problem.template.title
    assigned = (Assigned(problem.template.id, _POINTS),)
    problem_set = ProblemSet("", title, "", assigned, convention=problem.convention)
    version = Version("", title, Student("", ""))
    wrong = class_slips([own.digits], problem.missteps)
    return Copy(problem_set, version, (problem,), (own,), wrong, alone=True, drawn=_drawn(single))


def _drawn(single: Single) -> str:
    """What finds these numbers again: "diving-board, draw 3"; "" where nothing does."""
    if not single.number:
        return ""
    words = single.problem.language.page
    told = f"{single.problem.template.id}, {words.drawn} {single.number}"
    return f"{told}, {words.by_hand}" if single.by_hand else told
