"""`probgen trace`: from a paper's code, or whose it is, to all that is known of it."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from rich.console import Console

    from probgen.course.roster import Student
    from probgen.course.trail import Trail
    from probgen.papers.traced import Traced, TracedProblem


@click.command()
@click.argument("sought", metavar="CODE|ID|NAME")
@click.argument("places", metavar="[PATH]...", nargs=-1, type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="As one JSON object.")
@click.option("--key", type=click.Path(path_type=Path), help="Write the key to this one paper.")
@click.option("--slips", is_flag=True, help="Every slip that is known, not the likeliest alone.")
@click.option("--trust-layouts", is_flag=True, help="Use the page layouts that a record carries.")
def trace(
    sought: str,
    places: tuple[Path, ...],
    as_json: bool,
    key: Path | None,
    slips: bool,
    trust_layouts: bool,
) -> None:
    """Tell whose a paper is, what stands on it, what is right, and what went wrong.

    CODE as it is printed on the paper, in any case; a letter that was misread is noticed.  An ID or
    a NAME finds all the papers of a student.

    PATH is a record.json or a folder in which records are searched for; if left out, the folder
    you are in.
    """
    from rich.console import Console

    from probgen.cli.terminal import say, say_json
    from probgen.course.trail import follow, require_one
    from probgen.papers.traced import as_data, traced

    found = follow(sought, places or (Path(),))
    for path in sorted({each.path for each in found if each.edited}):
        say(f"remark: {path} has been edited since probgen wrote it", err=True)
    if key is not None:
        _write_key(require_one(found, sought), key, trust_layouts, as_json)
    if as_json:
        say_json({"sought": sought, "papers": [as_data(traced(each)) for each in found]})
    elif key is None:
        console = Console()
        several = len({(each.owner, each.record.is_exam) for each in found}) > 1
        for each in found:
            if several or (each.later and len(found) > 1):
                _show_briefly(each)
            else:
                _show(traced(each), console, slips)


def _write_key(trail: Trail, path: Path, trusted: bool, quiet: bool) -> None:
    from probgen.cli.terminal import say
    from probgen.input.own_file import require_free, write_own
    from probgen.papers.reprint import print_one
    from probgen.papers.typesetter import Kind

    require_free(path, ".pdf")
    write_own(path, print_one(trail, Kind.KEYS, trusted), ".pdf")
    say(f"the key to {trail.edition.code} is in {path}", err=quiet)


def _show_briefly(trail: Trail) -> None:
    from probgen.cli.terminal import say

    later = f", later {trail.later}" if trail.later else ""
    title = trail.issue.set.title
    say(f"{trail.edition.code}  {trail.owner}, {title}{later}  ({trail.path})")


def _show(found: Traced, console: Console, slips: bool) -> None:
    from probgen.cli.columns import line, show_columns

    trail = found.trail
    console.print(line(f"{trail.edition.code}  {trail.owner}", "bold"))
    show_columns(console, list(_facts(found)), indent=4)
    for number, each in enumerate(found.problems, start=1):
        _show_problem(number, each, console, slips)
    console.print()


def _facts(found: Traced) -> list[tuple[str, str]]:
    trail, edition = found.trail, found.trail.edition
    course = trail.issue.set.course
    rows = [("assignment", ", ".join(filter(None, (trail.issue.set.title, course))))]
    if trail.issue.draft:
        rows.append(("draft", "not handed out: the build without --draft has other codes"))
    if trail.record.is_exam:
        who = ", ".join(f"{s.name} ({s.id})" for s in trail.students) or "nobody now"
        rows.append(("for", who))
    elif trail.renamed:
        rows.append(("student", f"has the id {trail.renamed.id} now"))
    elif not trail.students:
        rows.append(("student", "has left the class"))
    rows.append(("section", _section(trail)))
    due = trail.issue.set.for_section(edition.section).due
    rows.append(("date" if trail.record.is_exam else "due", due))
    rows += [("needs", told) for each in trail.students if (told := _needs(each, trail))]
    if edition.version > 1:
        rows.append(("version", f"{edition.version}, with other numbers than before"))
    told = f"{trail.number}" + (f", in place of {edition.follows}" if edition.follows else "")
    rows.append(("edition", told))
    rows += [("corrected", f"{each.day}: {each.what}") for each in edition.errata]
    if trail.later:
        rows.append(("later", f"{trail.later} has taken its place, and is in hand now"))
    rows.append(("record", str(trail.path)))
    if found.key.file:
        rows.append(("key", f"{trail.path.parent / found.key.file}"))
        rows.append(("", f"{found.key.pile}, page {found.key.page}"))
    else:
        rows.append(("key", f"made by: probgen trace {edition.code} {trail.path} --key key.pdf"))
    return [(name, told) for name, told in rows if told or not name]


def _section(trail: Trail) -> str:
    """The one on the paper, and the student's of now where that is another."""
    on_it = trail.edition.section
    now = [each.section for each in trail.students if not trail.record.is_exam]
    if now and now[0] != on_it:
        return f"{on_it or 'none'} on this paper, {now[0] or 'none'} in the class list"
    return on_it


def _needs(each: Student, trail: Trail) -> str:
    told = "; ".join(filter(None, ("large print" * each.large, each.needs)))
    return f"{each.name}: {told}" if told and trail.record.is_exam else told


def _show_problem(number: int, each: TracedProblem, console: Console, slips: bool) -> None:
    from probgen.cli.columns import line, show_columns
    from probgen.quantities.printing import plain, symbol_plain
    from probgen.quantities.symbol import unmarked

    template, own = each.problem.template, each.own
    console.print()
    named = f"{number} {template.title} ({template.id}, revision {template.revision})"
    console.print(line(f"{named}, {each.points} points", "bold"))
    labels = own.case.labels.quantities
    values = [
        (
            name,
            f"{symbol_plain(labels[name].symbol)} = {plain(value)}",
            unmarked(each.problem.nouns.given(name)),
        )
        for name, value in own.draw.values.items()
    ]
    show_columns(console, values, indent=4)
    for answer in own.answers:
        if not answer.asked:
            continue
        full = each.interval(answer.id)
        marks = f"   full marks: {full}" if full else ""
        console.print(line(f"    {answer.id} = {answer.printed}{marks}", "bold"))
        for _, told in each.slips_of(answer.id, likely_ones=not slips):
            console.print(line(f"        {told}"), soft_wrap=True)
