"""Which lines of the package each test file runs, so that a break is tried on no other tests.

A file is measured in a process of its own, on sound code; what was measured is kept in a folder
beside the project as long as neither the package nor the tests around the file change.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from hashlib import sha256
from pathlib import Path
from typing import Final

from coverage import CoverageData

ROOT: Final = Path(__file__).resolve().parents[2]
_KEPT: Final = ROOT / ".mutants_cache"


@dataclass(frozen=True, slots=True)
class Reach:
    """What a test file does on sound code.

    passes: whether all its tests pass, since else it can notice nothing; seconds: how long it
    takes; lines: the numbers of the lines it runs, by module, such as probgen/bank/load.py.
    """

    passes: bool
    seconds: float
    lines: dict[str, list[int]]

    def meets(self, module: Path, first: int, last: int) -> bool:
        """Whether it runs one of a module's lines from first to last."""
        return any(first <= line <= last for line in self.lines.get(module.as_posix(), ()))


def read_lines(data: Path, folder: Path) -> dict[str, list[int]]:
    """The lines that coverage measured in a folder's package."""
    measured = CoverageData(str(data))
    measured.read()
    paths = {Path(name): measured.lines(name) or [] for name in measured.measured_files()}
    inside = {path: lines for path, lines in paths.items() if path.is_relative_to(folder)}
    return {path.relative_to(folder).as_posix(): sorted(lines) for path, lines in inside.items()}


def key_of(test: Path) -> str:
    """A digest of all that can change what a test file reaches: the package, the tests about it."""
    digest = sha256()
    sources = sorted((ROOT / "probgen").rglob("*.py"))
    room = ROOT / "tests" / test.parts[1]
    beside = sorted({*(ROOT / "tests").glob("*.py"), *room.rglob("*.py")})
    helpers = [path for path in beside if not path.name.startswith("test_")]
    for path in (*sources, *helpers, ROOT / test):
        digest.update(path.read_bytes() + b"\0")
    return digest.hexdigest()


def kept(test: Path) -> Reach | None:
    """What was measured of a test file before, if it still holds."""
    file = _file(test)
    if not file.exists():
        return None
    found = json.loads(file.read_text(encoding="utf-8"))
    return Reach(**found["reach"]) if found["key"] == key_of(test) else None


def keep(test: Path, reach: Reach) -> None:
    file = _file(test)
    file.parent.mkdir(exist_ok=True)
    file.write_text(json.dumps({"key": key_of(test), "reach": asdict(reach)}), encoding="utf-8")


def _file(test: Path) -> Path:
    return _KEPT / f"{'-'.join(test.parts[1:])}.json"
