"""`probgen bank uses`: what was set from a bank."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("bank", type=click.Path(path_type=Path))
@click.argument("template", nargs=-1)
@click.option("--json", "as_json", is_flag=True, help="As JSON, with the slips of each.")
def uses(bank: Path, template: tuple[str, ...], as_json: bool) -> None:
    """Tell what was set from a bank, by day: in which course, to how many, how it went.

    BANK is the folder of a bank; TEMPLATE an id, if not all are wanted.
    """
    from dataclasses import asdict

    from rich.console import Console

    from probgen.bank.bank_folder import read_bank_folder
    from probgen.bank.uses import read_uses
    from probgen.cli.columns import show_columns
    from probgen.cli.terminal import counted, say, say_json
    from probgen.input.fault import Faults, nearest

    ids = read_bank_folder(bank).revisions
    found = read_uses(bank)
    known = {*ids, *(use.template for use in found)}
    faults = Faults(str(bank))
    for each in template:
        if each not in known:
            faults.add("template", each, "a template of the bank", nearest(each, known))
    faults.settle()
    found = tuple(use for use in found if not template or use.template in template)
    if as_json:
        say_json([{**asdict(use), "day": str(use.day), "slips": dict(use.slips)} for use in found])
        return
    heads = ("template", "revision", "date", "kind", "students", "facility", "course", "assignment")
    rows = (
        (
            use.template, f"r{use.revision}", str(use.day), use.kind, str(use.students),
            "" if use.facility is None else f"{use.facility:.2f}", use.course, use.assignment,
        )
        for use in found
    )  # fmt: skip
    if found:
        show_columns(Console(), rows, heads)
    say(counted(len(found), "use"))
