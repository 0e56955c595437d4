"""Files in which two sides of a merge still stand."""

import pytest

from probgen.input.fault import InputError
from probgen.input.merge import require_merged
from probgen.input.toml import parse_toml

HALF = "a = 1\n<<<<<<< main\nb = 2\n=======\nb = 3\n>>>>>>> change\nc = 4\n<<<<<<< main\n"


def test_every_place_is_told_with_its_line() -> None:
    with pytest.raises(InputError) as error:
        require_merged(HALF, "bank.toml")
    assert [fault.field for fault in error.value.faults] == ["line 2", "line 8"]


def test_a_toml_file_says_so_before_anything_else() -> None:
    with pytest.raises(InputError, match="were not merged"):
        parse_toml(HALF, "bank.toml")


@pytest.mark.parametrize("text", ["a = 1\n=======\n", "a = '<<<<<<< x'\n", ">>>>>>> x", ""])
def test_lines_of_other_texts_are_none(text: str) -> None:
    require_merged(text, "a.toml")
