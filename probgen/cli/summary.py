"""What was built, told in a terminal: where it is, what to look at, what is missing."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import click

from probgen.build.build import Built
from probgen.build.folder import ANSWERS, MISSING, VERSIONS
from probgen.cli.terminal import counted, say
from probgen.course.record import CODES, RECORD, Record
from probgen.course.rule import Rule
from probgen.course.section import sections_of
from probgen.papers.typesetter import Kind

_SOMETHING_MISSING = 3
_NAMED = 5
"""Students whose needs are told; those of more are counted."""


def show_built(built: Built, quiet: bool) -> None:
    """Tells what was built; ends with exit code 3 when something of it is missing."""
    for remark in built.remarks:
        say(f"remark: {remark}", err=True)
    for name in built.left:
        say(f"remark: {built.folder / name} has been edited, and stays as it is", err=True)
    if not quiet:
        say(_summary(built))
    if built.losses:
        say(_shortfall(built), err=True)
        raise click.exceptions.Exit(_SOMETHING_MISSING)


def _summary(built: Built) -> str:
    exam = built.record.set.exam
    whom = counted(len(built.record.students), "student")
    whom = f"{counted(exam.versions, 'version')} for {whom}" if exam else whom
    draft = built.record.is_draft
    sheets, keys = ("to look at", "their keys") if draft else ("to hand out", "to mark with")
    lines = [
        f"{whom} x {_problems(built.record)} in {built.folder}",
        *_news(built),
        *_chosen(built.record),
        f"  {sheets:13} {_together(built, Kind.SHEETS)}, one by one in sheets/",
        f"  {keys:13} {_together(built, Kind.KEYS)}, one by one in keys/",
        *_tables(built),
        *_sections(built),
        *_needs(built),
        f"  to keep       {built.folder / RECORD}",
    ]
    return "\n".join(lines)


def _tables(built: Built) -> Iterator[str]:
    tables = {"all answers": ANSWERS, "who has which": VERSIONS, "all codes": CODES}
    for words, name in tables.items():
        if forms := built.tables(Path(name).stem):
            yield f"  {words:13} {', '.join(map(str, forms))}"


def _problems(record: Record) -> str:
    """How many everybody has; from the fewest to the most where sections have others."""
    counts = {len(record.set.places_in(section)) for section in sections_of(record)}
    span = f"{min(counts)} to " if len(counts) > 1 else ""
    return span + counted(max(counts), "problem")


def _sections(built: Built) -> Iterator[str]:
    if folders := built.sections:
        names = ", ".join(f"{folder.name}/" for folder in folders)
        yield f"  by section    {names} in {folders[0].parent}"


def _needs(built: Built) -> Iterator[str]:
    """What single students need besides large print, where no page of homework tells it."""
    record = built.record
    told = [f"{each.name} ({each.id}): {each.needs}" for each in record.students if each.needs]
    if told and not record.is_exam:
        more = f"; and {len(told) - _NAMED} more" if len(told) > _NAMED else ""
        yield f"  needs         {'; '.join(told[:_NAMED])}{more}; all are in {CODES}"


def _news(built: Built) -> Iterator[str]:
    """What is new beside the papers there were before."""
    changes = built.changes
    if changes and changes.stale:
        whose = f"{', '.join(changes.stale[:_NAMED])}{' ...' * (len(changes.stale) > _NAMED)}"
        yield f'  by another name or section: {whose}; --correct "your section" prints those anew'
    if built.kept:
        yield f"  the old build is kept in {built.kept}"
    if built.record.is_draft:
        yield "  a draft, marked so: hand out what you build without --draft, with these numbers"
    if changes is None or (len(built.record.printings) < 2 and not changes.left):
        return
    counts = [f"{len(changes.added)} added", f"{changes.moved} moved", f"{len(changes.left)} left"]
    counts += [f"{len(changes.back)} back"] if changes.back else []
    counts += [f"{changes.corrected} corrected"] if changes.corrected else []
    yield f"  {', '.join(counts)}"
    for words in changes.others:
        yield f"  {words}"
    if changes.redrawn:
        yield f"  numbers that the correction could not keep: {', '.join(changes.redrawn)}"
    if built.fresh and changes.printed:
        yield f"  newly printed {' and '.join(map(str, built.fresh))}"


def _chosen(record: Record) -> Iterator[str]:
    """Why the templates that were chosen by rule were taken."""
    for number, problem in enumerate(record.set.problems, start=1):
        if chosen := problem.chosen:
            last = f"last set {chosen.last}" if chosen.last else "not set before"
            fits = "the only one that fits" if chosen.of == 1 else f"one of {chosen.of} that fit"
            asked = ", ".join(_asked(chosen.rule))
            yield f"  problem {number}     {problem.template}, taken for {asked}: {fits}, {last}"


def _asked(rule: Rule) -> Iterator[str]:
    if rule.family:
        yield rule.family
    if rule.level:
        yield f"level {rule.level}"
    for goal in rule.goals:
        yield f'"{goal}"'
    if rule.not_used_since:
        yield f"not used since {rule.not_used_since}"
    if not (rule.family or rule.level or rule.goals or rule.not_used_since):
        yield "any problem"


def _together(built: Built, kind: Kind) -> str:
    """The PDF of all sheets or keys; the first and the last when there are several."""
    paths = built.together(kind)
    if not paths:
        return f"no {kind}, for none could be printed"
    return " to ".join(str(path) for path in dict.fromkeys((paths[0], paths[-1])))


def _shortfall(built: Built) -> str:
    count = len(built.losses)
    noun = "document is" if count == 1 else "documents are"
    told = "\n".join(str(loss) for loss in built.losses)
    return (
        f"{count} {noun} missing, listed in {built.folder / MISSING}:\n{told}\n"
        "    mend      correct the cause, then build again: "
        "everybody keeps their numbers"
    )
