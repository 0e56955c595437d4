"""`probgen reprint`: one sheet again, as it was handed out."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("record", type=click.Path(path_type=Path))
@click.argument("sought", metavar="CODE|ID")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path(),
    help="The folder to put it into; if left out, the one you are in.",
)
@click.option("--large", is_flag=True, help="In large print: the same paper and code.")
@click.option("--trust-layouts", is_flag=True, help="Use the page layouts that a record carries.")
def reprint(record: Path, sought: str, out: Path, large: bool, trust_layouts: bool) -> None:
    """Print one sheet again, as it was handed out, with its code.

    RECORD is the record.json of a build, or its folder.  CODE names one paper, also an earlier one
    whose place another has taken; an ID the paper that a student has now, in large print where the
    student has it so.

    For the key to it see `probgen trace`.
    """
    from dataclasses import replace

    from probgen.cli.terminal import say
    from probgen.course.trail import follow, require_one
    from probgen.course.version_code import is_like_code
    from probgen.input.own_file import require_free, write_own
    from probgen.papers.reprint import print_one
    from probgen.papers.traced import version_at
    from probgen.papers.typesetter import Kind

    trail = require_one(follow(sought, [record]), sought)
    if large:
        trail = replace(trail, edition=replace(trail.edition, large=True))
    path = out / f"{version_at(trail).name}.pdf"
    require_free(path, ".pdf")
    write_own(path, print_one(trail, Kind.SHEETS, trust_layouts), ".pdf")
    if trail.later:
        say(f"remark: {trail.later} has taken the place of this paper", err=True)
    needing = [each.name for each in trail.students if each.large]
    if needing and not trail.edition.large and is_like_code(sought):
        say(f"remark: {', '.join(needing)} needs it in large print: add --large", err=True)
    if trail.edited:
        say(f"remark: {trail.path} has been edited since probgen wrote it", err=True)
    say(f"the sheet {trail.edition.code} of {trail.owner} is in {path}")
