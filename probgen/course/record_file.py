"""A record's file: JSON, with no clock in it; an edition a line, each text once, and a digest.

Format 2.  Format 1, which version 0.1 wrote, is read by `first_format`.
"""

from __future__ import annotations

import json
from base64 import b64encode
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

from probgen.course.assignment import ProblemSet
from probgen.course.edition import Edition, Printing
from probgen.course.first_format import read_first
from probgen.course.issue import FrozenTemplate, Issue, canonical, digest_of, issue_digest
from probgen.course.numbers_had import Had
from probgen.course.print_run import PrintRun
from probgen.course.record import RECORD, Record
from probgen.course.record_judge import judge_record
from probgen.course.record_schema import CALLED, RECORD_SCHEMA, EditionRow, IssueRow, RecordFile
from probgen.draws.draw import Draw
from probgen.draws.nearness import Copying
from probgen.input.fault import Fault, Faults, InputError, shown
from probgen.input.json import read_json
from probgen.input.remedy import TakeEdited
from probgen.quantities.expression import Number
from probgen.sheets.house import House
from probgen.sheets.style import PLAIN
from probgen.working.convention import Convention

_FORMAT: Final = 2
_FORMATS: Final = (1, 2)
_MEND: Final = "take the record.json of a build, unchanged"


def write_record(record: Record) -> str:
    """The record as JSON text; the same record gives the same text."""
    texts: dict[str, str] = {}
    head = {
        "format": _FORMAT,
        "probgen": record.version,
        "seed": record.seed,
        "secret": record.secret,
    }
    students = [_member(record, place) for place in range(len(record.students))]
    issues = [_issue_as_data(record, place, texts) for place in range(len(record.issues))]
    printings = [
        {"issue": each.issue, "editions": [_edition_as_data(e) for e in each.editions]}
        for each in record.printings
    ]
    body = {"students": students, "issues": issues, "printings": printings, "texts": texts}
    avoided = {"avoided": _avoided_as_data(record.avoided)} if record.avoided else {}
    copying = {"copying": _copying_as_data(record)} if record.copying else {}
    digest = digest_of(canonical({**head, **body, **avoided, **copying}))
    fields = {
        **{name: _quoted(value) for name, value in head.items()},
        "digest": _quoted(digest),
        "students": _rows(map(_quoted, students)),
        "issues": _rows(map(_quoted, issues)),
        "printings": _rows(map(_printing, printings)),
        **{name: _rows(map(_quoted, rows)) for name, rows in {**avoided, **copying}.items()},
        "texts": json.dumps(texts, ensure_ascii=False, indent=1),
    }
    return "{\n" + ",\n".join(f' "{name}": {text}' for name, text in fields.items()) + "\n}\n"


def read_record(path: Path, edited: bool = False) -> Record:
    """The record at a path, of either format.

    edited: take one that has been edited since it was written.  Raises InputError when there is
    none, it is not whole, or it has been edited otherwise, all faults at once.
    What is in it is data; its templates' texts and its layouts are still to be read.
    """
    content = read_json(path, "record", _MEND)
    if _format_of(content, str(path)) == 1:
        return read_first(content, str(path), _MEND)
    file = RECORD_SCHEMA.read(content, RecordFile, str(path), _MEND)
    if not edited:
        _require_unedited(content, str(path))
    faults = Faults(str(path))
    judge_record(file, faults, _MEND)
    faults.settle()
    record = _record(file)
    try:
        _ = record.current
    except KeyError as missing:
        owner, _ = missing.args[0]
        faults.add("printings", None, f"a paper that {owner} has now", _MEND)
        faults.settle()
    return record


@dataclass(frozen=True, slots=True)
class Cut:
    """What is wanted of a record's file: rows of its students, and codes of editions."""

    students: tuple[Any, ...]
    codes: frozenset[str]


