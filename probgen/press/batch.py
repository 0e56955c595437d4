"""Documents printed in one TeX run; one that fails is found, and the others are still printed."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Final

from probgen.press.engine import run_tex
from probgen.press.manyscripts import require_scripts, run_scripts
from probgen.press.preformat import format_for
from probgen.press.split import join, page_count, split_run
from probgen.sheets.script import scripts_used

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


def print_batch(
    documents: Sequence[Document],
    preamble: str,
    language: str = "en",
    duplex: bool = False,
    files: Mapping[str, Path] = MappingProxyType({}),
) -> Batch:
    """Prints documents in one run; when it fails, in two runs of half each, and so on.

    Documents in scripts that pdfLaTeX has no fonts for are printed in a run of their own.
    duplex: in `together` each document begins on a right-hand page.  files: what the preamble asks
    for by name, such as a logo.  Raises OutsideError when TeX is missing or lacks a package or a
    font, InputError when TeX cannot read the preamble.
    """
    kinds = [bool(scripts_used(document.body)) for document in documents]
    outcomes: list[Printed | Failure] = [Failure("", "")] * len(documents)
    runs: list[bytes] = []
    for scripted in sorted(set(kinds)):
        places = [place for place, kind in enumerate(kinds) if kind is scripted]
        chosen = [documents[place] for place in places]
        done, together = _print_alike(chosen, _Press(preamble, language, duplex, scripted, files))
        runs.append(together)
        for place, outcome in zip(places, done, strict=True):
            outcomes[place] = outcome
    printed = tuple(outcome for outcome in outcomes if isinstance(outcome, Printed))
    failures = tuple(outcome for outcome in outcomes if isinstance(outcome, Failure))
    if len(runs) <= 1:
        return Batch(printed, failures, b"".join(runs))
    parts = [part.pdf for part in printed]
    return Batch(printed, failures, join(parts, duplex=duplex) if parts else b"")


@dataclass(frozen=True, slots=True)
class _Press:
    """How documents are printed; scripted: with LuaLaTeX."""

    preamble: str
    language: str
    duplex: bool
    scripted: bool
    files: Mapping[str, Path]


_Outcomes = list[Printed | Failure]


def _print_alike(documents: Sequence[Document], press: _Press) -> tuple[_Outcomes, bytes]:
    """What became of each document, and one PDF of all that were printed."""
    done = _run(documents, press)
    if not isinstance(done, str):
        return done
    if len(documents) == 1:
        return [Failure(documents[0].name, done)], b""
    middle = len(documents) // 2
    first, one = _print_alike(documents[:middle], press)
    second, other = _print_alike(documents[middle:], press)
    parts = [part for part in (one, other) if part]
    together = join(parts, duplex=press.duplex) if len(parts) > 1 else b"".join(parts)
    return first + second, together


def _run(documents: Sequence[Document], press: _Press) -> tuple[_Outcomes, bytes] | str:
    """All documents printed in one run, or TeX's complaint when not all of them can be."""
    limit = _SECONDS_A_RUN + _SECONDS_A_DOCUMENT * len(documents)
    with tempfile.TemporaryDirectory(prefix="probgen-") as name:
        folder = Path(name)
        for beside, path in press.files.items():
            shutil.copyfile(path, folder / beside)
        calls = []
        for place, document in enumerate(documents):
            (folder / f"{place}.tex").write_text(document.body, encoding="utf-8")
            calls.append(rf"\printdocument{{{place}}}")
        main = "\n".join([r"\begin{document}", *calls, r"\end{document}", ""])
        if press.scripted:
            require_scripts(set().union(*(scripts_used(each.body) for each in documents)))
            run = run_scripts(press.preamble, main, folder, limit)
        else:
            (folder / "run.tex").write_text(main, encoding="utf-8")
            run = run_tex([f"-fmt={format_for(press.preamble)}", "run.tex"], folder, limit)
        result = folder / "run.pdf"
        if not run.good or not result.is_file():
            return run.complaint or _NO_PAGES
        return _split(documents, result.read_bytes(), press)


def _split(
    documents: Sequence[Document], pdf: bytes, press: _Press
) -> tuple[_Outcomes, bytes] | str:
    titles = [document.title for document in documents]
    try:
        alone, together = split_run(pdf, titles, press.language, press.duplex)
    except ValueError:
        return _NO_PAGES
    printed: _Outcomes = [
        Printed(document.name, part, page_count(part))
        for document, part in zip(documents, alone, strict=True)
    ]
    return printed, together
