"""The folder of a new bank."""

from pathlib import Path

import pytest

from probgen.bank.bank_folder import read_bank_folder
from probgen.department.new_bank import write_bank
from probgen.input.fault import InputError


@pytest.mark.parametrize(
    ("folder", "id", "name"),
    [
        ("statics", "statics", "statics"),
        ("Statics zu Übung 2", "statics-zu-ubung-2", "Statics zu Übung 2"),
        ("力学", "statics", "力学"),
        ("2027", "statics", "2027"),
        ("\u202e", "statics", "Statics problems"),
        ('a "b" \\ c', "a-b-c", 'a "b" \\ c'),
    ],
)
def test_it_can_be_read_as_it_stands(tmp_path: Path, folder: str, id: str, name: str) -> None:
    made = write_bank(tmp_path / "x" / folder)
    bank = read_bank_folder(made.folder)
    assert (bank.id, bank.name, dict(bank.revisions)) == (id, name, {})
    assert made.templates.is_dir()


def test_own_settings_of_the_version_control_stay(tmp_path: Path) -> None:
    assert "reviews.csv merge=union" in write_bank(tmp_path / "a").merges.read_text("utf-8")
    (tmp_path / "b").mkdir()
    (tmp_path / "b" / ".gitattributes").write_text("* text=auto\n", "utf-8")
    assert write_bank(tmp_path / "b").merges.read_text("utf-8") == "* text=auto\n"


def test_nothing_is_written_over(tmp_path: Path) -> None:
    bank = write_bank(tmp_path / "bank")
    before = bank.file.read_text("utf-8")
    for path, found in ((bank.folder, '"a bank"|a bank'), (bank.file, "a file")):
        with pytest.raises(InputError, match=found):
            write_bank(path)
    assert bank.file.read_text("utf-8") == before
