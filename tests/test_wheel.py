"""The package installed elsewhere: templates, banks and layouts travel inside the wheel."""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]


def run(*words: object, folder: Path = ROOT, **surroundings: str) -> str:
    done = subprocess.run(
        [sys.executable, *map(str, words)],
        capture_output=True,
        text=True,
        env=os.environ | surroundings,
        cwd=folder,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_a_class_is_built_from_the_wheel(tmp_path: Path) -> None:
    site, elsewhere = tmp_path / "site", tmp_path / "elsewhere"
    elsewhere.mkdir()
    pip = ("-m", "pip", "--quiet", "--disable-pip-version-check")
    run(*pip, "wheel", "--no-deps", "--no-build-isolation", "--wheel-dir", tmp_path, ROOT)
    (wheel,) = tmp_path.glob("probgen-*.whl")
    run(*pip, "install", "--no-deps", "--no-index", "--target", site, wheel)

    def installed(*words: object) -> str:
        return run(*words, folder=elsewhere, PYTHONPATH=str(site))

    assert str(site) in installed("-c", "import probgen; print(probgen.__file__)")
    listed = installed("-m", "probgen", "list", "--bank", "first-course")
    assert "forearm-load" in listed
    installed("-m", "probgen", "demo", "--students", "2", "--out", "class")
    assert len(list((elsewhere / "class" / "sheets").glob("*.pdf"))) == 2
    assert len(list((elsewhere / "class" / "keys").glob("*.pdf"))) == 2
