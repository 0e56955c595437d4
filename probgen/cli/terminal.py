"""What is told in a terminal: texts of others shown as they are, and nothing that commands it."""

from __future__ import annotations

import codecs
import json
import re
import sys
from typing import Any, Final

import click

from probgen.input.text import visible

_FURTHER: Final = re.compile(r"[^\n -~]")


def say(text: str, err: bool = False) -> None:
    """Prints a text, on standard error with `err`; what no terminal should get is spelled out."""
    click.echo(visible(text), err=err)


def say_json(data: Any) -> None:
    """Prints data as JSON; in other encodings than UTF-8 with every letter escaped.

    What no terminal should get is escaped in any.
    """
    encoding = getattr(sys.stdout, "encoding", None) or "ascii"
    plain = codecs.lookup(encoding).name != "utf-8"
    text = json.dumps(data, ensure_ascii=plain, indent=2)
    click.echo(_FURTHER.sub(lambda found: _escaped(found[0]), text))


def _escaped(letter: str) -> str:
    return letter if visible(letter) == letter else json.dumps(letter)[1:-1]


def make_tolerant() -> None:
    """Has letters that the terminal's encoding lacks spelled out; they would stop a command."""
    for stream in (sys.stdout, sys.stderr):  # None where it is closed
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")


def counted(count: int, noun: str) -> str:
    """ "1 paper"; "3 papers"."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def program() -> str:
    """What to type to run probgen: its name, or its path where the name alone is not found."""
    import shutil

    if sys.argv[0].endswith("__main__.py"):
        return "python -m probgen"
    return "probgen" if shutil.which("probgen") else sys.argv[0]
