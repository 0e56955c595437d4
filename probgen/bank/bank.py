"""Banks: which templates there are to choose from.

A bank is a folder of template files, each named after its template's id; a department's bank, or a
release of it (`bank_folder.py`); or a TOML file that releases a choice of the supplied templates
for a course:

    id = "first-course"
    release = 1
    title = "Statics in a first course"
    course = "introductory physics, one term"

    [[template]]
    id = "seesaw-two-riders"
    revision = 1
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from probgen.bank.reading import read_template
from probgen.bank.supplied import supplied
from probgen.bank.template import Template
from probgen.input.fault import Fault, Faults, InputError, nearest, one_of
from probgen.input.file import read_text
from probgen.input.table import Table
from probgen.input.toml import read_toml
from probgen.quantities.unit import SI, UnitSystem


@dataclass(frozen=True, slots=True)
class Bank:
    """Templates by id.

    files: each template's file; revisions: the revision released, for a bank that states it.
    """

    id: str
    title: str
    files: Mapping[str, Path]
    course: str = ""
    release: int = 0
    revisions: Mapping[str, int] | None = None

    def read(self, id: str, units: UnitSystem = SI) -> Template:
        """One template in a system of units.

        Raises InputError when there is none, or when it has faults.
        """
        if id not in self.files:
            listed = one_of(sorted(self.files), "the templates ")
            mend = nearest(id, self.files) or "give the path of a .toml file"
            raise InputError([Fault(self.id, "template", id, listed, mend)])
        template = read_file(self.files[id], units)
        self.require_named(template, id)
        return template

    def read_all(self) -> tuple[Template, ...]:
        """Every template, in the bank's order.  Raises InputError with the faults of all files."""
        templates, faults = [], Faults(self.id)
        for id in self.files:
            try:
                templates.append(self.read(id))
            except InputError as error:
                faults.take(error)
        faults.settle()
        return tuple(templates)

    def require_named(self, template: Template, id: str) -> None:
        """Raises InputError unless a template, read of one of the files, is the one of an id."""
        faults = Faults(template.path)
        if template.id != id:
            expected = f'"{id}", as the file or its folder is named'
            faults.add("id", template.id, expected, "rename one of them")
        wanted = (self.revisions or {}).get(id, template.revision)
        if wanted != template.revision:
            mend = "take the file that is meant, or release the bank anew"
            expected = f"revision {wanted}, as the bank {self.id} has it"
            faults.add("revision", template.revision, expected, mend)
        faults.settle()


def default_bank() -> Bank:
    """The templates that come with the program."""
    return plain_folder("templates", "Templates that come with probgen", supplied("templates"))


def joined(banks: Sequence[Bank], where: str, field: str) -> Bank:
    """Several banks as one; where, field: where they were named, for messages.

    Raises InputError where two have a template of the same id.
    """
    if len(banks) == 1:
        return banks[0]
    files: dict[str, Path] = {}
    revisions: dict[str, int] = {}
    faults = Faults(where)
    for bank in banks:
        for id in bank.files.keys() & files.keys():
            first = next(each.id for each in banks if id in each.files)
            mend = "name one of the two banks only, and the other's templates by their paths"
            faults.add(field, f"{id}, in {first} and in {bank.id}", "every id in one bank", mend)
        files |= bank.files
        revisions |= bank.revisions or {}
    faults.settle()
    return Bank(" and ".join(bank.id for bank in banks), "", files, revisions=revisions)


def read_choice(path: Path) -> Bank:
    """A choice of the supplied templates, from a TOML file.  Raises InputError, all at once."""
    faults = Faults(str(path))
    top = Table(read_toml(path, "bank of templates"), "", faults)
    known = default_bank().files
    revisions = {}
    for row in top.tables("template"):
        id = row.word("id", known)
        if id in revisions:
            row.fault("id", id, "every template once", "drop the repeated entry")
        revisions[id] = row.whole("revision", 1, 1_000_000)
        row.close()
    if not revisions:
        top.fault("template", None, "at least one template", 'add [[template]] and id = "..."')
    bank = Bank(
        top.text("id"),
        top.text("title"),
        {id: known[id] for id in revisions if id in known},
        top.text("course", ""),
        top.whole("release", 1, 1_000_000),
        revisions,
    )
    top.close()
    faults.settle()
    return bank


def read_file(path: Path, units: UnitSystem = SI) -> Template:
    """The template in a file, in a system of units.  Raises InputError."""
    return read_template(read_text(path, "template"), str(path), units)


def plain_folder(id: str, title: str, folder: Path) -> Bank:
    """All template files in a folder and its subfolders.  Raises InputError for an id twice."""
    files: dict[str, Path] = {}
    faults = Faults(str(folder))
    for path in sorted(folder.rglob("*.toml")):
        if path.stem in files:
            found = path.relative_to(folder)
            faults.add("", found, "every id once", f"{files[path.stem].name} is there twice")
        files[path.stem] = path
    faults.settle()
    return Bank(id, title, files)
