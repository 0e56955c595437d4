"""Templates taken into a bank."""

from pathlib import Path

import pytest

from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.supplied import supplied
from probgen.department.intake import take_in
from probgen.input.fault import InputError
from tests.banks import make_bank, template_text


def test_by_id_by_path_and_by_bank(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "bank", ["seesaw-two-riders"])
    own = tmp_path / "own.toml"
    own.write_text(template_text("leg-raise-cuff", 9), "utf-8")
    found = take_in(read_bank_folder(bank), [str(own), "seesaw-two-riders", "life-science"])
    assert len(found.taken) == 13
    assert found.there == ("seesaw-two-riders", "seesaw-two-riders")
    after = read_bank_folder(bank)
    assert [*after.revisions["leg-raise-cuff"]][1:] == [9]
    assert after.newest().read("leg-raise-cuff").source == own.read_text("utf-8")
    assert "joint force from force balances" in dict(found.strange)
    assert dict(found.strange).get("torque balance about a joint") is None
    assert take_in(after, ["life-science"]).taken == ()


def test_one_wrong_and_nothing_is_written(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "bank", ["forearm-load"])
    changed = tmp_path / "changed.toml"
    changed.write_text(template_text("forearm-load", title='"Other"'), "utf-8")
    broken = tmp_path / "broken.toml"
    broken.write_text(template_text("seesaw-two-riders", level="9"), "utf-8")
    with pytest.raises(InputError) as error:
        take_in(read_bank_folder(bank), [str(changed), str(broken), "tiptoe-achilles", "no-such"])
    fields = [fault.field for fault in error.value.faults]
    assert sorted(fields) == ["", "forearm-load", "level"]
    assert "revision = 2" in str(error.value)
    assert list(read_bank_folder(bank).revisions) == ["forearm-load"]


def test_what_comes_along_twice_is_written_once(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "bank", [])
    path = next(supplied("templates").rglob("seesaw-two-riders.toml"))
    found = take_in(read_bank_folder(bank), ["seesaw-two-riders", str(path)])
    assert [each.name for each in found.taken] == ["r1.toml"]
    assert found.there == ("seesaw-two-riders",)
