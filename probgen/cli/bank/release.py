"""`probgen bank release`: the approved templates of a bank under a name, for ever."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from probgen.department.next_release import NextRelease


@click.command()
@click.argument("bank", type=click.Path(path_type=Path))
@click.argument("name")
@click.option("--by", metavar="NAME", required=True, help="Who releases it.")
@click.option("--date", "day", type=click.DateTime(["%Y-%m-%d"]), help="Of today if left out.")
@click.option("--only", metavar="ID", multiple=True, help="This template alone; may be repeated.")
@click.option("--without", metavar="ID", multiple=True, help="All but this; may be repeated.")
@click.option(
    "--draws",
    type=click.IntRange(1, 1_000_000),
    default=500,
    show_default=True,
    help="Draws that are proved of each template that is new or changed.",
)
@click.option("--draft", is_flag=True, help="Only tell what it would be; write nothing.")
def release(
    bank: Path,
    name: str,
    by: str,
    day: datetime | None,
    only: tuple[str, ...],
    without: tuple[str, ...],
    draws: int,
    draft: bool,
) -> None:
    """Release the approved templates of a bank under a name that assignments use.

    BANK is a bank's folder, NAME the release's, such as statics-2027.1: an assignment file with
    bank = "statics-2027.1" gets exactly these texts for ever, whatever becomes of the bank.

    Of each template the newest approved revision is taken.  The release says what is new, gone
    and changed since the one before, sorted by what it means for those who set the problems.  It
    is refused, with every reason, where a template lacks its origin, minutes or a goal that the
    bank lists, where a text that was released was edited, where a revision is missing or was
    counted up for nothing, and where a draw fails.
    """
    from probgen.bank.bank_folder import read_bank_folder
    from probgen.cli.terminal import say
    from probgen.department.next_release import next_release, write_release
    from probgen.input.fault import InputError

    on = (day or datetime.now()).date()
    found = next_release(read_bank_folder(bank), name, by, on, only, without, draws)
    _show(found, draft)
    if not draft:
        say(str(write_release(found)))
    elif found.faults:
        raise InputError(found.faults)


def _show(found: NextRelease, draft: bool) -> None:
    from probgen.cli.terminal import counted, say

    release = found.release
    follows = f", follows {release.follows}" if release.follows else ", the first"
    said = f"{release.name}, {release.date}: {counted(len(release.templates), 'template')}{follows}"
    say(said)
    if draft:
        for each in release.templates.values():
            say(f"    {each.id} r{each.revision}")
    for line in release.changes:
        say(line)
    for one in found.waiting:
        kept = f", r{one.template.revision} is taken" if one.template else ""
        say(f"not taken: {one.id} r{one.newest}, {one.status}{kept}")
