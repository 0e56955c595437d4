"""Where a template comes from."""

import re
from collections.abc import Callable

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.origin import UNSAID, Origin, read_origin, same_on_paper
from probgen.bank.reading import read_template
from probgen.input.fault import Faults, InputError
from probgen.input.table import Table
from probgen.input.toml import parse_toml
from probgen.problem.problem import prepare
from probgen.working.convention import Convention
from probgen.working.criteria import criteria
from tests.banks import template_text, without_origin

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
        ("12", "601", "minutes"),
        ("12", '"12"', "minutes"),
        ("author", "autor", "origin.autor"),
    ],
)
def test_faults(old: str, new: str, field: str) -> None:
    faults = Faults("")
    read_origin(Table(parse_toml(WHOLE.replace(old, new), ""), "", faults))
    assert [fault.field for fault in faults.found] == [field]


def test_a_piece_of_work_takes_ten_hours_at_most() -> None:
    faults = Faults("")
    found = read_origin(Table(parse_toml(WHOLE.replace("12", "600"), ""), "", faults))
    assert not faults.found
    assert found.minutes == 600


def test_a_template_has_it_and_its_other_fields_are_as_they_were() -> None:
    text = template_text("forearm-load")
    found = read_template(text.replace("[origin]", '[origin]\nreplaces = "forearm-old"'), "x")
    bare = read_template(without_origin(text), "x")
    assert found.origin.replaces == "forearm-old"
    assert found.origin.author
    assert bare.origin == UNSAID
    assert found.system == bare.system
    with pytest.raises(InputError, match=r"origin\.language"):
        read_template(re.sub(r"(?m)^language = .*$", "language = 7", text), "x")


@pytest.mark.parametrize("id", default_bank().files)
def test_supplied_templates_say_all_that_a_release_needs(id: str) -> None:
    """Minutes by the rule that templates/README.md states."""
    template = default_bank().read(id)
    assert not list(template.origin.lacking)
    problem = prepare(template, Convention())
    steps = len(tuple(criteria(problem.plan, problem.convention)))
    assert template.origin.minutes == 2 + 2 * steps


def exchanged(text: str) -> str:
    """With its first two givens in the other order."""
    return re.sub(
        r"(?ms)^(load_mass = .*?\n)(.*?)(load_distance = .*?\n)", r"\3\2\1", text, count=1
    )


@pytest.mark.parametrize(
    ("change", "same"),
    [
        (without_origin, True),
        (lambda text: f"# looked at\n{text}", True),
        (lambda text: text.replace("[[find]]", "[[find]]\nvaries = true", 1), True),
        (lambda text: text.replace("minutes = 18", "minutes = 30"), True),
        (lambda text: text.replace("to = 8.0", "to = 9.0"), False),
        (lambda text: text.replace("level = 2", "level = 3"), False),
        (lambda text: f"{text}[[", False),
        (exchanged, False),
    ],
)
def test_two_texts_of_a_template(change: Callable[[str], str], same: bool) -> None:
    text = template_text("forearm-load")
    assert change(text) != text
    assert same_on_paper(text, change(text)) == same
    assert same_on_paper("[[", "[[")
