"""How many guard digits each carried value has: as many as any line needs, the same in all lines.

Which lines there are is known once a key has been told; where a line raises what an earlier one
showed, the key is told again (`wording.key.tell`).  Where more than a few would be needed, a value
is written as it follows from the numbers printed before it, and goes on so.
"""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass, field

from probgen.quantities.expression import Number


@dataclass(slots=True)
class Guards:
    """The guard digits of one key.

    least: by a value as one guard digit shows it, so that what is alike on paper is written alike,
    whatever it was worked out from.
    written: values as they follow from printed numbers, in all lines; None where some later line
    did not hold with such values, and none are written so.
    raised: whether a value that was shown before has other digits now.
    """

    least: dict[Hashable, int] = field(default_factory=dict)
    written: dict[Hashable, Number] | None = field(default_factory=dict)
    raised: bool = False
    _shown: set[Hashable] = field(default_factory=set)
    _line: set[Hashable] | None = None

    def of(self, value: Hashable, wanted: int) -> int:
        """The guard digits of a value in a line that works with `wanted` of them."""
        (self._shown if self._line is None else self._line).add(value)
        return max(wanted, self.least.get(value, 1))

    def begin_line(self) -> None:
        """Another line, tried with more digits until it holds: what it needs is not known yet."""
        self._line = set()

    def end_line(self, needed: int) -> None:
        """Whatever the line held has `needed` digits from now on."""
        held, self._line = self._line or set(), None
        for value in held:
            if needed > self.least.get(value, 1):
                self.least[value] = needed
                self.raised = self.raised or value in self._shown
        self._shown |= held

    def leave_line(self) -> None:
        """The line is not shown."""
        self._line = None

    def write(self, value: Hashable, number: Number) -> None:
        """From now on a value is written so in every line, where any may be."""
        if self.written is not None:
            self.raised = self.raised or self.written.get(value, number) != number
            self.written[value] = number

    def write_none(self) -> bool:
        """Whether values were written so that are no longer from now on."""
        ended, self.written = bool(self.written), None
        self.raised = self.raised or ended
        return ended

    def begin_key(self) -> None:
        """A key is told from its first line on, with what is known of its digits by now."""
        self.raised = False
        self._shown.clear()
