"""`probgen demo`: a demonstration class, to look at and to edit."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path("output/demo"),
    show_default=True,
    help="The folder to make.",
)
@click.option("--students", type=click.IntRange(1, 10_000), default=12, show_default=True)
@click.option(
    "--workers", type=click.IntRange(min=1), help="Processes at a time.  [default: one a core]"
)
def demo(out: Path, students: int, workers: int | None) -> None:
    """Build a demonstration class of invented students."""
    from probgen.build.build import Order, build_assignment
    from probgen.build.demo import SECRET, SEED, write_demo
    from probgen.build.workers import Crew
    from probgen.cli.progress import progress
    from probgen.cli.summary import show_built
    from probgen.cli.terminal import program, say

    assignment_file = write_demo(out, students)
    order = Order(seed=SEED, guessable=True, secret=SECRET, forget=True)
    with progress() as report:
        built = build_assignment(assignment_file, out, Crew(workers), report, order)
    show_built(built, quiet=False)
    say(
        f"\nThe assignment file {assignment_file} and the class list beside it "
        "are yours to edit; then:\n"
        f"  {program()} build {assignment_file} --out output/my-class"
    )
