"""Which two equations hold the cosine and the sine of one angle, beside the same size."""

from __future__ import annotations

import pytest

from probgen.quantities.expression import Expression, Name
from probgen.quantities.parser import parse
from probgen.quantities.printing import plain
from probgen.statics.angle_pair import angle_pair

SCOPE = {letter: Name(letter, letter) for letter in ("a", "b", "c", "x", "y", "z", "F", "N")}


def read(text: str) -> Expression:
    return parse(text, SCOPE)


PAIRS = [  # by hand
    ("a - F*cos(x)", "b - F*sin(x)", "F", "a", "b", "b/a"),
    ("F*cos(x) - a", "b - F*sin(x)", "F", "a", "b", "b/a"),
    ("-F*cos(x) - a", "F*sin(x) - b", "F", "−a", "b", "−b/a"),
    ("N - F*cos(x)", "a*N - F*sin(x)", "F", "N", "a N", "a"),
    ("a - c - F*cos(x)", "b - F*sin(x)", "F", "a − c", "b", "b/(a − c)"),
    ("a - 2*F*cos(x)", "b - 2*F*sin(x)", "2 F", "a", "b", "b/a"),
]


@pytest.mark.parametrize(("cosines", "sines", "size", "along", "across", "tangent"), PAIRS)
def test_what_the_two_say(
    cosines: str, sines: str, size: str, along: str, across: str, tangent: str
) -> None:
    pair = angle_pair(read(cosines), read(sines), "x")
    assert pair is not None
    written = [plain(each) for each in (pair.size, pair.along, pair.across, pair.tangent)]
    assert written == [size, along, across, tangent]


@pytest.mark.parametrize(
    ("cosines", "sines"),
    [
        ("a - F*sin(x)", "b - F*cos(x)"),  # the other way round
        ("a - F*cos(x)", "b - N*sin(x)"),  # two sizes
        ("a - F*cos(x) - N*sin(x)", "b - F*sin(x)"),  # sine and cosine in one of them
        ("a - x*cos(x)", "b - F*sin(x)"),
        ("F*cos(x)", "b - F*sin(x)"),  # nothing along: the angle is a right one
        ("a - F", "b - F*sin(x)"),
    ],
)
def test_others_are_no_pair(cosines: str, sines: str) -> None:
    assert angle_pair(read(cosines), read(sines), "x") is None


def test_the_other_angle_keeps_its_symbol() -> None:
    beta = SCOPE | {"y": Name("y", "beta")}
    cosines = parse("F*cos(x) + N*cos(y) - a", beta)
    pair = angle_pair(cosines, parse("N*sin(y) - F*sin(x)", beta), "x")
    assert pair is not None
    squared = pair.squared("y")
    assert squared is not None
    assert plain(squared).endswith("cos β")


# along and across squared and added, less the size squared: another angle y stands in one place.
SQUARED = [
    ("F*cos(x) + N*cos(y) - a", "N*sin(y) - F*sin(x)", "a² + N² − F² − 2 a N cos y"),
    ("F*cos(x) - N*sin(y) - a", "N*cos(y) - F*sin(x)", "a² + N² − F² + 2 a N sin y"),
    ("F*cos(x) - N*cos(y)", "b - N*sin(y) - F*sin(x)", "b² + N² − F² − 2 b N sin y"),
    # something beside both, and that of one slope: sin^2 + cos^2 = 1 and an addition theorem
    ("F*cos(x) - N*cos(y) - a", "N*sin(y) - b - F*sin(x)",
     "a² + b² + N² − F² + 2 a N cos y − 2 b N sin y"),
    ("F*cos(x) + a*cos(z) - N*cos(y)", "F*sin(x) + N*sin(y) - a*sin(z)",
     "a² + N² − F² − 2 a N cos(y − z)"),
]  # fmt: skip


@pytest.mark.parametrize(("cosines", "sines", "left"), SQUARED)
def test_squared_and_added_they_leave_another_angle(cosines: str, sines: str, left: str) -> None:
    pair = angle_pair(read(cosines), read(sines), "x")
    assert pair is not None
    squared = pair.squared("y")
    assert squared is not None
    assert plain(squared) == left


@pytest.mark.parametrize(
    ("cosines", "sines"),
    [
        ("F*cos(x) - N*cos(y) - a", "a*sin(y) - F*sin(x)"),  # two sizes
        ("F*cos(x) - N*cos(y)", "N*sin(y) - F*sin(x)"),  # nothing beside either
        ("F*cos(x) - a", "b - F*sin(x)"),
    ],
)
def test_where_both_angles_stay_nothing_is_squared(cosines: str, sines: str) -> None:
    pair = angle_pair(read(cosines), read(sines), "x")
    assert pair is not None
    assert pair.squared("y") is None
