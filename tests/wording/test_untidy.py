"""No line of letters is left as no teacher would leave it, in any key, by any method."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from probgen.quantities.expression import (
    Expression,
    Name,
    Product,
    Quotient,
    Sum,
    names_in,
    number,
)
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.wording.block import Row, Section
from probgen.working.convention import Convention
from tests.wording.told_keys import TOLD, displays, is_expression, keys
from tests.wording.untidy import faults_in

SCOPE = {letter: Name(letter, letter) for letter in ("a", "b", "c", "x")}


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        ("a*1*b", "a factor 0 or 1"),
        ("2*a*2", "two numbers"),
        ("a/1", "a quotient by 1"),
        ("a + b + a", "like terms"),
        ("a^2/(2*a*b)", "a common factor above and below"),
        ("(a*b + a*c)/(b*a)", "a common factor above and below"),
        ("(a/c)/(b/c)", "a common factor above and below"),
        ("hypot(a, a)", "a root of a sum that cancels"),
        ("hypot(a*sin(x), a*cos(x))", "a root of a sum that cancels"),
        ("sqrt(sin(x)^2 + cos(x)^2)", "a root of a sum that cancels"),
        ("sin(x - atan2(a, b))", "an arctangent of two sides"),
    ],
)
def test_each_fault_is_seen(line: str, fault: str) -> None:
    assert fault in set(faults_in(as_written(line), result=True))


def test_a_double_minus_is_seen() -> None:
    """As a - (c - b) d is written with its sum turned: a - (-b + c) d, and over a line."""
    a, b, c = (SCOPE[letter] for letter in "abc")
    down = Sum(((-1, b), (1, c)))
    for term in (down, Product((down, a)), Quotient(Product((down, a)), c), number(-3)):
        assert list(faults_in(Sum(((1, a), (-1, term))), result=True)) == ["a double minus"]


def as_written(line: str) -> Expression:
    return parse(line, SCOPE)


@pytest.mark.parametrize("line", ["(a*b + c)/(b*x)", "-(a - b)*c", "hypot(a, b)", "a - b*(c - a)"])
def test_what_is_tidy_has_none(line: str) -> None:
    assert list(faults_in(as_written(line), result=True)) == []


@pytest.mark.one_in(5)
@pytest.mark.parametrize(("name", "convention"), TOLD)
def test_every_key_is_tidy(name: str, convention: Convention) -> None:
    assert [fault for section in keys(name, convention)[0] for fault in untidy(section)] == []


def untidy(section: Section) -> Iterator[str]:
    for display in displays(section):
        left: Row | None = None
        for row in display.rows:
            left = row if row.left else left
            result = left is not None and len(left.left) == 1 and isinstance(left.left[0], Name)
            for piece in row.right:
                if is_expression(piece) and names_in(piece):  # type: ignore[arg-type]
                    for fault in faults_in(piece, result=result):  # type: ignore[arg-type]
                        yield f"{fault}: {plain(row.left)} {row.relation} {plain(row.right)}"
