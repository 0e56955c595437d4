"""One kind of input: its good ones, how they are spoilt, and what is done with one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from random import Random

from probgen.cli.mend import told
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError
from tests.fuzz.mutation import spoilt


@dataclass(frozen=True)
class Target:
    """One kind: its good files, how they are spoilt, and what is done with one.

    tried: raises InputError or OutsideError for what is refused, and anything else for a defect.
    """

    name: str
    good: Callable[[], tuple[bytes, ...]]
    tried: Callable[[bytes, Path], None]
    spoil: Callable[[bytes, Random], bytes] = spoilt

    def input(self, seed: str, number: int) -> bytes:
        """The content of an input, the same for the same seed and number."""
        random = Random(f"{seed} {self.name} {number}")
        return self.spoil(random.choice(self.good()), random)

    def run(self, content: bytes, folder: Path) -> str:
        """The message that a content gets; empty when it is taken."""
        try:
            self.tried(content, folder)
        except (InputError, OutsideError) as error:
            return told(error)
        return ""


def written(folder: Path, name: str, content: bytes) -> Path:
    path = folder / name
    path.write_bytes(content)
    return path
