"""What lies in front of what."""

from __future__ import annotations

from itertools import pairwise

from probgen.figures.paper.scene import MEDIUM, Shape, line
from probgen.figures.situation.layer import layered
from tests.figures.seen import tag

ORDER = ("soil", "ground:x", "body:beam", "support:R", "cable:T", "load:W", "label:m")


def test_ground_lies_behind_bodies_and_these_behind_what_they_carry() -> None:
    mixed: list[Shape] = [line(0j, 1 + 0j, MEDIUM, tag(words)) for words in reversed(ORDER)]
    assert tuple(str(shape.tag) for shape in layered(mixed)) == ORDER


def test_alike_shapes_stay_as_they_were_drawn() -> None:
    alike = [line(0j, n + 1j, MEDIUM, tag("body:beam")) for n in range(5)]
    assert list(layered(alike)) == alike
    assert all(a is not b for a, b in pairwise(alike))
