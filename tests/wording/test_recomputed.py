"""Who works a printed line again, with its printed numbers, finds what is printed after it."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from probgen.problem.problem import tell_steps
from probgen.wording.key import tell
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
