"""Templates and values nobody should state: one clear error each, and no traceback."""

import gc
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.template import Derived, Given
from probgen.cli import main
from probgen.draws.draw import Draw
from probgen.draws.override import with_values
from probgen.figures.writers.svg import svg
from probgen.input.fault import InputError
from probgen.problem.problem import Problem, draw_class, prepare, tell_steps, work
from probgen.problem.problem_figures import every_scene
from probgen.problem.template_check import check_template
from probgen.working.convention import Convention

INSIDE = ("Traceback", "Decimal", "KeyError", "<class")
"""Of the program, and no words for anybody who uses it."""
LINES = {
    "a mass of 0": ["crate-ramp-strap", "--with", "mass=0"],
    "two points in one": ["hip-one-leg", "--with", "weight_at=0", "--figures", "f"],
    "ten billion metres": ["bookcase-centre-tilt", "--with", "depth=1e12", "--figures", "f"],
    "no number": ["crate-ramp-strap", "--with", "mass=nan"],
    "many digits": ["crate-ramp-strap", "--with", f"mass={'9' * 5000}"],
    "a huge exponent": ["crate-ramp-strap", "--with", "mass=1e999999"],
    "a limit that is never reached": ["cabinet-slide-or-tip", "--with", "push_height=0"],
    "a beam of no length": ["stand-roof-inside", "--with", "reach=0"],
    "a beam of no length, asked where it bends most": ["loft-beam-bales", "--with", "span=0"],
    "a huge g": ["crate-ramp-strap", "--g", "1e999999"],
    "g that is no number": ["crate-ramp-strap", "--g", "nan"],
}


@pytest.mark.parametrize("words", LINES.values(), ids=LINES)
def test_values_nobody_has(
    words: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    result = CliRunner().invoke(main, ["work", *words])
    assert isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code == 1
    assert "mend" in result.output or "expected" in result.output
    assert not any(word in result.output for word in INSIDE)


def quantities(problem: Problem) -> tuple[Given | Derived, ...]:
    return (*problem.template.givens, *problem.template.derived)


def odd_values(problem: Problem, start: Draw, quantity: Given | Derived) -> Iterator[str]:
    """Nothing, the other way round, next to nothing, beyond measure, and what another one has."""
    own = start.values[quantity.id]
    yield from ("0", str(-own.value), "1e-9", "1e12", "1e40")
    for other in quantities(problem):
        if other is not quantity and other.unit == quantity.unit:
            yield str(start.values[other.id].value)


AT_ONCE = ("plank-raised-slowly", "stand-roof-inside", "tailgate-gas-struts")
"""A board that is level; a body cut through its length; a quotient of a weight that may be printed
as nothing.
"""
IDS = [
    pytest.param(id, marks=[] if id in AT_ONCE else [pytest.mark.proof])
    for id in sorted(default_bank().files)
]


@pytest.mark.parametrize("id", IDS)
def test_no_value_of_a_template_ends_in_a_traceback(id: str) -> None:
    """Points that coincide, lengths of nothing, bodies without weight: worked or refused."""
    problem = prepare(default_bank().read(id), Convention())
    start = draw_class(problem, "odd", ["1"]).draws[0]
    ends = Counter[bool]()
    for quantity in quantities(problem):
        for value in odd_values(problem, start, quantity):
            told = refusal(problem, start, {quantity.id: value})
            ends[bool(told)] += 1
            assert not any(word in told for word in INSIDE)
    assert ends[True]


def refusal(problem: Problem, start: Draw, stated: dict[str, str]) -> str:
    """What is said of values that cannot be worked, told and drawn; "" where they can."""
    try:
        made, _ = with_values(problem.template, start, stated)
        (worked,) = work(problem, [made])
        tell_steps(problem, worked)
        for _, scene in every_scene(problem, worked):
            svg(scene)
    except InputError as error:
        return str(error)
    return ""


RINGS = """
id = "rings"
revision = 1
title = "Rings"
family = "particles"
level = 1
goals = ["rings"]
statement = "Each ring hangs from two cords."
[given]
m = { symbol = "m", name = "mass", unit = "kg", from = 1, to = 9, step = 1 }
a = { symbol = "alpha", name = "angle", unit = "deg", from = 30, to = 50, step = 1 }
"""
BODY = "[body.ring_{n}]\nparticle = true\n"
REST = """
[[weight]]
body = "ring_{n}"
mass = "m"
symbol = "W_{n}"
[[cable]]
body = "ring_{n}"
direction = "180 - a"
symbol = "T_{n}"
name = "left cord of ring {n}"
[[cable]]
body = "ring_{n}"
direction = "a"
symbol = "S_{n}"
name = "right cord of ring {n}"
[[find]]
quantity = "T_{n}"
"""


def rings(count: int) -> str:
    return RINGS + "".join(part.format(n=n) for part in (BODY, REST) for n in range(1, count + 1))


def test_the_search_for_a_plan_has_a_bound() -> None:
    assert prepare(read_template(rings(2), "rings.toml"), Convention()).plan.steps
    with pytest.raises(InputError, match="too many orders of steps") as caught:
        prepare(read_template(rings(14), "rings.toml"), Convention())
    assert "rings.toml" in str(caught.value)


def test_a_requirement_on_what_nobody_asks_for() -> None:
    source = default_bank().read("seesaw-two-riders").source
    asked = re.search(r"\[\[find\]\]\nquantity = \"distance_2\"\n", source)
    assert asked
    template = read_template(source.replace(asked[0], ""), "a.toml")
    with pytest.raises(InputError, match=r"require\n +found +distance_2"):
        draw_class(prepare(template, Convention()), "s", ["1"])


@pytest.fixture
def no_callbacks() -> Iterator[None]:
    """Without what hypothesis has called at each collection, where no error may be raised."""
    before = list(gc.callbacks)
    gc.callbacks.clear()
    yield
    gc.callbacks.extend(before)


@pytest.mark.usefixtures("no_callbacks")
@pytest.mark.parametrize(
    ("limit", "rings_there", "told"),
    [
        ("probgen.bank.reading._SECONDS", 40, "reading it takes longer"),
        ("probgen.problem.problem._SECONDS", 4, "planning its working takes longer"),
        ("probgen.problem.template_check._SECONDS", 4, "proving its draws takes longer"),
    ],
)
def test_every_stage_of_a_template_is_limited(
    limit: str, rings_there: int, told: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(limit, 0.0005)
    monkeypatch.setattr("probgen.problem.template_check._SECONDS_A_DRAW", 0.0)
    with pytest.raises(InputError, match=told):
        check_template(read_template(rings(rings_there), "rings.toml"), 20_000)
