"""[depicts] read: each word from the vocabulary of its kind, any other refused with the nearest."""

from __future__ import annotations

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.depiction import (
    Anchor,
    Depictions,
    Fluid,
    Hinge,
    Load,
    Look,
    Manner,
    Roller,
    Source,
    Thing,
    Touch,
)
from probgen.bank.labels import Carried
from probgen.bank.reading import read_template
from probgen.input.fault import Fault, InputError

HEAD = """
id = "case"
revision = 1
title = "Case"
family = "beams"
level = 1
goals = ["drawing"]
statement = "Case."
[given]
L = { name = "length", choices = [3.0], unit = "m" }
m = { name = "mass of the tree", choices = [12.0], unit = "kg" }
p = { name = "push", choices = [20], unit = "N" }
[points]
A = [0, 0]
B = ["L", 0]
[body.shelf]
along = ["A", "B"]
[body.knot]
particle = true
[[hinge]]
body = "shelf"
at = "A"
symbol = "R"
[[roller]]
body = "shelf"
at = "B"
symbol = "N"
[[fulcrum]]
body = "shelf"
at = "B"
symbol = "N_f"
name = "rock"
[[contact]]
body = "knot"
direction = 90
symbol = "N_k"
[[cable]]
body = "knot"
direction = 120
symbol = "T"
[[muscle]]
body = "shelf"
at = "B"
direction = 100
symbol = "F"
[[force]]
body = "shelf"
at = "B"
direction = 90
magnitude = "p"
[[weight]]
body = "shelf"
at = "B"
mass = "m"
symbol = "W"
[[weight]]
body = "shelf"
uniform = true
mass = "2*m"
of = "shelf"
symbol = "W_s"
[[weight]]
body = "knot"
mass = "m"
of = "knot"
symbol = "W_k"
[[distributed]]
body = "shelf"
from = "A"
to = "B"
load = "12 N/m"
symbol = "Q_s"
[[find]]
quantity = "T"
"""


def depicted(*lines: str) -> Depictions:
    return read_template(HEAD + "[depicts]\n" + "\n".join(lines), "case.toml").depicts


def fault_of(line: str) -> Fault:
    with pytest.raises(InputError) as raised:
        depicted(line)
    (fault,) = raised.value.faults
    return fault


def test_each_kind_has_words_of_its_own() -> None:
    shown = depicted(
        'shelf = "plank"', 'knot = "crate"', 'R = "wall"', 'N = "wheel"', 'N_k = "edge"',
        'T = "post"', 'p = "scale"', 'W = "lamp"', 'Q_s = "water"',
    )  # fmt: skip
    assert shown.bodies == {"shelf": Look.PLANK, "knot": Look.CRATE}
    assert shown.hinges == {"R": Hinge.WALL}
    assert shown.rollers == {"N": Roller.WHEEL}
    assert shown.contacts["N_k"] is Touch.EDGE
    assert shown.lines == {"T": Anchor.POST}
    assert shown.forces == {"p": Source.SCALE}
    assert shown.fluids == {"Q_s": Fluid.WATER}
    assert shown.loads["W"] == Load(Thing.LAMP, Manner.HANGS)


def test_a_fulcrum_is_one_whatever_it_is_called_unless_said_otherwise() -> None:
    assert depicted().contacts == {"N_f": Touch.FULCRUM}
    assert depicted('N_f = "log"').contacts == {"N_f": Touch.BRANCH}


def test_the_weight_of_a_body_itself_is_its_centre_of_mass_and_no_load() -> None:
    own = Load(Thing.CENTRE, Manner.HELD)
    assert depicted().loads == {"W_s": own}  # not that of the tree, nor of a particle
    assert depicted('W_s = "crate"').loads["W_s"].thing is Thing.CRATE


LANTERN = HEAD.replace('symbol = "W"\n', "").replace("mass of the tree", "mass of the lantern")


def test_a_weight_goes_by_its_letter_on_paper_too() -> None:
    """A small L would be read as a 1: what is W_l in the file is printed as W_la."""
    for letter in ("W_l", "W_la"):
        shown = read_template(LANTERN + f'[depicts]\n{letter} = "lamp"\n', "case.toml").depicts
        assert shown.loads["W_l"].thing is Thing.LAMP
    with pytest.raises(InputError) as raised:
        read_template(LANTERN + '[depicts]\nW_l = "lamp"\nW_la = "crate"\n', "case.toml")
    (fault,) = raised.value.faults
    assert (fault.field, fault.expected) == (
        "depicts.W_la", "one word for W_l, as W_la is its letter on paper"
    )  # fmt: skip


@pytest.mark.parametrize(
    ("line", "expected", "mend"),
    [
        ('shelf = "laddr"', "a word for a body: beam, plank", 'did you mean "ladder"?'),
        ('shelf = "Ladder"', "a word for a body", 'did you mean "ladder"?'),
        ('shelf = "knot"', "a word for a body", "see templates/README.md"),
        ('knot = "ladder"', "a word for a particle: ring", "see templates/README.md"),
        ('R = "fulcrm"', "a word for a hinge", 'did you mean "fulcrum"?'),
        ('N = "weel"', "a word for a roller", 'did you mean "wheel"?'),
        ('N_k = "branhc"', "a word for a contact", 'did you mean "branch"?'),
        ('T = "crate"', "a word for a cable", "see templates/README.md"),
        ('p = "scales"', "a word for a force", 'did you mean "scale"?'),
        ('W = "hung crate"', "a word for a weight", "did you mean"),
        ('Q_s = "watr"', "a word for a distributed load: water", 'did you mean "water"?'),
        ('F = "muscle"', "no word", "leave it out"),
        ('X = "crate"', "one of a body or an element", ""),
        (
            'knot = "wedge"',
            "two contacts, whose faces it lies between; this has 1",
            "add [[rough]]",
        ),
    ],
)
def test_a_word_of_no_vocabulary_is_refused_with_the_nearest(
    line: str, expected: str, mend: str
) -> None:
    fault = fault_of(line)
    assert fault.field == f"depicts.{line.split()[0]}"
    assert expected in fault.expected
    assert mend in fault.mend


def test_words_of_others_are_judged_beside_a_body_whose_outline_is_at_fault() -> None:
    head = HEAD.replace("[body.knot]\nparticle = true", '[body.knot]\nalong = ["A"]')
    assert head != HEAD
    with pytest.raises(InputError) as raised:
        read_template(head + '[depicts]\nknot = "crte"\nR = "fulcrm"\n', "case.toml")
    fields = [fault.field for fault in raised.value.faults]
    assert "depicts.R" in fields
    assert "depicts.knot" not in fields


def test_what_a_body_carries_is_told_from_its_own_parts() -> None:
    """The word of a load says how it is carried; a head and a centre of mass are the body's own."""

    def carried(name: str) -> dict[str, str]:
        return dict(default_bank().read(name).labels.carried)

    assert carried("bent-back-toolbox") == {"W_s": Carried.PULLS}
    assert carried("trestle-plank-walk") == {"W_t": Carried.PUSHES, "W_m": Carried.PUSHES}
    assert carried("leg-raise-cuff") == {"W_c": Carried.ACTS}
    assert carried("sign-l-plate") == {}
