"""The bank and the templates that somebody named, by id or by path."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any, Final

from probgen.bank.bank import Bank, default_bank, joined, read_file
from probgen.bank.bank_path import read_bank, released_near
from probgen.bank.supplied import supplied
from probgen.bank.template import Template
from probgen.input.fault import Fault, Faults, InputError, nearest, one_of, shown
from probgen.input.file_kind import BANK, TEMPLATE, kind_of, require_kind
from probgen.input.remedy import SeeTemplates
from probgen.input.toml import read_toml
from probgen.quantities.unit import SI, UnitSystem

_NAMES: Final = (
    "the id of a template, a bank, or the path of a template, a bank or a folder of some"
)


def choose_bank(named: str, folder: Path, where: str, field: str) -> Bank:
    """The bank of a name: "" for all templates, one that comes with probgen, a path, or a release
    of a bank near the folder.

    folder: where paths start; where, field: the file and field it was named in, for messages.
    Raises InputError.
    """
    if not named:
        return default_bank()
    released = {path.stem: path for path in supplied("banks").glob("*.toml")}
    path = released.get(named, folder / named)
    if path.exists():
        return read_bank(path)
    if found := released_near(named, folder, where, field):
        return found
    expected = one_of(released, "the banks ") + ", the path of a bank, or a release of one nearby"
    mend = nearest(named, released) or "leave it out to choose from all templates"
    raise InputError([Fault(where, field, shown(named), expected, mend)])


def choose_banks(named: Sequence[str], folder: Path, where: str, field: str) -> Bank:
    """As `choose_bank`, of several names one bank of all their templates.  Raises InputError."""
    faults = Faults(where)
    banks: list[Bank] = []
    for each in named or ("",):
        try:
            banks.append(choose_bank(each, folder, where, field))
        except InputError as error:
            faults.take(error)
    faults.settle()
    return joined(banks, where, field)


def choose_template(
    named: str, bank: Bank, folder: Path, where: str, field: str, units: UnitSystem = SI
) -> Template:
    """The template of an id in the bank, or of the path of a .toml file, in a system of units.

    folder, where, field: as for `choose_bank`.  Raises InputError.
    """
    if named in bank.files:
        return bank.read(named, units)
    if named.endswith(".toml") and (folder / named).is_file():
        require_kind(read_toml(folder / named, TEMPLATE), TEMPLATE, folder / named)
        return read_file(folder / named, units)
    found, mend = shown(named), nearest(named, bank.files)
    if named.endswith(".toml"):
        found += ", where there is no file"
        mend = "correct the path, or name a template by its id"
    expected = "the id of a template, or the path of a .toml file"
    remedy = None if mend else SeeTemplates()
    raise InputError([Fault(where, field, found, expected, mend, remedy)])


def every_template() -> Iterator[Callable[..., Template]]:
    """What reads each template that comes with probgen in a system of units."""
    bank = default_bank()
    yield from (partial(bank.read, id) for id in bank.files)


def choose_several(named: str, folder: Path, where: str) -> Iterator[Callable[..., Template]]:
    """What reads each template of a name in a system of units: the id of one, a bank that comes
    with probgen, or the path of a template, a bank or a folder.

    Raises InputError for a name of nothing; what is called raises it for a faulty template.
    """
    bank = default_bank()
    if not named.strip():  # an empty variable of somebody's shell names nothing, and not everything
        raise InputError([Fault(where, "", shown(named), _NAMES, "", SeeTemplates())])
    if named in bank.files:
        yield partial(bank.read, named)
    elif (folder / named).is_file() and not _is_bank(folder / named) and named.endswith(".toml"):
        require_kind(_content(folder / named), TEMPLATE, folder / named)
        yield partial(read_file, folder / named)
    else:
        chosen = _bank_of(named, folder, where, bank)
        if not chosen.files:
            mend = "name the folder they are in"
            raise InputError([Fault(where, "", f"{shown(named)}, without one", _NAMES, mend)])
        for id in chosen.files:
            yield partial(chosen.read, id)


def _bank_of(named: str, folder: Path, where: str, known: Bank) -> Bank:
    try:
        return choose_bank(named, folder, where, "")
    except InputError:
        if (folder / named).exists():
            raise
    released = [path.stem for path in supplied("banks").glob("*.toml")]
    mend = nearest(named, [*known.files, *released])
    remedy = None if mend else SeeTemplates()
    raise InputError([Fault(where, "", shown(named), _NAMES, mend, remedy)])


def _is_bank(path: Path) -> bool:
    """Whether a file lists templates, or is one; a file that is no TOML is read as a template."""
    return kind_of(_content(path)) == BANK


def _content(path: Path) -> dict[str, Any]:
    """What is in a TOML file; empty where that cannot be read."""
    with suppress(InputError):
        return read_toml(path, "template or a bank")
    return {}


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
