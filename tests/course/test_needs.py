"""Needs of single students, as offices write them."""

import pytest

from probgen.course.needs import LONGEST, Needs, is_mark, read_needs

CASES = [
    (("x", "", ""), Needs(True)),
    (("", "", ""), Needs()),
    (("No", "no", "None"), Needs()),
    (("18 pt", "", ""), Needs(True)),
    (("24", "", ""), Needs(True)),
    (("11 pt", "", ""), Needs(False)),
    (("", "1.5x", ""), Needs(False, "extra time 1.5x")),
    (("", "0.25", ""), Needs(False, "extra time 25%")),
    (("", "yes", ""), Needs(False, "extra time")),
    (("", "time and a half", ""), Needs(False, "time and a half")),
    (("", "", "enlarged paper"), Needs(True, "enlarged paper")),
    (("", "25%", "Print in 20 pt, quiet room"),
     Needs(True, "extra time 25%; Print in 20 pt, quiet room")),
    (("yes", "", "Large print"), Needs(True)),  # is told once
    (("", "", "large-print; quiet room, enlarged"), Needs(True, "quiet room")),
    (("", "", "Quiet room; large print on cream paper"),
     Needs(True, "Quiet room; large print on cream paper")),
]  # fmt: skip


@pytest.mark.parametrize(("cells", "needs"), CASES)
def test_needs_are_read_from_three_columns(cells: tuple[str, str, str], needs: Needs) -> None:
    assert read_needs(*cells) == needs


def test_a_mark_is_understood_or_not() -> None:
    assert all(map(is_mark, ("", "yes", "X", "18 pt", "large print", "20", "none")))
    assert not any(map(is_mark, ("perhaps", "see office")))


def test_a_need_fits_a_column() -> None:
    assert len(read_needs("", "", "a long letter " * 50).told) == LONGEST
