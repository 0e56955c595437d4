"""What keeps a release from being made: every reason, each with its mend."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from datetime import date

from probgen.bank.bank_folder import TEMPLATES, BankFolder
from probgen.bank.customary import systems_of
from probgen.bank.release import LONGEST_NAME, NAME, Release, text_digest
from probgen.bank.template import Template
from probgen.department.change import Changes, Kind
from probgen.input.fault import Fault, Faults, InputError, nearest, shown
from probgen.input.file import read_text
from probgen.input.toml import parse_toml
from probgen.problem.template_check import check_template

_EDITED = "put the released text back (the version control has it), and write what is new as r{}"


def judge_name(name: str, day: date, before: Release | None, bank: BankFolder) -> Iterator[Fault]:
    """A name that is none or taken, and a day before that of the release before."""
    where = str(bank.path)
    if not NAME.fullmatch(name) or len(name) > LONGEST_NAME:
        expected = (
            f"small letters, digits, hyphens and points, at most {LONGEST_NAME}, such as "
            f'"{bank.id}-{day.year}.1"'
        )
        yield Fault(where, "release", shown(name), expected)
    if name in bank.releases:
        yield Fault(where, "release", shown(name), "a name of its own", "count it up")
    if before and day < before.date:
        expected = f"{before.date} or later, the day of {before.name}"
        yield Fault(where, "date", str(day), expected)


def judge_released(
    bank: BankFolder, releases: Iterable[Release], withdrawn: Collection[str]
) -> Iterator[Fault]:
    """Texts that were released and are no longer as they were.

    withdrawn: ids that may be missing whole.
    """
    digests: dict[tuple[str, int], str] = {}
    told: set[tuple[str, int]] = set()
    for release in releases:
        for each in release.templates.values():
            key, field = (each.id, each.revision), f"{each.id} r{each.revision}"
            own = bank.revisions.get(each.id, {})
            if key in told or (not own and each.id in withdrawn):
                continue
            expected = f"the text that {release.name} was made of"
            if each.revision not in own:
                told.add(key)
                mend = (
                    f"put {TEMPLATES}/{each.id}/r{each.revision}.toml back; what is to be "
                    "released no more is withdrawn by a review, and stays"
                )
                yield Fault(str(bank.path), field, "no file", expected, mend)
                continue
            if key not in digests:
                digests[key] = text_digest(read_text(own[each.revision], "template"))
            if digests[key] != each.text:
                told.add(key)
                mend = _EDITED.format(max(own) + 1)
                yield Fault(str(own[each.revision]), "", "a text edited since", expected, mend)


def judge_template(template: Template, bank: BankFolder, highest: int) -> Iterator[Fault]:
    """What a template lacks; highest: its highest revision that was released, 0 for none."""
    if lacking := ", ".join(template.origin.lacking):
        mend = "say it in the template's file; then it has to be approved as it stands"
        yield Fault(template.path, lacking, "", "what a release needs", mend)
    for place, goal in enumerate(template.goals):
        if goal not in bank.goals:
            expected = "one of the goals of the bank's bank.toml"
            mend = nearest(goal, bank.goals) or "add it to the list there"
            yield Fault(template.path, f"goals[{place}]", shown(goal), expected, mend)
    own = bank.revisions[template.id]
    for revision in range(min(own), template.revision):
        if revision not in own:
            mend = f"put r{revision}.toml back, or number those after it anew"
            expected = f"every revision from r{min(own)} on"
            yield Fault(str(bank.path), f"{template.id} r{revision}", "no file", expected, mend)
    if template.revision < highest:
        found = f"r{template.revision}, the newest that is approved"
        mend = f"have a later one approved, r{max(own) + 1} if you go back to what was before"
        yield Fault(
            str(bank.path), template.id, found, f"r{highest} or later, which was released", mend
        )


def judge_changes(
    before: Mapping[str, Template], after: Mapping[str, Template], changes: Changes
) -> Iterator[Fault]:
    """Revisions that were counted up for nothing."""
    kinds = {change.id: set(change.kinds) for change in changes.changed}
    for id in after.keys() & before.keys():
        old, new = before[id].revision, after[id].revision
        if new > old and kinds.get(id, set()) <= {Kind.LAYOUT}:
            found = f"a revision that says what r{old} says"
            mend = f'review it as "changes wanted", and r{old} is released again'
            yield Fault(after[id].path, "", found, "a change that somebody can notice", mend)


def judge_draws(bank: BankFolder, templates: Sequence[Template], draws: int) -> Iterator[Fault]:
    """Draws that fail, in every system of units that a template is written for."""
    faults = Faults(str(bank.path))
    for template in templates:
        for units in systems_of(parse_toml(template.source, template.path)):
            try:
                check_template(bank.read(template.id, template.revision, units), draws)
            except InputError as error:
                faults.take(InputError(each for each in error.faults if each not in faults.found))
    yield from faults.found
