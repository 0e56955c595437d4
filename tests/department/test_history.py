"""Revisions of a bank, each with what is other than before."""

from pathlib import Path

from probgen.bank.bank import Bank, default_bank
from probgen.bank.bank_folder import read_bank_folder
from probgen.department.change import Kind
from probgen.department.history import folder_of, history
from probgen.problem.lookup import choose_bank
from tests.banks import make_bank, put, template_text, write_release


def bank_with_history(folder: Path) -> Path:
    """Three revisions of forearm-load: reworded, then with other physics."""
    make_bank(folder)
    reworded = template_text("forearm-load", 2).replace("still in one hand", "in one hand, still")
    put(folder, "forearm-load", 2, reworded)
    turned = reworded.replace("90 + muscle_angle", "90 - muscle_angle")
    put(folder, "forearm-load", 3, turned.replace("revision = 2", "revision = 3"))
    return folder


def test_the_newest_comes_first_with_what_is_other(tmp_path: Path) -> None:
    files = read_bank_folder(bank_with_history(tmp_path)).revisions["forearm-load"]
    newest, second, first = history(files, 3)
    assert [each.number for each in (newest, second, first)] == [3, 2, 1]
    assert first.change is None
    assert second.change is not None
    assert second.change.kinds == (Kind.WORDS,)
    assert newest.change is not None
    assert newest.change.kinds == (Kind.PHYSICS,)
    assert newest.change.revisions == (2, 3)


def test_a_release_knows_nothing_of_what_came_later(tmp_path: Path) -> None:
    files = read_bank_folder(bank_with_history(tmp_path)).revisions["forearm-load"]
    assert [each.number for each in history(files, 2)] == [2, 1]
    assert history({}, 1) == ()


def test_the_folder_is_found_around_a_bank_and_around_its_release(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "statics")
    release = write_release(bank, "statics-2027.1", {"forearm-load": 1})
    for named in (bank, release):
        folder = folder_of(choose_bank(str(named), Path(), "BANK", ""))
        assert folder is not None
        assert folder.id == "statics"
    assert folder_of(default_bank()) is None
    assert folder_of(Bank("top", "", {"shelf": Path("/shelf.toml")})) is None
