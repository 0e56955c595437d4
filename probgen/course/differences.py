"""What would make a paper another one than was handed out: two issues compared."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import zip_longest
from typing import Any

from probgen.bank.origin import same_on_paper
from probgen.course.assignment import Assigned
from probgen.course.issue import FrozenTemplate, Issue, printed_parts
from probgen.input.fault import shown
from probgen.working.shares import Shares


@dataclass(frozen=True, slots=True)
class Difference:
    """One thing that has changed: what it is called, how it was, how it is.

    problem: its place among the problems, from 0, where it is one; None otherwise.
    """

    field: str
    was: str
    now: str
    problem: int | None = None


def differences(was: Issue, now: Issue) -> tuple[Difference, ...]:
    """Everything by which papers of one issue would differ from those of another."""
    return (*_of_set(was, now), *_of_problems(was, now), *_of_house(was, now))


def _of_set(was: Issue, now: Issue) -> Iterator[Difference]:
    before, after = printed_parts(was), printed_parts(now)
    for name in before:
        if not name.startswith("problem ") and before[name] != after[name]:
            yield Difference(_called(name), _told(before[name]), _told(after[name]))


def _called(name: str) -> str:
    return name.replace("method ", "method.")


def _told(value: Any) -> str:
    if isinstance(value, tuple | list) and all(isinstance(each, dict) for each in value):
        return ", ".join(": ".join(map(str, each.values())) for each in value) or "nothing"
    return shown(value) or "nothing"


def _of_problems(was: Issue, now: Issue) -> Iterator[Difference]:
    before = list(zip(was.set.problems, was.templates, strict=True))
    after = list(zip(now.set.problems, now.templates, strict=True))
    for place, (old, new) in enumerate(zip_longest(before, after)):
        for field, one, other in _of_problem(old, new):
            yield Difference(f"problem {place + 1}{field}", one, other, place)


_Row = tuple[Assigned, FrozenTemplate]


def _of_problem(old: _Row | None, new: _Row | None) -> Iterator[tuple[str, str, str]]:
    if old is None or new is None:
        yield "", old[1].template_id if old else "none", new[1].template_id if new else "none"
        return
    (assigned, frozen), (other, later) = old, new
    if frozen.template_id != later.template_id:
        yield "", frozen.template_id, later.template_id
        return
    named = f" ({frozen.template_id})"
    if frozen.revision != later.revision:
        yield named, f"revision {frozen.revision}", f"revision {later.revision}"
    elif not same_on_paper(frozen.source, later.source):
        yield named, "", _first_change(frozen.source, later.source)
    if assigned.points != other.points:
        yield f"{named}.points", str(assigned.points), str(other.points)
    if assigned.pivot != other.pivot:
        yield f"{named}.pivot", _told(assigned.pivot), _told(other.pivot)
    if assigned.sections != other.sections:
        yield f"{named}.sections", _all(assigned.sections), _all(other.sections)
    if assigned.shares != other.shares:
        yield f"{named}.points", _shared(assigned.shares), _shared(other.shares)


def _shared(shares: Shares) -> str:
    """How points are shared, in a file's words."""
    told = [f"parts {', '.join(map(str, shares.parts))}"] if shares.parts else []
    told += [f"{each.group} {each.points}" for each in shares.marks]
    return ", ".join(told) or "shared as usual"


def _all(sections: tuple[str, ...]) -> str:
    return ", ".join(sections) or "everybody"


def _first_change(old: str, new: str) -> str:
    """The first line of a template that is not as it was."""
    lines = zip_longest(old.split("\n"), new.split("\n"), fillvalue="")
    for number, (before, after) in enumerate(lines, start=1):
        if before != after:
            return f"its line {number} is now {shown(after.strip()) or 'gone'}"
    return "other line ends"


def _of_house(was: Issue, now: Issue) -> Iterator[Difference]:
    if was.house.style != now.house.style:
        yield Difference("style", "another house style", "this one")
    before, after = dict(was.house.layouts), dict(now.house.layouts)
    changed = [name for name in {**before, **after} if before.get(name) != after.get(name)]
    if changed:
        yield Difference("layouts", "other layouts", ", ".join(sorted(changed)))
