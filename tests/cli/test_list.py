"""`probgen list`."""

import json
import subprocess
import sys

from probgen.bank.supplied import supplied
from probgen.problem.catalogue import read_catalogue
from tests.cli.conftest import Run


def test_every_template_has_a_line(run: Run) -> None:
    result = run("list")
    lines = result.stdout.splitlines()
    assert lines[0].split() == ["id", "family", "level", "title", "revision"]
    ids = {path.stem for path in supplied("templates").rglob("*.toml")}
    assert {line.split()[0] for line in lines[1:]} == ids
    assert len(lines) == 1 + len(ids)


def test_one_family_as_json(run: Run) -> None:
    listed = json.loads(run("list", "--family", "ladders", "--json").stdout)
    assert [entry["family"] for entry in listed] == ["ladders"] * len(listed)
    assert "ladder-smooth-wall" in [entry["id"] for entry in listed]


def test_the_catalogue_is_in_order() -> None:
    entries = read_catalogue()
    assert list(entries) == sorted(entries, key=lambda e: (e.family, e.level, e.id))


def test_nothing_heavy_is_loaded_before_it_is_needed() -> None:
    program = (
        "import sys; from probgen.cli import main; "
        "main(['list', '--json'], standalone_mode=False); "
        "print([m for m in ('numpy', 'sympy', 'scipy', 'faker', 'pikepdf', 'rich', 'joblib') "
        "if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True)
    assert done.stdout.splitlines()[-1] == "[]", done.stderr


def test_a_released_bank_in_its_own_order(run: Run) -> None:
    listed = json.loads(run("list", "--bank", "first-course", "--json").stdout)
    assert "forearm-load" in [entry["id"] for entry in listed]
    assert {entry["id"] for entry in listed} <= {entry.id for entry in read_catalogue()}


def test_an_unknown_bank_is_told(run: Run) -> None:
    result = run("list", "--bank", "first-corse")
    assert result.exit_code == 1
    assert 'did you mean "first-course"?' in result.stderr
