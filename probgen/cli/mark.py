"""`probgen mark`: from the answers students typed to marks."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("record", type=click.Path(path_type=Path))
@click.argument("answers", type=click.Path(path_type=Path))
@click.option(
    "--out",
    required=True,
    type=click.Path(path_type=Path),
    help="The folder for the marks; points changed by hand in it stay.",
)
@click.option(
    "--rules",
    type=click.Path(path_type=Path),
    help="A file with a table [marking]: what verdicts earn, tolerance, a gradebook's headings.",
)
@click.option("--feedback", is_flag=True, help="Print a page for each student too (PDF).")
@click.option(
    "--workers", type=click.IntRange(min=1), help="Processes at a time.  [default: one a core]"
)
def mark(
    record: Path,
    answers: Path,
    out: Path,
    rules: Path | None,
    feedback: bool,
    workers: int | None,
) -> None:
    """Mark a table of answers: verdict, points, and the slip that a wrong number comes from.

    RECORD is the record.json of a build, or a folder with one in it.  ANSWERS is the form of
    `probgen form`, filled in: CSV, .xlsx or .ods.

    Marking again into the same folder tells in changes.csv whose points change, and by how much.

    What cannot be read in one way only is in look-at.csv for a person, and has no points yet.  Put
    points into the column "changed" there or in answer-marks.csv, and mark again: they stay.
    """
    from collections import Counter

    from probgen.build.workers import Crew
    from probgen.cli.terminal import counted, say
    from probgen.course.archive import record_at
    from probgen.marking.folder import mark_class

    path = record_at(record)
    done = mark_class(path, answers, out, rules, feedback, Crew(workers))
    for remark in done.remarks:
        say(f"remark: {remark}", err=True)
    if done.stale is not None:
        pages = f"{done.stale} and all-{done.stale.name}.pdf are of an earlier marking"
        say(f"remark: {pages}: mark with --feedback to print them again", err=True)
    verdicts = Counter(row.verdict for row in done.rows)
    say(f"{counted(done.papers, 'paper')} marked in {done.folder}")
    for verdict, count in verdicts.most_common():
        say(f"  {count:6}  {verdict}")
    if done.changed:
        say(f"  {done.changed:6}  points changed by hand")
    if done.moved is not None:
        own = done.moved
        apart = f", by {own.least:+} to {own.most:+} points" if own.papers else ""
        papers = "1 paper changes" if own.papers == 1 else f"{own.papers} papers change"
        say(f"{papers} beside the last marking{apart}: {done.folder / 'changes.csv'}")
    if done.look_at:
        say(f"to look at: {counted(done.look_at, 'answer')} in {done.folder / 'look-at.csv'}")
