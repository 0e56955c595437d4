"""How many guard digits each carried value has: as many as any line needs, the same in all lines.

Which lines there are is known once a key has been told; where a line raises what an earlier one
showed, the key is told again (`wording.key.tell`).  Where the numbers printed before it give
another last digit, or more than a few digits would be needed, a value is written as it follows
from them, and goes on so.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterator
from dataclasses import dataclass, field
from itertools import combinations
from typing import Final

from probgen.quantities.expression import Number

_MOST_RAISED: Final = 2  # values of a line that have a digit more than the others in it
_MOST_CHANGES: Final = 3
"""How often what a line gives may change as the numbers in it do; then its value is as it is."""


@dataclass(slots=True)
class Guards:
    """The guard digits of one key.

    least: by a value as one guard digit shows it, so that what is alike on paper is written alike,
    whatever it was worked out from.
    written: values as they follow from printed numbers, in all lines; None where some later line
    did not hold with such values, and none are written so.
    raised: whether a value that was shown before has other digits now.

    All of this ends: guard digits only grow, to the most that a line tries, one line alone says how
    a value is written, and it changes that a few times only.
    """

    least: dict[Hashable, int] = field(default_factory=dict)
    written: dict[Hashable, Number] | None = field(default_factory=dict)
    raised: bool = False
    _shown: set[Hashable] = field(default_factory=set)
    _told: set[Hashable] = field(default_factory=set)
    _changes: Counter[Hashable] = field(default_factory=Counter)
    _writer: dict[Hashable, Hashable] = field(default_factory=dict)
    _line: dict[Hashable, int] | None = None
    _more: frozenset[Hashable] = frozenset()

    def of(self, value: Hashable, wanted: int) -> int:
        """The guard digits of a value in a line that works with `wanted` of them."""
        if self._line is None:
            self._shown.add(value)
        else:
            wanted += value in self._more
            self._line[value] = max(wanted, self._line.get(value, 1))
        return max(wanted, self.least.get(value, 1))

    def begin_line(self, more: frozenset[Hashable] = frozenset()) -> None:
        """Another line, tried until it holds: which digits it needs is not known yet.

        more: the values that have one digit more in it than it wants.
        """
        self._line, self._more = {}, more

    def attempts(self, most: int, most_raised: int = _MOST_RAISED) -> Iterator[int]:
        """A line begun with one guard digit in all values, then two in one or two of them, in all,
        and so on: how many it works with.

        most_raised: how many values may have a digit more than the others; none in a line whose
        values are to be alike.
        """
        for guard in range(1, most + 1):
            self.begin_line()
            yield guard
            line = self._line or {}
            raised = [value for value in line if self.least.get(value, 1) <= guard < most]
            for size in range(1, min(len(raised), most_raised + 1)):
                for some in combinations(raised, size):
                    self.begin_line(frozenset(some))
                    yield guard

    def end_line(self) -> None:
        """Whatever the line held has the digits it held it with from now on."""
        held, self._line = self._line or {}, None
        for value, needed in held.items():
            if needed > self.least.get(value, 1):
                self.least[value] = needed
                self.raised = self.raised or value in self._shown
        self._shown |= held.keys()

    def leave_line(self) -> None:
        """The line is not shown."""
        self._line = None

    def show(self, value: Hashable) -> None:
        """A value is shown, in whatever digits it has by now."""
        self._told.add(value)

    def has_shown(self, value: Hashable) -> bool:
        """Whether this telling has shown a value by now."""
        return value in self._told

    def may_write(self, value: Hashable, line: Hashable) -> bool:
        """Whether a line may say how a value is written: the first that did, until it changed that
        too often.
        """
        own = self._writer.get(value, line) == line
        return self.written is not None and own and self._changes[value] <= _MOST_CHANGES

    def write(self, value: Hashable, number: Number, line: Hashable, shown: bool) -> None:
        """From now on a value is written so in every line, where any may be.

        line: what says so; shown: whether the value was shown before that line.
        """
        if self.written is not None:
            before = self.written.get(value)
            self.raised = self.raised or (shown if before is None else before != number)
            self._changes[value] += before not in (None, number)
            self.written[value] = number
            self._writer[value] = line
            if self._changes[value] > _MOST_CHANGES:
                del self.written[value]

    def write_none(self) -> bool:
        """Whether values were written so that are no longer from now on."""
        ended, self.written = bool(self.written), None
        self.raised = self.raised or ended
        return ended

    def begin_key(self) -> None:
        """A key is told from its first line on, with what is known of its digits by now."""
        self.raised = False
        self._shown.clear()
        self._told.clear()
