"""[[diagram]]: which bodies may have one."""

from __future__ import annotations

import pytest

from probgen.bank.reading import read_template
from probgen.input.fault import InputError
from tests.bank.test_section import BEAM, CUT, FINDS, LOAD, ON_TWO, SLOPING, spread
from tests.situations import HEAD

DIAGRAM = "[[diagram]]\n"


def test_the_only_body_need_not_be_named() -> None:
    text = HEAD + BEAM + ON_TWO + LOAD + CUT + FINDS
    assert read_template(text + DIAGRAM, "trial.toml").system.diagrams == ("beam",)
    assert read_template(text, "trial.toml").system.diagrams == ()


def test_a_load_may_be_told_from_the_other_end() -> None:
    text = HEAD + BEAM + ON_TWO + spread("B", "A", '"w"', "0") + ASKED + DIAGRAM
    assert read_template(text, "trial.toml").system.diagrams == ("beam",)


OWN = '[[weight]]\nforce = "90 N"\nsymbol = "W"\nuniform = true\n'
ASIDE = BEAM.replace('E = ["5 m", 0]', 'E = ["5 m", "1 m"]')
FAULTY = [
    (SLOPING + ON_TWO + LOAD + DIAGRAM, "level, from left to right"),
    (BEAM.replace('"A", "B"]\n', '"B", "A"]\n') + ON_TWO + DIAGRAM, "level, from left to right"),
    (BEAM.replace('"A", "B"]\n', '"A", "E", "B"]\n') + ON_TWO + DIAGRAM, "a straight body"),
    (BEAM + ON_TWO + OWN + DIAGRAM, "write its weight as a distributed load"),
    (ASIDE + ON_TWO + spread("A", "E", '"w"', '"w"') + DIAGRAM, "spread along it"),
    (BEAM + ON_TWO + DIAGRAM + DIAGRAM, "no diagram yet"),
]
ASKED = '[[find]]\nquantity = "S"\n'


@pytest.mark.parametrize(("text", "told"), FAULTY)
def test_faults_are_told(text: str, told: str) -> None:
    with pytest.raises(InputError) as raised:
        read_template(HEAD + text + ASKED, "trial.toml")
    assert told in str(raised.value)


SHEET = '[[diagram]]\non = "sheet"\n'


def test_a_diagram_may_be_the_student_s_to_draw() -> None:
    text = HEAD + BEAM + ON_TWO + LOAD + CUT + FINDS
    system = read_template(text + SHEET, "trial.toml").system
    assert (system.diagrams, system.to_draw) == (("beam",), ("beam",))
    for entry in (DIAGRAM, SHEET.replace("sheet", "key")):
        assert read_template(text + entry, "trial.toml").system.to_draw == ()


OPEN = '[unknown]\nz = { name = "length", unit = "m" }\n[points]\n'
UNKNOWN = BEAM.replace("[points]\n", OPEN).replace('B = ["L", 0]', 'B = ["z", 0]')
NO_AXES = [
    (BEAM + ON_TWO + SHEET.replace("sheet", "paper"), "on", "one of key, sheet"),
    (BEAM + ON_TWO + '[picture]\nL = "9 m"\n' + SHEET, "on", "leave [picture] out, or on"),
    (UNKNOWN + ON_TWO + SHEET, "on", "z is to be found"),
]


@pytest.mark.parametrize(("text", "field", "told"), NO_AXES)
def test_where_no_axes_can_stand(text: str, field: str, told: str) -> None:
    with pytest.raises(InputError) as raised:
        read_template(HEAD + text + ASKED, "trial.toml")
    (fault,) = raised.value.faults
    assert fault.field == f"diagram[0].{field}"
    assert told in f"{fault.expected}\n{fault.mend}"
