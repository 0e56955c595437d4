"""A bank looked at, and looked at again."""

from pathlib import Path

import pytest

from probgen.bank.bank_path import read_bank
from probgen.bank.template import Template
from probgen.build.workers import Crew
from probgen.department import looked_at as module
from probgen.department.looked_at import looked_at
from probgen.department.trust import Trust, trust
from probgen.input.fault import Faults
from tests.banks import make_bank, put, template_text


@pytest.fixture
def bank(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "cache").mkdir()
    monkeypatch.setattr(module, "cache_folder", lambda kind: tmp_path / "cache")
    return make_bank(tmp_path / "bank")


def look(bank: Path, faults: Faults | None = None) -> list[Trust]:
    own = Faults("") if faults is None else faults
    found = list(looked_at(read_bank(bank), 50, Crew(1), lambda *_: None, own))
    if faults is None:
        own.settle()
    return found


def test_each_in_each_system_and_only_what_changed_again(
    bank: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = look(bank)
    assert [(each.id, each.units) for each in first] == [
        ("forearm-load", ""), ("forearm-load", "US customary"),
        ("seesaw-two-riders", ""), ("seesaw-two-riders", "US customary"),
    ]  # fmt: skip
    looked: list[str] = []

    def noted(template: Template, draws: int) -> Trust:
        looked.append(template.id)
        return trust(template, draws)

    monkeypatch.setattr(module, "trust", noted)
    assert look(bank) == first
    assert looked == []
    put(bank, "forearm-load", 2, template_text("forearm-load", 2))
    assert [each.doubts for each in look(bank)[2:]] == [each.doubts for each in first[2:]]
    assert looked == ["forearm-load", "forearm-load"]


def test_spoilt_notes_cost_time_alone_and_faults_are_told_each_time(
    bank: Path, tmp_path: Path
) -> None:
    first = look(bank)
    for path in (tmp_path / "cache").iterdir():
        path.write_text('{"proved": "many"}')
    assert look(bank) == first
    falling = template_text("forearm-load", direction='"270 + muscle_angle"')
    put(bank, "forearm-load", 1, falling)
    put(bank, "seesaw-two-riders", 1, template_text("seesaw-two-riders", level="9"))
    for _ in range(2):
        faults = Faults("")
        found = look(bank, faults)
        assert [each.checked for each in found] == [None, None]
        assert found[0].faults
        assert [fault.field for fault in faults.found] == ["level"]