def read_cut(
    path: Path, choose: Callable[[Sequence[Any], Sequence[Any]], Cut]
) -> tuple[Record, bool] | None:
    """A record with those papers only that `choose` picks, and whether it has been edited.

    choose: from the rows of the students and of the editions, as they stand in the file.  None
    where it picks no paper.  Raises InputError as `read_record` does, for what is read.
    """
    content = read_json(path, "record", _MEND)
    if _format_of(content, str(path)) == 1:
        content = json.loads(write_record(read_first(content, str(path), _MEND)))
    try:
        rows = [edition for each in content["printings"] for edition in each["editions"]]
        chosen = choose(content["students"], rows)
        students = [*chosen.students] or content["students"][:1]
        printings = [
            {**each, "editions": own}
            for each in content["printings"]
            if (own := [row for row in each["editions"] if row["code"] in chosen.codes])
        ]
        edited = _is_edited(content)
    except (TypeError, KeyError, AttributeError):
        read_record(path)  # tells what is wrong
        raise
    if not printings:
        return None
    cut = {**content, "students": students, "printings": printings, "avoided": [], "copying": []}
    return _record(RECORD_SCHEMA.read(cut, RecordFile, str(path), _MEND)), edited


def chunk_id(issue: Issue, editions: Sequence[Edition]) -> str:
    """A digest of all that some papers of an issue are made from, their look too."""
    look = [asdict(issue.house.style) | {"logo": issue.house.style.logo.hex()}]
    rows = [_edition_as_data(edition) for edition in editions]
    return digest_of(
        canonical([issue_digest(issue), look, list(issue.house.layouts), rows, issue.version])
    )


def _format_of(content: object, where: str) -> int:
    """What another release has written gets one message, and not one for each field."""
    expected = f"format {' or '.join(map(str, _FORMATS))}, which this probgen reads"
    if not isinstance(content, dict) or "format" not in content:
        raise InputError([Fault(where, "", "a JSON file that is no record", "a record", _MEND)])
    found = content["format"]
    if type(found) is not int or found not in _FORMATS:
        mend = "build it with the release of probgen that wrote it"
        raise InputError([Fault(where, "format", f"format {shown(found)}", expected, mend)])
    return found


def _is_edited(content: Mapping[str, Any]) -> bool:
    """Whether it is not as its digest tells."""
    rest = {name: value for name, value in content.items() if name != "digest"}
    return bool(digest_of(canonical(rest)) != content["digest"])


def _require_unedited(content: Mapping[str, Any], where: str) -> None:
    if _is_edited(content):
        expected = "a record as probgen wrote it"
        mend = "take an unchanged copy"
        raise InputError([Fault(where, "", "edited since", expected, mend, TakeEdited())])


def _quoted(value: object) -> str:
    return json.dumps(value, ensure_ascii=False)


def _rows(rows: Iterable[str]) -> str:
    """A list, an entry a line: a class of thousands stays readable."""
    return "[\n" + ",\n".join(rows) + "\n]"


def _printing(data: Mapping[str, Any]) -> str:
    editions = _rows(map(_quoted, data["editions"]))
    return f'{{"issue": {data["issue"]}, "editions": {editions}}}'


def _member(record: Record, place: int) -> dict[str, Any]:
    letters = record.letters
    row = {**asdict(record.students[place]), "letter": letters[place] if letters else ""}
    return {name: value for name, value in row.items() if value or name in ("name", "id")}


def _issue_as_data(record: Record, place: int, texts: dict[str, str]) -> dict[str, Any]:
    """An issue, its texts put among those of the record."""
    issue = record.issues[place]
    sample = next(e for each in record.printings if each.issue == place for e in each.editions)
    data: dict[str, Any] = {
        "probgen": issue.version,
        "set": _set_as_data(issue.set),
        "templates": [
            {
                "template": frozen.template_id,
                "revision": frozen.revision,
                "text": _kept(frozen.source, texts),
                "units": {name: _unit(number) for name, number in own.values.items()},
            }
            for frozen, own in zip(issue.templates, sample.draws, strict=True)
        ],
    }
    if issue.house.style != PLAIN:
        logo = b64encode(issue.house.style.logo).decode()
        data["style"] = {**asdict(issue.house.style), "logo": logo}
    if issue.house.layouts:
        data["layouts"] = {name: _kept(text, texts) for name, text in issue.house.layouts}
    if issue.erratum:
        data["erratum"] = asdict(issue.erratum)
    if issue.draft:
        data["draft"] = True
    return data


