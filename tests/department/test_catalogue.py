"""A catalogue of a bank: chapters, goals, releases, faults of all templates at once."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from probgen.bank.uses import Use, note_uses
from probgen.build.workers import Crew
from probgen.department.catalogue import Catalogue, catalogue_of
from probgen.department.catalogue_page import catalogue_page
from probgen.department.standing import Status
from probgen.input.fault import InputError
from probgen.problem.lookup import choose_bank
from tests.banks import make_bank, put, review, template_text, write_release

SOLVABLE = "a situation that statics alone can solve"


def silent(stage: str, done: int, total: int) -> None:
    """Nobody watches."""


def made(named: Path) -> Catalogue:
    return catalogue_of(choose_bank(str(named), Path(), "BANK", ""), Crew(1), silent)


def test_chapters_by_family_with_what_can_be_looked_for(tmp_path: Path) -> None:
    bank = make_bank(tmp_path, ["seesaw-two-riders", "forearm-load", "arm-held-out"])
    put(bank, "forearm-load", 2)
    found = made(bank)
    assert [chapter.family for chapter in found.chapters] == ["levers", "limbs"]
    assert found.cards[0].id == "seesaw-two-riders"
    assert (found.title, found.keeper, found.release) == (
        "Statics problems",
        "Keeper of the bank",
        "",
    )
    assert found.levels == tuple(sorted({card.template.level for card in found.cards}))
    assert set(found.goals) == {goal for card in found.cards for goal in card.template.goals}
    assert found.cautions == {"body"}
    forearm = next(card for card in found.cards if card.id == "forearm-load")
    assert [revision.number for revision in forearm.history] == [2, 1]
    assert (forearm.uses, forearm.status) == ((), None)


def test_what_the_folder_keeps_of_its_past(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    put(bank, "forearm-load", 2)
    review(bank, "forearm-load", 1)
    review(bank, "forearm-load", 2, "changes wanted")
    first = Use(date(2027, 9, 3), "Mechanics", "Week 2", "homework", "forearm-load", 1, "ab12", 90)
    later = replace(first, assignment="Test", day=date(2027, 12, 1), marked=80, facility=0.72)
    note_uses(bank, [later, first])
    forearm, seesaw = sorted(made(bank).cards, key=lambda card: card.id)
    assert forearm.status is Status.CHANGES_WANTED
    assert forearm.uses == (later, first)
    assert (seesaw.uses, seesaw.status) == ((), None)


def test_a_release_is_shown_as_it_was(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    release = write_release(bank, "statics-2027.1", {"forearm-load": 1})
    put(bank, "forearm-load", 2)
    found = made(release)
    assert found.release == "statics-2027.1"
    (card,) = found.cards
    assert [revision.number for revision in card.history] == [1]


def test_all_that_cannot_be_worked_is_told_at_once(tmp_path: Path) -> None:
    bank = make_bank(tmp_path, ["forearm-load", "seesaw-two-riders", "arm-held-out"])
    for id in ("forearm-load", "arm-held-out"):
        second = '[[muscle]]\nat = "H"\ndirection = "80"\nsymbol = "K"\nname = "strap"\n\n'
        put(bank, id, 1, template_text(id).replace("[[weight]]", f"{second}[[weight]]", 1))
    with pytest.raises(InputError) as caught:
        made(bank)
    assert {Path(fault.file).parent.name for fault in caught.value.faults} == {
        "forearm-load",
        "arm-held-out",
    }
    assert {fault.expected for fault in caught.value.faults} == {SOLVABLE}


def test_processes_change_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    ids = ["seesaw-two-riders", "crate-ramp-strap", "diving-board"]
    bank = choose_bank(str(make_bank(tmp_path, ids)), Path(), "BANK", "")
    one = catalogue_page(catalogue_of(bank, Crew(1), silent))
    monkeypatch.setattr("probgen.department.catalogue._AT_ONCE", 1)
    assert catalogue_page(catalogue_of(bank, Crew(2), silent)) == one
    assert one.count("<article") == len(ids)
