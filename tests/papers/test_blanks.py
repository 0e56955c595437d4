"""A sheet has a place for every answer its key has, with the unit the key's answer has."""

from collections.abc import Iterator

import pytest

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.papers.blanks import label
from probgen.papers.page import Copy, key_of, sheet_of
from probgen.sheets.document import Blank
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from probgen.working.result import ResultKind, targets
from tests.papers.test_page import copy_of
from tests.plan_view import FROM_ABOVE
from tests.situations import HEAD, HINGED, SHELF, STAYED, worked

IDS = sorted(default_bank().files)
WAYS = {
    "horizontal": ("above / below the horizontal,", "to the right / left"),
    "vertical": ("from the upward / downward vertical,", "to the right / left"),
    "axis": ("counter-clockwise from +x (to the right)",),
}


def blanks_in(id: str, convention: Convention) -> Iterator[Blank]:
    (problem,) = sheet_of(copy_of(id, convention)).problems
    for part in problem.parts:
        yield from part.blanks or (Blank((), part.unit),)


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", IDS)
def test_a_place_for_every_answer(id: str) -> None:
    copy = copy_of(id)
    (own,), (solution,) = copy.worked, key_of(copy).solutions
    to = copy.problems[0].plan.branches_to
    asked = [
        answer
        for answer in own.answers
        if answer.asked and (answer.kind is not ResultKind.LIMIT or len(to(answer.find)) > 1)
    ]  # one limit alone leaves no choice
    judged = sum(answer.kind is ResultKind.VERDICT for answer in asked)
    blanks = list(blanks_in(id, Convention()))
    drawn = len(own.case.system.to_draw)  # its axes are the place, and its blank is empty
    assert len(blanks) == len(asked) + judged + drawn  # judged: whether, and by what margin
    blanks = [each for each in blanks if each.written or each.choices]
    assert len(blanks) == len(asked) + judged
    printed = " ".join(answer.printed for answer in asked)
    for blank in blanks:
        assert blank.unit in printed
    assert len(solution.answers) >= len(asked)


@pytest.mark.parametrize("reference", WAYS)
def test_sides_to_circle_are_those_of_the_course(reference: str) -> None:
    convention = Convention(direction=reference)  # type: ignore[arg-type]
    _, size, way = blanks_in("beam-stay-cable", convention)
    assert (size.unit, size.choices) == ("kN", ())  # 1008 N to three figures is 1.01 kN
    assert way.unit == "°"
    assert tuple(plain_text(choice) for choice in way.choices) == WAYS[reference]


def test_what_happens_first_is_circled() -> None:
    push, first, _ = blanks_in("cabinet-slide-or-tip", Convention())
    assert push.unit == "N"
    assert not first.written
    slides, tips = map(plain_text, first.choices)
    assert slides == "the cabinet slides /"  # choices are circled, one beside the other
    assert tips.startswith("the cabinet tips")


SLIPPING = (
    HEAD
    + """
[given]
m = { name = "mass", choices = [4.0], unit = "kg" }
P = { name = "push", choices = [12.0], unit = "N" }
mu = { name = "coefficient", choices = [0.40], unit = "1" }
[body.crate]
particle = true
[[weight]]
mass = "m"
[[force]]
magnitude = "P"
direction = 0
[[rough]]
normal = "N"
friction = "f"
coefficient = "mu"
verge = false
"""
)


def blanks_of_text(text: str, convention: Convention | None = None) -> list[list[Blank]]:
    problem, own = worked(text, convention)
    chosen = convention or Convention()
    problem_set = ProblemSet("", "Own", "", (Assigned("own", 10),), convention=chosen)
    copy = Copy(problem_set, Version("", "", Student("", "")), (problem,), (own,))
    (shown,) = sheet_of(copy).problems
    return [list(part.blanks) or [Blank((), part.unit)] for part in shown.parts]


COMPASS = {
    "horizontal": ("north / south of", "east / west"),
    "vertical": ("from north / south toward", "east / west"),
    "axis": ("counter-clockwise from +x (east)",),
}


@pytest.mark.parametrize("reference", COMPASS)
def test_sides_to_circle_by_the_compass(reference: str) -> None:
    convention = Convention(direction=reference)  # type: ignore[arg-type]
    _, (_, way) = blanks_of_text(FROM_ABOVE, convention)
    assert tuple(plain_text(choice) for choice in way.choices) == COMPASS[reference]


@pytest.mark.parametrize("named", ["", 'quantity = "f.limit"\n'])
def test_a_limit_of_friction_has_a_place_for_yes_or_no_and_one_for_the_margin(named: str) -> None:
    """Such a limit is called f.limit, after the friction it is of."""
    ((verdict, margin),) = blanks_of_text(f'{SLIPPING}[[find]]\n{named}as = "holds"\n')
    assert [plain_text(each) for each in verdict.choices] == ["yes / no"]
    assert not verdict.written
    assert (plain_text(margin.label), margin.unit) == ("margin", "N")


def test_what_one_limit_is_asked_for_is_not_said_besides() -> None:
    problem, _ = worked(f'{SLIPPING}[[find]]\nquantity = "f.limit"\nas = "holds"\n')
    (verdict,) = [each for each in targets(problem.plan, problem.template.labels) if each.asked]
    assert plain_text(label(problem, verdict)) == "does it hold"


def test_what_is_asked_twice_in_two_ways_has_places_of_its_own() -> None:
    """A component is told beside a magnitude and direction, and asked by itself."""
    one = '[[find]]\nquantity = "R.x"\n'
    other = '[[find]]\nquantity = "R"\nas = "components"\n'
    whole = '[[find]]\nquantity = "R"\nas = "magnitude and direction"\n'
    parts = blanks_of_text(SHELF + HINGED + STAYED + one + other + whole)
    assert [[blank.unit for blank in part] for part in parts] == [["N"], ["N", "N"], ["N", "°"]]
