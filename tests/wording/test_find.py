"""What is asked, as a phrase."""

from dataclasses import replace

import pytest

from probgen.bank.bank import default_bank
from probgen.quantities.expression import Name, number
from probgen.statics.system import Find, Form, Limit
from probgen.wording.block import Text
from probgen.wording.english import ENGLISH
from probgen.wording.find import tell_find
from probgen.wording.nouns import Nouns

FINDS = [
    ("T", Form.VALUE, "", "the tension in the cable, T"),
    ("R", Form.COMPONENTS, "", "the components of the force from the hinge, R"),
    (
        "R",
        Form.MAGNITUDE_AND_DIRECTION,
        "",
        "the magnitude and direction of the force from the hinge, R",
    ),
    ("R", Form.COMPONENTS, "what the hinge does", "what the hinge does"),
]


LIMITS = (
    Limit("breaks", Name("T", "T"), "<=", number(900), "the cable breaks"),
    Limit("slips", Name("f", "f"), "<=", number(9), "the foot slips"),
)
ON_LIMITS = [
    (1, "T", Form.LARGEST, "the largest tension in the cable, T, before the cable breaks"),
    (
        2,
        "T",
        Form.SMALLEST,
        "the smallest tension in the cable, T, that is possible, and what happens first beyond "
        "it: the cable breaks or the foot slips",
    ),
    (2, "", Form.HOLDS, "whether the cable breaks or the foot slips, and by what margin"),
    (2, "slips", Form.HOLDS, "whether the foot slips, and by what margin"),
]


@pytest.mark.parametrize(("count", "quantity", "form", "told"), ON_LIMITS)
def test_what_is_asked_about_limits(count, quantity, form, told):
    system = replace(default_bank().read("beam-stay-cable").system, limits=LIMITS[:count])
    inlines = tell_find(Find(quantity, form), Nouns(system), ENGLISH)
    shown = [i.text if isinstance(i, Text) else i.formula[0].symbol for i in inlines]
    assert "".join(shown) == told


@pytest.mark.parametrize(("quantity", "form", "wording", "told"), FINDS)
def test_what_is_asked_in_words(quantity, form, wording, told):
    system = default_bank().read("beam-stay-cable").system
    inlines = tell_find(Find(quantity, form, wording), Nouns(system), ENGLISH)
    shown = [i.text if isinstance(i, Text) else i.formula[0].symbol for i in inlines]
    assert "".join(shown) == told
