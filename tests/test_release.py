"""What a release says of itself in several places says the same."""

import re
import tomllib
from pathlib import Path

from probgen import __version__

ROOT = Path(__file__).parents[1]


def test_the_version_is_the_same_wherever_it_stands() -> None:
    changes = re.findall(r"^## (\S+)", (ROOT / "CHANGELOG.md").read_text("utf-8"), re.M)
    (cited,) = re.findall(r'^version: "(.+)"', (ROOT / "CITATION.cff").read_text("utf-8"), re.M)
    assert changes[0] == cited == __version__
    assert len(changes) == len(set(changes))


def test_the_package_says_that_it_is_typed() -> None:
    assert (ROOT / "probgen" / "py.typed").is_file()


def test_no_jinja_is_allowed_that_layouts_could_get_out_of() -> None:
    """Sandboxes before 3.1.6 have published ways out."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    (floor,) = (each for each in project["dependencies"] if each.startswith("jinja2"))
    least = [int(part) for part in floor.removeprefix("jinja2>=").split(".")]
    assert least >= [3, 1, 6]
