"""`probgen check`: templates and banks proved over many draws."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from probgen.problem.template_check import Checked


@click.command()
@click.argument("named", metavar="[NAME]...", nargs=-1)
@click.option("--draws", type=click.IntRange(1, 1_000_000), default=2000, show_default=True)
def check(named: tuple[str, ...], draws: int) -> None:
    """Prove templates over many draws, in SI and, where they are written for it, US customary.

    NAME is a template's id, a bank that comes with probgen, or the path of a template, a bank or a
    folder of templates; if left out, all that come with probgen.
    """
    from probgen.cli.terminal import say
    from probgen.course.typed_texts import remarks_on_template
    from probgen.input.fault import Faults, InputError
    from probgen.problem.template_check import check_template, templates_named
    from probgen.quantities.unit import SI

    faults = Faults("")
    for template in templates_named(named, faults):
        units = "" if template.units == SI else f" ({template.units.name})"
        name = f"{template.id}{units}"
        try:
            checked = check_template(template, draws)
        except InputError as error:
            faults.take(InputError(each for each in error.faults if each not in faults.found))
            say(f"{name}  FAILED")
            continue
        _show(name, checked)
        for remark in remarks_on_template(template.id, template.source):
            say(f"    remark: {remark}")
    faults.settle()


def _show(name: str, checked: Checked) -> None:
    """One line, and one more for every requirement that drops draws and for every remark."""
    from probgen.cli.terminal import say
    from probgen.problem.dropped import percent
    from probgen.quantities.printing import plain

    share = checked.refused / (checked.proved + checked.refused)
    refused = f", {percent(share)} dropped by its requirements" if checked.refused else ""
    proved = f"{checked.proved} draws proved{refused}"
    say(f"{name}  {proved}, largest residual {checked.residual:.1e}")
    for each in checked.dropped:
        say(f"    {each}")
    for force in checked.reversed:
        say(f"    remark: {plain(force)} is below zero in every draw: turn its direction round")
    for letter in checked.bare:
        mend = f"write {{{{ {letter} }}}}, and figures have that letter"
        say(f"    remark: the statement names the point {letter} without braces: {mend}")
    for letter in checked.bare_in_names:
        mend = f"write {{{{ {letter} }}}}, and its letter is italic as elsewhere"
        say(f"    remark: a name has the point {letter} without braces: {mend}")
