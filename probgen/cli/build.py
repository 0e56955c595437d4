"""`probgen build`: the main job, from an assignment file (or a record) to a folder of PDFs."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import click

Options = Mapping[str, object]


@click.command()
@click.argument("source", metavar="ASSIGNMENT.toml", type=click.Path(path_type=Path))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="The folder to make.  [default: beside the file, and called as it is; for "
    "assignment.toml: output]",
)
@click.option("--seed", help="A long text; the numbers of every student follow from it.")
@click.option(
    "--correct",
    metavar="TEXT",
    default="",
    help='Print papers that were handed out anew, with this erratum: "the beam\'s length".',
)
@click.option(
    "--replace", is_flag=True, help="Begin anew, and keep the earlier build beside the new one."
)
@click.option(
    "--another",
    metavar="ID",
    multiple=True,
    help="Give this student other numbers; the paper in hand stays on record. Repeatable.",
)
@click.option(
    "--draft",
    is_flag=True,
    help="While you are writing: papers marked DRAFT, which the next build replaces.",
)
@click.option("--edited", is_flag=True, help="Take a record that somebody has edited.")
@click.option(
    "--workers", type=click.IntRange(min=1), help="Processes at a time.  [default: one a core]"
)
@click.option(
    "--cluster", metavar="tcp://HOST:PORT", default="", help="Work on a Dask cluster's machines."
)
@click.option(
    "--layouts", type=click.Path(path_type=Path), help="A folder with page layouts of your own."
)
@click.option(
    "--roster",
    type=click.Path(path_type=Path),
    help="With a record: this class list in place of the class that the record has.",
)
@click.option(
    "--uses/--no-uses",
    default=None,
    help="Note in the department's bank what was set, to how many.  [default: only in the folder "
    "of a course]",
)
@click.option("--trust-layouts", is_flag=True, help="Use the page layouts that a record carries.")
@click.option("--quiet", is_flag=True, help="Show no progress and no summary.")
def build(
    source: Path,
    out: Path | None,
    seed: str | None,
    correct: str,
    replace: bool,
    another: tuple[str, ...],
    draft: bool,
    edited: bool,
    workers: int | None,
    cluster: str,
    layouts: Path | None,
    roster: Path | None,
    uses: bool | None,
    trust_layouts: bool,
    quiet: bool,
) -> None:
    """Build sheets, keys and answers for a class.

    ASSIGNMENT.toml is an assignment file, or the record.json of an earlier build, which is made
    again as it was.

    A folder that holds a build is added to: nobody's paper changes unless you say so.

    What a stopped build has printed is kept: the same command goes on with it.
    """
    from probgen.build.build import Order, build_assignment, build_record
    from probgen.build.workers import Crew
    from probgen.cli.progress import progress
    from probgen.cli.summary import show_built

    again = source.suffix == ".json"
    for_one = {"--seed": seed, "--correct": correct, "--another": another, "--draft": draft,
               "--uses": uses}  # fmt: skip
    of_a_record = {"--trust-layouts": trust_layouts, "--roster": roster}
    _require_fit(again, for_one, of_a_record)
    order = Order(
        seed=seed or "", layouts=layouts, trusted=trust_layouts, correct=correct, replace=replace,
        draft=draft, edited=edited, another=another, roster=roster, uses=uses,
    )  # fmt: skip
    with progress(quiet) as report:
        make = build_record if again else build_assignment
        built = make(source, out or _beside(source), Crew(workers, cluster), report, order)
    show_built(built, quiet)


def _beside(source: Path) -> Path:
    """The folder of a build for which none is named: beside what it is made from.

    week-5.toml has week-5, assignment.toml has output; a record is made again beside its own build.
    """
    whole = source.resolve()
    if whole.suffix == ".json":
        return whole.parent.with_name(f"{whole.parent.name}-again")
    name = "output" if whole.stem in ("assignment", "set") else whole.stem
    return source.with_name(name if name != source.name else f"{name}-built")


def _require_fit(again: bool, of_a_file: Options, of_a_record: Options) -> None:
    """Raises UsageError for options of an assignment file with a record, or the reverse."""
    for option, given in of_a_record.items():
        if given and not again:
            raise click.UsageError(f"{option} is for a record.json; leave it out")
    for option, given in of_a_file.items():
        if given and again:
            raise click.UsageError(
                f"a record is made again as it was: name the assignment file, or leave out {option}"
            )
