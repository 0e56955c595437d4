"""What quantities are worked out from, and which definitions data alone settle."""

from probgen.bank.reading import read_template
from probgen.statics.definition import names_behind, settle
from tests.situations import SLOPE, crate, finding


def test_what_waits_for_an_unknown_is_told_from_what_data_settle() -> None:
    """The weight follows from the mass; a share of the pull, and half of that, do not."""
    shares = (
        '[[find]]\nvalue = "T/2"\nunit = "N"\nsymbol = "S"\nname = "half of the pull"\n'
        '[[find]]\nvalue = "S/2"\nunit = "N"\nsymbol = "Q"\nname = "half of that"\n'
    )
    text = crate() + SLOPE + 'coefficient = "mu"\n' + finding("T") + shares
    settled, waiting = settle(read_template(text, "own.toml").system)
    assert "W_c" in [each.variable for each in settled]
    assert [each.variable for each in waiting] == ["S", "Q"]


def test_what_a_quantity_is_worked_out_from_is_found_through_others() -> None:
    chain = (
        '[[find]]\nvalue = "T/2"\nunit = "N"\nsymbol = "S"\nname = "half of the pull"\n'
        '[[find]]\nvalue = "S/2"\nunit = "N"\nsymbol = "Q"\nname = "half of that"\n'
    )
    text = crate() + SLOPE + 'coefficient = "mu"\n' + finding("T") + chain
    definitions = read_template(text, "own.toml").system.definitions
    assert names_behind(["Q"], definitions) == {"Q", "S", "T"}
    assert names_behind(["T"], definitions) == {"T"}
