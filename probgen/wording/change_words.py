"""The words of what is other in a template, on the pages of a bank."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ChangeWords:
    """One language's words, as plain text; {places} are filled by the layout.

    formerly: another id before.  equal_draws: {same} of {all} have the same answers; before,
    after, numbers: heads of columns; nothing: where there is none.
    """

    formerly: str
    equal_draws: str
    before: str
    after: str
    numbers: str
    nothing: str
