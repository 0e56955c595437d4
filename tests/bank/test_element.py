"""Supports and lines of pull: their forces, what acts back, and what an author can get wrong."""

from collections.abc import Callable, Sequence
from decimal import Decimal

import pytest

from probgen.bank.labels import BodyNamed, Label, Slipping
from probgen.bank.reading import read_template
from probgen.input.fault import Fault, InputError
from probgen.quantities.expression import Call, Name, Number, Product, Sum, number
from probgen.quantities.parser import parse
from probgen.quantities.unit import UNITS
from probgen.statics.system import Kind, Role, System

L = Name("L", "L")


def system_of(text: str) -> System:
    return read_template(text, "pair.toml").system


def faults_of(text: str) -> Sequence[Fault]:
    with pytest.raises(InputError) as caught:
        read_template(text, "pair.toml")
    return caught.value.faults


# An entry, and of each force and its reaction: kind, body, point, direction.
BETWEEN = [
    (
        '[[hinge]]\nbody = "post"\nother = "prop"\nat = "K"\nsymbol = "R"',
        {
            "R.x": (Kind.HINGE, "post", "K", "0"),
            "R.x'": (Kind.HINGE, "prop", "K", "180"),
            "R.y": (Kind.HINGE, "post", "K", "90"),
            "R.y'": (Kind.HINGE, "prop", "K", "270"),
        },
    ),
    (
        '[[cable]]\nbody = "post"\nother = "prop"\nat = "J"\ntoward = "Q"\nsymbol = "T"',
        {"T": (Kind.CABLE, "post", "J", "0"), "T'": (Kind.CABLE, "prop", "Q", "180")},
    ),
    (
        '[[strut]]\nbody = "post"\nother = "prop"\nat = "J"\naway_from = "Q"\nsymbol = "S"',
        {"S": (Kind.STRUT, "post", "J", "180"), "S'": (Kind.STRUT, "prop", "Q", "0")},
    ),
    (
        '[[contact]]\nbody = "ring"\nother = "post"\nat = "K"\ndirection = 100\nsymbol = "N"',
        {"N": (Kind.CONTACT, "ring", "K", "100"), "N'": (Kind.CONTACT, "post", "K", "280")},
    ),
    (
        '[[contact]]\nbody = "post"\nother = "ring"\nat = "K"\ndirection = "-20"\nsymbol = "N"',
        {"N": (Kind.CONTACT, "post", "K", "-20"), "N'": (Kind.CONTACT, "ring", "K", "160")},
    ),
    (
        '[[rough]]\nbody = "post"\nother = "prop"\nat = "K"\nnormal = "N"\nfriction = "f"',
        {
            "N": (Kind.ROUGH, "post", "K", "90"),
            "f": (Kind.ROUGH, "post", "K", "0"),
            "N'": (Kind.ROUGH, "prop", "K", "270"),
            "f'": (Kind.ROUGH, "prop", "K", "180"),
        },
    ),
]


@pytest.mark.parametrize(
    ("entry", "forces"), BETWEEN, ids=[row[0].split("\n")[0] for row in BETWEEN]
)
def test_what_acts_between_bodies_acts_back(
    pair: str, entry: str, forces: dict[str, tuple[Kind | str, ...]]
) -> None:
    system = system_of(pair + entry)
    acting = {f.id: f for f in system.forces if f.kind is not Kind.WEIGHT}
    found = {f.id: (f.kind, f.body, f.point, f.direction) for f in acting.values()}
    assert found == {id: (*row[:3], parse(row[3], {})) for id, row in forces.items()}
    for force in acting.values():
        back = acting[force.pair]
        assert (back.pair, back.magnitude) == (force.id, force.magnitude)
        assert force.id in system.element(force.element).forces
        assert system.element(force.element).body == force.body


def test_each_body_names_the_other_where_they_touch(pair: str) -> None:
    entry = '[[contact]]\nbody = "post"\nother = "prop"\nat = "K"\ndirection = 0\nsymbol = "N"'
    read = read_template(pair + entry, "pair.toml")
    system, labels = read.system, read.labels
    assert labels.elements["N"].name == labels.source(system.force("N")) == BodyNamed("prop")
    assert labels.elements["N'"].name == labels.source(system.force("N'")) == BodyNamed("post")
    assert system.element("N'").surface == number(180)
    rough = '[[rough]]\nbody = "post"\nother = "prop"\nat = "K"\nnormal = "N"\nfriction = "f"'
    labels = read_template(pair + rough, "pair.toml").labels
    assert labels.elements["N"] == Label("N", BodyNamed("prop"))
    assert labels.elements["N'"] == Label("N", BodyNamed("post"))


