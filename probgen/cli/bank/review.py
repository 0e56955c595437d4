"""`probgen bank review`: what waits for a review, and verdicts of those who have read it."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from probgen.department.review import Reviewed

VERDICTS = ("proposed", "approved", "changes wanted", "withdrawn")


@click.command()
@click.argument("bank", type=click.Path(path_type=Path))
@click.argument("ids", metavar="[ID]...", nargs=-1)
@click.option("--revision", type=click.IntRange(1), help="Which revision; the newest if left out.")
@click.option("--verdict", type=click.Choice(VERDICTS), help="What you say of them.")
@click.option("--by", "person", metavar="NAME", help="Who says it.")
@click.option("--note", metavar="TEXT", default="", help="Why, or what is to be changed.")
@click.option("--date", "day", type=click.DateTime(["%Y-%m-%d"]), help="Of today if left out.")
def review(
    bank: Path,
    ids: tuple[str, ...],
    revision: int | None,
    verdict: str | None,
    person: str | None,
    note: str,
    day: datetime | None,
) -> None:
    """Tell what waits for a review, or say what you think of what you have read.

    BANK is a bank's folder, ID a template in it.  Without a verdict: every template, or those
    named, whose newest revision no release would take, and what changed in it.

    A verdict becomes a row of the bank's reviews.csv and holds for the text as it stands: edit it,
    and it has to be read again.  "proposed" asks for a review; "approved" lets a release take it,
    once somebody has said so who neither wrote nor proposed it, and nobody wants changes still;
    "withdrawn" keeps it, and all revisions before, out of releases to come.
    """
    from probgen.bank.bank_folder import read_bank_folder
    from probgen.bank.reviews import Review, Verdict
    from probgen.cli.terminal import counted, say
    from probgen.department.review import give_verdict, reviewed

    found = read_bank_folder(bank)
    if verdict is None:
        if person or note or day:
            raise click.UsageError("say the verdict too: --verdict approved")
        all_of_them = list(reviewed(found, ids, revision))
        for each in all_of_them:
            if each.waits or ids:
                _show(each)
        waiting = sum(each.waits for each in all_of_them)
        say(f"{counted(waiting, 'template')} of {len(all_of_them)} to be reviewed")
        return
    if not person or not ids:
        missing = "a person: --by NAME" if not person else "its templates: their ids"
        raise click.UsageError(f"a verdict needs {missing}")
    on = (day or datetime.now()).date()
    said = Review("", 0, "", person, on, Verdict(verdict), note)
    for each in give_verdict(found, ids, revision, said):
        _show(each)


def _show(each: Reviewed) -> None:
    """A revision's standing, what was said of it, and what is other in it."""
    from probgen.cli.terminal import say
    from probgen.department.change_list import change_lines

    template, found = each.template, each.standing
    say(f"{template.id} r{template.revision}: {found.status}")
    for said in found.said:
        note = f": {said.note}" if said.note else ""
        say(f"    {said.verdict} by {said.person}, {said.date}{note}")
    for person in found.not_counted:
        say(f"    {person} wrote or proposed it: somebody else has to approve it")
    if found.outdated and not found.said:
        say(f"    edited since {found.outdated[-1].person} read it, {found.outdated[-1].date}")
    if lacking := list(template.origin.lacking):
        say(f"    lacks what a release needs: {', '.join(lacking)}")
    if change := each.change:
        for line in change_lines(change):
            say(f"    {line}")
    else:
        say(f"    the first revision: {template.title}")
