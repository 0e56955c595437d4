"""What grows with the scale of a situation."""

from __future__ import annotations

from probgen.bank.depiction import Depictions
from probgen.figures.measured.survey import spans
from probgen.figures.situation.shown import Shown
from tests.figures.sketches import HINGED, SLOPE, read, surveyed
from tests.figures.telling import telling


def shown(text: str) -> Shown:
    template, values, _ = read(text)
    measured = surveyed(template, values)
    told = spans(measured)
    none: frozenset[str] = frozenset()
    return Shown(measured, Depictions(), {}, telling(template), none, none, False, told, ())


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
