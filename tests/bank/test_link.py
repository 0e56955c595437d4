"""Which bodies are two-force members, and what their force is called."""

from __future__ import annotations

import pytest

from probgen.bank.labels import BodyNamed
from probgen.bank.reading import read_template
from probgen.statics.system import Role
from tests.situations import THREE_HINGES

WEIGHT = '[[weight]]\nbody = "left"\nmass = "m"\nuniform = true\nsymbol = "W_l"\n'
COUPLE = '[[couple]]\nbody = "left"\nat = "C"\nmoment = "3 N*m"\nsymbol = "K"\n'
PUSH = '[[force]]\nbody = "left"\nat = "C"\nmagnitude = "3 N"\ndirection = 0\nsymbol = "K"\n'
THIRD_PIN = '[[hinge]]\nbody = "left"\nat = "C"\nsymbol = "H"\n'
ROPE = '[[cable]]\nbody = "left"\nat = "C"\ndirection = 180\nsymbol = "T"\n'


def test_the_force_is_called_after_the_points_it_is_pinned_at() -> None:
    template = read_template(THREE_HINGES, "own.toml")
    (link,) = template.system.members
    assert (link.body, link.start, link.end, link.force.symbol) == ("left", "A", "C", "F_𝐴𝐶")
    assert template.system.variables["F_AC"].role is Role.UNKNOWN
    assert template.system.variables["R.x"].role is Role.DEFINED
    felt = {template.labels.elements[id].name for id in ("Q", "Q'")}
    assert felt == {BodyNamed("left"), BodyNamed("right")}


@pytest.mark.parametrize("beside", [WEIGHT, COUPLE, PUSH, THIRD_PIN, ROPE])
def test_what_carries_something_else_is_none(beside: str) -> None:
    system = read_template(THREE_HINGES + beside, "own.toml").system
    assert not system.members
    assert system.variables["R.x"].role is Role.UNKNOWN


def test_another_letter_where_the_first_is_taken() -> None:
    given = 'F_AC = { name = "push", choices = [2], unit = "N" }\n[points]'
    push = PUSH.replace('"left"', '"right"').replace('"3 N"', '"F_AC"').replace('"K"', '"F_AC"')
    text = THREE_HINGES.replace("[points]", given) + push
    (link,) = read_template(text, "own.toml").system.members
    assert link.force.symbol == "S_𝐴𝐶"
