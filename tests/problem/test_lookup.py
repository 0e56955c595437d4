"""What somebody names: templates, banks, and a point of the course's choice."""

from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.input.fault import InputError
from probgen.problem.lookup import choose_several, with_pivot
from probgen.problem.problem import prepare
from probgen.quantities.unit import US_CUSTOMARY
from probgen.working.convention import Convention

BEAM = default_bank().read("beam-stay-cable")


def test_no_pivot_leaves_the_template_as_it_is() -> None:
    assert with_pivot(BEAM, "", "set.toml", "problem[0].pivot") is BEAM


def test_a_named_pivot_is_the_only_one_torques_are_taken_about() -> None:
    plan = prepare(with_pivot(BEAM, "C", "set.toml", "problem[0].pivot"), Convention()).plan
    assert set(plan.pivots) == {"C"}
    assert set(prepare(BEAM, Convention()).plan.pivots) == {"A"}


def test_a_pivot_that_is_no_point_is_told_with_the_points() -> None:
    with pytest.raises(InputError) as caught:
        with_pivot(BEAM, "Q", "set.toml", "problem[2].pivot")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field, fault.found) == ("set.toml", "problem[2].pivot", "Q")
    assert fault.expected == "one of the points A, C, D, E, F"


def test_an_id_goes_before_a_folder_of_the_same_name(tmp_path: Path) -> None:
    (tmp_path / "seesaw-two-riders").mkdir()
    (read,) = choose_several("seesaw-two-riders", tmp_path, "PATH")
    assert read().id == "seesaw-two-riders"
    assert read(US_CUSTOMARY).units == US_CUSTOMARY


def test_a_bank_whose_revisions_are_older_says_so_when_read(tmp_path: Path) -> None:
    text = """id = "old"
release = 1
title = "Old"
[[template]]
id = "head-over-phone"
revision = 1
"""
    (tmp_path / "old.toml").write_text(text, encoding="utf-8")
    (read,) = choose_several("old.toml", tmp_path, "PATH")
    with pytest.raises(InputError, match="release the bank anew"):
        read()
