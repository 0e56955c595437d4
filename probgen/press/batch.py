"""Documents printed in as few TeX runs as can be; one that fails is found, the others printed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from probgen.press.blemish import Blemish, blemishes
from probgen.press.engine import run_tex
from probgen.press.format_cache import format_for
from probgen.press.lualatex import require_scripts, run_scripts, scripts_used
from probgen.press.split import Part, collate, cut_run, extract
from probgen.press.temp_folder import workroom

# A document takes some hundredths of a second; what takes this long will never be done.
_SECONDS_A_RUN: Final = 20.0
_SECONDS_A_DOCUMENT: Final = 1.0
_NO_PAGES: Final = "TeX has printed no pages"


@dataclass(frozen=True, slots=True)
class Document:
    """What is to be printed.

    name: tells the documents of a pile apart, such as a file name; title: shown by PDF readers.
    body: LaTeX, without preamble.  Documents of one preamble share a TeX run.
    pile: the joined PDF it belongs to, such as "sheets".
    """

    name: str
    title: str
    body: str
    preamble: str
    pile: str = ""


@dataclass(frozen=True, slots=True)
class Printed:
    """A document's PDF; blemishes: what of it is not as it should be."""

    name: str
    pile: str
    pdf: bytes
    pages: int
    blemishes: tuple[Blemish, ...] = ()


@dataclass(frozen=True, slots=True)
class Failure:
    """A document TeX could not set, with TeX's own words about it."""

    name: str
    pile: str
    complaint: str


@dataclass(frozen=True, slots=True)
class Batch:
    """What became of some documents, in their order.

    together: for each pile, one PDF of all that were printed, empty when none was.
    """

    printed: tuple[Printed, ...]
    failures: tuple[Failure, ...]
    together: Mapping[str, bytes]


def print_batch(
    documents: Sequence[Document],
    language: str = "en",
    files: Mapping[str, bytes] = MappingProxyType({}),
) -> Batch:
    """Prints documents: those of one preamble in one run, or in several when one of them fails.

    Documents in scripts that pdfLaTeX has no fonts for are printed in runs of their own.
    files: what preambles ask for by name, such as a logo.  Raises OutsideError when TeX is missing
    or lacks a package or a font, InputError when TeX cannot read a preamble.
    """
    alike: dict[_Press, list[Document]] = {}
    for document in documents:
        press = _Press(document.preamble, bool(scripts_used(document.body)))
        alike.setdefault(press, []).append(document)
    outcomes = {
        (document.pile, document.name): outcome
        for press, chosen in alike.items()
        for document, outcome in zip(chosen, _print_alike(chosen, press, files), strict=True)
    }
    pairs = [(document, outcomes[document.pile, document.name]) for document in documents]
    parts: dict[str, list[Part]] = {document.pile: [] for document in documents}
    for document, outcome in pairs:
        if isinstance(outcome, _Set):
            parts[document.pile].append(outcome.part)
    return Batch(
        tuple(_printed(d, done, language) for d, done in pairs if isinstance(done, _Set)),
        tuple(Failure(d.name, d.pile, told) for d, told in pairs if isinstance(told, str)),
        {pile: collate(own, language) if own else b"" for pile, own in parts.items()},
    )


def _printed(document: Document, done: _Set, language: str) -> Printed:
    pdf, pages = extract(done.part, language), len(done.part.pages)
    return Printed(document.name, document.pile, pdf, pages, done.blemishes)


@dataclass(frozen=True, slots=True)
class _Press:
    """What documents of one run have in common; scripted: printed with LuaLaTeX."""

    preamble: str
    scripted: bool


@dataclass(frozen=True, slots=True)
class _Set:
    """A document's pages in the PDF of its run, and what TeX has said of them."""

    part: Part
    blemishes: tuple[Blemish, ...]


_Outcomes = list[_Set | str]
"""A document that is set, or TeX's complaint about it."""


def _print_alike(
    documents: Sequence[Document], press: _Press, files: Mapping[str, bytes]
) -> _Outcomes:
    """What became of each document, in runs of ever fewer until all that can be is printed."""
    done = _run(documents, press, files)
    if not isinstance(done, _Stop):
        return done
    if len(documents) == 1:
        return [done.complaint]
    if done.endless and done.place is not None:  # once is enough
        before, after = documents[: done.place], documents[done.place + 1 :]
        others = (_print_alike(some, press, files) if some else [] for some in (before, after))
        return [*next(others), done.complaint, *next(others)]
    return [
        outcome
        for some in _parted(documents, done.place)
        for outcome in _print_alike(some, press, files)
    ]


def _parted(documents: Sequence[Document], place: int | None) -> Iterable[Sequence[Document]]:
    """Documents around the one TeX stopped in; two halves when TeX does not say which it was."""
    if place is None:
        middle = len(documents) // 2
        return documents[:middle], documents[middle:]
    parts = documents[:place], documents[place : place + 1], documents[place + 1 :]
    return filter(None, parts)


@dataclass(frozen=True, slots=True)
class _Stop:
    """A run that came to nothing.

    place: of the document TeX stopped in, where it says so; endless: it was ended over its limits.
    """

    complaint: str
    place: int | None = None
    endless: bool = False


def _run(
    documents: Sequence[Document], press: _Press, files: Mapping[str, bytes]
) -> _Outcomes | _Stop:
    """All documents printed in one run."""
    limit = _SECONDS_A_RUN + _SECONDS_A_DOCUMENT * len(documents)
    with workroom() as folder:
        for beside, content in files.items():
            (folder / beside).write_bytes(content)
        calls = []
        for place, document in enumerate(documents):
            (folder / f"{place}.tex").write_text(document.body, encoding="utf-8")
            calls.append(rf"\printdocument{{{place}}}")
        main = "\n".join([r"\begin{document}", *calls, r"\end{document}", ""])
        if press.scripted:
            scripts = set().union(*(scripts_used(each.body) for each in documents))
            require_scripts(scripts)
            run = run_scripts(press.preamble, main, folder, limit, scripts)
        else:
            (folder / "run.tex").write_text(main, encoding="utf-8")
            dumped = format_for(press.preamble)
            run = run_tex([f"-fmt={dumped}", "run.tex"], folder, limit, readable=[dumped])
        if not run.good:
            stopped = int(run.file) if run.file.isdecimal() else None
            return _Stop(run.complaint, stopped, run.endless)
        try:
            pdf = (folder / "run.pdf").read_bytes()
            parts = cut_run(pdf, [document.title for document in documents])
        except FileNotFoundError:
            return _Stop(_NO_PAGES)
        except ValueError as error:
            return _Stop(str(error))
        found = blemishes(run.said)
        return [_Set(part, found.get(place, ())) for place, part in enumerate(parts)]
