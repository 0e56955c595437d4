"""Any number of documents, printed batch by batch on several cores."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import islice
from typing import Final

from joblib import Parallel, delayed

from probgen.press.batch import Batch, Document, print_batch
from probgen.press.preformat import format_for

BATCH: Final = 50
"""Documents in one TeX run.  Never depends on the number of workers, as the bytes of a PDF depend
on the batch it was printed in (its fonts hold the letters the whole batch uses)."""


def print_documents(
    documents: Iterable[Document], preamble: str, workers: int = 1, language: str = "en"
) -> Iterator[Batch]:
    """Prints documents in batches of `BATCH`; gives the batches in order, each once it is done.

    documents are taken only as they are needed.  workers: TeX runs at a time.  Raises as
    `print_batch` does.
    """
    format_for(preamble)  # dumped once, before several workers want it
    # Threads suffice: a worker waits for TeX, which is a process of its own.
    run = Parallel(n_jobs=workers, prefer="threads", return_as="generator", batch_size=1)
    yield from run(
        delayed(print_batch)(batch, preamble, language) for batch in batches(documents)
    )


def batches(documents: Iterable[Document]) -> Iterator[list[Document]]:
    """Documents in lists of `BATCH`, the last one shorter."""
    remaining = iter(documents)
    while batch := list(islice(remaining, BATCH)):
        yield batch
