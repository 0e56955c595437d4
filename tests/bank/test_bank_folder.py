"""A department's bank as it lies in its folder."""

from pathlib import Path

import pytest

from probgen.bank.bank_folder import bank_around, bank_of, read_bank_folder
from probgen.input.fault import InputError
from tests.banks import HEAD, make_bank, put, template_text, write_release


def test_every_revision_is_there_and_the_newest_is_taken(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    put(bank, "forearm-load", 10)
    put(bank, "forearm-load", 2)
    found = read_bank_folder(bank)
    assert (found.id, found.keeper) == ("statics", "Keeper of the bank")
    assert list(found.revisions["forearm-load"]) == [1, 2, 10]
    assert found.newest().read("forearm-load").revision == 10
    assert [each.id for each in found.newest().read_all()] == ["forearm-load", "seesaw-two-riders"]


def test_a_release_stays_what_it_was(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    write_release(bank, "statics-2027.1", {"forearm-load": 1})
    put(bank, "forearm-load", 2)
    released = read_bank_folder(bank).released("statics-2027.1")
    assert list(released.files) == ["forearm-load"]
    assert released.read("forearm-load").revision == 1


def test_a_text_that_was_edited_since_is_refused(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    write_release(bank, "statics-2027.1", {"forearm-load": 1, "seesaw-two-riders": 1})
    put(bank, "forearm-load", 1, template_text("forearm-load", title='"Another title"'))
    (bank / "templates/seesaw-two-riders/r1.toml").unlink()
    with pytest.raises(InputError) as error:
        read_bank_folder(bank).released("statics-2027.1")
    assert [(fault.field, fault.found) for fault in error.value.faults] == [
        ("forearm-load r1", "a text edited since"), ("seesaw-two-riders r1", "no file"),
    ]  # fmt: skip


def test_a_release_of_another_bank_or_of_no_name(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    write_release(bank, "statics-2027.1", {"forearm-load": 1}, of="dynamics")
    found = read_bank_folder(bank)
    with pytest.raises(InputError, match="the bank it lies in"):
        found.released("statics-2027.1")
    with pytest.raises(InputError, match=r'did you mean "statics-2027\.1"'):
        found.released("statics-2027.2")


@pytest.mark.parametrize("name", ["r03.toml", "r3 (copy).toml", "r0.toml", "forearm.toml"])
def test_files_that_are_no_revision(tmp_path: Path, name: str) -> None:
    bank = make_bank(tmp_path)
    put(bank, "forearm-load", 3)
    (bank / "templates/forearm-load" / name).write_text("", "utf-8")
    with pytest.raises(InputError, match=r"r1\.toml, r2\.toml and so on"):
        read_bank_folder(bank)


def test_two_files_of_one_revision(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    put(bank, "forearm-load", 3)
    put(bank, "forearm-load", 4, template_text("forearm-load", 3))
    with pytest.raises(InputError, match="revision 4, as the bank statics has it"):
        read_bank_folder(bank).newest().read("forearm-load")


def test_a_template_that_lies_loose(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    (bank / "templates/loose.toml").write_text("", "utf-8")
    with pytest.raises(InputError, match=r"loose/r1\.toml"):
        read_bank_folder(bank)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (HEAD, "", "keeper"),
        ("goals", "aims", "goals"),
        ("keeper", "<<<<<<< mine\nkeeper", "not merged"),
    ],
)
def test_faults_of_its_own_file(tmp_path: Path, old: str, new: str, said: str) -> None:
    (make_bank(tmp_path) / "bank.toml").write_text(HEAD.replace(old, new), "utf-8")
    with pytest.raises(InputError, match=said):
        read_bank_folder(tmp_path)


def test_a_folder_that_is_none(tmp_path: Path) -> None:
    for folder, found in ((tmp_path, "a folder without it"), (tmp_path / "x", "no such folder")):
        with pytest.raises(InputError, match=found):
            read_bank_folder(folder)
    assert bank_around(tmp_path / "releases" / "x.toml") is None


def test_a_revision_knows_the_bank_it_lies_in(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    own = bank / "templates/forearm-load"
    assert bank_of(own / "r1.toml") == bank.resolve()
    for elsewhere in (own / "copy.toml", own / "more/r1.toml", bank / "r1.toml", Path("/r1.toml")):
        assert bank_of(elsewhere) is None
