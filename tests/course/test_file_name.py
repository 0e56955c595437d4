"""Files are named after people, whatever they are called, and no two names clash anywhere."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis.strategies import lists, text

from probgen.course.file_name import file_name

NAMED = {
    ("Zoë Å. Müller", "s_8"): "zoë-å-müller-s_8-7K3M-Q9TX",
    ("李 明", "S 2"): "李-明-s-2-7K3M-Q9TX",
    ("../../etc/passwd", "id/1"): "etc-passwd-id-1-7K3M-Q9TX",
    ("con", ""): "con-7K3M-Q9TX",
    ("", ""): "7K3M-Q9TX",
    ("🙂", "."): "7K3M-Q9TX",
    ("Zoe\u0308", "1"): "zoë-1-7K3M-Q9TX",
}


@pytest.mark.parametrize(("parts", "name"), NAMED.items())
def test_in_the_student_s_own_script(parts: tuple[str, str], name: str) -> None:
    assert file_name(*parts, code="7K3M-Q9TX", own_script=True) == name


def test_in_plain_letters_where_a_file_system_has_no_others() -> None:
    assert file_name("Zoë Å. Müller", "S 8", code="X", own_script=False) == "zoe-a-muller-s-8-X"
    assert file_name("李 明", "8", code="X", own_script=False) == "8-X"


@given(lists(text(), min_size=2, max_size=2))
def test_any_name_can_be_a_file_s_everywhere(parts: list[str]) -> None:
    name = file_name(*parts, code="7K3M-Q9TX", own_script=True)
    assert name.endswith("7K3M-Q9TX")
    assert len(name.encode()) <= 180
    assert not set(name) & set('/\\:*?"<>| .\0')
    assert all(unicodedata.category(each)[0] in "LMN" or each in "_-" for each in name)
    assert not name.startswith("-")


def test_long_names_are_cut_between_letters() -> None:
    name = file_name("e\u0301\u0323" * 100, code="X", own_script=True)
    assert len(name.encode()) < 90
    assert name == unicodedata.normalize("NFC", name)
