"""`probgen bank note`: what marking found out, kept with a bank's templates."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import click

from probgen.cli.bank.day import DAY


@click.command()
@click.argument("bank", type=click.Path(path_type=Path))
@click.argument("marks", type=click.Path(path_type=Path))
@click.option("--date", type=DAY, metavar="DATE", help="When it was set.  [default: today]")
def note(bank: Path, marks: Path, date: datetime | None) -> None:
    """Keep in a bank how a marked class did: facility and slips of each template, and no name.

    BANK is the folder of a bank; MARKS a folder that `probgen mark` has made.  Noted again, the
    numbers are renewed.  Where the build had noted the day, that stays.
    """
    from probgen.bank.bank_folder import read_bank_folder
    from probgen.bank.uses import USES, note_uses, read_use_file
    from probgen.cli.terminal import counted, say
    from probgen.input.fault import Faults

    own = read_bank_folder(bank).revisions
    path = marks / f"{USES}.csv"
    faults = Faults(str(path))
    found = list(read_use_file(path, faults, (date or datetime.now()).date()))
    faults.settle()
    kept = [use for use in found if use.revision in own.get(use.template, {})]
    note_uses(bank, kept)
    for use in kept:
        say(f"{use.template} r{use.revision}: {use.facility:.2f} of its points earned")
    for use in found:
        if use not in kept:
            say(f"remark: {use.template} r{use.revision} is not in {bank}, and not noted", err=True)
    say(f"{counted(len(kept), 'template')} noted in {bank}")
