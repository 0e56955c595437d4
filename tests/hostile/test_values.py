"""Templates and values nobody should state: one clear error each, and no traceback."""

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.cli import main
from probgen.input.fault import InputError
from probgen.problem.problem import draw_class, prepare
from probgen.problem.template_check import check_template
from probgen.working.convention import Convention

LINES = {
    "a mass of 0": ["crate-ramp-strap", "--with", "mass=0"],
    "two points in one": ["hip-one-leg", "--with", "weight_at=0", "--figures", "f"],
    "ten billion metres": ["bookcase-centre-tilt", "--with", "depth=1e12", "--figures", "f"],
    "no number": ["crate-ramp-strap", "--with", "mass=nan"],
    "many digits": ["crate-ramp-strap", "--with", f"mass={'9' * 5000}"],
    "a huge exponent": ["crate-ramp-strap", "--with", "mass=1e999999"],
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
    for inside in ("Traceback", "Decimal", "KeyError", "<class"):
        assert inside not in result.output


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
