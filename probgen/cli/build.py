"""`probgen build`: the main job, from a set file (or a record) to a folder of PDFs."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("source", metavar="SET.toml", type=click.Path(path_type=Path))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="The folder to make; if left out, output/ and the name of the set file.",
)
@click.option("--seed", help="Any text; the numbers of every student follow from it.")
@click.option("--workers", type=click.IntRange(min=1), help="Processes at a time; all cores.")
def build(source: Path, out: Path | None, seed: str | None, workers: int | None) -> None:
    """Build sheets, keys and answers for a class.

    SET.toml is a set file, or the record.json of an earlier build, which is made again as it was.
    """
    from probgen.cli.progress import progress
    from probgen.course.build import build_record, build_set

    again = source.suffix == ".json"
    if again and seed is not None:
        raise click.UsageError("a record has its own seed; leave out --seed")
    name = source.resolve().parent.name if again else source.stem
    out = out or Path("output") / name
    with progress() as report:
        if again:
            built = build_record(source, out, workers, report)
        else:
            built = build_set(source, out, seed, workers, report)
    for remark in built.remarks:
        click.echo(f"remark: {remark}", err=True)
    click.echo(built.summary)
