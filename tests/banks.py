"""A department's bank made for a test, of templates that come with probgen."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from probgen.bank.bank import default_bank
from probgen.bank.release import sealed, text_digest
from probgen.input.toml import parse_toml

HEAD = """id = "statics"
name = "Statics problems"
keeper = "Keeper of the bank"
goals = ["torque balance about a joint", "direction of a force"]
"""


def git(folder: Path, *words: str, fails: bool = False) -> None:
    """A command of git in a folder of a repository; fails: whether it is to fail."""
    own = ("-c", "user.name=A", "-c", "user.email=a@example.org")
    done = subprocess.run(["git", *own, "-C", str(folder), *words], capture_output=True)
    assert (done.returncode != 0) == fails, done.stderr


def template_text(id: str, revision: int = 1, /, **replaced: str) -> str:
    """The text of a supplied template as a revision of its own; replaced: lines by their keys."""
    text = default_bank().files[id].read_text("utf-8")
    for key, value in {"revision": str(revision), **replaced}.items():
        text, count = re.subn(
            rf"(?ms)^{key} = (?:\[\n.*?^\]|[^\n]*)$", f"{key} = {value}", text, count=1
        )
        assert count == 1, key
    return text


def ready_text(id: str, revision: int = 1, /, **replaced: str) -> str:
    """As `template_text`, by an author of the bank's own, and with a goal that it lists."""
    own = {
        "goals": '["direction of a force"]', "minutes": "15", "author": '"Ada Quill"',
        "source": '"own work"', "licence": '"CC BY 4.0"',
    }  # fmt: skip
    return template_text(id, revision, **{**own, **replaced})


def without_origin(text: str) -> str:
    """A template's text as of somebody who says nothing of where it comes from."""
    own = re.sub(r"(?ms)^\[origin\]\n.*?\n\n", "", re.sub(r"(?m)^minutes = .*\n", "", text))
    assert own != text
    return own


def put(bank: Path, id: str, revision: int = 1, text: str | None = None) -> Path:
    """A revision of a template in a bank; the supplied template's text if none is given."""
    path = bank / "templates" / id / f"r{revision}.toml"
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(template_text(id, revision) if text is None else text, "utf-8")
    return path


def make_bank(folder: Path, ids: Sequence[str] = ("forearm-load", "seesaw-two-riders")) -> Path:
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "bank.toml").write_text(HEAD, "utf-8")
    for id in ids:
        put(folder, id)
    return folder


def make_ready(folder: Path, ids: Sequence[str] = ("forearm-load", "seesaw-two-riders")) -> Path:
    """A bank whose templates are complete and approved."""
    make_bank(folder, ())
    for id in ids:
        put_ready(folder, id)
    return folder


def put_ready(bank: Path, id: str, revision: int = 1, text: str | None = None) -> Path:
    """As `put`, complete and approved."""
    path = put(bank, id, revision, ready_text(id, revision) if text is None else text)
    review(bank, id, revision)
    return path


def review(bank: Path, id: str, revision: int, verdict: str = "approved", **told: str) -> None:
    """A row of the bank's reviews, on the text as it stands; told: person, date, note."""
    text = text_digest((bank / "templates" / id / f"r{revision}.toml").read_text("utf-8"))
    path = bank / "reviews.csv"
    if not path.exists():
        path.write_text("template,revision,text,person,date,verdict,note\n", "utf-8")
    cells = (told.get("person", "A. Reader"), told.get("date", "2027-05-03"), verdict)
    with path.open("a", encoding="utf-8") as file:
        file.write(",".join((id, str(revision), text, *cells, told.get("note", ""))) + "\n")


def write_release(bank: Path, name: str, revisions: Mapping[str, int], of: str = "statics") -> Path:
    """A release as the program writes them, its physics not looked at."""
    rows = ""
    for id, revision in revisions.items():
        text = text_digest((bank / "templates" / id / f"r{revision}.toml").read_text("utf-8"))
        rows += f'\n[[template]]\nid = "{id}"\nrevision = {revision}\n'
        rows += f'text = "{text}"\nphysics = "{"0" * 32}"\n'
    head = f'release = "{name}"\nbank = "{of}"\ndate = {date(2027, 8, 15)}\n'
    digest = sealed(parse_toml(head + rows, name))
    path = bank / "releases" / f"{name}.toml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(f'{head}digest = "{digest}"\n{rows}', "utf-8")
    return path
