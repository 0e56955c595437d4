"""How many guard digits each carried value has: as many as any line needs, the same in all lines.

Which lines there are is known once a key has been told; where a line raises what an earlier one
showed, the key is told again (`wording.key.tell`).
"""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass, field


@dataclass(slots=True)
class Guards:
    """The guard digits of one key.

    least: by a quantity's id, or by the expression of a value that has no letter.
    raised: whether a number that was shown before has more digits now.
    """

    least: dict[Hashable, int] = field(default_factory=dict)
    raised: bool = False
    _shown: set[Hashable] = field(default_factory=set)
    _line: set[Hashable] = field(default_factory=set)

    def of(self, key: Hashable, wanted: int) -> int:
        """The guard digits of a value in a line that works with `wanted` of them."""
        self._line.add(key)
        self._shown.add(key)
        return max(wanted, self.least.get(key, 1))

    def begin_line(self) -> None:
        """Another line: what it holds is not known yet."""
        self._line.clear()

    def end_line(self, needed: int) -> int:
        """Whatever the line held has `needed` digits from now on; gives the most of any of them."""
        for key in self._line:
            self.raise_to(key, needed)
        return max((self.least.get(key, 1) for key in self._line), default=needed)

    def raise_to(self, key: Hashable, needed: int) -> None:
        """No fewer than so many digits for a value."""
        if needed > self.least.get(key, 1):
            self.least[key] = needed
            self.raised = self.raised or key in self._shown

    def same(self, key: Hashable, other: Hashable) -> None:
        """Two values are equal in size, which their digits are to show."""
        most = max(self.least.get(each, 1) for each in (key, other))
        for each in (key, other):
            self.raise_to(each, most)

    def begin_key(self) -> None:
        """A key is told from its first line on, with what is known of its digits by now."""
        self.raised = False
        self._shown.clear()
