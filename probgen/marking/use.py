"""What a marked class says of the templates it had, without any name: for their bank."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from probgen.bank.uses import UNDATED, Use
from probgen.build.use import use_of
from probgen.course.record import Record
from probgen.marking.class_report import ClassReport


def uses_marked(record: Record, report: ClassReport) -> Iterator[Use]:
    """The use of each template of the set that a marked paper had, without a day."""
    for place in range(len(record.set.problems)):
        most = sum(item.most for item in report.scores.items if item.problem == place + 1)
        points = report.scores.problem(place + 1)
        known = points[np.isfinite(points)]
        if most and len(known):
            facility = float(known.mean()) / most
            slips = tuple(_slips(report, place + 1))
            use = use_of(record, place, UNDATED)
            yield replace(use, marked=len(known), facility=facility, slips=slips)


def _slips(report: ClassReport, place: int) -> Iterator[tuple[str, int]]:
    """Slips by their ids, two together as one, the commonest first."""
    papers: Counter[str] = Counter()
    for each in report.slips:
        if each.told.place == place:
            papers[" + ".join(slip.slip for slip in each.slips)] += each.told.papers
    yield from sorted(papers.items(), key=lambda row: (-row[1], row[0]))
