"""`probgen bank find`: templates of a bank that are as somebody wants them."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from probgen.cli.bank.day import DAY

if TYPE_CHECKING:
    from probgen.department.entry import Entry


@click.command()
@click.argument("bank", type=click.Path(path_type=Path))
@click.option("--goal", default="", help="A goal, or a part of one: friction.")
@click.option("--level", type=click.IntRange(1, 5), help="How hard, by its file.")
@click.option("--family", default="", help="Such as beams.")
@click.option("--asks", default="", help="A kind of what is asked: force, direction, angle, mass.")
@click.option("--minutes", type=click.IntRange(1, 600), help="At most so many, by its file.")
@click.option("--not-used-since", type=DAY, metavar="DATE", help="Not set on that day or later.")
@click.option(
    "--easier-than",
    type=click.FloatRange(0, 1),
    metavar="SHARE",
    help="Students earned more than this share of the points, 0 to 1.",
)
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
def find(
    bank: Path,
    goal: str,
    level: int | None,
    family: str,
    asks: str,
    minutes: int | None,
    not_used_since: datetime | None,
    easier_than: float | None,
    as_json: bool,
) -> None:
    """Find templates of a bank: those that fit all that is said.

    BANK is the folder of a bank.  What was set and how it went is what builds and `bank note` have
    written into its folder uses/.
    """
    from dataclasses import asdict

    from probgen.bank.bank_folder import read_bank_folder
    from probgen.cli.terminal import say, say_json
    from probgen.department.find import Wanted, find
    from probgen.department.index import entries_of

    listed = entries_of(read_bank_folder(bank))
    since = not_used_since.date() if not_used_since else None
    wanted = Wanted(goal, level, family, asks, minutes, since, easier_than)
    found = find(listed.entries, wanted, str(bank))
    if as_json:
        say_json([{**asdict(each), "last": each.last and str(each.last)} for each in found])
    else:
        _show(found)
    for file in dict.fromkeys(fault.file for fault in listed.faults):
        say(f"remark: {file} cannot be read, and is not looked at", err=True)


def _show(found: tuple[Entry, ...]) -> None:
    from rich.console import Console

    from probgen.cli.columns import show_columns
    from probgen.cli.terminal import counted, say

    heads = ("id", "level", "asks", "minutes", "last used", "facility", "title")
    rows = (
        (
            each.id, str(each.level), ", ".join(each.asks), str(each.minutes or ""),
            str(each.last or "never"), _share(each.facility), each.title,
        )
        for each in found
    )  # fmt: skip
    if found:
        show_columns(Console(), rows, heads)
    say(counted(len(found), "template"))


def _share(facility: float | None) -> str:
    return "" if facility is None else f"{facility:.2f}"
