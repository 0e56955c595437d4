"""A bent head has an ear, an eye and a neck that is closed where it is broken off."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Curve, bounds
from probgen.figures.paper.tag import UNTAGGED
from probgen.figures.parts.profile import head


def test_a_bent_head_has_ear_and_eye_inside_and_a_closed_neck() -> None:
    outline, *features = head(0j, 60.0, 1, UNTAGGED, 30.0)
    assert isinstance(outline, Curve)
    assert outline.pieces[-1][-1] == outline.start
    skull = bounds([outline])
    ear, fold, lid, brow = (bounds([feature]) for feature in features)
    assert skull.left < ear.left < fold.left < fold.right < ear.right < lid.left
    assert lid.right < skull.right
    assert lid.top < brow.top < skull.top


def test_a_small_head_is_open_below_and_has_an_eye_alone() -> None:
    outline, eye = head(0j, 18.0, 1, UNTAGGED)
    assert isinstance(outline, Curve)
    assert outline.pieces[-1][-1] != outline.start
    assert bounds([eye]).left > 0.0


@pytest.mark.parametrize("facing", [1, -1])
def test_a_head_looks_the_way_it_faces(facing: int) -> None:
    face, eye = head(0j, 20.0, facing, UNTAGGED)
    box, eyes = bounds([face]), bounds([eye])
    assert eyes.centre.real * facing > 0
    assert box.left < eyes.centre.real < box.right
    assert box.height > 20.0


def test_a_bent_head_has_no_eye_where_its_centre_of_mass_is_marked() -> None:
    assert len(head(0j, 20.0, 1, UNTAGGED, 14.0)) == 1
    upright, bent = (bounds(head(0j, 20.0, 1, UNTAGGED, lean)[:1]) for lean in (0.0, 25.0))
    assert bent.right > upright.right
