"""Two texts told as one."""

import pytest

from probgen.department.rewording import Fate, rewording

LONG = " ".join(f"w{place}" for place in range(30))


@pytest.mark.parametrize(
    ("before", "after", "told"),
    [
        ("a red bag", "a green bag", "a -red +green bag"),
        ("", "new", "+new"),
        ("old", "", "-old"),
        ("a bag", "a heavy bag", "a +heavy bag"),
        (f"{LONG} red", f"{LONG} green", "… w25 w26 w27 w28 w29 -red +green"),
        (f"red {LONG}", f"green {LONG}", "-red +green w0 w1 w2 w3 w4 …"),
        (
            f"x {LONG} y",
            f"z {LONG} q",
            "-x +z w0 w1 w2 w3 w4 … w25 w26 w27 w28 w29 -y +q",
        ),
    ],
)
def test_words_that_went_and_came(before: str, after: str, told: str) -> None:
    signs = {Fate.STAYED: "", Fate.WENT: "-", Fate.CAME: "+"}
    assert " ".join(signs[each.fate] + each.text for each in rewording(before, after)) == told
