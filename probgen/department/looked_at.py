"""A bank's templates looked at, side by side; what did not change is not looked at again."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import asdict
from hashlib import blake2b
from pathlib import Path
from typing import Any, Final

from probgen import __version__
from probgen.bank.bank import Bank, read_file
from probgen.bank.reading import in_each_system
from probgen.bank.template import Template
from probgen.build.progress import Report
from probgen.build.workers import Crew
from probgen.department.doubt import Doubt, DoubtKind
from probgen.department.trust import Trust, trust, units_told
from probgen.input.cache_folder import cache_folder, cached_bytes
from probgen.input.fault import Faults, InputError
from probgen.input.file import write_beside
from probgen.problem.dropped import Dropped
from probgen.problem.template_check import Checked

_FORM: Final = f"{__version__} 2"


def looked_at(
    bank: Bank, draws: int, crew: Crew, report: Report, faults: Faults
) -> Iterator[Trust]:
    """Every template of a bank, in each system of units it is written for, in the bank's order.

    faults: where those of files that cannot be read are noted.
    """
    templates = [each for path in bank.files.values() for each in _read(path, faults)]
    found = {place: kept for place, each in enumerate(templates) if (kept := _kept(each, draws))}
    rest = [place for place in range(len(templates)) if place not in found]
    report("templates", len(found), len(templates))
    tasks = ((place, templates[place], draws) for place in rest)
    for place, own in crew.each(_look, tasks, len(rest)) if rest else ():
        found[place] = own
        _keep(templates[place], draws, own)
        report("templates", len(found), len(templates))
    yield from (found[place] for place in sorted(found))


def _look(place: int, template: Template, draws: int) -> tuple[int, Trust]:
    return place, trust(template, draws)


def _read(path: Path, faults: Faults) -> Iterator[Template]:
    try:
        yield from in_each_system(read_file(path))
    except InputError as error:
        faults.take(error)


def _place(template: Template, draws: int) -> Path:
    said = "\0".join((_FORM, template.units.name, str(draws), template.source))
    digest = blake2b(said.encode("utf-8", "surrogatepass"), digest_size=16).hexdigest()
    return cache_folder("checks") / f"{digest}.json"


def _keep(template: Template, draws: int, own: Trust) -> None:
    """What has faults is looked at again each time, so that its values and its path are told."""
    if own.checked is None:
        return
    checked = own.checked
    data = {
        "proved": checked.proved,
        "refused": checked.refused,
        "residual": checked.residual,
        "dropped": [asdict(each) for each in checked.dropped],
        "doubts": [asdict(each) for each in own.doubts],
    }
    write_beside(_place(template, draws), json.dumps(data).encode())


def _kept(template: Template, draws: int) -> Trust | None:
    content = cached_bytes(_place(template, draws))
    if content is None:
        return None
    try:
        data: Mapping[str, Any] = json.loads(content)
        dropped = tuple(Dropped(**each) for each in data["dropped"])
        doubts = tuple(
            Doubt(**{**each, "kind": DoubtKind(each["kind"])}) for each in data["doubts"]
        )
        numbers = (int(data["proved"]), int(data["refused"]), float(data["residual"]))
    except (ValueError, TypeError, KeyError):
        return None
    return Trust(
        template.id,
        units_told(template),
        Checked(template, *numbers, dropped),
        (),
        doubts,
    )
