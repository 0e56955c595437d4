"""`probgen bank catalogue`: what a bank holds, as a page to read and choose from."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("bank", default="")
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path(),
    help="The folder to put it into; if left out, the one you are in.",
)
@click.option(
    "--workers", type=click.IntRange(min=1), help="Processes at a time.  [default: one a core]"
)
def catalogue(bank: str, out: Path, workers: int | None) -> None:
    """Write what a bank holds as one page for a browser: catalogue.html.

    BANK is a bank's folder, a release by its name or file, or a folder of templates; if left out,
    the templates that come with probgen.  The page needs no other file and no network: search it,
    tick problems, copy their lines for an assignment file, print it.
    """
    from probgen.build.workers import Crew
    from probgen.cli.progress import progress
    from probgen.cli.terminal import counted, say
    from probgen.department.catalogue import catalogue_of
    from probgen.department.catalogue_page import catalogue_page
    from probgen.input.own_file import require_free, write_own
    from probgen.problem.lookup import choose_bank

    page = out / "catalogue.html"
    require_free(page, ".html")
    chosen = choose_bank(bank, Path(), "BANK", "")
    with progress() as report:
        made = catalogue_of(chosen, Crew(workers), report)
    write_own(page, catalogue_page(made).encode(), ".html")
    say(f"{counted(len(made.cards), 'problem')} in {page}")
