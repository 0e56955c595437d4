"""Print runs over several batches."""

from collections.abc import Iterator

import pytest

from probgen.press import bulk
from probgen.press.batch import Document
from probgen.press.bulk import batches, print_documents
from probgen.sheets.layout import Layouts


def documents(count: int) -> Iterator[Document]:
    for number in range(count):
        yield Document(f"{number}", f"Title {number}", f"Sheet {number}\\newpage end")


@pytest.mark.parametrize(
    ("count", "sizes"), [(0, []), (49, [49]), (50, [50]), (51, [50, 1]), (101, [50, 50, 1])]
)
def test_batches_hold_fifty(count: int, sizes: list[int]) -> None:
    assert [len(batch) for batch in batches(documents(count))] == sizes


def test_workers_change_no_byte_and_no_order(
    layouts: Layouts, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bulk, "BATCH", 3)
    runs = [
        list(print_documents(documents(8), layouts.preamble(), workers)) for workers in (1, 2)
    ]
    assert runs[0] == runs[1]
    names = [part.name for batch in runs[0] for part in batch.printed]
    assert names == [str(number) for number in range(8)]
    assert [len(batch.printed) for batch in runs[0]] == [3, 3, 2]


def test_documents_are_taken_as_needed(
    layouts: Layouts, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(bulk, "BATCH", 1)
    taken: list[int] = []

    def watched() -> Iterator[Document]:
        for number, document in enumerate(documents(12)):
            taken.append(number)
            yield document

    run = print_documents(watched(), layouts.preamble())
    next(run)
    assert len(taken) < 12
    assert len(list(run)) == 11