def test_a_cable_between_bodies_runs_both_ways(pair: str) -> None:
    read = read_template(pair + BETWEEN[1][0], "pair.toml")
    system = read.system
    assert (system.element("T").toward, system.element("T'").toward) == ("Q", "J")
    assert read.labels.elements["T'"].symbol == "T"


def test_a_fixed_joint_passes_on_its_couple(pair: str) -> None:
    entry = '[[fixed]]\nbody = "post"\nother = "prop"\nat = "K"\nsymbol = "R"\ncouple = "M"'
    system = system_of(pair + entry)
    first, back = system.couples
    assert (first.body, first.moment, first.pair) == ("post", Name("M", "M"), "M'")
    assert (back.body, back.moment, back.pair) == ("prop", Sum(((-1, Name("M", "M")),)), "M")
    assert system.variables["M"].role is Role.UNKNOWN
    assert [force.id for force in system.forces if force.kind is Kind.FIXED] == [
        "R.x",
        "R.y",
        "R.x'",
        "R.y'",
    ]


def test_a_section_bares_three_internal_forces(pair: str) -> None:
    entry = (
        '[[cut]]\nbody = "post"\nother = "prop"\nat = "K"\naxis = 90\n'
        'axial = "N"\nshear = "V"\ncouple = "M"'
    )
    system = system_of(pair + entry)
    found = {f.id: (f.part, f.direction) for f in system.forces if f.kind is Kind.FIXED}
    assert found == {
        "N": ("axial", number(90)),
        "V": ("shear", number(0)),
        "N'": ("axial", number(270)),
        "V'": ("shear", number(180)),
    }
    assert [couple.id for couple in system.couples] == ["M", "M'"]
    assert not system.variables["N"].nonnegative


def test_a_particle_needs_no_point(pair: str) -> None:
    system = system_of(pair)
    assert system.body("ring").outline == ("P",)
    assert system.force("W_r").point == "P"
    two = pair.replace("[body.ring]", "[body.bead]\nparticle = true\n[body.ring]")
    points = system_of(two).points
    assert points["P"].links != points["P_1"].links


def test_a_point_made_for_an_author_has_a_letter_of_its_own(pair: str) -> None:
    text = pair + '[[force]]\nbody = "ring"\nsymbol = "P"\nmagnitude = "3 N"\ndirection = 0'
    assert system_of(text).body("ring").outline == ("P_1",)


def test_a_rope_has_one_tension_wherever_it_pulls(pair: str) -> None:
    entry = (
        '[[rope]]\nsymbol = "T"\nname = "hoist"\npulls = [{ body = "ring", direction = 90, '
        'strands = 2 },\n{ body = "post", at = "J", toward = "K" }]'
    )
    system = system_of(pair + entry)
    tension = Name("T", "T")
    pulls = {f.id: (f.body, f.magnitude) for f in system.forces if f.kind is Kind.ROPE}
    assert pulls == {"T": ("ring", Product((number(2), tension))), "T.2": ("post", tension)}
    assert system.element("T.2").toward == "K"
    assert system.variables["T"].nonnegative


SPRINGS = [
    ('direction = 90\nstretch = "h"', "90"),
    ('direction = 90\ncompression = "h"', "90"),
    ('toward = "K"\nat = "J"\nstretch = "h"', "90"),
    ('toward = "K"\nat = "J"\ncompression = "h"', "270"),
]


@pytest.mark.parametrize(("fields", "direction"), SPRINGS)
def test_a_spring_pulls_or_pushes_with_stiffness_times_its_change(
    pair: str, fields: str, direction: str
) -> None:
    entry = f'[[spring]]\nbody = "ring"\nstiffness = "90 N/m"\nsymbol = "F_s"\n{fields}'
    system = system_of(pair + entry)
    assert system.force("F_s").direction == parse(direction, {})
    assert {d.variable: d.expression for d in system.definitions}["F_s"] == Product(
        (Number(Decimal(90), UNITS["N/m"]), Name("h", "h"))
    )


