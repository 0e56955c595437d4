"""`probgen bank compare`: what is other in one state of a bank than in another."""

from __future__ import annotations

import click


@click.command()
@click.argument("before")
@click.argument("after", required=False)
@click.option("--json", "as_json", is_flag=True, help="As JSON, with every field and draw.")
def compare(before: str, after: str | None, as_json: bool) -> None:
    """Tell what is other in one state of a bank than in another.

    BEFORE and AFTER are each a bank's folder, a release by its name or file, a folder of templates,
    or FOLDER@REVISION for a revision of git: statics@HEAD~3.  With one bank's folder alone, it is
    held against the last release made of it.

    Physics are told apart by what the templates say of forces, lengths and angles, not by their
    words; of each change 20 equal draws are worked in both.
    """
    from dataclasses import asdict

    from probgen.cli.terminal import say, say_json
    from probgen.department.change_list import change_list
    from probgen.department.changes import changes
    from probgen.department.state import last_release, read_state

    if after is None:
        before, after = last_release(before), before
    one, other = read_state(before), read_state(after)
    found = changes(one.templates, other.templates)
    if as_json:
        say_json({"before": one.name, "after": other.name, **asdict(found)})
        return
    say(f"{one.name} -> {other.name}")
    for line in change_list(found):
        say(line)
