"""What a class had before: the records that an assignment file names, read to be drawn around."""

from __future__ import annotations

import glob
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from os.path import relpath
from pathlib import Path

from probgen.course.archive import records_in
from probgen.course.assignment import ProblemSet
from probgen.course.numbers_had import Had, each_once
from probgen.course.record import RECORD, Record
from probgen.course.record_file import read_record
from probgen.input.fault import Faults, InputError, nearest, one_of


@dataclass(frozen=True, slots=True)
class Avoided:
    """had: numbers of the templates asked for, each once.

    templates: the ids of all that other assignments had, each with where that was.
    """

    had: tuple[Had, ...] = ()
    templates: Mapping[str, str] = field(default_factory=dict)


def read_avoided(
    problem_set: ProblemSet,
    templates: Collection[str],
    assignment_file: Path,
    out: Path,
    anew: bool = False,
) -> Avoided:
    """What the records that a set avoids tell, but for that of its own build.

    templates: the ids of those whose numbers are wanted; anew: whether the build begins anew, so
    that its earlier record counts too.  Drafts bind nobody.  A record with the set's own course and
    title is of an earlier build of it: its numbers count, its templates do not.
    Raises InputError for a glob that finds nothing, and for records that cannot be read.
    """
    faults = Faults(str(assignment_file))
    folder, own = assignment_file.parent, (out / RECORD).resolve()
    had: list[Had] = []
    seen: dict[str, str] = {}
    for path in _records(problem_set, folder, own, faults):
        if path == own and not anew:
            continue
        where = relpath(path.parent, folder.resolve())
        try:
            record = read_record(path, edited=True)
        except InputError as error:
            _tell(error, relpath(path, folder.resolve()), faults)
            continue
        if not record.is_draft:
            had += _had_in(record, templates)
            if not _is_same(record, problem_set):
                used = (each.template_id for issue in record.issues for each in issue.templates)
                seen |= dict.fromkeys(used, f"{record.set.title} ({where})")
    faults.settle()
    return Avoided(each_once(had), seen)


def require_new(
    before: Avoided, problem_set: ProblemSet, ids: Sequence[str], known: Collection[str], where: str
) -> None:
    """Raises InputError for templates of an exam that the class had, and that are not allowed.

    ids: of the set's templates, in their order; known: those of papers that were handed out.
    """
    faults = Faults(where)
    for place, each in enumerate(problem_set.again):
        if each not in ids:
            faults.add(f"again[{place}]", each, one_of(ids), nearest(each, ids))
    allowed = {*known, *problem_set.again}
    for place, id in enumerate(ids):
        if problem_set.exam and id in before.templates and id not in allowed:
            expected = f"one that the class had not: it was in {before.templates[id]}"
            mend = f'take another, or allow it with other numbers: again = ["{id}"]'
            faults.add(f"problem[{place}].template", id, expected, mend)
    faults.settle()


def _records(problem_set: ProblemSet, folder: Path, own: Path, faults: Faults) -> Iterator[Path]:
    """The records that the globs of a set find, each once; own: where that of its build is."""
    found: dict[Path, None] = {}
    for place, pattern in enumerate(problem_set.avoid):
        named = [(folder / each).resolve() for each in glob.glob(pattern, root_dir=folder)]
        inside = [path.resolve() for each in named for path in records_in(each)]
        around = any(each == folder.resolve() or own.is_relative_to(each) for each in named)
        if not inside and not around:
            expected = f"a path, from {folder}, of records or of folders that have some"
            mend = "build what it names first, or correct it"
            faults.add(f"avoid[{place}]", pattern, expected, mend)
        found |= dict.fromkeys(inside)
    yield from sorted(found)


def _tell(error: InputError, where: str, faults: Faults) -> None:
    """One fault for a record that cannot be read, whatever is wrong with it."""
    first = error.faults[0]
    what = ", ".join(filter(None, (first.field, first.found or "nothing")))
    expected = f"a record that can be read; in it is {what}, not {first.expected}"
    mend = "put an unchanged copy back, or let avoid leave it out"
    faults.add("avoid", where, expected, mend)


def _had_in(record: Record, templates: Collection[str]) -> Iterator[Had]:
    for edition in record.editions:
        for draw in edition.draws:
            if draw.template_id in templates:
                yield Had("" if record.is_exam else edition.owner, draw)


def _is_same(record: Record, problem_set: ProblemSet) -> bool:
    own = record.set
    return (own.course, own.title) == (problem_set.course, problem_set.title)
