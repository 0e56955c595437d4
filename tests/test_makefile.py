"""What is said before `make` holds for what it runs: `SEED=5 COUNT=9 make fuzz`, or `mutants`."""

import os
import shutil
import subprocess
from pathlib import Path

import pytest


@pytest.mark.skipif(shutil.which("make") is None, reason="make is not installed")
def test_a_seed_and_a_count_of_the_environment_are_kept() -> None:
    told = subprocess.run(
        ["make", "--silent", "--dry-run", "--assume-old=.venv/ready-to-test", "fuzz"],
        cwd=Path(__file__).parents[1],
        env={**os.environ, "SEED": "mine", "COUNT": "9"},
        check=True,
        capture_output=True,
        text=True,
    )
    assert "--count 9 --seed mine" in told.stdout
