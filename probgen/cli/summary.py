"""What was built, told in a terminal: where it is, what to look at, what is missing."""

from __future__ import annotations

import click

from probgen.build.build import Built
from probgen.build.folder import ANSWERS, MISSING
from probgen.cli.terminal import say
from probgen.course.record import RECORD
from probgen.papers.typesetter import Kind

_SOMETHING_MISSING = 3


def show_built(built: Built, quiet: bool) -> None:
    """Tells what was built; ends with exit code 3 when something of it is missing."""
    for remark in built.remarks:
        say(f"remark: {remark}", err=True)
    if not quiet:
        say(_summary(built))
    if built.losses:
        say(_shortfall(built), err=True)
        raise click.exceptions.Exit(_SOMETHING_MISSING)


def _summary(built: Built) -> str:
    exam, problems = built.record.set.exam, len(built.record.assignments)
    whom = f"{len(built.record.students)} students"
    whom = f"{exam.versions} versions for {whom}" if exam else whom
    answers = " and ".join(map(str, (built.folder / ANSWERS, *built.lists)))
    return (
        f"{whom} x {problems} problems in {built.folder}\n"
        f"  to hand out   {_together(built, Kind.SHEETS)}, one by one in sheets/\n"
        f"  to mark with  {_together(built, Kind.KEYS)}, one by one in keys/\n"
        f"  all answers   {answers}\n"
        f"  to rebuild    {built.folder / RECORD} (seed {built.record.seed})"
    )


def _together(built: Built, kind: Kind) -> str:
    """The PDF of all sheets or keys; the first and the last when there are several."""
    paths = built.together(kind)
    if not paths:
        return f"no {kind}, for none could be printed"
    return " to ".join(str(path) for path in dict.fromkeys((paths[0], paths[-1])))


def _shortfall(built: Built) -> str:
    count = len(built.losses)
    noun = "document is" if count == 1 else "documents are"
    told = "\n".join(str(loss) for loss in built.losses)
    return (
        f"{count} {noun} missing, listed in {built.folder / MISSING}:\n{told}\n"
        "    mend      correct the cause, then build again: "
        f"the same seed ({built.record.seed}) gives everybody the same numbers"
    )
