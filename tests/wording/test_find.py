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
    Limit("breaks", Name("T", "T"), "<=", number(900)),
    Limit("slips", Name("f", "f"), "<=", number(9)),
)
EVENTS = {"breaks": "the cable breaks", "slips": "the foot slips"}
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
    template = default_bank().read("beam-stay-cable")
    system = replace(template.system, limits=LIMITS[:count])
    nouns = Nouns(system, replace(template.labels, limits=EVENTS))
    inlines = tell_find(Find(quantity, form), nouns, ENGLISH)
    shown = [i.text if isinstance(i, Text) else i.formula[0].symbol for i in inlines]
    assert "".join(shown) == told


@pytest.mark.parametrize(("quantity", "form", "wording", "told"), FINDS)
def test_what_is_asked_in_words(quantity, form, wording, told):
    template, find = default_bank().read("beam-stay-cable"), Find(quantity, form)
    labels = replace(template.labels, finds={find: wording} if wording else {})
    inlines = tell_find(find, Nouns(template.system, labels), ENGLISH)
    shown = [i.text if isinstance(i, Text) else i.formula[0].symbol for i in inlines]
    assert "".join(shown) == told
