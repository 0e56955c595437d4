"""The method of a course by itself; its fields are read with the assignment file's."""

from dataclasses import replace

import pytest

from probgen.course.method import convention_with, gravity_bounds, unit_system_named
from probgen.input.fault import InputError
from probgen.quantities.unit import SI, US_CUSTOMARY
from probgen.working.convention import Convention


def test_systems_of_units_by_their_names() -> None:
    assert [unit_system_named(each.name) for each in (SI, US_CUSTOMARY)] == [SI, US_CUSTOMARY]


def test_g_on_the_ground_in_either_system() -> None:
    # 9.7 and 9.9 m/s^2, by 0.3048 m to the foot, rounded inwards
    assert [str(end) for end in gravity_bounds(SI)] == ["9.70", "9.90"]
    assert [str(end) for end in gravity_bounds(US_CUSTOMARY)] == ["31.83", "32.48"]


def test_another_g_for_one_problem() -> None:
    assert convention_with(None, "--g") == Convention()
    assert convention_with("9.81", "--g") == replace(Convention(), gravity="9.81")
    with pytest.raises(InputError) as caught:
        convention_with("moon", "where it was typed")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == ("where it was typed", "gravity")
