"""[[section]]: the part kept and what it bears, against what is integrated along the beam."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import InputError
from probgen.statics.internal_forces import Inside, internal_forces
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from tests.situations import HEAD

BEAM = """
[given]
L = { name = "length", choices = [6.0, 7.0], unit = "m" }
a = { name = "distance to the load", choices = [1.5], unit = "m" }
d = { name = "distance to the section", choices = [2.5, 3.5], unit = "m" }
F = { name = "load", choices = [900, 950], unit = "N" }
w = { name = "load per length", choices = [120, 130], unit = "N/m" }
[points]
A = [0, 0]
C = ["a", 0]
D = ["d", 0]
E = ["5 m", 0]
B = ["L", 0]
[body.beam]
along = ["A", "B"]
"""
ON_TWO = """
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "B"
symbol = "S"
"""
BUILT_IN = """
[[fixed]]
at = "B"
symbol = "R"
couple = "M_B"
"""
LOAD = """
[[force]]
at = "C"
magnitude = "F"
direction = 300
"""
TURNED = """
[[couple]]
at = "C"
moment = "-400 N*m"
symbol = "C_0"
"""
CUT = """
[[section]]
at = "D"
"""
FINDS = "".join(f'\n[[find]]\nquantity = "{letter}_D"\n' for letter in "NVM")


def spread(start: str, end: str, first: str, last: str) -> str:
    return f"""
