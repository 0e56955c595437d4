"""A template's givens, and how many sets of them there are."""

from __future__ import annotations

import pytest

from probgen.bank.reading import read_template
from tests.situations import STAYED_SHELF, cabinet, finding


def test_a_given_by_its_id() -> None:
    template = read_template(STAYED_SHELF, "own.toml")
    assert (template.given("d").id, template.given("d").unit.name) == ("d", "m")
    with pytest.raises(StopIteration):
        template.given("T")


def test_the_room_is_the_product_of_the_choices() -> None:
    """40 to 80 in 5s, 0.40 to 0.60 in 0.05s, 0.60 to 1.20 in 0.10s, four: 9 x 5 x 7 x 4."""
    assert read_template(cabinet() + finding("N"), "own.toml").room == 9 * 5 * 7 * 4
    assert read_template(STAYED_SHELF, "own.toml").room == 1
