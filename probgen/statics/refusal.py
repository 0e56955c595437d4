"""What the engine says when a situation has no answer it could stand behind."""

from __future__ import annotations


class Refusal(ValueError):  # noqa: N818 (the trade's word: the engine refuses)
    """A situation that cannot be solved as stated; the message says why and what would help."""
