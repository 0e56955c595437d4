"""An edition: one paper as it was handed out, for ever under its code."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Any, Protocol

from probgen.course.issue import Erratum, Issue, canonical, issue_digest
from probgen.course.version_code import code_of
from probgen.draws.draw import Draw


@dataclass(frozen=True, slots=True)
class Edition:
    """owner: a student's id, or the letter of an exam's version; draws: one for each problem.

    name, section: of the student, as printed; large: in large print, which is the same paper.
    version: 1, or more where a student was given other numbers on purpose.
    errata: the lines it prints, in order; follows: the code of the edition whose place it took.
    """

    code: str
    owner: str
    draws: tuple[Draw, ...]
    name: str = ""
    section: str = ""
    large: bool = False
    version: int = 1
    errata: tuple[Erratum, ...] = ()
    follows: str = ""


@dataclass(frozen=True, slots=True)
class Printing:
    """Editions made by one build; issue: its place among those of the record."""

    issue: int
    editions: tuple[Edition, ...]


class Elsewhere(Protocol):
    """The papers of a course's other assignments."""

    def content(self, code: str) -> str:
        """What the paper with a code is made from, "" where there is none."""


class Nowhere:
    """No other assignments."""

    def content(self, code: str) -> str:
        return ""


@dataclass(slots=True)
class Coder:
    """Names editions of one issue by their content, each by a code of its own.

    taken: the codes of other papers of the record, to which the new ones are added.
    """

    secret: str
    issue: Issue
    taken: set[str]
    elsewhere: Elsewhere = field(default_factory=Nowhere)
    _common: str = field(default="", init=False)

    def __post_init__(self) -> None:
        self._common = issue_digest(self.issue)

    def coded(self, draft: Edition) -> Edition:
        """The edition under its code."""
        content = _content(self._common, draft)
        code = code_of(self.secret, content, self.taken, self.issue.draft)
        while self.elsewhere.content(code) not in ("", content):
            self.taken.add(code)
            code = code_of(self.secret, content, self.taken, self.issue.draft)
        self.taken.add(code)
        return replace(draft, code=code)

    def fits(self, edition: Edition, attempts: int = 8) -> bool:
        """Whether an edition's code is one that its content gives."""
        content = _content(self._common, edition)
        tried: set[str] = set()
        while len(tried) < attempts:
            tried.add(code_of(self.secret, content, tried, self.issue.draft))
        return edition.code in tried


def content_of(issue: Issue, edition: Edition) -> str:
    """All that a paper is made from, but for its look, as one text."""
    return _content(issue_digest(issue), edition)


def _content(common: str, edition: Edition) -> str:
    return canonical([common, *_own_parts(edition)])


def _own_parts(edition: Edition) -> Iterator[Any]:
    """What is printed on this paper alone, as plain data; its letters may be of any size."""
    yield [edition.owner, edition.name, edition.section]
    yield [[erratum.day, erratum.what] for erratum in edition.errata]
    for each in edition.draws:
        values = (
            [name, str(number.value), number.unit.name if number.unit else ""]
            for name, number in each.values.items()
        )
        yield [each.template_id, each.revision, list(values)]


def current(editions: Sequence[Edition], twins: bool) -> dict[tuple[str, bool], Edition]:
    """The editions whose place none has taken, by owner and whether they are in large print.

    twins: whether large print stands beside the usual, as in an exam, or in its place; there the
    key's second part is False always.
    """
    now: dict[tuple[str, bool], Edition] = {}
    places: dict[str, tuple[str, bool]] = {}
    for edition in editions:
        place = edition.owner, edition.large and twins
        if edition.follows in places and not twins:
            now.pop(places[edition.follows], None)
        now[place] = edition
        places[edition.code] = place
    return now
