"""`probgen bank import`: templates taken into a bank."""

from __future__ import annotations

from pathlib import Path

import click


@click.command("import")
@click.argument("bank", type=click.Path(path_type=Path))
@click.argument("named", metavar="NAME...", nargs=-1, required=True)
def import_templates(bank: Path, named: tuple[str, ...]) -> None:
    """Take templates into a bank, each as the revision that its file says it is.

    BANK is the folder of a bank; NAME a template's id, a bank that comes with probgen, or the path
    of a template, a bank or a folder of templates.  Nothing that is there is written over.
    """
    from probgen.bank.bank_folder import read_bank_folder
    from probgen.cli.terminal import counted, say
    from probgen.department.intake import take_in

    found = take_in(read_bank_folder(bank), named)
    for path in found.taken:
        say(str(path))
    say(f"{counted(len(found.taken), 'template')} taken in, {len(found.there)} there already")
    for goal, ids in found.strange:
        say(f'remark: "{goal}" is no goal of the bank yet: {", ".join(ids)}', err=True)
    for id, fields in found.lacking:
        say(f"remark: {id} lacks what a release needs: {', '.join(fields)}", err=True)
