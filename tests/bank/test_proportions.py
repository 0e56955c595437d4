"""The sizes a figure is drawn with in place of true ones."""

import pytest

from probgen.bank.proportions import drawn_sizes
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import InputError

VALUES = {"L": 1.2, "m": 2.0, "tree_mass": 3.0, "theta": 30.0, "d": 1.02, "g": 9.8}
SIZES = [
    ("", {}),
    ('theta = "50 deg"', {"theta": 50.0}),
    ("theta = 50", {"theta": 50.0}),
    ('theta = "2*theta"', {"theta": 60.0}),
    ('L = "80 cm"', {"L": 0.8, "d": 0.68}),  # the derived length follows
    ('L = "80 cm"\nd = "L/2"', {"L": 0.8, "d": 0.6}),  # a size is made of the student's own numbers
    ('d = "0.5 m"', {"d": 0.5}),
]
UNKNOWN = """
[unknown]
x = { name = "place of the cat", unit = "m" }
[[condition]]
that = "x = d/2"
because = "it likes it there"
"""
FAULTS = [
    ('ell = "1 m"', "ell", "the given lengths and angles L, theta, d"),
    ('m = "2 kg"', "m", "the given lengths and angles L, theta, d"),
    ('T = "2 N"', "T", "the given lengths and angles"),
    ('x = "2 m"', "x", "the given lengths and angles"),
    ('L = "2 kg"', "L", "an expression for a length"),
    ("L = 2", "L", "an expression for a length"),
    ('L = "2*x"', "L", "an expression for a length"),
    ("L = true", "L", "an expression for a length"),
    ('L = "0 m"', "L", "a length above zero"),
    ('L = "-d"', "L", "a length above zero"),
    ('theta = "2 m"', "theta", "an expression for an angle"),
]


def pictured(shelf: str, lines: str) -> Template:
    return read_template(f"{shelf}\n[picture]\n{lines}\n", "shelf.toml")


@pytest.mark.parametrize(("lines", "sizes"), SIZES, ids=[lines for lines, _ in SIZES])
def test_sizes_drawn(shelf: str, lines: str, sizes: dict[str, float] | dict[str, object]) -> None:
    assert drawn_sizes(pictured(shelf, lines), VALUES) == pytest.approx(sizes)


@pytest.mark.parametrize(("lines", "field", "expected"), FAULTS, ids=[f[0] for f in FAULTS])
def test_what_is_no_size_is_refused(shelf: str, lines: str, field: str, expected: str) -> None:
    with pytest.raises(InputError) as caught:
        pictured(shelf + UNKNOWN, lines)
    (fault,) = caught.value.faults
    assert fault.field == f"picture.{field}"
    assert expected in fault.expected


def test_a_misspelt_name_is_mended(shelf: str) -> None:
    with pytest.raises(InputError, match='did you mean "theta"'):
        pictured(shelf, "thet = 40")


def test_a_given_that_is_wrong_itself_is_blamed_once(shelf: str) -> None:
    with pytest.raises(InputError) as caught:
        pictured(shelf.replace('unit = "deg"', 'unit = "degg"'), "theta = 50")
    assert [fault.field for fault in caught.value.faults] == ["given.theta.unit"]
