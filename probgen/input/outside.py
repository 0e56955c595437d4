"""What fails outside the program: a tool that is missing, a disk that is full."""

from __future__ import annotations

from probgen.input.remedy import Remedy


class OutsideError(Exception):
    """Something the program relies on failed.

    failed: what happened, as a sentence without full stop; mend: what to do about it.
    remedy: what the front end has to offer besides, in its own words.
    """

    def __init__(self, failed: str, mend: str, remedy: Remedy | None = None) -> None:
        self.failed = failed
        self.mend = mend
        self.remedy = remedy
        super().__init__(failed, mend, remedy)

    def __str__(self) -> str:
        return f"{self.failed}\n    mend      {self.mend}"
