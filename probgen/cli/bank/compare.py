"""`probgen bank compare`: what is other in one state of a bank than in another."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("before")
@click.argument("after", required=False)
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    help="Write it as a page for a browser too: comparison.html, in this folder.",
)
@click.option(
    "--workers", type=click.IntRange(min=1), help="Processes at a time.  [default: one a core]"
)
@click.option("--json", "as_json", is_flag=True, help="As JSON, with every field and draw.")
def compare(
    before: str, after: str | None, out: Path | None, workers: int | None, as_json: bool
) -> None:
    """Tell what is other in one state of a bank than in another.

    BEFORE and AFTER are each a bank's folder, a release by its name or file, a folder of templates,
    or FOLDER@REVISION for a revision of git: statics@HEAD~3.  With one bank's folder alone, it is
    held against the last release made of it.

    Physics are told apart by what the templates say of forces, lengths and angles, not by their
    words; of each change 20 equal draws are worked in both.  What both states have, text for text,
    is not looked at.
    """
    from dataclasses import asdict

    from probgen.build.workers import Crew
    from probgen.cli.progress import progress
    from probgen.cli.terminal import say, say_json
    from probgen.department.change_list import change_list
    from probgen.department.compared import compared
    from probgen.department.comparison_page import comparison_page
    from probgen.department.state import last_release, read_state
    from probgen.input.own_file import require_free, write_own

    page = out and out / "comparison.html"
    if page:
        require_free(page, ".html")
    if after is None:
        before, after = last_release(before), before
    one, other = read_state(before), read_state(after)
    with progress(as_json) as report:
        found = compared(one, other, Crew(workers), report, show=page is not None)
    if page:
        write_own(page, comparison_page(found).encode(), ".html")
    if as_json:
        say_json({"before": one.name, "after": other.name, **asdict(found.changes)})
        return
    say(f"{one.name} -> {other.name}")
    for line in change_list(found.changes):
        say(line)
    if page:
        say(str(page))