[[distributed]]
from = "{start}"
to = "{end}"
start = {first}
end = {last}
symbol = "Q"
"""


def read(text: str) -> Template:
    return read_template(HEAD + text, "trial.toml")


def faults(text: str) -> str:
    with pytest.raises(InputError) as raised:
        read(text)
    return str(raised.value)


SLOPING = BEAM.replace(
    'C = ["a", 0]\nD = ["d", 0]\nE = ["5 m", 0]\nB = ["L", 0]',
    "\n".join(
        f'{name} = {{ from = "A", distance = "{far}", direction = 25 }}'
        for name, far in (("C", "a"), ("D", "d"), ("E", "5 m"), ("B", "L"))
    ),
)
MIRRORED = BEAM.replace('along = ["A", "B"]', 'along = ["B", "A"]')
CASES = [
    # what holds and loads it, the part kept
    (BEAM + ON_TWO + LOAD, ("D", "B")),
    (BEAM + ON_TWO + TURNED, ("D", "B")),
    (BEAM + ON_TWO + LOAD + spread("A", "B", '"w"', '"w"'), ("D", "B")),
    (BEAM + BUILT_IN + LOAD + spread("A", "B", "0", '"w"'), ("A", "D")),
    (BEAM + BUILT_IN + LOAD + spread("B", "A", "0", '"w"'), ("A", "D")),
    (BEAM + BUILT_IN + spread("C", "E", '"w"', '"2*w"'), ("A", "D")),
    (BEAM + ON_TWO + spread("E", "C", '"w"', '"2*w"'), ("D", "B")),
    (BEAM + ON_TWO + LOAD + spread("A", "C", '"w"', "0"), ("D", "B")),
    (BEAM + ON_TWO + LOAD + spread("D", "E", '"w"', "0"), ("D", "B")),
    (SLOPING + ON_TWO + LOAD + spread("A", "B", '"w"', "0"), ("D", "B")),
    (SLOPING + BUILT_IN + LOAD + spread("A", "B", '"w"', '"w"'), ("A", "D")),
    (MIRRORED + ON_TWO + LOAD + spread("A", "E", '"w"', '"w"'), ("B", "D")),
]


@pytest.mark.parametrize(("text", "kept"), CASES)
def test_what_is_bared_is_what_acts_there(text: str, kept: tuple[str, str]) -> None:
    system = read(text + CUT + FINDS).system
    assert [body.outline for body in system.bodies if body.part_of == "beam"] == [kept]
    values = {"L": [6.0, 7.0], "a": [1.5, 1.5], "d": [2.5, 3.5], "F": [900, 950], "w": [120, 130]}
    given = {id: np.array(each, float) for id, each in values.items()} | {"g": np.full(2, 9.8)}
    plan = find_plan(system, given)
    found = solve(plan, given)
    proof = prove(plan, found)
    blamed = {flaw.quantity for fault in proof.faults for flaw in fault}
    assert proof.max_residual.max() < 1e-12
    assert blamed <= {"S"}  # a roller may have to pull
    for draw in range(2):
        one = {id: float(np.broadcast_to(v, 2)[draw]) for id, v in proof.values.items()}
        inside = internal_forces(system.uncut, one, "beam")
        x = one["d"] if kept != ("B", "D") else one["L"] - one["d"]
        asked = [one[f"{letter}_D"] for letter in "NVM"]
        assert asked == pytest.approx([inside.at(x, of) for of in Inside], abs=1e-9)


def test_the_side_of_what_acts_at_the_section_itself_is_said() -> None:
    at_load = BEAM.replace('D = ["d", 0]', 'D = ["a", 0]') + ON_TWO + LOAD
    told = faults(at_load + CUT + FINDS)
    assert told.startswith("1 problem")
    assert "section 1, just" in told
    assert 'just = "before"' in told
    for just, signs in (("before", {"S": 1, "F": 1}), ("after", {"S": 1})):
        system = read(at_load + CUT + f'just = "{just}"\n' + FINDS).system
        (part,) = (body for body in system.bodies if body.part_of)
        on = {force.element for force in system.forces if force.body == part.id}
        assert on == signs.keys() | {"N_D"}


FAULTY = [
    (BEAM.replace('D = ["d", 0]', 'D = ["L", 0]') + ON_TWO, "a point between A and B"),
    (BEAM.replace('D = ["d", 0]', 'D = ["d", "0.1 m"]') + ON_TWO, "a point between A and B"),
    (BEAM.replace("choices = [1.5]", "choices = [1.5, 3.0]") + ON_TWO + LOAD, "in all draws"),
    (BEAM.replace('C = ["a", 0]', 'C = ["a", "0.2 m"]') + ON_TWO + LOAD, "on its axis"),
    (BEAM + ON_TWO + '[[weight]]\nforce = "90 N"\nsymbol = "W"\nuniform = true\n', "distributed"),
    (BEAM.replace('"A", "B"]\n', '"A", "C", "B"]\n') + ON_TWO, "a straight body"),
]


@pytest.mark.parametrize(("text", "told"), FAULTY)
def test_faults_are_told(text: str, told: str) -> None:
    assert told in faults(text + CUT + FINDS)


def test_letters_may_be_chosen() -> None:
    chosen = CUT + 'axial = "H"\nshear = "V"\ncouple = "M"\n'
    system = read(BEAM + ON_TWO + LOAD + chosen + '[[find]]\nquantity = "M"\n').system
    assert {"H", "V", "M"} <= set(system.unknowns)


def test_two_sections_of_one_body() -> None:
    second = '[[section]]\nat = "E"\n[[find]]\nquantity = "M_E"\n'
    load = spread("A", "B", '"w"', '"w"')
    system = read(BEAM + ON_TWO + LOAD + load + CUT + second + FINDS).system
    assert [body.id for body in system.bodies] == ["beam", "part-D-B", "part-E-B"]
    assert len({force.id for force in system.forces if force.kind == "distributed"}) == 3


TAKEN = ("w_D", "q_D", "p_D", "k_D")


@pytest.mark.parametrize(("taken", "letter"), [(0, "w_D"), (2, "p_D"), (4, "w_1")])
def test_the_size_of_a_load_at_the_cut_has_a_letter_that_is_free(taken: int, letter: str) -> None:
    """A load from w to 2 w along the beam, cut between its ends."""
    given = "".join(
        f'{id} = {{ name = "size {id}", choices = [3.0], unit = "N" }}\n' for id in TAKEN[:taken]
    )
    text = BEAM.replace("[given]\n", f"[given]\n{given}") + ON_TWO
    system = read(text + spread("A", "B", '"w"', '"2*w"') + CUT + FINDS).system
    assert system.variables[letter].unit.name == "N/m"
