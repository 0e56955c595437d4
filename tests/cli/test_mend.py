"""Mends in the command line's words: what the domain names, told with options and commands."""

import errno
from collections.abc import Iterator

import click
import pytest

from probgen.cli import main
from probgen.cli.mend import _OPTIONS, told, told_by_system
from probgen.input.fault import Fault, Faults, InputError
from probgen.input.outside import OutsideError
from probgen.input.remedy import (
    BuildIt,
    OtherFolder,
    Remedy,
    Replace,
    SeeTemplates,
    TakeEdited,
    WorkAgain,
    WorkIt,
)

AGAIN = WorkAgain("own.toml", {"m": "4.0", "d": "35"})
MENDS: list[tuple[str, Remedy | None, str]] = [
    ("wait", None, "wait"),
    ("wait", OtherFolder(), "wait, or name another folder with --out"),
    ("", OtherFolder(), "name another folder with --out"),
    (
        "wait",
        Replace(),
        "wait; or begin anew with --replace, which keeps the old build beside it",
    ),
    (
        "wait",
        TakeEdited(),  # also told by commands that have no such option
        "wait, or take it as it is with `probgen build --edited`: papers that changed get "
        "new codes",
    ),
    ("", SeeTemplates(), "see the ids with `probgen list`"),
    ("", BuildIt("a.toml"), "build it with: probgen build a.toml"),
    ("", WorkIt("my.toml"), "work it with: probgen work my.toml"),
    (
        "change a range",
        AGAIN,
        "change a range; see it again with: probgen work own.toml --with m=4.0 --with d=35",
    ),
    (
        "",
        WorkAgain("own.toml", {"W": "9.0"}, customary=True),
        "see it again with: probgen work own.toml --units US --with W=9.0",
    ),
]


@pytest.mark.parametrize(("mend", "remedy", "words"), MENDS)
def test_a_remedy_is_worded_behind_the_mend(mend: str, remedy: Remedy | None, words: str) -> None:
    outside = told(OutsideError("it failed", mend, remedy))
    assert outside == f"it failed\n    mend      {words}"
    wrong = told(InputError([Fault("a.toml", "x", "1", "2", mend, remedy)]))
    assert wrong.splitlines()[-1] == f"    mend      {words}"


ASKED = [
    (Faults("a.toml"), "title", "a.toml: title"),
    (Faults("", asked=True), "note", "--note"),
    (Faults("", asked=True), "another", "--another"),
    (Faults("", asked=True), "person", "--by"),
]


@pytest.mark.parametrize(("faults", "field", "place"), ASKED)
def test_what_is_typed_with_a_task_stands_under_its_option(
    faults: Faults, field: str, place: str
) -> None:
    faults.add(field, "x", "y")
    assert told(InputError(faults.found)).splitlines()[1] == place


def test_every_name_that_differs_is_an_option_and_its_parameter() -> None:
    assert _OPTIONS.items() <= set(_named(main))


def _named(command: click.Command) -> Iterator[tuple[str, str]]:
    for each in command.commands.values() if isinstance(command, click.Group) else ():
        yield from _named(each)
    for parameter in command.params:
        for option in parameter.opts:
            if parameter.name and option.startswith("--"):
                yield parameter.name, option


def test_what_the_system_refuses() -> None:
    full = OSError(errno.ENOSPC, "No space left on device", "out/x.pdf")
    told_full = told_by_system(full, True)
    assert told_full.startswith("No space left on device: out/x.pdf\n")
    assert "--out" in told_full
    assert "--out" not in told_by_system(full, False), "which has no such option"
    assert "{" not in told_by_system(full, False) + told_full
    there = told_by_system(OSError(errno.EEXIST, "File exists", "x"), False)
    assert "move what is there away, or name another place" in there
    assert "shorter" in told_by_system(
        OSError(errno.ENAMETOOLONG, "File name too long", "x"), False
    )
    assert "can be written to" in told_by_system(OSError(errno.EIO, "Input/output error"), True)
