"""What fails outside is told with what to do about it."""

from __future__ import annotations

import pickle

from probgen.input.outside import OutsideError
from probgen.input.remedy import OtherFolder


def test_what_happened_and_the_mend() -> None:
    error = OutsideError("the disk is full", "make room", OtherFolder())
    assert str(error) == "the disk is full\n    mend      make room"
    assert (error.failed, error.mend, error.remedy) == (
        "the disk is full",
        "make room",
        OtherFolder(),
    )
    assert OutsideError("a", "b").remedy is None


def test_it_comes_back_whole_from_another_process() -> None:
    error = OutsideError("the disk is full", "make room", OtherFolder())
    again = pickle.loads(pickle.dumps(error))
    assert (str(again), again.remedy) == (str(error), error.remedy)
