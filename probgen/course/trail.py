"""Papers found again: from a code, an id or a name to the editions it stands for.

Of each record only the papers that are looked for are made into objects: a term's folder holds
tens of thousands of papers.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from probgen.course.archive import records_in
from probgen.course.edition import Edition
from probgen.course.issue import Issue
from probgen.course.record import Record
from probgen.course.record_file import Cut, read_cut
from probgen.course.roster import Student
from probgen.course.version_code import is_like_code, read_code
from probgen.input.fault import Fault, Faults, InputError, nearest

_SAID = "what was looked for"


@dataclass(frozen=True, slots=True)
class Trail:
    """One edition found.

    path: of its record; record: with this paper and those it is tied to, and no others.
    number: 1, or more where it took the place of another; later: the code of the edition in hand
    now, where another has taken its place, else "".
    students: who have it now: one, or all with an exam's version.  renamed: its student of the
    class, where known by another id than the one on it.
    edited: whether somebody has edited the record.
    """

    path: Path
    record: Record
    edition: Edition
    number: int = 1
    later: str = ""
    students: tuple[Student, ...] = ()
    renamed: Student | None = None
    edited: bool = False

    @property
    def issue(self) -> Issue:
        """What it was printed under."""
        return self.record.issues[self.record.issue_of[self.edition.code]]

    @property
    def owner(self) -> str:
        """Whose it is: a name with the id, or a version."""
        if self.record.is_exam:
            return f"version {self.edition.owner}"
        return f"{self.edition.name} ({self.edition.owner})"


def follow(sought: str, places: Sequence[Path]) -> tuple[Trail, ...]:
    """Every edition that a code, an id, a name or an exam's letter stands for, record by record.

    places: records, or folders that are searched for them.  A part of a name does where nobody has
    the whole of it.
    Raises InputError where nothing is found: with the reason, when a code was mistyped.
    """
    faults = Faults("")
    records = _records(places, faults)
    code, slip = _as_code(sought)
    found: list[Trail] = []
    plain = _plain(sought)
    for ask in (_Asked(code), _Asked("", plain), _Asked("", plain, partly=True)):
        for path in records:
            try:
                found += _in_record(path, ask)
            except InputError as error:
                faults.take(error)
        if found:
            break
    if not found:
        _refuse(sought, slip, places, records, faults)
    return _once(found)


def _refuse(
    sought: str, slip: str, places: Sequence[Path], records: Sequence[Path], faults: Faults
) -> None:
    """Raises InputError for what is in no record, with what is most like it."""
    if slip or not faults.found:
        near = nearest(sought, [word for path in records for word in _words_in(path)])
        expected, mend = "a code with the check sign that fits it", slip
        if not slip:
            where = str(records[0])
            if len(records) > 1:
                where = f"one of the {len(records)} records in {', '.join(map(str, places))}"
            expected = f"a code, id or name in {where}"
            mend = "" if near else "name the folder or record that it may be in"
        faults.add(_SAID, sought, expected, "; ".join(filter(None, (mend, near))))
    faults.settle()


def _words_in(path: Path) -> Iterator[str]:
    """The codes, ids and names of a record; nothing of one that cannot be read."""
    words: dict[str, None] = {}

    def choose(students: Sequence[Any], editions: Sequence[Any]) -> Cut:
        words.update((row[key], None) for row in students for key in ("id", "name"))
        words.update((row[key], None) for row in editions for key in ("code", "owner", "name")
                     if row.get(key))  # fmt: skip
        return Cut((), frozenset())

    with suppress(InputError):
        read_cut(path, choose)
    yield from words


@dataclass(frozen=True, slots=True)
class _Asked:
    """code: as it is printed, "" for none; text: plain, an id, a name or (partly) words of one."""

    code: str
    text: str = ""
    partly: bool = False

    def names(self, name: str, id: str) -> bool:
        if not self.text:
            return False
        if self.partly:
            return set(self.text.split()) <= set(_plain(name).split())
        return self.text in (_plain(id), _plain(name))

    def picks(self, row: Mapping[str, Any], letters: Iterable[str]) -> bool:
        """Whether an edition of a record's file is meant; letters: of the students who are."""
        if row["code"] == self.code or row["owner"] in letters:
            return True
        return self.names(str(row.get("name", "")), str(row["owner"]))


