"""Names and ids that look the same and are not: a remark, as nobody sees it in a list."""

import pytest

from probgen.course.alike import alike, looks
from probgen.course.roster import parse_roster

ALIKE = {
    "by case": ("s1a", "S1A"),
    "by normal form": ("Zoe\u0308", "Zo\u00eb"),
    "by width": ("Ａ７", "A7"),
    "by a sign without width": ("s\u200b7", "s7"),
    "by a sign of direction": ("\u202ds7", "s7"),
    "by a soft hyphen": ("s\u00ad7", "s7"),
    "by script": ("А7", "A7"),
    "by Greek": ("Α7", "A7"),
    "by digits": ("٧", "7"),
    "by spaces": ("Ada\u00a0Bo", "Ada Bo"),
    "by the sharp s": ("STRASSE", "Straße"),
}


@pytest.mark.parametrize("texts", ALIKE.values(), ids=ALIKE)
def test_what_looks_the_same_is_told(texts: tuple[str, str]) -> None:
    (told,) = alike([*texts, "other"], "ids")
    assert all(f'"{text}"' in told for text in texts)
    assert "other" not in told


def test_the_same_text_twice_and_other_texts_are_not() -> None:
    assert list(alike(["Ada", "Ada", "Bo", "Zoe", "Zoë", "l1", "11", "O0"], "names")) == []
    assert looks("Zoë") != looks("Zoe")


def test_many_are_told_in_a_line() -> None:
    (told,) = alike(["ada", "Ada", "ADA", "aDa"], "names")
    assert told.count('"') == 6
    assert ", ..." in told


def test_a_class_list_tells_of_them() -> None:
    found = parse_roster("name,id\nAda Bo,s1\nADA BO,S1\nCy,3\n", "class.csv")
    assert len(found.students) == 3
    assert [told.partition(":")[0] for told in found.remarks] == ["class.csv"] * 2
    assert "ids" in found.remarks[0]
    assert "names" in found.remarks[1]
