"""The method of a course by itself; its fields are read with the assignment file's."""

from dataclasses import replace
from pathlib import Path

import pytest

from probgen.course.method import (
    gravity_bounds,
    read_method_file,
    unit_system_named,
    with_typed,
)
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
    own = Convention(torque="arm", gravity="9.79")
    assert with_typed(own, None, None, "--g") == with_typed(own, SI, None, "--g") == own
    assert with_typed(own, None, "9.81", "--g") == replace(own, gravity="9.81")
    with pytest.raises(InputError) as caught:
        with_typed(own, None, "moon", "where it was typed")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == ("where it was typed", "gravity")


def test_another_system_of_units_has_its_own_g() -> None:
    own = Convention(torque="arm", gravity="9.79")
    assert with_typed(own, US_CUSTOMARY, None, "--g") == Convention("arm", units=US_CUSTOMARY)
    typed = with_typed(own, US_CUSTOMARY, "32.17", "--g")
    assert typed == Convention("arm", units=US_CUSTOMARY, gravity="32.17")
    with pytest.raises(InputError, match=r"31\.83 to 32\.48"):
        with_typed(own, US_CUSTOMARY, "9.81", "--g")


def test_a_method_alone_or_that_of_an_assignment_file(tmp_path: Path) -> None:
    lines = 'torque = "arm"\norder = "forces first"\n'
    wanted = Convention(torque="arm", order="forces first")
    path = tmp_path / "method.toml"
    whole = f'roster = "class.csv"\n[[problem]]\ntemplate = "a"\n[method]\n{lines}'
    for text in (lines, f"[method]\n{lines}", whole):
        path.write_text(text, encoding="utf-8")
        assert read_method_file(path) == wanted
    path.write_text(whole.partition("[method]")[0], encoding="utf-8")
    assert read_method_file(path) == Convention()


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ('order = "torque"\npivot = "mass"\n', ["2 problems", "torques throughout", "support"]),
        ('statement = "A beam"\n', ["a template"]),
        ('roster = "c.csv"\n[method]\naxis = 1\n', ["method.axis"]),
    ],
)
def test_a_method_that_is_none(text: str, told: list[str], tmp_path: Path) -> None:
    path = tmp_path / "method.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        read_method_file(path)
    assert all(words in str(caught.value) for words in told)
