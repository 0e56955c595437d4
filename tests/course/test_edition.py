"""A code names what is printed: another content has another code, and no code stands for two."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from probgen.course import version_code
from probgen.course.assignment import Assigned, BankNames, ProblemSet
from probgen.course.edition import Coder, Edition, content_of, current
from probgen.course.exam import Exam
from probgen.course.issue import Erratum, FrozenTemplate, Issue
from probgen.draws.draw import Draw
from probgen.quantities.expression import Number
from probgen.quantities.unit import UNITS, US_CUSTOMARY
from probgen.sheets.house import House
from probgen.sheets.style import HouseStyle
from probgen.working.convention import Convention
from tests.records import SECRET
from tests.terms import begun, class_of

SET = ProblemSet("Mechanics", "Week 5", "class.csv", (Assigned("beam", 10),), due="7 March")


def drawn(digits: str, unit: str = "m", revision: int = 1) -> Draw:
    return Draw("beam", revision, {"L": Number(Decimal(digits), UNITS[unit])})


USUAL = Edition("", "7", (drawn("1.20"),), "Zoë", "A")
MISPRINT = Erratum("2027-03-12", "the beam's length")


def content(
    problem_set: ProblemSet = SET, edition: Edition = USUAL, source: str = "text", revision: int = 1
) -> str:
    return content_of(Issue(problem_set, (FrozenTemplate("beam", revision, source),)), edition)


OTHERS = {
    "course": content(replace(SET, course="Statics")),
    "title": content(replace(SET, title="Week 6")),
    "due": content(replace(SET, due="8 March")),
    "points": content(replace(SET, problems=(Assigned("beam", 12),))),
    "pivot": content(replace(SET, problems=(Assigned("beam", 10, "A"),))),
    "formulas": content(replace(SET, formulas=True)),
    "caution": content(replace(SET, caution=False)),
    "paper": content(replace(SET, paper="a4")),
    "room": content(replace(SET, room="grid")),
    "notes": content(replace(SET, exam=Exam(2, notes=("No books.",)))),
    "torque": content(replace(SET, convention=Convention(torque="arm"))),
    "units": content(replace(SET, convention=Convention(units=US_CUSTOMARY))),
    "text": content(source="text, corrected"),
    "revision": content(revision=2),
    "value": content(edition=replace(USUAL, draws=(drawn("1.30"),))),
    "digits": content(edition=replace(USUAL, draws=(drawn("1.2"),))),
    "unit": content(edition=replace(USUAL, draws=(drawn("1.20", "cm"),))),
    "id": content(edition=replace(USUAL, owner="8")),
    "name": content(edition=replace(USUAL, name="Zoe")),
    "section": content(edition=replace(USUAL, section="B")),
    "erratum": content(edition=replace(USUAL, errata=(MISPRINT,))),
    "day": content(edition=replace(USUAL, errata=(replace(MISPRINT, day="2027-03-13"),))),
}


@pytest.mark.parametrize("what", OTHERS)
def test_what_is_printed_otherwise_is_another_paper(what: str) -> None:
    assert OTHERS[what] != content()


def test_no_two_of_them_are_alike() -> None:
    assert len({content(), *OTHERS.values()}) == len(OTHERS) + 1


BANKS = BankNames(("m.toml",))
ALIKE = {
    "paths": content(
        replace(SET, roster="b.csv", seed="x", banks=BankNames(("m.toml",)), style="h.toml")
    ),
    "seats": content(replace(SET, exam=Exam(2, row=5, spare=3))),
    "size of letters": content(edition=replace(USUAL, large=True)),
}


def test_places_of_files_and_large_print_are_no_other_paper() -> None:
    exam = content(replace(SET, exam=Exam(4)))
    assert {"paths": content(), "seats": exam, "size of letters": content()} == ALIKE


def test_the_look_of_a_house_is_no_other_paper() -> None:
    issue = Issue(SET, (FrozenTemplate("beam", 1, "text"),), House(HouseStyle(text="sans")))
    assert content_of(issue, USUAL) == content()


def test_no_two_papers_of_a_record_have_one_code_however_few_codes_there_are(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(version_code, "_LENGTH", 1)
    record = begun(class_of(31))
    assert len({edition.code for edition in record.editions}) == 31


class Other:
    """Assignments of a course in which all codes but one stand for something else."""

    free = ""

    def content(self, code: str) -> str:
        return "" if code == self.free else "another paper"


def test_a_code_that_stands_for_another_paper_of_the_course_is_passed_over() -> None:
    issue = Issue(SET, (FrozenTemplate("beam", 1, "text"),))
    first = Coder(SECRET, issue, set()).coded(USUAL).code
    second = Coder(SECRET, issue, {first}).coded(USUAL).code
    elsewhere = Other()
    elsewhere.free = second
    assert Coder(SECRET, issue, set(), elsewhere).coded(USUAL).code == second


def test_the_same_paper_in_another_folder_has_the_same_code() -> None:
    issue = Issue(SET, (FrozenTemplate("beam", 1, "text"),))

    class Same:
        def content(self, code: str) -> str:
            return content()

    first = Coder(SECRET, issue, set()).coded(USUAL).code
    assert Coder(SECRET, issue, set(), Same()).coded(USUAL).code == first


def test_a_code_that_fits_its_content_and_one_that_does_not() -> None:
    issue = Issue(SET, (FrozenTemplate("beam", 1, "text"),))
    coder = Coder(SECRET, issue, set())
    coded = coder.coded(USUAL)
    assert coder.fits(coded)
    assert coder.fits(coder.coded(USUAL)), "the second of its sequence"
    assert not coder.fits(replace(coded, name="Zoe"))


def test_what_takes_a_place_and_what_stands_beside_it() -> None:
    first = Edition("A", "7", ())
    again = replace(first, code="B", follows="A")
    moved = replace(first, code="C", owner="77", follows="B")
    large = replace(first, large=True)
    assert current([first, again], twins=False) == {("7", False): again}
    assert current([first, again, moved], twins=False) == {("77", False): moved}
    assert current([first, large], twins=False) == {("7", False): large}
    assert current([first, large], twins=True) == {("7", False): first, ("7", True): large}
