"""Numbers that a student reads and types without a slip of the pen: few digits, a fitting unit."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Final

from probgen.department.doubt import Doubt, DoubtKind
from probgen.problem.problem import Worked, shown_values
from probgen.quantities.expression import Number
from probgen.quantities.printing import plain

_MOST_DIGITS: Final = 4
"""That count, of what is given; more are read wrong: a judgement."""
_BETWEEN: Final = Decimal("0.01"), Decimal(10_000)
"""Outside of which another unit would do: a judgement."""


def badly_read(own: Sequence[Worked]) -> Iterator[Doubt]:
    """A doubt for each quantity that has such numbers, with the first draw that does."""
    found: dict[str, list[tuple[int, Number]]] = {}
    for place, worked in enumerate(own):
        for id, value in worked.draw.values.items():
            if not reads_well(value):
                found.setdefault(id, []).append((place, value))
        for answer in worked.answers:
            shown = answer.shown
            if answer.asked and isinstance(shown, Number) and not is_of_a_size(shown.value):
                found.setdefault(answer.id, []).append((place, shown))
    for id, rows in found.items():
        place, value = rows[0]
        draw = shown_values(own[place].draw)
        yield Doubt(DoubtKind.READING, len(rows) / len(own), id, draw, plain(value))


def reads_well(given: Number) -> bool:
    """Whether a given has few digits, and a size that fits its unit."""
    digits = re.sub(r"\D", "", f"{given.value:f}").lstrip("0")
    return len(digits) <= _MOST_DIGITS and is_of_a_size(given.value)


def is_of_a_size(value: Decimal) -> bool:
    """Whether a number is neither a small fraction nor has many places before its point."""
    least, most = _BETWEEN
    return not value or least <= abs(value) < most
