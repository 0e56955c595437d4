"""Two states of a bank held against each other, several templates at a time.

What both have text for text is not even read.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Final, TypeVar

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.build.progress import Report
from probgen.build.workers import Crew
from probgen.department.change import GRAVEST_FIRST, Change, Changes
from probgen.department.changes import gathered, paired
from probgen.department.comparison import compare
from probgen.department.on_paper import OnPaper, first_on_paper
from probgen.department.state import State, Text
from probgen.draws.draw import Draw
from probgen.input.fault import Fault, Faults, InputError

T = TypeVar("T")

_AT_ONCE: Final = 8
"""Templates that one process takes; a few are sooner compared than a second process is begun."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A template that is other, to be looked at: as it was and as it is, None where it is not.

    change: None of one that is new or gone; before, after: its first draw, with equal numbers as
    far as they fit both, None where none has a solution.
    """

    id: str
    title: str
    cautions: tuple[str, ...]
    change: Change | None
    before: OnPaper | None
    after: OnPaper | None


@dataclass(frozen=True, slots=True)
class Comparison:
    """before, after: the names of the states; shown: what is other, where it was asked for."""

    before: str
    after: str
    changes: Changes
    shown: tuple[Shown, ...] = ()

    @property
    def chapters(self) -> Iterator[tuple[str, tuple[Shown, ...]]]:
        """Those changed, by their gravest kind, "" for only renamed."""
        changed = sorted((each for each in self.shown if each.change), key=lambda each: each.id)
        for place, kind in enumerate((*GRAVEST_FIRST, "")):
            own = tuple(each for each in changed if each.change and each.change.gravity == place)
            if own:
                yield kind, own

    @property
    def new(self) -> tuple[Shown, ...]:
        return tuple(each for each in self.shown if each.id in self.changes.new)

    @property
    def gone(self) -> tuple[Shown, ...]:
        return tuple(each for each in self.shown if each.id in self.changes.gone)

    @property
    def cautions(self) -> frozenset[str]:
        """What the problems shown touch that a teacher may want to know."""
        return frozenset(kind for each in self.shown for kind in each.cautions)


def compared(
    before: State, after: State, crew: Crew, report: Report, *, show: bool = False
) -> Comparison:
    """What is other; show: with the figures and texts of all that is.

    Raises InputError with the faults of every template that had to be read.
    """
    same = {id for id in before.texts.keys() & after.texts.keys()
            if before.texts[id].content == after.texts[id].content}  # fmt: skip
    faults = Faults("")
    olds, news = (_read(state, same, crew, report, faults) for state in (before, after))
    faults.settle()
    both = paired(olds, news)
    rows = [
        *both.pairs,
        *((None, each) for each in both.new),
        *((each, None) for each in both.gone),
    ]
    found = _side_by_side(_compared, [(*row, show) for row in rows], crew, report, "templates")
    changed = [each.change for each in found if each.change]
    told = [each for each in found if show and not (each.change and not each.change.is_any)]
    return Comparison(before.name, after.name, gathered(both, changed, len(same)), tuple(told))


def _read(
    state: State, without: Container[str], crew: Crew, report: Report, faults: Faults
) -> dict[str, Template]:
    """A state's templates by their ids, without some; what is wrong with others is noted."""
    ids = [id for id in state.texts if id not in without]
    rows = [(state.texts[id],) for id in ids]
    found: dict[str, Template] = {}
    for id, read in zip(ids, _side_by_side(_template, rows, crew, report, "files"), strict=True):
        try:
            if not isinstance(read, Template):
                raise InputError(read)
            state.bank.require_named(read, id)
            found[id] = read
        except InputError as error:
            faults.take(error)
    return found


def _template(text: Text) -> Template | tuple[Fault, ...]:
    try:
        return read_template(text.content, text.path)
    except InputError as error:
        return error.faults


def _compared(before: Template | None, after: Template | None, show: bool) -> Shown:
    """Of one of them at least; show: with its papers, where something of it is other."""
    change = compare(before, after) if before and after else None
    show = show and not (change and not change.is_any)
    told = after or before
    assert told is not None
    old = _on_paper(before) if before and show else None
    new = _on_paper(after, old.draw if old else None) if after and show else None
    return Shown(told.id, told.title, told.cautions, change, old, new)


def _on_paper(template: Template, like: Draw | None = None) -> OnPaper | None:
    try:
        return first_on_paper(template, like)
    except InputError:  # one that statics alone cannot solve
        return None


def _side_by_side(
    do: Callable[..., T], rows: Sequence[tuple[Any, ...]], crew: Crew, report: Report, stage: str
) -> list[T]:
    """What comes of each row, in their order."""
    parts = [(do, start, rows[start : start + _AT_ONCE]) for start in range(0, len(rows), _AT_ONCE)]
    found: dict[int, list[T]] = {}
    for start, made in crew.each(_part, parts, len(parts)) if parts else ():
        found[start] = made
        report(stage, sum(map(len, found.values())), len(rows))
    return [each for start in sorted(found) for each in found[start]]


def _part(do: Callable[..., T], start: int, rows: Sequence[tuple[Any, ...]]) -> tuple[int, list[T]]:
    return start, [do(*row) for row in rows]
