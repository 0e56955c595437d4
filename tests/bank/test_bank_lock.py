"""One writer at a time, and none who is gone."""

import subprocess
import sys
from pathlib import Path

import pytest

from probgen.bank import bank_lock
from probgen.bank.bank_lock import held
from probgen.input.outside import OutsideError
from tests.banks import make_bank

HOLDER = """
import sys, time
from pathlib import Path
from probgen.bank.bank_lock import held
with held(Path(sys.argv[1])):
    print("held", flush=True)
    time.sleep(60)
"""


def test_who_is_held_up_too_long_is_told_and_a_killed_holder_holds_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bank = make_bank(tmp_path)
    before = (bank / "bank.toml").read_bytes()
    command = [sys.executable, "-c", HOLDER, str(bank)]
    monkeypatch.setattr(bank_lock, "PATIENCE", 0.1)
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with pytest.raises(OutsideError, match="somebody else is writing"), held(bank):
            pass
        holder.kill()
    with held(bank):
        assert (bank / "bank.toml").read_bytes() == before
    assert {path.name for path in bank.iterdir()} == {"bank.toml", "templates"}


def test_a_bank_that_nobody_may_write_to_and_a_folder_that_is_none(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "bank")
    (bank / "bank.toml").chmod(0o444)
    with held(bank), held(tmp_path):
        pass
