"""What mypy says of a copy of the project: `make test` asks it before it runs a single test."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path


def types_fail(folder: Path) -> bool:
    """Whether mypy finds a fault by the settings in a folder; quick where it has been there before.

    Raises CalledProcessError where it cannot be run.
    """
    command = [sys.executable, "-m", "mypy"]
    done = subprocess.run(command, cwd=folder, capture_output=True, check=False)
    if done.returncode > 1:
        done.check_returncode()
    return done.returncode == 1
