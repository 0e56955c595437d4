"""A sheet has a place for every answer its key has, with the unit the key's answer has."""

from collections.abc import Iterator

import pytest

from probgen.bank.bank import default_bank
from probgen.papers.page import key_of, sheet_of
from probgen.sheets.document import Blank
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from probgen.working.result import ResultKind
from tests.papers.test_page import copy_of

IDS = sorted(default_bank().files)
WAYS = {
    "horizontal": ("above / below the horizontal,", "to the right / left"),
    "vertical": ("from the upward / downward vertical,", "to the right / left"),
    "axis": ("counter-clockwise from +x",),
}


def blanks_in(id: str, convention: Convention) -> Iterator[Blank]:
    (problem,) = sheet_of(copy_of(id, convention)).problems
    for part in problem.parts:
        yield from part.blanks or (Blank((), part.unit),)


@pytest.mark.parametrize("id", IDS)
def test_a_place_for_every_answer(id: str) -> None:
    copy = copy_of(id)
    (own,), (solution,) = copy.worked, key_of(copy).solutions
    asked = [answer for answer in own.answers if answer.asked]
    judged = sum(answer.kind is ResultKind.VERDICT for answer in asked)
    blanks = list(blanks_in(id, Convention()))
    assert len(blanks) == len(asked) + judged  # whether, and by what margin
    printed = " ".join(answer.printed for answer in asked)
    for blank in blanks:
        assert blank.unit in printed
        assert blank.written or blank.choices
    assert len(solution.answers) >= len(asked)


@pytest.mark.parametrize("reference", WAYS)
def test_sides_to_circle_are_those_of_the_course(reference: str) -> None:
    convention = Convention(direction=reference)  # type: ignore[arg-type]
    _, size, way = blanks_in("beam-stay-cable", convention)
    assert (size.unit, size.choices) == ("kN", ())  # 1008 N to three figures is 1.01 kN
    assert way.unit == "°"
    assert tuple(plain_text(choice) for choice in way.choices) == WAYS[reference]


def test_what_happens_first_is_circled() -> None:
    push, first = blanks_in("cabinet-slide-or-tip", Convention())
    assert push.unit == "N"
    assert not first.written
    assert "slides / " in str(first.choices)
