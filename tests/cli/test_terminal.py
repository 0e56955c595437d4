"""What reaches a terminal: texts as they are, no commands to it, in whatever encoding it has."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

import probgen.cli
from probgen.cli.terminal import counted, say, say_json
from probgen.input.text import visible

CLI = Path(probgen.cli.__file__).parent

LATIN = {"PYTHONIOENCODING": "latin-1", "PYTHONUTF8": "0"}
PLAIN = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Zoë 李 محمد\nBo", "Zoë 李 محمد\nBo"),
        ("می\u200cخواهم", "می\u200cخواهم"),
        ("\x1b]0;owned\x07Ann", r"\x1b]0;owned\x07Ann"),
        ("\x9b2J", r"\x9b2J"),
        ("gpj.\u202eexe", r"gpj.\u202eexe"),
        ("a\rb", r"a\rb"),
        ("\udcff", r"\udcff"),
        ("\ue000", r"\ue000"),
    ],
)
def test_what_commands_a_terminal_is_spelled_out(
    text: str, shown: str, capsys: pytest.CaptureFixture[str]
) -> None:
    say(text)
    assert capsys.readouterr().out == f"{shown}\n"


def told(*words: str, surroundings: dict[str, str]) -> bytes:
    """What a command prints where the terminal has another encoding than UTF-8."""
    run = subprocess.run(
        [sys.executable, "-m", "probgen", *words],
        env={**os.environ, **surroundings}, capture_output=True, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stderr
    return run.stdout


def test_letters_that_an_encoding_lacks_stop_no_command() -> None:
    assert rb"73.8\xb0 below" in told("work", "forearm-load", surroundings=PLAIN)
    assert "73.8°".encode("latin-1") in told("work", "forearm-load", surroundings=LATIN)


@pytest.mark.parametrize("surroundings", [PLAIN, LATIN], ids=["ASCII", "Latin 1"])
def test_json_is_json_in_any_encoding(surroundings: dict[str, str]) -> None:
    data = json.loads(told("work", "forearm-load", "--json", surroundings=surroundings))
    assert "73.8° below" in next(a["printed"] for a in data["answers"] if "°" in a["printed"])


@pytest.mark.parametrize(("count", "words"), [(0, "0 papers"), (1, "1 paper"), (2, "2 papers")])
def test_counts_agree_with_their_noun(count: int, words: str) -> None:
    assert counted(count, "paper") == words


def test_json_commands_no_terminal_and_is_the_same_data(
    capsys: pytest.CaptureFixture[str],
) -> None:
    data = {"name": "gpj.\u202eexe \x9b2J \ue000 \U000e0001", "other": "Zoë 李"}
    say_json(data)
    told = capsys.readouterr().out
    assert json.loads(told) == data
    assert all(visible(letter) == letter for letter in told)


def test_no_command_prints_texts_past_that() -> None:
    """Rich knows markup, and not what misleads an eye."""
    used = [path.name for path in CLI.rglob("*.py") if "rich.text" in path.read_text("utf-8")]
    assert used == ["columns.py"]
