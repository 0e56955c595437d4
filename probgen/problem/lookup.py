"""The bank and the templates that somebody named, by id or by path."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from probgen.bank.bank import Bank, default_bank, read_bank, read_file
from probgen.bank.supplied import supplied
from probgen.bank.template import Template
from probgen.input.fault import Fault, InputError, nearest, one_of, shown
from probgen.input.remedy import SeeTemplates
from probgen.quantities.unit import SI, UnitSystem


def choose_bank(named: str, folder: Path, where: str, field: str) -> Bank:
    """The bank of a name: "" for all templates, one that comes with probgen, or a path.

    folder: where paths start; where, field: the file and field it was named in, for messages.
    Raises InputError.
    """
    if not named:
        return default_bank()
    released = {path.stem: path for path in supplied("banks").glob("*.toml")}
    path = released.get(named, folder / named)
    if path.exists():
        return read_bank(path)
    expected = one_of(released, "the banks ") + ", or the path of a bank"
    mend = nearest(named, released) or "leave it out to choose from all templates"
    raise InputError([Fault(where, field, shown(named), expected, mend)])


def choose_template(
    named: str, bank: Bank, folder: Path, where: str, field: str, units: UnitSystem = SI
) -> Template:
    """The template of an id in the bank, or of the path of a .toml file, in a system of units.

    folder, where, field: as for `choose_bank`.  Raises InputError.
    """
    if named in bank.files:
        return bank.read(named, units)
    if named.endswith(".toml") and (folder / named).is_file():
        return read_file(folder / named, units)
    found, mend = shown(named), nearest(named, bank.files)
    if named.endswith(".toml"):
        found += ", where there is no file"
        mend = "correct the path, or name a template by its id"
    expected = "the id of a template, or the path of a .toml file"
    remedy = None if mend else SeeTemplates()
    raise InputError([Fault(where, field, found, expected, mend, remedy)])


def with_pivot(template: Template, pivot: str, file: str, field: str) -> Template:
    """The template worked about a point the course names; itself where none is named.

    Raises InputError when the template has no such point.
    """
    if not pivot:
        return template
    points = template.system.points
    if pivot not in points:
        listed = one_of(points, "the points ")
        raise InputError([Fault(file, field, pivot, listed, nearest(pivot, points))])
    return replace(template, system=replace(template.system, pivot=pivot))
