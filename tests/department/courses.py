"""What a course sets from a bank's releases over the years, and whether it can be had again."""

from __future__ import annotations

from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from probgen.bank.bank_folder import BankFolder
from probgen.build.build import Order, build_assignment, build_record
from probgen.build.workers import Crew
from probgen.course.record_file import read_record
from probgen.course.secret import write_secret

SET = """course = "Mechanics"
title = "Week {week}"
roster = "class.csv"
seed = "a seed of ten years"
bank = "{release}"
[[problem]]
template = "{id}"
points = 10
"""
CLASS = "name,id\nAda Quill,7\nBo Reed,8\n"


@dataclass(frozen=True)
class Printed:
    """A build: its folder, the release and the template that it took, its pages by their names."""

    folder: Path
    release: str
    id: str
    pages: dict[str, str]


class Course:
    """A course's folder beside the folder of its bank."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        folder.mkdir()
        write_secret(folder)
        self.printed: list[Printed] = []

    def set(self, release: str, id: str) -> None:
        """Builds a class of two from a release, which is noted in the bank."""
        folder = self.folder / f"week-{len(self.printed)}"
        folder.mkdir()
        (folder / "class.csv").write_text(CLASS, "utf-8")
        text = SET.format(week=len(self.printed), release=release, id=id)
        (folder / "assignment.toml").write_text(text, "utf-8")
        self.printed.append(Printed(folder, release, id, self.anew(folder, "out")))

    def anew(self, folder: Path, out: str) -> dict[str, str]:
        """What an assignment prints into a folder of its own."""
        built = build_assignment(
            folder / "assignment.toml", folder / out, Crew(1), quiet, Order(uses=out == "out")
        )
        assert not built.losses
        return pages(folder / out)

    def lost(self, bank: BankFolder) -> list[str]:
        """Builds that cannot be had again from their record, or from their release."""
        return [str(each.folder) for each in self.printed if not self._is_there(each, bank)]

    def _is_there(self, printed: Printed, bank: BankFolder) -> bool:
        record = printed.folder / "out" / "record.json"
        build_record(record, printed.folder / "again", Crew(1), quiet)
        (frozen,) = read_record(record).issue.templates
        same = frozen.source == bank.released(printed.release).read(printed.id).source
        return same and pages(printed.folder / "again") == printed.pages


def quiet(stage: str, done: int, total: int) -> None:
    """Nobody looks on."""


def pages(folder: Path) -> dict[str, str]:
    """Digests of all that was printed, and of the record."""
    files = [*sorted(folder.rglob("*.pdf")), folder / "record.json"]
    own = [each for each in files if ".pieces" not in each.parts]
    return {str(each.relative_to(folder)): sha256(each.read_bytes()).hexdigest() for each in own}
