"""Values nobody would choose: one clear message, and no traceback."""

from __future__ import annotations

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
