"""What a working has to say: facts, which a language says in words."""

from __future__ import annotations

from collections.abc import Callable


class Fact:
    """Something that is so, as ids, expressions, numbers and choices; it holds no words.

    Each kind of fact is a frozen dataclass of its own; `probgen.wording.english` says them all.
    """

    __slots__ = ()


Tell = Callable[[Fact], str]
"""A fact in some language's words, as one line of plain text, for what is printed in a figure."""
