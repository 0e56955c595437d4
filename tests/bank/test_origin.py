"""Where a template comes from."""

import pytest

from probgen.bank.origin import Origin, read_origin
from probgen.bank.reading import read_template
from probgen.input.fault import Faults, InputError
from probgen.input.table import Table
from probgen.input.toml import parse_toml
from tests.banks import template_text

WHOLE = """minutes = 12
[origin]
author = "A. Writer"
source = "own"
licence = "CC BY 4.0"
language = "pt-BR"
replaces = "forearm-old"
"""


def test_all_of_it() -> None:
    found = read_origin(Table(parse_toml(WHOLE, ""), "", Faults("")))
    assert found == Origin("A. Writer", "own", "CC BY 4.0", "pt-BR", "forearm-old", 12)
    assert not list(found.lacking)


def test_what_a_release_would_miss() -> None:
    assert list(Origin(author="A. Writer", minutes=5).lacking) == [
        "origin.source", "origin.licence", "origin.language",
    ]  # fmt: skip
    assert "minutes" in Origin().lacking


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ('"pt-BR"', '"Portuguese"', "origin.language"),
        ("12", "0", "minutes"),
        ("12", '"12"', "minutes"),
        ("author", "autor", "origin.autor"),
    ],
)
def test_faults(old: str, new: str, field: str) -> None:
    faults = Faults("")
    read_origin(Table(parse_toml(WHOLE.replace(old, new), ""), "", faults))
    assert [fault.field for fault in faults.found] == [field]


def test_a_template_has_it_and_its_other_fields_are_as_they_were() -> None:
    text = template_text("forearm-load")
    with_origin = text.replace("[given]", WHOLE.replace("minutes = 12\n", "") + "[given]")
    found = read_template("minutes = 12\n" + with_origin, "x")
    assert found.origin.author == "A. Writer"
    assert found.origin.minutes == 12
    assert found.system == read_template(text, "x").system
    with pytest.raises(InputError, match=r"origin\.language"):
        read_template(text.replace("[given]", "[origin]\nlanguage = 7\n[given]"), "x")
