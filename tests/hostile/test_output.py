"""TeX that says it is done and has written no PDF: a failure with a message, whatever it wrote."""

import random
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import Any

import pikepdf
import pytest

from probgen.press import batch as module
from probgen.press.batch import Batch, Document, print_batch
from probgen.press.engine import Run, run_tex

PLAIN = "\\documentclass{article}\\def\\missingglyph{}\n"
DOCUMENTS = [Document(str(n), f"title {n}", f"text {n}", PLAIN) for n in range(3)]


@pytest.fixture(scope="module")
def good() -> bytes:
    """What TeX writes of three documents."""
    seen: list[bytes] = []

    def watched(arguments: Any, folder: Path, *more: Any, **others: Any) -> Run:
        run = run_tex(arguments, folder, *more, **others)
        seen.append((folder / "run.pdf").read_bytes())
        return run

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(module, "run_tex", watched)
        assert len(print_batch(DOCUMENTS).printed) == 3
    return seen[0]


def printed(content: bytes | None, patch: pytest.MonkeyPatch) -> Batch:
    """The documents printed by a TeX that always writes the same and says that all is well."""

    def written(arguments: Any, folder: Path, *more: Any, **others: Any) -> Run:
        if content is not None:
            (folder / "run.pdf").write_bytes(content)
        return Run(True)

    patch.setattr(module, "run_tex", written)
    return print_batch(DOCUMENTS)


def empty_pages(count: int) -> bytes:
    with pikepdf.new() as pdf:
        for _ in range(count):
            pdf.add_blank_page()
        pdf.save(target := BytesIO())
    return target.getvalue()


RUBBISH: dict[str, Callable[[bytes], bytes | None]] = {
    "nothing": lambda good: None,
    "an empty file": lambda good: b"",
    "words": lambda good: b"rubbish",
    "a head alone": lambda good: b"%PDF-1.5\n%%EOF",
    "zeros": lambda good: b"\0" * 10_000,
    "half a PDF": lambda good: good[: len(good) // 2],
    "the other half": lambda good: good[len(good) // 2 :],
    "a PDF cut at its end": lambda good: good[:-30],
    "no pages": lambda good: empty_pages(0),
    "pages of nobody": lambda good: empty_pages(3),
}


@pytest.mark.parametrize("made", RUBBISH.values(), ids=RUBBISH)
def test_what_is_no_pdf_is_a_failure(
    made: Callable[[bytes], bytes | None], good: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    batch = printed(made(good), monkeypatch)
    assert batch.printed == ()
    assert {each.name for each in batch.failures} == {"0", "1", "2"}
    for failure in batch.failures:
        assert "no whole PDF" in failure.complaint or "no pages" in failure.complaint


def test_what_is_spoilt_anywhere_ends_in_no_traceback(
    good: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    seeded = random.Random(11)
    for _ in range(40):
        spoilt = bytearray(good)
        for _ in range(seeded.randint(1, 20)):
            spoilt[seeded.randrange(len(good))] = seeded.randrange(256)
        batch = printed(
            bytes(spoilt[: seeded.choice([None, seeded.randrange(len(good))])]), monkeypatch
        )
        assert len(batch.printed) + len(batch.failures) == 3
        assert "object at 0x" not in str(batch.failures)
