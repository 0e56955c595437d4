"""`probgen bank check`: whether a bank's templates can be trusted with a class."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from probgen.department.doubt import Doubt
    from probgen.department.trust import Trust


@click.command()
@click.argument("bank", default="")
@click.option("--draws", type=click.IntRange(1, 1_000_000), default=2000, show_default=True)
@click.option(
    "--workers", type=click.IntRange(min=1), help="Processes at a time.  [default: one a core]"
)
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
def check(bank: str, draws: int, workers: int | None, as_json: bool) -> None:
    """Prove every template of a bank, and look at what a class of 300 would make of it.

    BANK is a bank's folder, a release by its name or file, or a folder of templates; if left out,
    the templates that come with probgen.  Told are draws without a proven solution (exit code 1),
    and what somebody should look at, with draws that show it and the mend: students with answers
    within each other's tolerance, slips that earn full marks or cannot be told apart, answers of
    another regime in some draws, numbers that run out or read badly, a level beside its steps.

    What did not change since it was checked is not checked again.
    """
    from probgen.build.workers import Crew
    from probgen.cli.progress import progress
    from probgen.cli.terminal import counted, say, say_json
    from probgen.department.looked_at import looked_at
    from probgen.input.fault import Faults, InputError
    from probgen.problem.lookup import choose_bank

    faults = Faults("")
    chosen = choose_bank(bank, Path(), "BANK", "")
    with progress(as_json) as report:
        found = list(looked_at(chosen, draws, Crew(workers), report, faults))
    for own in found:
        faults.take(InputError(each for each in own.faults if each not in faults.found))
    if as_json:
        say_json([_data(own) for own in found])
    else:
        for own in found:
            _show(own)
        doubts = sum(len(own.doubts) for own in found)
        say(f"{counted(len(found), 'template')} checked, {counted(doubts, 'doubt')}")
    faults.settle()


def _data(own: Trust) -> dict[str, object]:
    from dataclasses import asdict

    checked = own.checked
    return {
        "template": own.id,
        "units": own.units or "SI",
        "proved": checked.proved if checked else None,
        "dropped": [str(each) for each in checked.dropped] if checked else [],
        "doubts": [{**asdict(each), "kind": str(each.kind)} for each in own.doubts],
    }


def _show(own: Trust) -> None:
    from probgen.cli.terminal import say

    name = f"{own.id} ({own.units})" if own.units else own.id
    if own.checked is None:
        say(f"{name}  FAILED")
        return
    say(f"{name}  {own.checked.proved} draws proved")
    for doubt in own.doubts:
        for line in doubt_told(doubt):
            say(f"    {line}")


def doubt_told(doubt: Doubt) -> Iterator[str]:
    """A doubt, the draws that show it, and the mend."""
    from probgen.department.doubt import DoubtKind
    from probgen.department.trust import CLASS, ENOUGH
    from probgen.problem.dropped import percent

    share = percent(doubt.share)
    match doubt.kind:
        case DoubtKind.ROOM:
            yield f"{doubt.count} sets of numbers; {ENOUGH} last for years of large classes"
            mend = "widen a range, or make a step smaller"
        case DoubtKind.COPYING:
            yield f"{share} of the pairs of {CLASS} could copy: {doubt.draw}"
            mend = "widen the ranges that its answers depend on most"
        case DoubtKind.PASSING:
            yield f"{share} of draws let a slip earn full marks: {doubt.told}"
            mend = "move a range to where the slip changes the answer"
        case DoubtKind.CONFUSED:
            yield f"{share} of draws cannot tell two slips apart: {doubt.told}"
            mend = "move a range to where their answers part"
        case DoubtKind.REGIME:
            yield f"{doubt.about} is of another regime in {share} of draws: {doubt.told}"
            mend = "narrow a range, or write varies = true at its [[find]] if that is meant"
        case DoubtKind.READING:
            yield f"{doubt.about} reads badly in {share} of draws, such as {doubt.told}"
            mend = "take rounder steps, or another unit"
        case DoubtKind.LEVEL:
            yield f"its solution has {doubt.count} steps; {doubt.told}"
            mend = "say another level"
    if doubt.draw and doubt.kind is not DoubtKind.COPYING:
        yield f"    with {doubt.draw}"
    yield f"    mend  {mend}"
