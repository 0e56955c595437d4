"""One process that tries inputs one after the other, with a limit of time and memory for each.

    python -m tests.fuzz.worker KIND SEED FIRST STEP

It tries the inputs FIRST, FIRST + STEP, ... and prints a line of JSON before each ("begin") and
after it ("ok", "refused", or what is wrong with it).
"""

from __future__ import annotations

import json
import os
import resource
import signal
import sys
import tempfile
import traceback
import warnings
from itertools import count
from pathlib import Path
from typing import Final, NoReturn

from tests.fuzz.kinds import TARGETS

SECONDS: Final = 10
MOST_MEMORY: Final = 2**30
INSIDE: Final = (
    "<class", "KeyError", "Decimal(", "Traceback", "NoneType", "object at 0x", "ValueError",
)  # fmt: skip
"""What no message may show: the program's inside."""


class HangError(BaseException):
    """An input took longer than it may."""


def attempt(kind: str, seed: str, number: int) -> tuple[str, str]:
    """How the program ends with an input: "ok", "refused", or a defect with its place."""
    target = TARGETS[kind]
    content = target.input(seed, number)
    before = os.getcwd()
    with tempfile.TemporaryDirectory(prefix="probgen-fuzz-") as folder:
        os.chdir(folder)
        try:
            message = target.run(content, Path(folder))
        except HangError as error:
            return "hang", _place(error)
        except MemoryError as error:
            return "memory", _place(error)
        except Exception as error:
            return "traceback", f"{type(error).__name__} at {_place(error)}: {str(error)[:100]}"
        finally:
            os.chdir(before)
    shown = [inside for inside in INSIDE if inside in message and inside.encode() not in content]
    if shown:
        line = next(line for line in message.splitlines() if shown[0] in line)
        return "inside", f"{shown[0]}: {line.strip()[:120]}"
    return ("refused" if message else "ok"), ""


def _place(error: BaseException) -> str:
    """The last place in the program that an error came from."""
    frames = traceback.extract_tb(error.__traceback__)
    own = [frame for frame in frames if "/probgen/" in frame.filename]
    last = (own or list(frames))[-1]
    return f"{last.filename.rpartition('/probgen/')[2]}:{last.lineno} in {last.name}"


def _hang(*_: object) -> NoReturn:
    raise HangError


def main() -> None:
    kind, seed, first, step = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
    warnings.simplefilter("ignore")
    resource.setrlimit(resource.RLIMIT_DATA, (MOST_MEMORY, MOST_MEMORY))
    signal.signal(signal.SIGPROF, _hang)
    TARGETS[kind].good()
    for number in count(first, step):
        print(json.dumps([number, "begin", ""]), flush=True)
        signal.setitimer(signal.ITIMER_PROF, SECONDS)  # its own time: others use the machine too
        try:
            found = attempt(kind, seed, number)
        except HangError:
            found = ("hang", "between")
        except Exception as error:  # in the making of the input: no word on the program
            found = ("harness", f"{type(error).__name__}: {str(error)[:100]}")
        signal.setitimer(signal.ITIMER_PROF, 0)
        print(json.dumps([number, *found]), flush=True)


if __name__ == "__main__":
    main()
