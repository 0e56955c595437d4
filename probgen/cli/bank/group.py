"""`probgen bank`: what a department does with its bank."""

from __future__ import annotations

from typing import Final

import click

from probgen.cli.bank.catalogue import catalogue
from probgen.cli.bank.check import check
from probgen.cli.bank.compare import compare
from probgen.cli.bank.find import find
from probgen.cli.bank.intake import import_templates
from probgen.cli.bank.new import new
from probgen.cli.bank.note import note
from probgen.cli.bank.release import release
from probgen.cli.bank.review import review
from probgen.cli.bank.uses import uses


@click.group()
def bank() -> None:
    """Keep a department's templates: a folder with every revision, reviews, releases and uses."""


_COMMANDS: Final = (
    new,
    import_templates,
    check,
    compare,
    review,
    release,
    catalogue,
    find,
    uses,
    note,
)
for command in _COMMANDS:
    bank.add_command(command)
