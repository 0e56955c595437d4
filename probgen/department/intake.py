"""Templates taken into a bank from elsewhere, each as the revision that it says it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from probgen.bank.bank_folder import TEMPLATES, BankFolder
from probgen.bank.template import Template
from probgen.input.fault import Faults, InputError
from probgen.input.file import read_text, write_beside
from probgen.problem.lookup import choose_several


@dataclass(frozen=True, slots=True)
class Intake:
    """taken: the files that were written; there: templates that the bank had, text for text.

    strange: goals that the bank has not listed, each with the templates that name it.
    lacking: fields that a release needs and that say nothing, by template.
    """

    taken: tuple[Path, ...]
    there: tuple[str, ...]
    strange: tuple[tuple[str, tuple[str, ...]], ...]
    lacking: tuple[tuple[str, tuple[str, ...]], ...]


def take_in(bank: BankFolder, named: Sequence[str]) -> Intake:
    """Copies templates into a bank, by ids, banks or paths; nothing is written where one is wrong.

    Raises InputError with every fault, among them a revision that is there with another text.
    """
    faults = Faults(str(bank.path))
    files: dict[Path, str] = {}
    there: list[str] = []
    found = [template for name in named for template in _read(name, faults)]
    for template in found:
        path = bank.path / TEMPLATES / template.id / f"r{template.revision}.toml"
        before = files.get(path)
        if own := bank.revisions.get(template.id, {}).get(template.revision):
            before = read_text(own, "template")
        if before is None:
            files[path] = template.source
        elif before == template.source:
            there.append(template.id)
        else:
            said = f"{template.path}, revision {template.revision}"
            mend = f"count its revision up: revision = {template.revision + 1}"
            faults.add(template.id, said, "a revision that the bank has not, or has so", mend)
    faults.settle()
    for path, text in files.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        write_beside(path, text.encode("utf-8", "surrogatepass"))
    return Intake(tuple(files), tuple(there), _strange(bank, found), _lacking(found))


def _read(named: str, faults: Faults) -> list[Template]:
    templates: list[Template] = []
    try:
        readers = list(choose_several(named, Path(), "NAME"))
    except InputError as error:
        faults.take(error)
        return templates
    for read in readers:
        try:
            templates.append(read())
        except InputError as error:
            faults.take(error)
    return templates


def _strange(
    bank: BankFolder, templates: Sequence[Template]
) -> tuple[tuple[str, tuple[str, ...]], ...]:
    named: dict[str, list[str]] = {}
    for template in templates:
        for goal in template.goals:
            if goal not in bank.goals:
                named.setdefault(goal, []).append(template.id)
    return tuple((goal, tuple(ids)) for goal, ids in named.items())


def _lacking(templates: Sequence[Template]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    rows = ((each.id, tuple(each.origin.lacking)) for each in templates)
    return tuple((id, fields) for id, fields in rows if fields)
