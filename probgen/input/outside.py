"""What fails outside the program: a tool that is missing, a disk that is full."""

from __future__ import annotations


class OutsideError(Exception):
    """Something the program relies on failed.

    failed: what happened, as a sentence without full stop; mend: what to do about it.
    """

    def __init__(self, failed: str, mend: str) -> None:
        self.failed = failed
        self.mend = mend
        super().__init__(failed, mend)

    def __str__(self) -> str:
        return f"{self.failed}\n    mend      {self.mend}"
