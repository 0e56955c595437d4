"""`probgen bank new`: the folder of a bank, to begin with."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("bank", type=click.Path(path_type=Path))
def new(bank: Path) -> None:
    """Make the folder of a new bank, with a file to edit.

    BANK is the folder's path; its name is that of the bank until you write another.
    """
    from shlex import quote

    from probgen.cli.terminal import program, say
    from probgen.department.new_bank import write_bank

    made = write_bank(bank)
    say(
        f"{made.folder} is a bank. Edit {made.file}: its name, who keeps it, the goals of your\n"
        "courses. Then take templates in, by their ids or their files:\n"
        f"  {program()} bank import {quote(str(made.folder))} forearm-load my-shelf.toml\n"
        f"Your own you can write into {made.templates} as well: ID/r1.toml, the next revision\n"
        "r2.toml. Keep the folder in your version control."
    )
