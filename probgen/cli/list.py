"""`probgen list`: the templates there are."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from probgen.problem.catalogue import Entry


@click.command("list")
@click.option("--bank", default="", help="A bank's name or path; all templates if left out.")
@click.option("--family", help="Only the templates of one family, such as beams.")
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
def list_templates(bank: str, family: str | None, as_json: bool) -> None:
    """List the templates of a bank: id, family, level, title, revision."""
    from dataclasses import asdict

    from probgen.cli.terminal import say_json
    from probgen.problem.catalogue import of_family, read_catalogue

    entries = list(_of_bank(bank)) if bank else list(read_catalogue())
    if family is not None:
        entries = of_family(entries, family, "--family")
    if as_json:
        say_json([asdict(entry) for entry in entries])
        return
    _show(entries)


def _show(entries: Iterable[Entry]) -> None:
    from rich.console import Console

    from probgen.cli.columns import show_columns

    heads = ("id", "family", "level", "title", "revision")
    rows = ((e.id, e.family, str(e.level), e.title, str(e.revision)) for e in entries)
    show_columns(Console(), rows, heads)


def _of_bank(named: str) -> Iterator[Entry]:
    from pathlib import Path

    from probgen.problem.catalogue import Entry
    from probgen.problem.lookup import choose_bank

    for each in choose_bank(named, Path(), "--bank", "").read_all():
        yield Entry(each.id, each.family, each.level, each.title, each.revision, each.path)
