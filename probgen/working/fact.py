"""What a working has to say: facts, which a language says in words."""

from __future__ import annotations


class Fact:
    """Something that is so, as ids, expressions, numbers and choices; it holds no words.

    Each kind of fact is a frozen dataclass of its own; `probgen.wording.english` says them all.
    """

    __slots__ = ()
