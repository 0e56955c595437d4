"""What the engine says to the author of a situation it cannot stand behind, a row for each."""

from __future__ import annotations

import re

import pytest

from probgen.input.fault import InputError
from tests.situations import worked
from tests.statics.entries import (
    BREAKS,
    CABLE,
    FIND_LEAN,
    HINGE,
    POT,
    POT_MASS,
    PUSH,
    TILTED,
    ball,
    beam,
    entry,
    finding,
    jointed,
    lean,
    roller,
)
from tests.statics.refused import ALL, DEGENERATE, OUT_OF_RANGE, Refused


def refusals(template: str) -> list[str]:
    """What is said of the situation with the first of all its choices; nothing if it is solved."""
    try:
        worked(template)
    except InputError as error:
        return [" ".join(str(fault).split()) for fault in error.faults]
    return []


@pytest.mark.parametrize("refused", ALL, ids=str)
def test_what_cannot_be_solved_is_refused_with_its_reason(refused: Refused) -> None:
    said = refusals(refused.template)
    assert len(said) == 1
    assert re.search(refused.says, said[0], re.IGNORECASE)


@pytest.mark.parametrize(
    "template",
    [
        beam(HINGE, CABLE, finding("T")),
        ball(TILTED, PUSH, FIND_LEAN, unknown=lean(0, 90)),
        beam(HINGE, CABLE, POT, BREAKS.replace("20", "200"), unknown=POT_MASS),
        jointed(
            entry("fixed", body="left", at="A", symbol="R", couple="M_A"),
            roller("B", "N", body="right"),
            finding("M_A"),
        ),
    ],
)
def test_what_can_be_solved_is_not_refused(template: str) -> None:
    """The same situations with the flaw taken away."""
    assert refusals(template) == []


@pytest.mark.parametrize("refused", OUT_OF_RANGE[:3], ids=str)
def test_one_flaw_is_told_once(refused: Refused) -> None:
    """A place off the body is below its bound; that its number is negative says nothing more."""
    (said,) = refusals(refused.template)
    assert "comes out negative" not in said


@pytest.mark.parametrize("refused", DEGENERATE, ids=str)
def test_what_has_no_value_is_not_blamed_on_the_solver(refused: Refused) -> None:
    (said,) = refusals(refused.template)
    assert "solver" not in said
