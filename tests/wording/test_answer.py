"""Answers as they are printed: numbers with units, directions and verdicts in words."""

from __future__ import annotations

from tests.situations import HOLDS, SLIDES, STAYED_SHELF, cabinet, worked


def printed(text: str) -> dict[str, str]:
    return {answer.id: answer.printed for answer in worked(text)[1].answers}


def test_numbers_and_directions() -> None:
    """By hand: 190.58 N, and (145.99, -4.90) N, which is 146.07 N at 1.92° below."""
    assert printed(STAYED_SHELF) == {
        "T": "191 N",
        "R.magnitude": "146 N",
        "R.direction": "1.9° below the horizontal, to the right",
        "R.x": "146 N",
        "R.y": "−4.90 N",
    }


def test_a_verdict() -> None:
    """mu N = 0.30 x 490 N = 147 N."""
    text = cabinet("120", m="50.0", b="0.50", h="0.80", mu="0.30") + SLIDES + HOLDS
    assert list(printed(text).values()) == ["yes, with 27.0 N to spare"]


def test_a_told_answer_is_the_result_it_tells_of() -> None:
    _, own = worked(STAYED_SHELF)
    for answer in own.answers:
        whole = answer.id in ("R.magnitude", "R.direction")
        assert answer.owner == ("R" if whole else answer.id)
        assert answer.asked == (answer.id not in ("R.x", "R.y"))
        assert (answer.angle_from_x is not None) == (answer.id == "R.direction")
