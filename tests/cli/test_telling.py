"""A worked problem in a terminal: what stands on which line, in order.

The shelf's numbers are by hand: see `tests/situations.py`.
"""

from __future__ import annotations

import io
import re

import pytest
from rich.console import Console

from probgen.cli.telling import show
from probgen.input.fault import InputError
from probgen.problem.problem import tell_steps
from probgen.problem.single import Single
from probgen.working.guards import Guards
from tests.situations import HOLDS, SLIDES, STAYED_SHELF, TIPS, cabinet, worked

MEASURED = STAYED_SHELF.replace('name = "angle"', 'name = "angle", measured = "from the shelf"')


@pytest.fixture(scope="module")
def single() -> Single:
    return Single(*worked(MEASURED))


@pytest.fixture(scope="module")
def lines(single: Single) -> list[str]:
    file = io.StringIO()
    show(single, Console(file=file, width=200))
    return [line.rstrip() for line in file.getvalue().splitlines()]


def test_title_and_statement_come_first(lines: list[str]) -> None:
    assert lines[:3] == ["Own", "Own.", ""]


def test_givens_stand_in_columns_with_what_an_angle_is_measured_from(lines: list[str]) -> None:
    assert lines[3:9] == [
        "    L      L = 1.20 m  shelf length",
        "    d      d = 0.96 m  distance to the cable",
        "    m      m = 4.0 kg  shelf mass",
        "    M      M = 8.0 kg  load mass",
        "    theta  θ = 40°     angle, from the shelf",
        "",
    ]


def test_what_is_asked_stands_before_the_steps(lines: list[str]) -> None:
    asked = [line for line in lines if line.startswith("Find ")]
    assert len(asked) == 2
    assert asked[0].endswith(", T.")
    assert asked[1].endswith(", R.")
    assert lines.index(asked[1]) < next(i for i, line in enumerate(lines) if line.startswith("1 "))


def test_steps_are_numbered_and_apart(single: Single, lines: list[str]) -> None:
    titles = [section.title for section in tell_steps(single.problem, single.worked)]
    numbered = [line for line in lines if re.match(r"\d+ \S", line)]
    assert numbered == [f"{number} {title}" for number, title in enumerate(titles, start=1)]
    assert all(lines[lines.index(line) - 1] == "" for line in numbered)


def test_equations_are_indented_and_ranged_by_their_signs(lines: list[str]) -> None:
    """W_s L/2 + W_t L is 39.2 N times 0.6 m and 78.4 N times 1.2 m: 117.6 N m over 0.617076 m."""
    place = lines.index("         = 190.58 N ≈ 191 N")
    assert lines[place - 1].startswith("         = ((39.2 N)(0.600 m) + (78.4 N)(1.20 m))/")
    assert lines[place - 2] == "       T = (W_s (L/2) + W_t L)/(d sin θ)"
    assert "    W_s = m g = (4.0 kg)(9.80 m/s²) = 39.2 N" in lines


def test_answers_and_proof_come_last(lines: list[str]) -> None:
    place = lines.index("Answers")
    assert lines[place - 1] == ""
    assert lines[place + 1 : place + 6] == [
        "    T            = 191 N",
        "    R.magnitude  = 146 N",
        "    R.direction  = 1.9° below the horizontal, to the right",
        "    R.x          = 146 N",
        "    R.y          = −4.90 N",
    ]
    assert lines[place + 6] == ""
    assert re.fullmatch(
        r"Proof: largest residual \d\.\de-1\d, second solver differs by \d\.\de-1\d \(relative\)\.",
        lines[-1],
    )


def test_yes_answers_a_question_that_stands_beside_it() -> None:
    """By hand: 60 N is within 147 N, and x = 0.25 m + 60 N x 0.80 m/490 N = 0.3480 m in 0.50 m."""
    numbers = {"m": "50.0", "b": "0.50", "h": "0.80", "mu": "0.30"}
    text = cabinet("60", **numbers) + SLIDES + TIPS + HOLDS
    file = io.StringIO()
    show(Single(*worked(text)), Console(file=file, width=200))
    lines = [line.strip() for line in file.getvalue().splitlines()]
    assert "Find whether it holds (if not, it slides or it tips), and by what margin." in lines
    assert "does it hold (if not, it slides)  = yes, with 87.0 N to spare" in lines
    assert not any(line.startswith(("slides ", "tips ")) for line in lines)


def test_nothing_is_printed_where_no_step_can_be_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(Guards, "begin_key", lambda own: setattr(own, "raised", True))
    file = io.StringIO()
    with pytest.raises(InputError, match="values whose working can be printed"):
        show(Single(*worked(MEASURED)), Console(file=file, width=200))
    assert file.getvalue() == ""
