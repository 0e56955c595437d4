"""`probgen form`: the empty table that students' answers are typed into."""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("record", type=click.Path(path_type=Path))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    default=Path(),
    help="The folder to put it into; if left out, the one you are in.",
)
def form(record: Path, out: Path) -> None:
    """Write the empty answer form of a class: answer-form.csv and answer-form.xlsx.

    RECORD is the record.json of a build, or a folder with one in it.  A row a paper; a
    column for each number, each unit and each side of a direction that is asked.  Nothing that lies
    there is overwritten.
    """
    from probgen.build.tables import csv_content, workbook_content
    from probgen.cli.terminal import counted, say
    from probgen.course.archive import record_at
    from probgen.course.frozen import frozen_problems
    from probgen.course.record_file import read_record
    from probgen.input.fault import Fault, InputError
    from probgen.input.file import write_beside
    from probgen.input.own_file import require_folder
    from probgen.marking.form import OWN_HEADINGS, columns, form_rows

    require_folder(out)
    path = record_at(record)
    read = read_record(path)
    asked = columns(read, frozen_problems(read.issue, read.current, str(path)))
    heads = [*OWN_HEADINGS, *(column.heading for column in asked)]
    files = [out / f"answer-form.{ending}" for ending in ("csv", "xlsx")]
    there = [file for file in files if file.exists() or file.is_symlink()]
    if there:
        mend = "somebody may have typed into it: move it, or name another folder with --out"
        raise InputError([Fault(str(each), "", "a file", "no file yet", mend) for each in there])
    rows = list(form_rows(read, asked))
    for file, content in zip(files, (csv_content, workbook_content), strict=True):
        write_beside(file, content(heads, rows))
    size = f"{counted(len(asked), 'column')} for {counted(len(read.students), 'paper')}"
    say(f"{size} in {files[0]} and {files[1].name}")
