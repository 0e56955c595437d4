"""Loads by a formula: their resultants and places, and what an author can get wrong."""

from __future__ import annotations

import pytest

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import Fault, InputError
from probgen.quantities.printing import plain
from probgen.statics.system import Intensity
from tests.situations import HEAD

BEAM = """
[given]
L = { name = "length", choices = [3.0, 4.0], unit = "m" }
d = { name = "part", choices = [1.0], unit = "m" }
w_0 = { name = "load per length", choices = [120, 160], unit = "N/m" }
w_1 = { name = "lower load per length", choices = [40, 50], unit = "N/m" }
[points]
A = [0, 0]
C = ["d", 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
[[fixed]]
at = "A"
symbol = "R"
couple = "M_A"
[[find]]
quantity = "M_A"
"""


def loaded(intensity: str, start: str = "A", end: str = "B", symbol: str = "W") -> str:
    return f"""
[[distributed]]
from = "{start}"
to = "{end}"
intensity = "{intensity}"
symbol = "{symbol}"
"""


def read(text: str) -> Template:
    return read_template(HEAD + text, "trial.toml")


def fault(text: str) -> Fault:
    with pytest.raises(InputError) as caught:
        read(text)
    (found,) = caught.value.faults
    return found


def intensity_of(template: Template, element: str) -> Intensity:
    spread = template.system.element(element).spread
    assert spread is not None
    assert spread.intensity is not None
    return spread.intensity


CASES = [
    # from, to, the load, its resultant and its distance from the first point, its ends
    ("A", "B", "w_0*(x/L)^2", "w_0 L/3", "3 L/4", "0", "w_0"),
    ("B", "A", "w_0*(x/L)^2", "w_0 L/3", "3 L/4", "0", "w_0"),
    ("A", "B", "w_1 + (w_0 - w_1)*(x/L)^2", "(2 w_1 + w_0) L/3", "(w_1 + w_0) L²/(4 W)",
     "w_1", "w_0"),
    ("A", "C", "w_0*(1 - x/d)^2", "w_0 d/3", "d/4", "w_0", "0"),
    ("C", "B", "w_0*x/(L - d)", "w_0 (L − d)/2", "2 (L − d)/3", "0", "w_0"),
    ("A", "B", "w_0*x*x/d^2 + w_1", "w_0 L³/(3 d²) + w_1 L",
     "(w_0 L⁴/(4 d²) + w_1 L²/2)/W", "w_1", "w_0 L²/d² + w_1"),
]  # fmt: skip


@pytest.mark.parametrize(("start", "end", "load", "size", "place", "first", "last"), CASES)
def test_it_acts_where_its_torque_is_that_of_the_load(
    start: str, end: str, load: str, size: str, place: str, first: str, last: str
) -> None:
    system = read(BEAM + loaded(load, start, end)).system
    defined = {each.variable: plain(each.expression) for each in system.definitions}
    assert (defined["W"], defined["xbar"]) == (size, place)
    links = system.points[system.force("W").point].links
    assert links[:-1] == system.points[start].links
    assert plain(links[-1].length) == "x̄"
    spread = system.element("W").spread
    assert spread is not None
    assert (plain(spread.first), plain(spread.last)) == (first, last)


def test_each_load_has_letters_of_its_own() -> None:
    text = BEAM + loaded("w_0*x/L", "A", "C") + loaded("w_0*x/L", "C", "B", "W_2")
    template = read(text)
    first, second = (intensity_of(template, id) for id in ("W", "W_2"))
    assert [each.letter.id for each in (first, second)] == ["w", "q"]
    assert [each.centroid.id for each in (first, second)] == ["xbar", "xbar_1"]
    assert {"x", "w", "q"} <= template.labels.quantities.keys()
    taken = text.replace("w_1 = { name", 'w = { name = "one more", choices = [5], unit = "N/m" }\n'
                         "w_1 = { name")  # fmt: skip
    assert intensity_of(read(taken), "W").letter.id == "q"


def test_the_statement_prints_its_formula() -> None:
    text = BEAM + loaded("w_0*x/L")
    said = text.replace("[given]", "[given]", 1)
    head = HEAD.replace('"Own."', '"At {{ x }}: {{ W | formula }}."')
    assert read_template(head + said, "trial.toml").statement == "At {{ x }}: {{ W | formula }}."
    head = HEAD.replace('"Own."', '"{{ L | formula }}."')
    with pytest.raises(InputError, match="a load with an intensity before it"):
        read_template(head + said, "trial.toml")


FAULTY = [
    (loaded("w_0*(y/L)^2"), "no quantity named 'y'"),
    (loaded("w_0*x"), "a force, where a force per length is needed"),
    (loaded("w_0*(1 - x)"), "added to"),
    (loaded("w_0"), 'the same all along is load = "..."'),
    (loaded("w_0*sin(90 deg*x/L)"), "sums, products and whole powers of x"),
    (loaded("w_0*sqrt(x/L)"), "sums, products and whole powers of x"),
    (loaded("w_0*L/(L + x)"), "sums, products and whole powers of x"),
    (loaded("w_0*(x/L)^4*(x/L)^3"), "up to x^6"),
    (loaded("R.y/L*(x/L)"), "R.y is to be found"),
    (loaded("M_A/L^2*(x/L)"), "M_A is to be found"),
    (loaded("w_0*(1 - 2*x/L)"), "nowhere below zero"),
    (loaded("-w_0*(x/L)^2"), "nowhere below zero"),
    (
        loaded("w_0*x/L").replace('"w_0*x/L"', "3"),
        "a plain number, where a force per length is needed",
    ),
    (loaded("w_0*x/L") + 'load = "w_0"\n', "one of the fields"),
]


@pytest.mark.parametrize(("entry", "told"), FAULTY, ids=[told for _, told in FAULTY])
def test_each_mistake_is_one_fault(entry: str, told: str) -> None:
    found = fault(BEAM + entry)
    assert found.field.startswith("distributed")
    assert told in f"{found.expected}\n{found.mend}"


def test_x_is_the_distance_along_the_load_alone() -> None:
    own = 'x = { name = "own", choices = [1.0], unit = "m" }\n'
    found = fault(BEAM.replace("[points]", f"{own}[points]") + loaded("w_0*x/L"))
    assert "rename the quantity x" in found.mend
    later = '\n[[force]]\nat = "B"\nmagnitude = "3 N"\ndirection = 270\nsymbol = "x"\n'
    with pytest.raises(InputError, match="a symbol that nothing else has"):
        read(BEAM + loaded("w_0*x/L") + later.replace("[[force]]", "[[couple]]").replace(
            'magnitude = "3 N"\ndirection = 270', 'moment = "3 N*m"'))  # fmt: skip


def test_a_length_that_is_to_be_found() -> None:
    text = BEAM.replace(
        "[points]", '[unknown]\nz = { name = "place", unit = "m", from = 1, to = 3 }\n[points]'
    ).replace('C = ["d", 0]', 'C = ["z", 0]')
    found = fault(text + loaded("w_0*x/L", "A", "C"))
    assert "z is to be found" in found.mend


def test_a_load_that_turns_in_some_draws_alone_is_read() -> None:
    """1.5 m is beyond the end of a beam of 1 m, and not of one of 4 m."""
    text = BEAM.replace("[3.0, 4.0]", "[1.0, 4.0]").replace('C = ["d", 0]\n', "")
    assert read(text + loaded("w_0*(1 - x/(1.5 m))")).system.element("W").spread is not None
