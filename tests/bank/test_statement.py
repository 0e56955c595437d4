"""Statements taken apart: text, and the names in it."""

from __future__ import annotations

import pytest

from probgen.bank.statement import (
    LONGEST_STATEMENT,
    Mention,
    bare_letters,
    check_statement,
    statement_pieces,
    told_ids,
)
from probgen.input.fault import Faults
from probgen.input.table import Table

PIECES = [
    ("A shelf.", ("A shelf.",)),
    ("{{ L }}", (Mention("L"),)),
    ("{{L}} long", (Mention("L"), " long")),
    ("a {{ L | symbol }} b", ("a ", Mention("L", "symbol"), " b")),
    ("{{ L | equation }}{{ m }}", (Mention("L", "equation"), Mention("m"))),
    ("two\n  lines", ("two lines",)),
    ("a {b} c", ("a {b} c",)),
    ("", ()),
]


@pytest.mark.parametrize(("statement", "pieces"), PIECES)
def test_text_and_names_in_turn(statement: str, pieces: tuple[object, ...]) -> None:
    assert statement_pieces(statement) == pieces


def faults_of(statement: str, known: set[str] | None) -> list[tuple[object, str]]:
    faults = Faults("own.toml")
    check_statement(Table({"statement": statement}, "", faults), "statement", known)
    return [(fault.found, fault.mend) for fault in faults.found]


@pytest.mark.parametrize("statement", ["{{ L }}", "{{ L | symbol }}", "{{ L | equation }}", "L"])
def test_known_names_and_filters(statement: str) -> None:
    assert faults_of(statement, {"L", "m"}) == []


def test_an_unknown_name_is_told_with_the_nearest() -> None:
    ((found, mend),) = faults_of("{{ lengh }}", {"length", "m"})
    assert "{{ lengh }}" in str(found)
    assert mend == 'did you mean "length"?'


def test_nobody_is_blamed_for_names_where_they_are_not_known() -> None:
    assert faults_of("{{ lengh }}", None) == []


def test_an_unknown_filter() -> None:
    ((found, mend),) = faults_of("{{ L | symbl }}", {"L"})
    assert "| symbl" in str(found)
    assert mend == 'did you mean "symbol"?'


def test_a_word_for_what_is_no_quantity() -> None:
    faults = Faults("own.toml")
    table = Table({"statement": "The {{ m | quantity }} at {{ A | quantity }}."}, "", faults)
    check_statement(table, "statement", {"m", "A"}, {"m"})
    (fault,) = faults.found
    assert "{{ A | quantity }}" in fault.found


@pytest.mark.parametrize("brace", ["{{ }}", "{L}", "{ L }", "{{ L", "L }}", "{% if L %}"])
def test_other_braces_are_a_slip(brace: str) -> None:
    assert len(faults_of(f"A {brace} b", {"L"})) == 1


def test_a_statement_is_of_a_length() -> None:
    assert faults_of("a" * LONGEST_STATEMENT, set()) == []
    ((found, _),) = faults_of("a" * (LONGEST_STATEMENT + 1), set())
    assert f"{LONGEST_STATEMENT + 1} characters" in str(found)


def test_a_symbol_alone_tells_no_value() -> None:
    text = "{{ L }} and {{ m | symbol }}, {{ d | equation }}, {{ b | quantity }}"
    assert told_ids(text) == {"L", "d"}


@pytest.mark.parametrize(
    ("statement", "bare"),
    [
        ("A beam is held at B, and loaded at C.", ("B", "C")),
        ("A beam is held at {{ B }} and at C, as far from {{ C }}.", ()),
        ("It is pinned at A, where a rope ends. A rope is there.", ("A",)),
        ("Its foot stands on the ground.", ()),
        ("A rope is there; the bar ABC weighs little, K is hot.", ("K",)),
    ],
)
def test_letters_of_points_without_braces(statement: str, bare: tuple[str, ...]) -> None:
    assert bare_letters(statement, ("A", "B", "C", "K", "foot")) == bare
