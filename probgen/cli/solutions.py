"""`probgen solutions`: what students may see of the keys, from the record of a class."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("record", type=click.Path(path_type=Path))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="The folder to make; if left out, beside that of the record, with -solutions behind.",
)
@click.option(
    "--note",
    metavar="TEXT",
    default="",
    help='In place of the line "Released after the due date": "Released 12 March.", and before it.',
)
@click.option(
    "--workers", type=click.IntRange(min=1), help="Processes at a time.  [default: one a core]"
)
@click.option("--trust-layouts", is_flag=True, help="Use the page layouts that a record carries.")
@click.option("--quiet", is_flag=True, help="Show no progress and no summary.")
def solutions(
    record: Path,
    out: Path | None,
    note: str,
    workers: int | None,
    trust_layouts: bool,
    quiet: bool,
) -> None:
    """Print solutions for students: the working of their own numbers, without marks and slips.

    RECORD is the record.json of a build, or a folder with one in it.  No build makes them unasked.
    """
    from probgen.build.solutions import build_solutions
    from probgen.build.workers import Crew
    from probgen.cli.progress import progress
    from probgen.cli.terminal import counted, say
    from probgen.course.archive import record_at

    path = record_at(record)
    folder = path.resolve().parent
    out = out or folder.with_name(f"{folder.name}-solutions")
    with progress(quiet) as report:
        made = build_solutions(path, out, Crew(workers), report, note, trust_layouts)
    for remark in made.remarks:
        say(f"remark: {remark}", err=True)
    if not quiet:
        say(f"solutions for {counted(made.count, 'paper')} in {made.folder}")
        say(f"  all in one    {', '.join(map(str, made.together))}")
        if made.kept:
            say(f"  what was there is kept in {made.kept}")
    for name, words in made.lost:
        say(f"missing: {name}: {words}", err=True)
    if made.lost:
        raise click.exceptions.Exit(3)
