"""Documents printed in one TeX run; one that fails is found, and the others are still printed."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from probgen.press.engine import run_tex
from probgen.press.preformat import format_for
from probgen.press.split import join, page_count, split_run

# A document takes some hundredths of a second; what takes this long will never be done.
_SECONDS_A_RUN: Final = 20.0
_SECONDS_A_DOCUMENT: Final = 1.0
_NO_PAGES: Final = "the document has no pages"


@dataclass(frozen=True, slots=True)
class Document:
    """What is to be printed.

    name: tells documents apart, such as a file name; title: shown by PDF readers.
    body: LaTeX, without preamble.
    """

    name: str
    title: str
    body: str


@dataclass(frozen=True, slots=True)
class Printed:
    """A document's PDF."""

    name: str
    pdf: bytes
    pages: int


@dataclass(frozen=True, slots=True)
class Failure:
    """A document TeX could not set, with TeX's own words about it."""

    name: str
    complaint: str


@dataclass(frozen=True, slots=True)
class Batch:
    """What became of some documents, in their order.

    together: one PDF of all that were printed, empty when none was.
    """

    printed: tuple[Printed, ...]
    failures: tuple[Failure, ...]
    together: bytes


def print_batch(documents: Sequence[Document], preamble: str, language: str = "en") -> Batch:
    """Prints documents in one run; when it fails, in two runs of half each, and so on.

    Raises OutsideError when TeX is missing or lacks a package, InputError when TeX cannot read
    the preamble.
    """
    if not documents:
        return Batch((), (), b"")
    done = _run(documents, format_for(preamble), language)
    if isinstance(done, Batch):
        return done
    if len(documents) == 1:
        return Batch((), (Failure(documents[0].name, done),), b"")
    middle = len(documents) // 2
    return _one_after_other(
        print_batch(documents[:middle], preamble, language),
        print_batch(documents[middle:], preamble, language),
    )


def _run(documents: Sequence[Document], dumped: Path, language: str) -> Batch | str:
    """All documents printed in one run, or TeX's complaint when not all of them can be."""
    with tempfile.TemporaryDirectory(prefix="probgen-") as name:
        folder = Path(name)
        calls = []
        for place, document in enumerate(documents):
            (folder / f"{place}.tex").write_text(document.body, encoding="utf-8")
            calls.append(rf"\printdocument{{{place}}}")
        main = "\n".join([r"\begin{document}", *calls, r"\end{document}", ""])
        (folder / "run.tex").write_text(main, encoding="utf-8")
        limit = _SECONDS_A_RUN + _SECONDS_A_DOCUMENT * len(documents)
        run = run_tex([f"-fmt={dumped}", "run.tex"], folder, limit)
        result = folder / "run.pdf"
        if not run.good or not result.is_file():
            return run.complaint or _NO_PAGES
        return _split(documents, result.read_bytes(), language)


def _split(documents: Sequence[Document], pdf: bytes, language: str) -> Batch | str:
    try:
        alone, together = split_run(pdf, [document.title for document in documents], language)
    except ValueError:
        return _NO_PAGES
    printed = (
        Printed(document.name, part, page_count(part))
        for document, part in zip(documents, alone, strict=True)
    )
    return Batch(tuple(printed), (), together)


def _one_after_other(first: Batch, second: Batch) -> Batch:
    parts = [part for part in (first.together, second.together) if part]
    return Batch(
        first.printed + second.printed,
        first.failures + second.failures,
        join(parts) if len(parts) > 1 else b"".join(parts),
    )
