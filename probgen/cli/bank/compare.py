"""`probgen bank compare`: what is other in one state of a bank than in another."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

import click

if TYPE_CHECKING:
    from probgen.department.change import Change, Changes, Difference

_LONGEST: Final = 60  # characters of a value that is shown
_MOST: Final = 6  # fields of a template that are shown


@click.command()
@click.argument("before")
@click.argument("after", required=False)
@click.option("--json", "as_json", is_flag=True, help="As JSON, with every field and draw.")
def compare(before: str, after: str | None, as_json: bool) -> None:
    """Tell what is other in one state of a bank than in another.

    BEFORE and AFTER are each a bank's folder, a release by its name or file, a folder of templates,
    or FOLDER@REVISION for a revision of git: statics@HEAD~3.  With one bank's folder alone, it is
    held against the last release made of it.

    Physics are told apart by what the templates say of forces, lengths and angles, not by their
    words; of each change 20 equal draws are worked in both.
    """
    from dataclasses import asdict

    from probgen.cli.terminal import say, say_json
    from probgen.department.changes import changes
    from probgen.department.state import last_release, read_state

    if after is None:
        before, after = last_release(before), before
    one, other = read_state(before), read_state(after)
    found = changes(one.templates, other.templates)
    if as_json:
        say_json({"before": one.name, "after": other.name, **asdict(found)})
        return
    say(f"{one.name} -> {other.name}")
    _show(found)


def _show(found: Changes) -> None:
    from probgen.cli.terminal import say

    for title, ids in (("new", found.new), ("gone", found.gone)):
        for id in ids:
            say(f"{title}: {id}")
    for change in sorted(found.changed, key=_gravity):
        _show_change(change)
    say(f"{found.same} as they were")


def _gravity(change: Change) -> tuple[int, str]:
    from probgen.department.change import GRAVEST_FIRST

    places = [GRAVEST_FIRST.index(kind) for kind in change.kinds]
    return min(places, default=len(GRAVEST_FIRST)), change.id


def _show_change(change: Change) -> None:
    from probgen.cli.terminal import say

    kinds = [str(kind) for kind in change.kinds]
    said = ", ".join(["renamed"] * change.renamed + kinds)
    was = f", formerly {change.formerly}" if change.renamed else ""
    old, new = change.revisions
    counted = f"r{new}" if old == new else f"r{old} -> r{new}"
    say(f"{said}: {change.id} ({counted}{was})")
    for each in change.differences[:_MOST]:
        say(f"    {_told(each)}")
    if len(change.differences) > _MOST:
        say(f"    and {len(change.differences) - _MOST} more")
    _show_trials(change)


def _show_trials(change: Change) -> None:
    from probgen.cli.terminal import say

    if not change.trials:
        return
    agree = sum(trial.agree for trial in change.trials)
    say(f"    the same answers in {agree} of {len(change.trials)} equal draws; the first:")
    trial = change.trials[0]
    say(f"      {trial.values}")
    after = dict(trial.after)
    for id, printed in trial.before:
        say(f"      {id}: {printed} -> {after.pop(id, 'not asked, or no solution')}")
    for id, printed in after.items():
        say(f"      {id}: not asked, or no solution -> {printed}")


def _told(difference: Difference) -> str:
    """A field with what is other in it; of long texts, the words around that."""
    from probgen.input.fault import counted_from_one

    old, new = (" ".join(text.split()) for text in (difference.before, difference.after))
    if max(len(old), len(new)) > _LONGEST and old and new:
        old, new = _around(old, new)
    field = counted_from_one(difference.field)
    return f"{field}: {_cut(old) or 'nothing'} -> {_cut(new) or 'nothing'}"


def _around(old: str, new: str) -> tuple[str, str]:
    words, others = old.split(), new.split()
    start = _alike(words, others)
    end = _alike(words[start:][::-1], others[start:][::-1])
    before, after = "... " * (start > 0), " ..." * (end > 0)
    own, other = words[start : len(words) - end], others[start : len(others) - end]
    return f"{before}{' '.join(own)}{after}", f"{before}{' '.join(other)}{after}"


def _alike(words: Sequence[str], others: Sequence[str]) -> int:
    """How many words two texts begin with alike."""
    pairs = enumerate(zip(words, others, strict=False))
    return next((i for i, (one, other) in pairs if one != other), min(len(words), len(others)))


def _cut(text: str) -> str:
    return text if len(text) <= 2 * _LONGEST else f"{text[: 2 * _LONGEST - 3]}..."
