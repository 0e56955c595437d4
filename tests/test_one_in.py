"""What `make test` tries of the tests that are marked `one_in`: of all cases some, evenly."""

import pytest

from tests.conftest import at_once


@pytest.mark.parametrize("share", range(2, 8))
@pytest.mark.parametrize("name", ["tests/a.py::test_a", "tests/a.py::test_b", "tests/b.py::test_a"])
def test_one_of_each_row_and_another_in_the_next(name: str, share: int) -> None:
    rows = [
        [column for column in range(share) if at_once(name, row * share + column, share)]
        for row in range(share)
    ]
    assert [len(row) for row in rows] == [1] * share
    assert {row[0] for row in rows} == set(range(share))
