"""Published answers: problems of textbooks, told in the template language and worked.

answers.toml beside this file says where each answer is printed; each problem is a template there,
in the language any author uses.  Those of the two open textbooks are worked by other tests too,
those of further books, in `further`, here alone.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from probgen.bank.reading import read_template
from probgen.draws.draw import completed
from probgen.problem.problem import Problem, Worked, prepare, tell_steps, work
from probgen.quantities.unit import SI, US_CUSTOMARY, unit_named
from probgen.working.convention import Convention

HERE = Path(__file__).parent
FILES = {path.stem: path for path in HERE.rglob("*.toml") if path.stem != "answers"}
PROBLEMS, PUBLISHED = 110, 224
"""Problems taken from the books, and the answers printed there."""
SYSTEMS = {system.name: system for system in (SI, US_CUSTOMARY)}


@dataclass(frozen=True)
class Published:
    """One published answer; the fields are those of answers.toml."""

    template: str
    source: str
    name: str
    id: str
    printed: str
    unit: str
    half: float
    computed: float | None = None
    because: str = ""
    draw: Mapping[str, str] = field(default_factory=dict)
    sign: int = 1
    start: float = 0.0
    turn: str = "counter-clockwise"
    units: str = SI.name
    g: str = ""

    def __str__(self) -> str:
        return f"{self.template}: {self.name}"


def listed() -> list[dict[str, Any]]:
    text = (HERE / "answers.toml").read_text(encoding="utf-8")
    rows: list[dict[str, Any]] = tomllib.loads(text)["problem"]
    return rows


ANSWERS = [
    Published(**{key: each for key, each in problem.items() if key != "answer"}, **answer)
    for problem in listed()
    for answer in problem["answer"]
]
NAMES = sorted({answer.template for answer in ANSWERS})


@cache
def prepared(template: str, units: str, g: str) -> Problem:
    system = SYSTEMS[units]
    text = FILES[template].read_text(encoding="utf-8")
    read = read_template(text, f"{template}.toml", system)
    return prepare(read, Convention(units=system, gravity=g))


@cache
def worked(template: str, units: str, g: str, draw: tuple[tuple[str, str], ...]) -> Worked:
    """The problem with its published data, proved and told."""
    problem = prepared(template, units, g)
    chosen = {given.id: given.choices[0] for given in problem.template.givens}
    chosen |= {id: Decimal(text) for id, text in draw}
    (own,) = work(problem, [completed(problem.template, chosen)])
    assert tell_steps(problem, own)
    return own


def found(answer: Published) -> float:
    """The answer in the published unit, counted the published way."""
    own = worked(answer.template, answer.units, answer.g, tuple(answer.draw.items()))
    (ours,) = [each for each in own.answers if each.id == answer.id]
    if ours.angle_from_x is not None:
        turned = ours.angle_from_x - answer.start
        return (turned if answer.turn == "counter-clockwise" else -turned) % 360.0
    value = ours.value * unit_named(ours.unit).factor / unit_named(answer.unit).factor
    return answer.sign * value


@pytest.mark.parametrize("answer", ANSWERS, ids=str)
def test_answer_agrees(answer: Published) -> None:
    value = found(answer)
    if answer.computed is None:
        slack = 1e-9 * abs(value)  # a tie such as 46.75 for 46.8 is an agreement
        assert abs(value - float(answer.printed)) <= answer.half + slack
    else:
        assert value == pytest.approx(answer.computed, rel=1e-5)


@pytest.mark.parametrize("answer", ANSWERS, ids=str)
def test_no_answer_has_more_room_than_its_last_digit(answer: Published) -> None:
    """Half of that digit's unit; noughts at the end of a whole number need not be digits."""
    printed = Decimal(answer.printed)
    whole = printed == printed.to_integral_value() and "." not in answer.printed
    place = (printed.normalize() if whole else printed).as_tuple().exponent
    assert isinstance(place, int)
    assert 0.0 < answer.half <= 0.5 * 10.0**place * (1.0 + 1e-9)


@pytest.mark.parametrize("answer", [a for a in ANSWERS if a.computed is not None], ids=str)
def test_only_a_book_that_errs_is_set_aside(answer: Published) -> None:
    assert answer.because
    assert abs(found(answer) - float(answer.printed)) > answer.half


def test_every_published_answer_is_listed_once() -> None:
    names = [(answer.template, answer.name) for answer in ANSWERS]
    assert len(names) == len(set(names)) == PUBLISHED


def test_every_problem_is_used() -> None:
    assert FILES.keys() == set(NAMES)
    assert len(FILES) == PROBLEMS


def test_no_problem_but_a_belt_s_states_an_equation_of_its_own() -> None:
    """Everything else follows from the situation described."""
    texts = {name: path.read_text(encoding="utf-8") for name, path in FILES.items()}
    stating = {name for name, text in texts.items() if "condition" in tomllib.loads(text)}
    assert stating == {"es-9-belt"}
