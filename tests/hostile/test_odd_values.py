"""Values nobody would choose: one clear message, and no traceback."""

from __future__ import annotations

import time
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.input.fault import InputError
from probgen.problem.problem import draw_class, prepare
from probgen.working.convention import Convention

PLANK = Path(__file__).parents[2] / "templates" / "particles" / "plank-raised-slowly.toml"


def test_a_coefficient_without_measure_is_refused() -> None:
    """The friction force seemed to drop out of a balance at -1e12, and had not."""
    text = PLANK.read_text(encoding="utf-8")
    odd = text.replace("from = 0.36, to = 0.76, step = 0.01", "choices = [0.40, -1e12]")
    assert odd != text
    with pytest.raises(InputError):
        draw_class(prepare(read_template(odd, "plank.toml"), Convention()), "odd", ["1"])


TEMPLATES = PLANK.parents[1]
SPOILT = {
    "a point at a division by zero": (
        "structures/gate-two-hinges.toml", '"hinge_gap/2"', '"hinge_gap/0.0"', "division by zero",
    ),
    "a length over zero": (
        "ladders/stepladder-tie.toml", '"-feet/2"', '"-feet/0"', "division by zero",
    ),
    "a word for what has none": (
        "levers/wheelbarrow-compost.toml", "{{ barrow_mass | quantity }}", "{{ H | quantity }}",
        "a quantity before it",
    ),
    "a requirement that nobody meets": (
        "ladders/ladder-how-far-up.toml", "0.35*length", "180*length", "were all refused",
    ),
}  # fmt: skip
"""What fuzzing found, each in the file it was found in."""


@pytest.mark.parametrize(("name", "old", "new", "told"), SPOILT.values(), ids=SPOILT)
def test_spoilt_templates_are_refused(name: str, old: str, new: str, told: str) -> None:
    text = (TEMPLATES / name).read_text(encoding="utf-8")
    assert old in text
    before = time.process_time()
    with pytest.raises(InputError, match=told):
        draw_class(prepare(read_template(text.replace(old, new), name), Convention()), "s", ["1"])
    assert time.process_time() - before < 8.0