def _plain(text: str) -> str:
    """For comparing: no case, no accents, no commas, single spaces."""
    if text.isascii():
        return " ".join(text.lower().replace(",", " ").split())
    apart = unicodedata.normalize("NFKD", text).casefold()
    bare = "".join(sign for sign in apart if not unicodedata.combining(sign))
    return " ".join(bare.replace(",", " ").split())


def _as_code(sought: str) -> tuple[str, str]:
    """What was typed as the code it is, and why it is none where it looks like one."""
    try:
        return read_code(sought), ""
    except ValueError as error:
        return "", str(error) if is_like_code(sought) else ""


def _records(places: Sequence[Path], faults: Faults) -> list[Path]:
    found = []
    for place in places:
        inside = list(records_in(place))
        if not inside:
            mend = "name a record.json, or a folder that has some in it"
            faults.add("", str(place), "a record, or a folder with records", mend)
        found += inside
    faults.settle()
    return list({path.resolve(): path for path in found}.values())


def _in_record(path: Path, ask: _Asked) -> Iterator[Trail]:
    """The editions of one record that are meant."""
    meant: set[str] = set()
    usual: set[str] = set()
    large: set[str] = set()

    def choose(students: Sequence[Any], editions: Sequence[Any]) -> Cut:
        members = [row for row in students if ask.names(row["name"], row["id"])]
        letters = {row["letter"] for row in members if row.get("letter")}
        usual.update(row["letter"] for row in members if row.get("letter") and not row.get("large"))
        large.update(letters - usual)
        meant.update(row["code"] for row in editions if ask.picks(row, letters))
        tied = _tied(editions, meant)
        owners = {row["owner"] for row in editions if row["code"] in tied}
        now = [row for row in students if owners & {row["id"], row.get("letter")}]
        return Cut(tuple(now), frozenset(tied))

    cut = read_cut(path, choose)
    if cut is None:
        return
    record, edited = cut
    papers = {}
    for edition in record.editions:  # in letters of another size it is the same paper again
        wanted = not record.is_exam or edition.large <= (edition.owner in large)
        if edition.code in meant and wanted:
            papers[edition.code] = edition
    for edition in papers.values():
        yield _trail(path, record, edition, edited)


def _tied(editions: Sequence[Mapping[str, Any]], meant: set[str]) -> set[str]:
    """The codes meant, of all they took the place of, and of what took theirs."""
    tied = set(meant)
    for row in reversed(editions):
        if row["code"] in tied and row.get("follows"):
            tied.add(row["follows"])
    for row in editions:
        if row.get("follows") in tied:
            tied.add(row["code"])
    return tied


def _trail(path: Path, record: Record, edition: Edition, edited: bool) -> Trail:
    others = [each for each in record.editions if each.follows != each.code]
    before = {each.code: each.follows for each in others}
    number, code = 0, edition.code
    while code:
        number, code = number + 1, before.pop(code, "")
    now = edition
    for each in others:  # in their order
        if each.follows == now.code and each.code != now.code:
            now = each
    later = now.code if now.code != edition.code else ""
    if record.is_exam:
        letters = record.letter_of
        having = tuple(s for s in record.students if letters[s.id] == edition.owner)
    else:
        having = tuple(s for s in record.students if s.id == edition.owner)
    heirs = (s for s in record.students if not having and s.id == now.owner != edition.owner)
    return Trail(path, record, edition, number, later, having, next(heirs, None), edited)


def _once(found: Iterable[Trail]) -> tuple[Trail, ...]:
    """Each paper from one record, of several copies of it the one that knows most."""
    best: dict[tuple[str, str], Trail] = {}
    for each in found:
        key = each.edition.code, each.edition.owner
        if key not in best or len(each.record.editions) > len(best[key].record.editions):
            best[key] = each
    return tuple(best.values())


def require_one(found: Sequence[Trail], sought: str) -> Trail:
    """The paper in hand, where what was found is one person's or one version's in one record.

    Raises InputError where it may be one of several.
    """
    now = [each for each in found if not each.later] or list(found)
    if len(now) == 1:
        return now[0]
    told = ", ".join(f"{each.edition.code} of {each.owner} in {each.path}" for each in now[:5])
    expected = f"one paper; this may be {told}{' and more' if len(now) > 5 else ''}"
    raise InputError([Fault("", _SAID, sought, expected, "give the code that is printed on it")])
