"""Two bodies on one rope, told together: whose balances come first, why friction is so large."""

from __future__ import annotations

from probgen.working.convention import Convention
from tests.wording.own_telling import told_of

LEVEL = Convention(torque="components", axes="level")


def test_why_friction_has_its_size_is_said_before_it_is_used() -> None:
    """Of two surfaces with one coefficient, whose least is asked, once."""
    lines = told_of("ridge-two-pallets")
    at = lines.index("f_1 = μ_s N_1")
    assert lines[at - 2 : at + 2] == [
        "ΣF_∥ = −f_2 − T + W_2 sin β = 0",
        "Static friction can be at most the coefficient times the normal push. With the least "
        "coefficient that will do, it reaches this.",
        "f_1 = μ_s N_1",
        "f_2 = μ_s N_2",
    ]
    assert not any("Friction is" in line for line in lines)


def test_balances_solved_together_come_as_their_bodies_were_drawn() -> None:
    told = [line for line in told_of("ridge-two-pallets", LEVEL) if "pallet balance:" in line]
    assert [line.split(":")[0] for line in told] == [
        "The forces on the left pallet balance",
        "The forces on the right pallet balance",
    ]
