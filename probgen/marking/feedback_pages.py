"""Feedback printed: a PDF for each student, and all of them in one."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.build.joined_pdfs import PAPERS_A_VOLUME
from probgen.build.workers import Crew, ended_like_interrupts
from probgen.input.file import write_beside
from probgen.papers.typesetter import Typesetter
from probgen.press.batch import Document
from probgen.press.split import Leaves, join, pages_in
from probgen.sheets.document import FEEDBACK, Feedback

_AT_A_TIME: Final = 40
"""Pages in one run of TeX."""


@dataclass(frozen=True, slots=True)
class Printed:
    """pdfs: by their names, each with its pages; together: all in one; lost: those that failed."""

    pdfs: tuple[tuple[str, bytes, int], ...]
    together: bytes
    lost: tuple[tuple[str, str], ...]


def print_feedback(
    pages: Mapping[str, Feedback],
    out: Path,
    typesetter: Typesetter,
    title: str,
    duplex: bool,
    large: Collection[str] = (),
    crew: Crew | None = None,
    before: Sequence[str] = (),
) -> Iterator[str]:
    """Writes `feedback/` and the joined PDFs into a folder; yields what could not be printed.

    pages: by the names of their files; large: those in large print; before: names of others of the
    class whose pages may lie there from an earlier marking, and are in all-feedback.pdf too.
    Raises OutsideError when TeX is not there.
    """
    typesetter.require_tex()
    documents = [typesetter.feedback(name, page, name in large) for name, page in pages.items()]
    starts = range(0, len(documents), _AT_A_TIME)
    tasks = [(place, documents[at : at + _AT_A_TIME], typesetter)
             for place, at in enumerate(starts)]  # fmt: skip
    found: dict[int, Printed] = {}
    own = crew or Crew()
    with ended_like_interrupts(), closing(own.each(printed, tasks, len(tasks))) as results:
        for place, each in results:
            found[place] = each
            for name, pdf, _ in each.pdfs:
                write_beside(out / FEEDBACK / f"{name}.pdf", pdf)
            yield from (f"no feedback for {name}: {why}" for name, why in each.lost)
    leaves = [leaf for place in sorted(found) for leaf in _leaves(found[place])]
    earlier = [path for name in before if (path := out / FEEDBACK / f"{name}.pdf").is_file()]
    whole = [path for path in earlier if _is_whole(path)]
    yield from (f"{path} is no whole PDF, and left out" for path in earlier if path not in whole)
    (out / f"new-{FEEDBACK}.pdf").unlink(missing_ok=True)
    if whole:
        join(leaves, out / f"new-{FEEDBACK}.pdf", title, duplex=duplex)
    leaves += [Leaves(path) for path in whole]
    volumes = range(0, len(leaves), PAPERS_A_VOLUME)
    for number, start in enumerate(volumes, start=1):
        name = f"all-{FEEDBACK}{f'-{number:02}' if len(volumes) > 1 else ''}.pdf"
        join(leaves[start : start + PAPERS_A_VOLUME], out / name, title, duplex=duplex)


def _is_whole(pdf: Path) -> bool:
    """Whether a PDF has not been cut off or spoilt."""
    try:
        return pages_in(pdf) > 0
    except ValueError:
        return False


def printed(
    place: int, documents: Sequence[Document], typesetter: Typesetter
) -> tuple[int, Printed]:
    """A chunk printed, with its place in the class: chunks get done in any order."""
    batch = typesetter.print(documents)
    pdfs = tuple((each.name, each.pdf, pages_in(each.pdf)) for each in batch.printed)
    lost = tuple((failure.name, f"TeX: {failure.complaint}") for failure in batch.failures)
    return place, Printed(pdfs, batch.together.get(FEEDBACK, b""), lost)


def _leaves(own: Printed) -> Iterator[Leaves]:
    first = 0
    for _, _, pages in own.pdfs:
        yield Leaves(own.together, first, pages)
        first += pages
