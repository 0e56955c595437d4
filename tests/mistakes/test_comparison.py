"""Which number betrays which slip, as a key tells it and as marking would look it up."""

from __future__ import annotations

from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.mistakes.comparison import CLEAR, Slip, class_slips, likely, slips
from probgen.mistakes.likelihood import ANYWHERE, LIKELIHOOD, rank
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.working.convention import Convention
from probgen.working.digits import Digits
from probgen.working.tolerance import half_width
from tests.situations import SLIPS_DOWN, SLOPE, crate, finding, worked
from tests.two_states import two_crates

ROOT = Path(__file__).parents[2]
PUBLISHED = ROOT / "tests" / "published"
STRUT, LADDER, ARM = (
    PUBLISHED / f"{name}.toml" for name in ("up1-12.2-cyu8", "up1-12.2-ex5", "cp2e-9.6-ex4")
)
OWN = sorted(ROOT.glob("templates/*/*.toml"))
PAIR, BENCH, SAFE, TRAPDOOR = (
    PUBLISHED / f"{name}.toml"
    for name in ("cp2e-4.5-ex6", "cp2e-9.2-p5", "up1-12.2-p37", "up1-12.2-p43")
)
FIRST_LIMIT, RESTING = (PUBLISHED / f"{name}.toml" for name in ("up1-12.1-ex2", "up1-6.2-ex10"))
EVERY = [*OWN, STRUT, LADDER, ARM, PAIR, BENCH, SAFE, TRAPDOOR, FIRST_LIMIT, RESTING]
USUAL = Convention()


@cache
def problem(path: Path, convention: Convention = USUAL) -> Problem:
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), convention)


@cache
def works(path: Path, convention: Convention = USUAL) -> tuple[Worked, ...]:
    own = problem(path, convention)
    students = [str(each) for each in range(5 if own.template.room > 1 else 1)]
    return work(own, draw_class(own, "slips", students).draws)


@cache
def found(path: Path, convention: Convention = USUAL) -> tuple[tuple[Slip, ...], ...]:
    students = [own.digits for own in works(path, convention)]
    return class_slips(students, problem(path, convention).missteps)


def named(path: Path) -> str:
    return path.stem


def apart(answer: str, one: float, other: float) -> float:
    gap = abs(one - other)
    return abs((gap + 180.0) % 360.0 - 180.0) if answer.endswith(".direction") else gap


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_every_number_is_clear_of_the_right_one(path: Path) -> None:
    for own, slipped in zip(works(path), found(path), strict=True):
        for each in slipped:
            right = own.case.values[each.answer]
            least = CLEAR * half_width(own.digits, each.answer)
            assert apart(each.answer, each.value, right) > least, each.id


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", EVERY, ids=named)
def test_what_a_key_tells_can_be_told_apart(path: Path) -> None:
    for own, slipped in zip(works(path), found(path), strict=True):
        chosen = likely(slipped)
        assert len({each.id for each in chosen}) == len(chosen) <= 3
        for place, each in enumerate(chosen):
            half = half_width(own.digits, each.answer)
            for other in chosen[:place]:
                if other.answer == each.answer:
                    assert apart(each.answer, each.value, other.value) > CLEAR * half


@pytest.mark.parametrize("path", EVERY, ids=named)
def test_a_number_is_listed_once(path: Path) -> None:
    for slipped in found(path):
        for place, each in enumerate(slipped):
            assert each.id not in each.alike
            same = [s for s in slipped[:place] if s.answer == each.answer]
            assert all(s.value != each.value for s in same)


def test_equal_numbers_are_one_class() -> None:
    """Exchanged functions and the wrong reference line give the ladder one number."""
    (both,) = [s for s in found(LADDER)[0] if s.answer == "F_w" and round(s.value, 1) == 265.4]
    assert {both.id, *both.alike} == {"sin_cos_swap", "wrong_reference_line"}