def test_a_spring_of_unknown_force(pair: str) -> None:
    system = system_of(pair + '[[spring]]\nbody = "ring"\ndirection = 90\nsymbol = "F_s"')
    assert system.variables["F_s"].role is Role.UNKNOWN


def test_friction_below_its_limit_may_point_either_way(
    shelf: str, spoilt: Callable[[str, str], str]
) -> None:
    given = 'mu = { name = "friction coefficient", choices = [0.3, 0.4], unit = "1" }\n[derived]'
    rough = (
        '[[rough]]\nat = "B"\nnormal = "N_f"\nfriction = "f"\ncoefficient = "mu"\n'
        'verge = false\nname = "post"\nsymbol = "F"'
    )
    read = read_template(spoilt("[derived]", given) + rough, "shelf.toml")
    assert not read.system.conditions
    (limit,) = read.system.limits
    assert (limit.id, limit.relation) == ("f.limit", "<=")
    assert limit.left == Call("abs", (Name("f", "f"),))
    assert read.labels.limits == {"f.limit": Slipping("shelf", "post")}
    assert read.requirements[0].because == "f.limit is kept"  # must be kept
    definitions = {d.variable: d.expression for d in read.system.definitions}
    assert definitions["F.x"] == Name("f", "f")
    assert definitions["F.y"] == Name("N_f", "N_f")


# An entry added to the pair of bodies, and the one fault it must give.
SPOILT = [
    ('[[hinge]]\nat = "K"\nsymbol = "R"', "hinge[0].body", "add body"),
    ('[[hinge]]\nbody = "post"\nother = "post"\nat = "K"\nsymbol = "R"', "hinge[0].other", "prop"),
    ('[[hinge]]\nbody = "post"\nother = "prop"\nsymbol = "R"', "hinge[0].at", "add at"),
    (
        '[[hinge]]\nbody = "post"\nother = "prop"\nat = "K"\nsymbol = "R"\nname = "post"',
        "hinge[0].name",
        'write name = "prop", or leave name out',
    ),
    (
        '[[contact]]\nbody = "ring"\nother = "post"\ndirection = 0\nsymbol = "N"',
        "contact[0].at",
        "the point of post",
    ),
    (
        '[[cable]]\nbody = "ring"\nother = "post"\ndirection = 0\nsymbol = "T"',
        "cable[0].toward",
        "the point of post",
    ),
    (
        '[[strut]]\nbody = "ring"\nother = "post"\ndirection = 0\nsymbol = "T"',
        "strut[0].away_from",
        "the point of post",
    ),
    (
        '[[strut]]\nbody = "ring"\naway_from = "K"\ndirection = 0\nsymbol = "T"',
        "strut[0].direction",
        "either direction or away_from",
    ),
    (
        '[[cable]]\nbody = "ring"\ntoward = "K"\nsymbol = "T"',
        "cable[0].toward",
        'add along = ["C"] to [body.ring]',
    ),
    ('[[fixed]]\nbody = "post"\nat = "K"\nsymbol = "R"', "fixed[0].couple", "add couple"),
    (
        '[[cut]]\nbody = "post"\nat = "K"\naxial = "N"\nshear = "V"\ncouple = "M"',
        "cut[0].axis",
        "add axis",
    ),
    (
        '[[cut]]\nbody = "post"\nat = "K"\naxial = "N"\nshear = "N"\ncouple = "M"\naxis = 0',
        "cut[0].shear",
        "that nothing else has",
    ),
    (
        '[[spring]]\nbody = "ring"\ndirection = 0\nstretch = "h"\nsymbol = "F"',
        "spring[0].stiffness",
        "add stiffness",
    ),
    (
        '[[spring]]\nbody = "ring"\ndirection = 0\nstiffness = "9 N/m"\nsymbol = "F"',
        "spring[0].stretch",
        "add stretch",
    ),
    (
        '[[spring]]\nbody = "ring"\ndirection = 0\nstiffness = "9 N"\nstretch = "h"\nsymbol = "F"',
        "spring[0].stiffness",
        "a force, where a force per length",
    ),
    (
        '[[spring]]\nbody = "ring"\ndirection = 0\nstiffness = "9 N/m"\nstretch = "h"\n'
        'compression = "h"\nsymbol = "F"',
        "spring[0].stretch",
        "not both",
    ),
    ('[[rope]]\nsymbol = "T"', "rope[0].pulls", "pulls = [{"),
    ('[[rope]]\nsymbol = "T"\npulls = 3', "rope[0].pulls", "in double brackets"),
    (
        '[[rope]]\nsymbol = "T"\npulls = [{ body = "ring", direction = 0, strands = 0 }]',
        "rope[0].pulls[0].strands",
        "a whole number from 1",
    ),
    (
        '[[rope]]\nsymbol = "T"\npulls = [{ body = "ring", direction = 0, name = "x" }]',
        "rope[0].pulls[0].name",
        "one of the fields",
    ),
    (
        '[[rough]]\nbody = "ring"\nnormal = "N"\nfriction = "f"\nverge = true',
        "rough[0].verge",
        "add coefficient",
    ),
    (
        '[[rough]]\nbody = "ring"\nnormal = "N"\nfriction = "f"\ncoefficient = "mu"\nverge = false',
        "rough[0].coefficient",
        "no quantity named 'mu'",
    ),
    (
        '[[rough]]\nbody = "ring"\nnormal = "N"\nfriction = "f"\ncoefficient = "r*mu_s"',
        "rough[0].coefficient",
        'declare "r*mu_s" below [derived]',
    ),
    (
        '[[rough]]\nbody = "ring"\nnormal = "N"\nfriction = "f"\nsymbol = "m"',
        "rough[0].symbol",
        "that nothing else has",
    ),
]


