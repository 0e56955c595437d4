"""Banks by their paths, and releases by their names."""

from pathlib import Path

import pytest

from probgen.bank.bank_path import read_bank, released_near
from probgen.input.fault import InputError
from tests.banks import make_bank, put, template_text, write_release


def test_a_folder_with_and_without_a_file_of_its_own(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "statics", ["forearm-load"])
    put(bank, "forearm-load", 2)
    assert read_bank(bank).read("forearm-load").revision == 2
    plain = tmp_path / "plain"
    plain.mkdir()
    (plain / "forearm-load.toml").write_text(template_text("forearm-load", 7), "utf-8")
    assert read_bank(plain).read("forearm-load").revision == 7


def test_a_release_by_its_path_and_by_its_name(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "statics", ["forearm-load"])
    path = write_release(bank, "statics-2027.1", {"forearm-load": 1})
    put(bank, "forearm-load", 2)
    assert read_bank(path).read("forearm-load").revision == 1
    week = tmp_path / "courses" / "mechanics" / "week-3"
    week.mkdir(parents=True)
    for folder in (week, tmp_path, bank, bank / "uses"):
        found = released_near("statics-2027.1", folder, "a.toml", "bank")
        assert found is not None
        assert found.read("forearm-load").revision == 1
    for name in ("statics-2027.2", "../statics-2027.1", "", "."):
        assert released_near(name, week, "a.toml", "bank") is None


def test_two_banks_nearby_with_a_release_of_one_name(tmp_path: Path) -> None:
    for name in ("one", "two"):
        write_release(make_bank(tmp_path / name), "statics-2027.1", {"forearm-load": 1})
    with pytest.raises(InputError, match="give the path of the one you mean"):
        released_near("statics-2027.1", tmp_path, "a.toml", "bank")


def test_a_choice_of_supplied_templates(tmp_path: Path) -> None:
    path = tmp_path / "choice.toml"
    head = 'id = "c"\nrelease = 1\ntitle = "C"\n'
    path.write_text(f'{head}[[template]]\nid = "forearm-load"\nrevision = 1\n', "utf-8")
    assert list(read_bank(path).files) == ["forearm-load"]
    with pytest.raises(InputError, match="no text"):
        read_bank(Path("a\0b"))
