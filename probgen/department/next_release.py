"""The next release of a bank: what it takes, what is other in it, and what keeps it from being."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Final

from probgen.bank.bank_folder import RELEASES, BankFolder, read_bank_folder
from probgen.bank.bank_lock import held
from probgen.bank.release import (
    MOST_CHANGES,
    Release,
    Released,
    newest,
    read_release,
    release_text,
    text_digest,
)
from probgen.bank.reviews import Review, Verdict, read_reviews
from probgen.bank.template import Template
from probgen.course.typed_texts import judge_typed
from probgen.department.candidate import Candidate, candidates
from probgen.department.change import Changes
from probgen.department.change_list import change_list
from probgen.department.changes import changes
from probgen.department.release_rules import (
    judge_changes,
    judge_draws,
    judge_name,
    judge_released,
    judge_template,
)
from probgen.department.standing import by_revision
from probgen.input.fault import Fault, Faults, InputError, nearest
from probgen.input.file import write_beside
from probgen.statics.fingerprint import fingerprint

DRAWS: Final = 500
"""That are proved of each template which the release before has not, text for text."""
_LONGEST_LINE: Final = 300


@dataclass(frozen=True, slots=True)
class NextRelease:
    """A release that can be made, unless there are faults.

    changes: against the one it follows; waiting: templates with a revision that it does not take.
    """

    bank: BankFolder
    release: Release
    changes: Changes
    waiting: tuple[Candidate, ...]
    faults: tuple[Fault, ...]


def next_release(
    bank: BankFolder,
    name: str,
    by: str,
    day: date,
    only: Collection[str] = (),
    without: Collection[str] = (),
    draws: int = DRAWS,
) -> NextRelease:
    """A release of the newest approved revisions, and every reason why it cannot be made.

    only, without: ids of the templates taken, all if none are named, and of those left out.
    Raises InputError where a release made before cannot be read.
    """
    faults = Faults(str(bank.path))
    earlier, reviews = _read_releases(bank), _read_reviews(bank, faults)
    before = newest(earlier)
    faults.found += judge_name(name, day, before, bank)
    judge_typed(by, "by", faults)
    found = candidates(bank, _chosen(bank, only, without, faults), by_revision(reviews), faults)
    withdrawn = {each.template for each in reviews if each.verdict is Verdict.WITHDRAWN}
    faults.found += judge_released(bank, earlier, withdrawn)
    after = {each.id: each.template for each in found if each.template}
    old = _templates_of(bank, before, faults)
    compared = _with_missing(changes(old, after), before, {*old, *after})
    faults.found += judge_changes(old, after, compared)
    for id, template in after.items():
        faults.found += judge_template(template, bank, _highest(id, earlier))
    faults.found += judge_draws(bank, _unproved(after, before), draws)
    if not after and not faults.found:
        mend = "review templates first, and approve them"
        faults.add("templates", "none that is approved", "one at least", mend)
    return NextRelease(
        bank,
        _release(bank, name, by, day, after, compared, before),
        compared,
        tuple(each for each in found if each.waits),
        _each_once(faults.found),
    )


def write_release(found: NextRelease) -> Path:
    """Writes a release into its bank.

    Raises InputError with all that is wrong with it, or where somebody has made one of its name
    meanwhile.
    """
    if found.faults:
        raise InputError(found.faults)
    name, folder = found.release.name, found.bank.path
    path = folder / RELEASES / f"{name}.toml"
    with held(folder):
        if path.exists():
            expected = "a name of its own"
            raise InputError([Fault(str(path), "release", name, expected, "count it up")])
        write_beside(path, release_text(found.release).encode())
    read_bank_folder(folder).released(name)  # it is what it says
    return path


def _read_releases(bank: BankFolder) -> tuple[Release, ...]:
    faults, found = Faults(str(bank.path)), []
    for path in bank.releases.values():
        try:
            found.append(read_release(path))
        except InputError as error:
            faults.take(error)
    faults.settle()
    return tuple(found)


def _read_reviews(bank: BankFolder, faults: Faults) -> tuple[Review, ...]:
    try:
        return read_reviews(bank)
    except InputError as error:
        faults.take(error)
        return ()


def _chosen(
    bank: BankFolder, only: Collection[str], without: Collection[str], faults: Faults
) -> list[str]:
    for id in (*only, *without):
        if id not in bank.revisions:
            faults.add("template", id, "a template of the bank", nearest(id, bank.revisions))
    return [id for id in bank.revisions if id not in without and (id in only or not only)]


def _templates_of(bank: BankFolder, release: Release | None, faults: Faults) -> dict[str, Template]:
    """What is there still of a release's templates."""
    found = {}
    for each in release.templates.values() if release else ():
        if each.revision in bank.revisions.get(each.id, {}):
            try:
                found[each.id] = bank.read(each.id, each.revision)
            except InputError as error:
                faults.take(error)
    return found


def _with_missing(found: Changes, before: Release | None, known: Collection[str]) -> Changes:
    """With those as gone whose files were taken away."""
    missing = [id for id in before.templates if id not in known] if before else []
    return replace(found, gone=(*found.gone, *missing))


def _highest(id: str, releases: Iterable[Release]) -> int:
    return max(
        (each.templates[id].revision for each in releases if id in each.templates), default=0
    )


def _unproved(after: Mapping[str, Template], before: Release | None) -> list[Template]:
    """Templates that the release before has not, text for text."""
    texts = {each.text for each in before.templates.values()} if before else set()
    return [each for each in after.values() if text_digest(each.source) not in texts]


def _release(
    bank: BankFolder,
    name: str,
    by: str,
    day: date,
    after: Mapping[str, Template],
    compared: Changes,
    before: Release | None,
) -> Release:
    lines = [line[:_LONGEST_LINE] for line in change_list(compared)]
    if before is None:
        lines.pop()  # none is as it was
    if len(lines) > MOST_CHANGES:
        more = len(lines) - MOST_CHANGES + 1
        lines[MOST_CHANGES - 1 :] = [f"and {more} lines more: compare the two releases"]
    taken = {id: _released(each) for id, each in sorted(after.items())}
    follows = before.name if before else ""
    return Release(name, bank.id, day, " ".join(by.split()), follows, tuple(lines), taken)


def _released(template: Template) -> Released:
    text, physics = text_digest(template.source), fingerprint(template.system)
    return Released(template.id, template.revision, text, physics)


def _each_once(faults: Iterable[Fault]) -> tuple[Fault, ...]:
    found: list[Fault] = []
    found += (each for each in faults if each not in found)
    return tuple(found)
