"""One paper printed again, or its key, from the record that knows it."""

from __future__ import annotations

from dataclasses import replace

from probgen.course.record import require_no_layouts
from probgen.course.trail import Trail
from probgen.input.outside import OutsideError
from probgen.papers.chunk import Chunk, print_chunk
from probgen.papers.traced import problems_of, version_at
from probgen.papers.typesetter import Kind, typesetter_of


def print_one(trail: Trail, kind: Kind, trusted: bool = False) -> bytes:
    """The sheet or the key of an edition as it was handed out, as PDF.

    trusted: use the layouts that its record carries.  Raises InputError where it carries some and
    is not trusted, OutsideError where TeX is not there or cannot set it.
    """
    issue = trail.issue
    if not trusted:
        require_no_layouts(replace(trail.record, issues=(issue,)), str(trail.path))
    version = version_at(trail)
    typesetter = typesetter_of(issue.set, issue.house)
    chunk = Chunk((version,), frozenset((version.name,)))
    printed = print_chunk(chunk, issue.set, problems_of(trail), typesetter)
    for _, pdf in printed.pdfs[kind]:
        return pdf
    told = next((str(loss) for loss in printed.losses if loss.kind is kind), version.name)
    raise OutsideError(f"it cannot be printed: {told}", "look at the layouts and the texts")
