"""Banks: which templates there are to choose from.

A bank is a folder of template files, each named after its template's id, or a TOML file that
releases a choice of them for a course:

    id = "first-course"
    release = 1
    title = "Statics in a first course"
    course = "introductory physics, one term"

    [[template]]
    id = "seesaw-two-riders"
    revision = 1
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from probgen.bank.reading import read_template
from probgen.bank.supplied import supplied
from probgen.bank.template import Template
from probgen.input.fault import Fault, Faults, InputError, nearest, one_of
from probgen.input.file import read_text, require_nameable
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
        self._check(template, id)
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

    def _check(self, template: Template, id: str) -> None:
        faults = Faults(str(self.files[id]))
        if template.id != id:
            faults.add("id", template.id, f'"{id}", as the file is named', "rename one of them")
        wanted = (self.revisions or {}).get(id, template.revision)
        if wanted != template.revision:
            mend = f"the bank {self.id} was released with it; release the bank anew"
            faults.add("revision", template.revision, f"revision {wanted}", mend)
        faults.settle()


def default_bank() -> Bank:
    """The templates that come with the program."""
    return _folder_bank("templates", "Templates that come with probgen", supplied("templates"))


def read_bank(path: Path) -> Bank:
    """The bank in a folder or a TOML file.  Raises InputError, all faults at once."""
    require_nameable(path, "bank")
    if path.is_dir():
        return _folder_bank(path.name, path.name, path)
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


def _folder_bank(id: str, title: str, folder: Path) -> Bank:
    files: dict[str, Path] = {}
    faults = Faults(str(folder))
    for path in sorted(folder.rglob("*.toml")):
        if path.stem in files:
            found = path.relative_to(folder)
            faults.add("", found, "every id once", f"{files[path.stem].name} is there twice")
        files[path.stem] = path
    faults.settle()
    return Bank(id, title, files)
