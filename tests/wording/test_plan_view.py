"""What is seen from above is told by the compass, from the axes to the slips."""

from __future__ import annotations

import re

import pytest

from probgen.working.convention import Convention
from tests.plan_view import FROM_ABOVE
from tests.wording.own_telling import told, told_of

BY_SIDES = re.compile(
    r"\b(right(?! angle)|left|(?<!add )(?<!added )up|down|upward|downward|above|below|horizontal)\b"
)


@pytest.mark.parametrize("direction", ["horizontal", "vertical"])
@pytest.mark.parametrize("torque", ["angle", "arm", "components"])
def test_no_side_is_named_in_a_key(torque: str, direction: str) -> None:
    convention = Convention(torque=torque, direction=direction)  # type: ignore[arg-type]
    lines = told(FROM_ABOVE, convention) + told_of("ring-three-ropes", convention)
    assert [line for line in lines if BY_SIDES.search(line)] == []


def test_a_side_would_be_seen() -> None:
    lines = told(FROM_ABOVE.replace('view = "plan"', ""))
    assert [line for line in lines if BY_SIDES.search(line)] != []


def test_how_it_is_told() -> None:
    lines = told(FROM_ABOVE)
    assert "x to the east, y to the north; counter-clockwise torques are positive." in lines
    assert "the pull T of the cable at B, toward the north and east" in lines
    # The wind and the cable act at one point, neither nearer to the hinge; R_y is zero.
    assert "Which way R_x and R_y act is not plain yet" in " ".join(lines)
    assert "F points θ = 60° south of west" in " ".join(lines)
    assert lines[-1].endswith("The hinge acts on the gate with a force of 60.0 N, to the west.")
