"""`probgen new`: the folder of a course, to begin with."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("course", type=click.Path(path_type=Path))
def new(course: Path) -> None:
    """Make the folder of a new course, with files to edit.

    COURSE is the folder's path; its name is that of the course until you write another.  Files that
    are there stay as they are.
    """
    from shlex import quote

    from probgen.build.new_course import write_course
    from probgen.cli.terminal import program, say

    made = write_course(course)
    for path in made.left:
        say(f"remark: {path} is there already, and stays as it is", err=True)
    say(
        f"{made.folder} is a course. What to edit, in this order:\n"
        f"  class list        {made.roster}: an invented class, for all assignments\n"
        f"  look of papers    {made.style}\n"
        f"  first assignment  {made.assignment}: course, title, due, problems, [method]\n"
        f"  to keep secret    {made.secret}, which keys the codes of all papers; leave it\n"
        "It can be built as it is; while you are writing, as a draft:\n"
        f"  {program()} build {quote(str(made.assignment))} --draft\n"
        "The next assignment is a copy of that file in a folder of its own beside "
        f"{made.assignment.parent}."
    )
