"""Names as lists have them and as they are printed."""

import pytest

from probgen.course.student_name import has_lost_letters, turned

PRINTED = {
    "Quill, Ada": "Ada Quill",
    "Ada Quill": "Ada Quill",
    "van der Berg, Jan Piet": "Jan Piet van der Berg",
    "Quill, Ada, Jr.": "Ada Quill, Jr.",
    "Quill, Jr., Ada": "Ada Quill, Jr.",
    "Ada Quill, III": "Ada Quill, III",
    "李, 明": "明 李",
    "Quill,": "Quill,",
    "a, b, c": "a, b, c",
    "Ng, Vi": "Vi Ng",
}


@pytest.mark.parametrize(("listed", "printed"), PRINTED.items())
def test_last_names_first_are_turned(listed: str, printed: str) -> None:
    assert turned(listed) == printed


@pytest.mark.parametrize("name", ["M?ller", "M\ufffdller", "?? ??"])
def test_lost_letters_are_seen(name: str) -> None:
    assert has_lost_letters(name)
    assert not has_lost_letters("Müller-李")
