"""`probgen check`: templates and banks proved over many draws."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("paths", metavar="[PATH]...", nargs=-1, type=click.Path(path_type=Path))
@click.option("--draws", type=click.IntRange(1, 1_000_000), default=2000, show_default=True)
def check(paths: tuple[Path, ...], draws: int) -> None:
    """Prove templates over many draws.

    PATH is a template, a bank, or a folder of templates; if left out, all that come with probgen.
    """
    from probgen.cli.terminal import say
    from probgen.input.fault import Faults, InputError
    from probgen.problem.template_check import check_template, templates_at

    faults = Faults("")
    for template in templates_at(paths, faults):
        try:
            checked = check_template(template, draws)
        except InputError as error:
            faults.take(error)
            say(f"{template.id}  FAILED")
            continue
        refused = f", {checked.refused} refused by its requirements" if checked.refused else ""
        say(
            f"{template.id}  {checked.proved} draws proved{refused}, "
            f"largest residual {checked.residual:.1e}"
        )
    faults.settle()