def test_the_right_number_of_another_answer_is_left_out_of_the_key() -> None:
    """Friction the wrong way gives the crate about to slip down 318 N: what T_2 is asked to be."""
    own, (case,) = crates(two_crates())
    (turned,) = [s for s in slips(case, own.missteps) if (s.id, s.answer) == (TURNED, "T")]
    assert turned.value == pytest.approx(318.10, abs=0.01)
    assert turned.elsewhere
    assert turned not in likely(slips(case, own.missteps), 99)
    own, (case,) = crates(crate() + SLOPE + SLIPS_DOWN + finding("T", "smallest"))
    (turned,) = [s for s in slips(case, own.missteps) if (s.id, s.answer) == (TURNED, "T")]
    assert turned in likely(slips(case, own.missteps), 99)


TURNED = "friction_reversed"


def crates(text: str) -> tuple[Problem, tuple[Digits]]:
    made, own = worked(text)
    return made, (own.digits,)


def test_numbers_too_close_are_left_out_of_the_key() -> None:
    """The strut without weight (667 N) is within reach of the strut without an angle (700 N)."""
    (close,) = [s for s in found(STRUT)[0] if s.answer == "T" and s.id == "own_weight_forgotten"]
    assert close.value == pytest.approx(666.67, abs=0.01)
    told = likely(found(STRUT)[0], 99)
    assert "no_angle" in [each.id for each in told]
    assert close not in told


def test_likelier_ones_come_first() -> None:
    for path in OWN:
        ranks = [rank(each.misstep) for each in likely(found(path)[0], 99)]
        assert ranks == sorted(ranks)
        for answer in {each.answer for each in found(path)[0]}:
            made = [s for s in found(path)[0] if s.answer == answer and s.origin]
            places = [rank(each.misstep) for each in made]
            assert places == sorted(places)


def named_own(name: str) -> Path:
    return next(path for path in OWN if path.stem == name)


SPREAD = [
    ("jetty-mooring", {"N": 2, "R": 1}),  # three likelier ones would all be on N
    ("fridge-hand-truck", {"F": 2, "phi": 1}),  # none is made on N first
    ("ladder-raised", {"F": 1, "d": 1, "P": 1}),
]


@pytest.mark.parametrize(("name", "expected"), SPREAD)
def test_slips_are_spread_over_what_is_asked(name: str, expected: dict[str, int]) -> None:
    (made, *_) = found(named_own(name))
    assert Counter(each.of.owner for each in likely(made)) == expected


def test_none_is_told_for_the_spread_that_spoils_one_number_as_well_as_another() -> None:
    """A slip of rounding or of signs only, or one that the statement makes unlikely, is told
    where there are not three others.
    """
    for path in OWN:
        for made in found(path):
            told = likely(made)
            weak = [e for e in likely(made, 99) if e.id in ANYWHERE or e.misstep.unlikely]
            strong = [each for each in likely(made, 99) if each not in weak]
            assert len(strong) < 3 or not any(each in weak for each in told)


def test_where_a_slip_is_made_it_is_told() -> None:
    """A weight left out spoils the tension first and everything after it.

    One the situation is set for may be told of on a later answer.
    """
    spoilt = {s.answer: s for s in found(ARM)[0] if s.id == "own_weight_forgotten"}
    assert spoilt["B"].origin
    assert not spoilt["J.magnitude"].origin
    every = [each for path in EVERY for each in likely(found(path)[0], 99)]
    assert all(each.origin for each in every if not each.misstep.firm)
    assert spoilt["B"].spoils["J.magnitude"] == pytest.approx(372.4 - 39.2)


def test_every_slip_is_made_somewhere() -> None:
    """All but early rounding, which seldom spoils a result by more than the course allows."""
    made = {id for path in EVERY for each in found(path)[0] for id in (each.id, *each.alike)}
    assert set(LIKELIHOOD) - made <= {"early_rounding"}


def test_the_limit_reached_first_has_its_slips() -> None:
    (answer,) = {each.answer for each in found(FIRST_LIMIT)[0]}
    assert answer == "m"
    assert [each.id for each in likely(found(FIRST_LIMIT)[0])]


def test_one_case_is_as_in_its_class() -> None:
    own = works(OWN[0])[1]
    alone, among = slips(own.digits, problem(OWN[0]).missteps), found(OWN[0])[1]
    assert [(s.id, s.answer, s.value) for s in alone] == [(s.id, s.answer, s.value) for s in among]


def test_no_cases_no_slips() -> None:
    assert class_slips([], problem(OWN[0]).missteps) == ()
