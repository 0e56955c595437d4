"""What is asked, as a phrase."""

from collections.abc import Sequence
from dataclasses import replace

import pytest

from probgen.bank.bank import default_bank
from probgen.quantities.expression import Name, number
from probgen.quantities.printing import plain
from probgen.statics.system import Find, Form, Limit
from probgen.wording.block import Inline, Text
from probgen.wording.english import ENGLISH
from probgen.wording.find import tell_find
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import plain_text

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
    ("R", Form.COMPONENTS, "the push {{ R }} at {{ A }}, as parts", "the push R at A, as parts"),
    ("T", Form.VALUE, "{{ T }} if {{ length | quantity }} is {{ length }}", "T if length is L"),
]


def test_of_a_pin_between_two_bodies_it_is_said_on_which_the_force_acts() -> None:
    """Which one that is stands in the template; the other has the force the opposite way."""
    template = default_bank().read("stepladder-tie")
    nouns = Nouns(template.system, template.labels)
    phrases = [plain_text(tell_find(find, nouns, ENGLISH)) for find in template.system.finds]
    assert phrases[-1] == (
        "the magnitude and direction of the force on the left side from the hinge, R"
    )


LIMITS = (
    Limit("breaks", Name("T", "T"), "<=", number(900)),
    Limit("slips", Name("f", "f"), "<=", number(9)),
)
EVENTS = {"breaks": "the cable breaks", "slips": "the foot slips"}
HOLDS = "whether it holds (if not, {}), and by what margin"
ON_LIMITS = [
    (1, "T", Form.LARGEST, "the largest tension in the cable, T, before the cable breaks"),
    (
        2,
        "T",
        Form.SMALLEST,
        "the smallest tension in the cable, T, that is possible, and what happens first beyond "
        "it: the cable breaks or the foot slips",
    ),
    (2, "", Form.HOLDS, HOLDS.format("the cable breaks or the foot slips")),
    (2, "slips", Form.HOLDS, HOLDS.format("the foot slips")),
]


def shown(inlines: Sequence[Inline]) -> str:
    """Text with the symbols in it as they are typed."""
    return "".join(i.text if isinstance(i, Text) else plain(i.formula) for i in inlines)


@pytest.mark.parametrize(("count", "quantity", "form", "told"), ON_LIMITS)
def test_what_is_asked_about_limits(count: int, quantity: str, form: Form, told: str) -> None:
    template = default_bank().read("beam-stay-cable")
    system = replace(template.system, limits=LIMITS[:count])
    nouns = Nouns(system, replace(template.labels, limits=EVENTS))
    inlines = tell_find(Find(quantity, form), nouns, ENGLISH)
    assert shown(inlines) == told


@pytest.mark.parametrize(("quantity", "form", "wording", "told"), FINDS)
def test_what_is_asked_in_words(quantity: str, form: Form, wording: str, told: str) -> None:
    template, find = default_bank().read("beam-stay-cable"), Find(quantity, form)
    labels = replace(template.labels, finds={find: wording} if wording else {})
    inlines = tell_find(find, Nouns(template.system, labels), ENGLISH)
    assert shown(inlines) == told


def test_a_push_between_two_bodies_is_asked_for_on_one_of_them() -> None:
    """Not what comes from outside, on which there is one."""
    template = default_bank().read("footbridge-two-beams")
    nouns = Nouns(template.system, template.labels)
    asked = [shown(tell_find(find, nouns, ENGLISH)) for find in template.system.finds]
    assert asked[:2] == [
        "the force from the long beam on the short beam, P",
        "the force from the pier, N_B",
    ]