@pytest.mark.parametrize(("entry", "field", "words"), SPOILT, ids=[row[1] for row in SPOILT])
def test_each_mistake_is_one_fault(pair: str, entry: str, field: str, words: str) -> None:
    (fault,) = faults_of(pair + entry)
    assert fault.field == field
    assert words in f"{fault.expected}\n{fault.mend}"


EQUAL = [
    '[[force]]\nbody = "post"\nat = "K"\ndirection = 0\nmagnitude = "F"',
    '[[cable]]\nbody = "post"\nat = "K"\ndirection = 0\nmagnitude = "F"',
    '[[strut]]\nbody = "post"\nat = "K"\ndirection = 0\nmagnitude = "F"',
    '[[weight]]\nbody = "post"\nat = "K"\nforce = "F"\nof = "bag"',
]


@pytest.mark.parametrize("entry", EQUAL, ids=["force", "cable", "strut", "weight"])
def test_what_is_equally_large_may_have_one_letter(pair: str, entry: str) -> None:
    text = pair.replace("[points]", 'F = { name = "load", choices = [9], unit = "N" }\n[points]')
    asked = '\n[[find]]\nresultant = ["F"]\nsymbol = "S"\nname = "loads"\n'
    read = read_template("\n".join((text, entry, entry, entry, asked)), "pair.toml")
    elements = [e.id for e in read.system.elements if e.id.startswith("F")]
    assert elements == ["F", "F.2", "F.3"]
    forces = [read.system.force(id) for id in elements]
    assert {force.magnitude for force in forces} == {Name("F", "F")}
    assert {read.labels.elements[id].symbol for id in elements} == {"F"}


def test_a_letter_of_what_is_looked_for_is_its_own(pair: str) -> None:
    entry = '[[cable]]\nbody = "post"\nat = "K"\ndirection = 0\nsymbol = "T"'
    assert [fault.found for fault in faults_of(f"{pair}{entry}\n{entry}\n")] == ['"T"']


def test_another_state_is_told_which_letter_is_free(pair: str) -> None:
    """One letter each: the second body's N is N_2, or N_3 where that is taken as well."""
    entry = '[[contact]]\nbody = "post"\nat = "K"\ndirection = 0\nsymbol = "{}"\n'
    for taken, free in ((("N",), "N_2"), (("N", "N_2"), "N_3"), (("N_2",), "N_3")):
        text = pair + "".join(map(entry.format, (*taken, taken[0])))
        (fault,) = faults_of(text)
        assert fault.mend == f"choose another, such as {free}"
