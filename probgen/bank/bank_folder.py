"""A department's bank: a folder that lies in its own version control.

    bank.toml                     what the bank is, who keeps it, what its templates may teach
    templates/forearm-load/r1.toml, r2.toml
    reviews.csv                   who looked at which revision, and what they said
    releases/statics-2027.1.toml  what was released, for ever
    uses/mechanics.csv            what was set, when, to how many

What was released is never edited: any change is the next revision, in a file of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.bank.bank import Bank
from probgen.bank.release import NAME, Release, read_release, text_digest
from probgen.bank.template import Template
from probgen.input.fault import Fault, Faults, InputError, nearest, one_of, shown
from probgen.input.file import read_text
from probgen.input.remedy import NewBank
from probgen.input.table import Table
from probgen.input.toml import read_toml
from probgen.quantities.unit import SI, UnitSystem

BANK_FILE: Final = "bank.toml"
TEMPLATES: Final = "templates"
RELEASES: Final = "releases"
_REVISION: Final = re.compile(r"r([1-9]\d{0,5})\.toml")


@dataclass(frozen=True, slots=True)
class BankFolder:
    """keeper: who answers for the bank; goals: what its templates may teach.

    own_approval: whether who wrote a template may approve it.
    revisions: each template's files by revision, ascending, by its id; releases: their files.
    """

    path: Path
    id: str
    name: str
    keeper: str
    goals: tuple[str, ...]
    revisions: Mapping[str, Mapping[int, Path]]
    releases: Mapping[str, Path]
    own_approval: bool = False

    def read(self, id: str, revision: int, units: UnitSystem = SI) -> Template:
        """A revision of a template, by numbers that are there.

        Raises InputError with its faults, or where its own file says that it is another one.
        """
        files, revisions = {id: self.revisions[id][revision]}, {id: revision}
        return Bank(self.id, self.name, files, revisions=revisions).read(id, units)

    def newest(self) -> Bank:
        """The newest revision of every template, reviewed or not."""
        newest = {id: max(files) for id, files in self.revisions.items()}
        files = {id: self.revisions[id][revision] for id, revision in newest.items()}
        return Bank(self.id, self.name, files, revisions=newest)

    def released(self, name: str) -> Bank:
        """The templates of a release, exactly as they were.

        Raises InputError where there is no such release, or a text is no longer as it was.
        """
        if name not in self.releases:
            where, expected = str(self.path / RELEASES), one_of(self.releases, "the releases ")
            mend = nearest(name, self.releases)
            raise InputError([Fault(where, "", shown(name), expected, mend)])
        release = read_release(self.releases[name])
        self._require_texts(release)
        revisions = {id: each.revision for id, each in release.templates.items()}
        files = {id: self.revisions[id][revision] for id, revision in revisions.items()}
        return Bank(name, f"{self.name}, {name}", files, release=1, revisions=revisions)

    def _require_texts(self, release: Release) -> None:
        faults = Faults(str(self.releases[release.name]))
        if release.bank != self.id:
            mend = "put the release back into its own bank"
            faults.add("bank", release.bank, f'"{self.id}", the bank it lies in', mend)
        for each in release.templates.values():
            own, field = self.revisions.get(each.id, {}), f"{each.id} r{each.revision}"
            if each.revision not in own:
                mend = f"put {TEMPLATES}/{each.id}/r{each.revision}.toml back"
                expected = "every revision that was released"
                faults.found.append(Fault(faults.file, field, "no file", expected, mend))
            elif text_digest(read_text(own[each.revision], "template")) != each.text:
                mend = (
                    "put the released text back (the version control has it), and write what is "
                    "new as the next revision"
                )
                expected = "the text that was released"
                found = Fault(faults.file, field, "a text edited since", expected, mend)
                faults.found.append(found)
        faults.settle()


def is_bank_folder(path: Path) -> bool:
    """Whether a folder has the file that makes it a bank."""
    return (path / BANK_FILE).is_file()


def read_bank_folder(path: Path) -> BankFolder:
    """The bank in a folder.  Raises InputError with every fault of what lies where."""
    if not is_bank_folder(path):
        found = "a folder without it" if path.is_dir() else "no such folder"
        expected, mend = "a bank's own file", "name the folder of a bank"
        remedy = NewBank(str(path))
        raise InputError([Fault(str(path / BANK_FILE), "", found, expected, mend, remedy)])
    faults = Faults(str(path / BANK_FILE))
    top = Table(read_toml(path / BANK_FILE, "bank"), "", faults)
    id, name = top.text("id"), top.text("name")
    if id and not NAME.fullmatch(id):
        top.fault("id", id, 'small letters, digits, hyphens and points, such as "statics"')
    keeper, goals = top.text("keeper"), top.texts("goals", required=True)
    own_approval = top.flag("own_approval")
    top.close()
    revisions = dict(_revisions(path / TEMPLATES, faults))
    releases = {each.stem: each for each in sorted((path / RELEASES).glob("*.toml"))}
    faults.settle()
    return BankFolder(path, id, name, keeper, goals, revisions, releases, own_approval)


def bank_around(release: Path) -> BankFolder | None:
    """The bank whose release a file is; None for a file of another kind."""
    folder = release.resolve().parent.parent
    if release.resolve().parent.name == RELEASES and is_bank_folder(folder):
        return read_bank_folder(folder)
    return None


def bank_of(template: Path) -> Path | None:
    """The folder of the bank that a template's file is a revision in; None for any other file."""
    own = template.resolve().parents
    among = len(own) > 2 and own[1].name == TEMPLATES and is_bank_folder(own[2])
    return own[2] if among and _REVISION.fullmatch(template.name) else None


def _revisions(folder: Path, faults: Faults) -> Iterator[tuple[str, dict[int, Path]]]:
    for own in sorted(folder.iterdir()) if folder.is_dir() else ():
        if not own.is_dir():
            if own.suffix == ".toml":
                mend = f"move it to {own.stem}/r1.toml"
                faults.found.append(Fault(str(own), "", "a file", "a folder a template", mend))
            continue
        found: dict[int, Path] = {}
        for path in own.glob("*.toml"):
            if named := _REVISION.fullmatch(path.name):
                found[int(named[1])] = path
            else:
                mend = "rename it after its revision, or take it away"
                faults.found.append(
                    Fault(str(path), "", path.name, "r1.toml, r2.toml and so on", mend)
                )
        if found:
            yield own.name, dict(sorted(found.items()))