def _kept(text: str, texts: dict[str, str]) -> str:
    digest = digest_of(text)
    texts[digest] = text
    return digest


def _unit(number: Number) -> str:
    return number.unit.name if number.unit else "1"


def _set_as_data(problem_set: ProblemSet) -> dict[str, Any]:
    data = asdict(problem_set)
    data["convention"]["units"] = problem_set.convention.units.name
    data["convention"] = _called(data["convention"], Convention)
    data["run"] = _called(data["run"], PrintRun)
    data["problems"] = [
        {name: said for name, said in row.items() if said is not None} for row in data["problems"]
    ]
    return _called(data, ProblemSet)


def _called(data: Mapping[str, Any], kind: type) -> dict[str, Any]:
    """The data of an object of a kind, its fields called as files do."""
    return {CALLED[kind].get(name, name): each for name, each in data.items()}


def _edition_as_data(edition: Edition) -> dict[str, Any]:
    row = {
        "code": edition.code,
        "owner": edition.owner,
        "name": edition.name,
        "section": edition.section,
        "large": edition.large,
        "version": edition.version if edition.version > 1 else 0,
        "follows": edition.follows,
        "errata": [asdict(erratum) for erratum in edition.errata],
    }
    drawn = [[str(number.value) for number in each.values.values()] for each in edition.draws]
    return {**{name: value for name, value in row.items() if value}, "drawn": drawn}


def _avoided_as_data(avoided: Sequence[Had]) -> list[dict[str, Any]]:
    """What was drawn around, by the template and the units of its quantities."""
    rows: dict[str, dict[str, Any]] = {}
    for each in avoided:
        draw = each.draw
        units = {name: _unit(number) for name, number in draw.values.items()}
        head = {"template": draw.template_id, "revision": draw.revision, "units": units}
        row = rows.setdefault(canonical(head), {**head, "had": []})
        values = [str(number.value) for number in draw.values.values()]
        row["had"].append(({"owner": each.owner} if each.owner else {}) | {"drawn": values})
    return list(rows.values())


def _copying_as_data(record: Record) -> list[dict[str, Any]]:
    rows = zip(record.issue.templates, record.copying, strict=True)
    return [{"template": template.template_id, **asdict(each)} for template, each in rows]


def _record(file: RecordFile) -> Record:
    return Record(
        file.seed,
        file.secret,
        tuple(_issue(row, file.texts) for row in file.issues),
        tuple(
            Printing(each.issue, tuple(_edition(e, file.issues[each.issue]) for e in each.editions))
            for each in file.printings
        ),
        tuple(row.student for row in file.students),
        tuple(row.letter for row in file.students) if file.students[0].letter else (),
        file.probgen,
        tuple(
            Had(had.owner, Draw(each.template, each.revision, _numbers(each.units, had.drawn)))
            for each in file.avoided
            for had in each.had
        ),
        tuple(Copying(each.papers, each.share, each.exposed) for each in file.copying),
    )


def _issue(row: IssueRow, texts: Mapping[str, str]) -> Issue:
    layouts = tuple((name, texts[digest]) for name, digest in row.layouts.items())
    return Issue(
        row.set,
        tuple(FrozenTemplate(t.template, t.revision, texts[t.text]) for t in row.templates),
        House(row.style or PLAIN, layouts, f"{RECORD}: layouts" if layouts else ""),
        row.erratum,
        row.probgen,
        row.draft,
    )


def _edition(row: EditionRow, issue: IssueRow) -> Edition:
    draws = tuple(
        Draw(each.template, each.revision, _numbers(each.units, drawn))
        for each, drawn in zip(issue.templates, row.drawn, strict=True)
    )
    return Edition(
        row.code, row.owner, draws, row.name, row.section, row.large, row.version, row.errata,
        row.follows,
    )  # fmt: skip


def _numbers(units: Mapping[str, Any], drawn: Iterable[Decimal]) -> dict[str, Number]:
    return {
        name: Number(value, unit) for (name, unit), value in zip(units.items(), drawn, strict=True)
    }
