"""What grows with the scale of a situation."""

from __future__ import annotations

from math import inf

import pytest

from probgen.bank.depiction import Depictions, Load, Manner, Thing
from probgen.figures.measured.survey import spans
from probgen.figures.situation.shown import Shown
from tests.figures.sketches import HINGED, SLOPE, read, surveyed
from tests.figures.telling import telling

_NOTHING = Depictions()


def shown(text: str, depicts: Depictions = _NOTHING, size: float = 1.0) -> Shown:
    template, values, _ = read(text)
    values = {**values, "L": size * values["L"]} if "L" in values else values
    measured = surveyed(template, values)
    told = spans(measured)
    none: frozenset[str] = frozenset()
    return Shown(measured, depicts, {}, telling(template), none, none, False, told, ())


def test_a_thin_figure_counts_as_a_little_high() -> None:
    core = shown(HINGED.replace("WAY", "120")).core
    assert core.real >= 3.0
    assert core.imag >= 0.3 * core.real * (1.0 - 1e-12)


def test_a_particle_has_next_to_no_extent() -> None:
    core = shown(SLOPE).core
    assert core.real == core.imag
    assert core.real < 0.01


def test_a_length_beside_a_particle_grows_with_the_scale() -> None:
    core = shown('[points]\nB = [0, 0]\nC = ["L", 0]\n' + SLOPE).core
    assert core.real >= 2.0


def test_people_limit_the_scale_of_what_is_not_tiny_then() -> None:
    """What carries them is 3 m wide, and of that a tenth."""
    person = Depictions(loads={"W": Load(Thing.PERSON, Manner.STANDS)})
    beam = HINGED.replace("WAY", "120")
    assert shown(beam).largest_scale == inf
    assert shown(beam, person).largest_scale == pytest.approx(60.0)
    assert shown(beam, person, 0.1).largest_scale == inf
