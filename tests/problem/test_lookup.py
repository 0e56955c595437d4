"""What somebody names: templates, banks, and a point of the course's choice."""

from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.supplied import supplied
from probgen.input.fault import InputError
from probgen.input.remedy import SeeTemplates
from probgen.problem.lookup import (
    choose_bank,
    choose_several,
    choose_template,
    every_template,
    with_pivot,
)
from probgen.problem.problem import prepare
from probgen.quantities.unit import US_CUSTOMARY
from probgen.working.convention import Convention

BEAM = default_bank().read("beam-stay-cable")


def test_no_pivot_leaves_the_template_as_it_is() -> None:
    assert with_pivot(BEAM, "", "assignment.toml", "problem[0].pivot") is BEAM


def test_a_named_pivot_is_the_only_one_torques_are_taken_about() -> None:
    plan = prepare(with_pivot(BEAM, "C", "assignment.toml", "problem[0].pivot"), Convention()).plan
    assert set(plan.pivots) == {"C"}
    assert set(prepare(BEAM, Convention()).plan.pivots) == {"A"}


def test_a_pivot_that_is_no_point_is_told_with_the_points() -> None:
    with pytest.raises(InputError) as caught:
        with_pivot(BEAM, "Q", "assignment.toml", "problem[2].pivot")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field, fault.found) == ("assignment.toml", "problem[2].pivot", "Q")
    assert fault.expected == "one of the points A, C, D, E, F"


BANK = default_bank()


def test_no_name_is_all_templates(tmp_path: Path) -> None:
    assert choose_bank("", tmp_path, "set.toml", "bank").files == BANK.files


def test_a_bank_by_its_name_or_by_a_path_from_the_folder(tmp_path: Path) -> None:
    own = tmp_path / "mine.toml"
    own.write_bytes((supplied("banks") / "first-course.toml").read_bytes())
    supplied_bank = choose_bank("first-course", tmp_path, "set.toml", "bank")
    assert set(supplied_bank.files) < set(BANK.files)
    (tmp_path / "course").mkdir()
    for path in (supplied("templates") / "limbs").glob("f*.toml"):
        (tmp_path / "course" / path.name).write_bytes(path.read_bytes())
    assert "forearm-load" in choose_bank("course", tmp_path, "set.toml", "bank").files


@pytest.mark.parametrize(
    ("named", "mend"),
    [("first-curse", "first-course"), ("zzz", "leave it out"), ("gone.toml", "leave it out")],
)
def test_a_bank_that_is_not_there(tmp_path: Path, named: str, mend: str) -> None:
    with pytest.raises(InputError) as caught:
        choose_bank(named, tmp_path, "set.toml", "bank")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == ("set.toml", "bank")
    assert "first-course" in fault.expected
    assert mend in fault.mend


def chosen(named: str, folder: Path) -> str:
    return choose_template(named, BANK, folder, "set.toml", "problem[0].template").title


def test_a_template_by_its_id_or_by_a_path_from_the_folder(tmp_path: Path) -> None:
    assert chosen("beam-stay-cable", tmp_path) == BEAM.title
    text = BEAM.source.replace(BEAM.title, "A beam of my own")
    (tmp_path / "own.toml").write_text(text, encoding="utf-8")
    (tmp_path / "own.txt").write_text(text, encoding="utf-8")
    assert chosen("own.toml", tmp_path) == "A beam of my own"
    # A file that is no .toml file is none that is meant; nor is a folder.
    (tmp_path / "folder.toml").mkdir()
    for named in ("own.txt", "own", "folder.toml", "gone.toml"):
        with pytest.raises(InputError):
            chosen(named, tmp_path)


@pytest.mark.parametrize(
    ("named", "mend", "listed"),
    [
        ("beam-stay-cabel", "beam-stay-cable", False),
        ("zzzz", "", True),
        ("zzzz.toml", "correct the path", False),
    ],
)
def test_a_template_that_is_not_there(tmp_path: Path, named: str, mend: str, listed: bool) -> None:
    """The nearest one is offered; where nothing is near, the list of all of them."""
    with pytest.raises(InputError) as caught:
        chosen(named, tmp_path)
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == ("set.toml", "problem[0].template")
    assert mend in fault.mend
    assert isinstance(fault.remedy, SeeTemplates) is listed


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


@pytest.mark.parametrize("named", ["", " ", "empty"])
def test_a_name_of_nothing_is_not_one_of_everything(named: str, tmp_path: Path) -> None:
    """Such as an empty variable of a shell: a bank would take in all there are."""
    (tmp_path / "empty").mkdir()
    with pytest.raises(InputError) as caught:
        list(choose_several(named, tmp_path, "PATH"))
    (fault,) = caught.value.faults
    assert (fault.file, fault.found[: len(named) + 2]) == ("PATH", f'"{named}"')
    assert len(list(every_template())) == len(default_bank().files)
