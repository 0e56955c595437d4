"""Who works a printed line again, with its printed numbers, finds what is printed after it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest

from probgen.problem.problem import tell_steps
from probgen.quantities.expression import Expression, Name, Number, Sum, evaluate, names_in
from probgen.quantities.factors import terms_of
from probgen.quantities.formula import Balance
from probgen.quantities.printing import plain
from probgen.quantities.rounding import last_place
from probgen.wording.block import Display
from probgen.wording.key import tell
from probgen.wording.passage import Passage
from probgen.working.guards import Guards
from tests.wording.equation_chain import Chain, chains
from tests.wording.formula_reader import Size, UnknownSymbolError, UnreadableError, read
from tests.wording.told_keys import OWN, problem, works

MOST = 0.005
"""Of all lines: 8 in 100 were one unit of the last place off before results were written so."""
HALF = 0.5 + 1e-6


def worked_again(chain: Chain) -> Iterator[tuple[float, float, float]]:
    """What the numbers of each link give, the next printed result, and its last place."""
    numbers = list(_numbers(chain))
    for place, size in enumerate(numbers):
        result = next((each for each in numbers[place:] if each.last is not None), None)
        if size.last is None and result is not None and result.value:
            assert result.last is not None
            yield size.value, result.value, result.last


def _numbers(chain: Chain) -> Iterator[Size]:
    for _, text in chain.links:
        try:
            size = read(text, {}, {}) if text else None
        except (UnknownSymbolError, UnreadableError):
            continue
        if size is not None and not size.named:
            yield size


def test_nearly_every_line_gives_the_last_digit_it_prints() -> None:
    lines = off = 0
    for name in OWN:
        for own in works(name, size=5):
            blocks = [block for each in tell_steps(problem(name), own) for block in each.blocks]
            for value, result, last in (each for c in chains(blocks) for each in worked_again(c)):
                lines += 1
                off += abs(value - result) > HALF * last
    assert lines > 1000
    assert off < MOST * lines, (off, lines)


@pytest.mark.parametrize("name", OWN)
def test_who_works_a_check_again_finds_the_number_of_each_term(name: str) -> None:
    """From the results above it and the data, all as they are printed."""
    for own in works(name, size=5):
        passages = tell(own.digits, problem(name).unused)
        printed = {id: own.digits.data(id) for id in own.case.numbers} | _results(passages)
        known = {id: float(evaluate(number, {})) for id, number in printed.items()}
        for expression, numbers in _checks(passages):
            terms = terms_of(expression)
            assert len(terms) == len(numbers)
            for (sign, term), (shown_sign, number) in zip(terms, numbers, strict=True):
                if names_in(term) <= known.keys():
                    assert number.unit is not None
                    worked = sign * float(evaluate(term, known)) / number.unit.factor
                    off = abs(worked - shown_sign * float(number.value))
                    assert off <= HALF * float(last_place(number.value)), plain((expression,))


def _displays(passages: Sequence[Passage]) -> Iterator[Display]:
    for passage in passages:
        yield from (part for part in passage.parts if isinstance(part, Display))


def _results(passages: Sequence[Passage]) -> dict[str, Number]:
    """What each line ends with, before that is rounded off, by the quantity on its left; nothing
    that has a value at each of several limits.
    """
    found: dict[str, set[Number]] = {}
    for display in _displays(passages):
        named = None
        for row in display.rows:
            named = row.left[0] if row.left else named
            number = row.right[0]
            if isinstance(named, Name) and isinstance(number, Number):
                found.setdefault(named.id, set()).add(number)
    return {id: next(iter(numbers)) for id, numbers in found.items() if len(numbers) == 1}


def _checks(
    passages: Sequence[Passage],
) -> Iterator[tuple[Expression, tuple[tuple[int, Number], ...]]]:
    """The sums that are looked back at, with the numbers of their terms."""
    for display in _displays(passages):
        if len(display.rows) == 3 and isinstance(display.rows[0].left[0], Balance):
            balance, numbers = display.rows[0].right[0], display.rows[1].right[0]
            if isinstance(balance, Sum) and isinstance(numbers, Sum):
                terms = tuple((s, each) for s, each in numbers.terms if isinstance(each, Number))
                if len(terms) == len(numbers.terms):
                    yield balance, terms


@pytest.mark.parametrize("name", ["cable-reel-ramp", "ladder-smooth-wall"])
def test_a_key_is_told_a_few_times_at_most(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """The reel's friction is as large as its cable's pull, and each would change the other."""
    begun, begin = list[Guards](), Guards.begin_key

    def counted(guards: Guards) -> None:
        begun.append(guards)
        begin(guards)

    monkeypatch.setattr(Guards, "begin_key", counted)
    for own in works(name, size=10):
        begun.clear()
        tell_steps(problem(name), own)
        assert 1 <= len(begun) <= 10


def test_a_key_whose_digits_never_settle_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Guards, "begin_key", lambda own: setattr(own, "raised", True))
    own = works("well-windlass", size=1)[0]
    with pytest.raises(ArithmeticError, match="still differ after 60 tellings"):
        tell(own.digits, problem("well-windlass").unused)
