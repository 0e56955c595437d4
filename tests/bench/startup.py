"""How soon the command line is there, beside an interpreter that imports click."""

import subprocess
import sys
from functools import partial

from tests.bench.line import at_most, seconds

_TIMES = 5


def _run(*words: str) -> None:
    subprocess.run([sys.executable, *words], check=True, stdout=subprocess.DEVNULL)


def bench() -> None:
    click = seconds(partial(_run, "-c", "import click"), _TIMES)
    for words, aim in ((("--help",), 2.5), (("list",), 4.0)):
        ours = seconds(partial(_run, "-m", "probgen", *words), _TIMES)
        at_most(f"start-{words[0].strip('-')}-beside-click", ours / click, aim)
