"""Types are looked at by the settings of the folder itself."""

from __future__ import annotations

from pathlib import Path

from tests.mutants.type_check import types_fail

SETTINGS = '[tool.mypy]\nstrict = true\nfiles = ["rooms.py"]\n'


def test_a_break_of_types_is_found_and_one_of_values_is_not(tmp_path: Path) -> None:
    (tmp_path / "pyproject.toml").write_text(SETTINGS)
    source = "def size(rooms: int, name: str) -> int:\n    return rooms + len(name)\n"
    for broken, fails in (("rooms - len(name)", False), ("rooms + (name)", True)):
        (tmp_path / "rooms.py").write_text(source.replace("rooms + len(name)", broken))
        assert types_fail(tmp_path) is fails
