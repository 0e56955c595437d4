"""Into which of several equations a condition is put, and which is solved for what."""

from __future__ import annotations

from tests.wording.own_telling import told_of
from tests.wording.test_together import in_order


def test_a_balance_of_the_same_name_as_another_is_called_by_its_body_too() -> None:
    lines = told_of("ridge-two-pallets")
    in_order(
        lines,
        "We put f_1 = μ_s N_1 and f_2 = μ_s N_2 into both balances and solve ΣF_∥ = 0 of the left "
        "pallet for T,",
        "and put this into ΣF_∥ = 0 of the right pallet, which leaves μ_s as the only unknown:",
    )


def test_what_is_put_into_one_balance_alone_names_it() -> None:
    """The friction stands in the balance along x, the normal push comes out of that along y."""
    lines = told_of("ferry-bollard")
    in_order(
        lines,
        "We put f = μ_1 N into ΣF_x = 0 and solve ΣF_y = 0 for N,",
        "and put this into ΣF_x = 0, which leaves S as the only unknown:",
    )
