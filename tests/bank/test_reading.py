from collections.abc import Callable, Sequence
from decimal import Decimal

import pytest

from probgen.bank.depiction import Load, Look, Manner, Thing
from probgen.bank.labels import BodyNamed, ByKind
from probgen.bank.reading import read_template
from probgen.input.fault import Fault, InputError
from probgen.quantities.expression import (
    Call,
    Expression,
    Name,
    Number,
    Product,
    Quotient,
    Sum,
    number,
)
from probgen.quantities.unit import UNITS
from probgen.statics.system import Form, Kind, Link, Role

L = Name("L", "L")


def faults_of(text: str) -> Sequence[Fault]:
    with pytest.raises(InputError) as caught:
        read_template(text, "shelf.toml")
    return caught.value.faults


def test_head_and_givens(shelf: str) -> None:
    read = read_template(shelf, "shelf.toml")
    assert (read.id, read.revision, read.family, read.level) == ("shelf", 1, "beams", 2)
    assert (read.goals, read.cautions) == (("torque balance",), ("rigging",))
    assert (read.source, read.path) == (shelf, "shelf.toml")
    assert [str(value) for value in read.given("L").choices][:2] == ["0.80", "0.90"]
    assert [str(value) for value in read.given("m").choices] == ["2.0", "4.5", "6.0"]
    assert [str(value) for value in read.given("tree_mass").choices] == ["3", "6", "9", "12"]
    assert read.labels.quantities["theta"].measured == "up"
    assert read.room == 9 * 3 * 4 * 9
    assert (read.derived[0].round, read.derived[0].unit.name) == (Decimal("0.01"), "m")
    assert read.depicts.bodies == {"shelf": Look.BEAM}
    assert read.depicts.loads["W_t"] == Load(Thing.TREE, Manner.STANDS)


def test_points_keep_lengths_as_written(shelf: str) -> None:
    points = read_template(shelf, "shelf.toml").system.points
    d = Name("d", "d")
    assert points["A"].links == ()
    assert points["G"].links == (Link(Quotient(L, number(2)), number(0)),)
    beyond = Link(Sum(((1, L), (-1, d))), number(0))
    assert points["B"].links == (Link(d, number(0)), beyond)
    up = Link(Number(Decimal("1.5"), UNITS["m"]), number(90))
    assert points["W"].links == (Link(L, number(180)), up)


def test_elements_become_forces(shelf: str) -> None:
    read = read_template(shelf, "shelf.toml")
    system, labels = read.system, read.labels
    acting = {f.id: (f.kind, f.point, labels.source(f), f.part) for f in system.forces}
    assert acting == {
        "R.x": (Kind.HINGE, "A", ByKind.HINGE, "x"),
        "R.y": (Kind.HINGE, "A", ByKind.HINGE, "y"),
        "T": (Kind.CABLE, "C", ByKind.CABLE, ""),
        "W_s": (Kind.WEIGHT, "G", BodyNamed("shelf"), ""),
        "W_t": (Kind.WEIGHT, "B", "the tree", ""),
    }
    assert system.force("W_t").direction == number(270)
    assert {d.variable: d.expression for d in system.definitions}["W_t"] == Product(
        (Name("tree_mass", "M"), Name("g", "g"))
    )
    assert system.unknowns == ("R.x", "R.y", "T")
    assert system.variables["T"].nonnegative
    assert not system.variables["R.x"].nonnegative
    assert system.variables["W_s"].role is Role.DEFINED
    assert system.given == ("L", "m", "tree_mass", "theta", "d")
    assert [f.form for f in system.finds] == [Form.VALUE, Form.MAGNITUDE_AND_DIRECTION]
    assert system.pivot == "A"


ENTRIES = [
    (
        '[[roller]]\nat = "B"\nsymbol = "N"',
        {"N": (number(90), Role.UNKNOWN, True)},
    ),
    (
        '[[contact]]\nat = "B"\ndirection = "theta + 90"\nsymbol = "N"\nname = "edge"',
        {"N": (Sum(((1, Name("theta", "theta")), (1, number(90)))), Role.UNKNOWN, True)},
    ),
    (
        '[[fulcrum]]\nat = "B"\nsymbol = "P"',
        {"P": (number(90), Role.UNKNOWN, True)},
    ),
    (
        '[[rough]]\nat = "B"\nnormal = "N_f"\nfriction = "f"\ndirection = 180',
        {"N_f": (number(180), Role.UNKNOWN, True), "f": (number(90), Role.UNKNOWN, False)},
    ),
    (
        '[[rough]]\nat = "B"\nnormal = "N_f"\nfriction = "f"\nfriction_direction = 180',
        {"N_f": (number(90), Role.UNKNOWN, True), "f": (number(180), Role.UNKNOWN, False)},
    ),
    (
        '[[muscle]]\nat = "B"\ndirection = "100 deg"\nsymbol = "Q"',
        {"Q": (Number(Decimal(100), UNITS["deg"]), Role.UNKNOWN, True)},
    ),
    (
        '[[force]]\nat = "B"\ndirection = 30\nsymbol = "F"',
        {"F": (number(30), Role.UNKNOWN, False)},
    ),
    (
        '[[force]]\nat = "B"\ndirection = 30\nsymbol = "F"\nmagnitude = "12 N"',
        {"F": (number(30), Role.DEFINED, False)},
    ),
    (
        '[[weight]]\nat = "B"\nforce = "20 N"\nsymbol = "W_p"\nof = "pot"',
        {"W_p": (number(270), Role.DEFINED, False)},
    ),
]


@pytest.mark.parametrize(("entry", "forces"), ENTRIES, ids=[e[:22] for e, _ in ENTRIES])
def test_each_kind_of_entry(
    shelf: str, entry: str, forces: dict[str, tuple[Expression, Role, bool]]
) -> None:
    system = read_template(shelf + entry, "shelf.toml").system
    for id, (direction, role, nonnegative) in forces.items():
        force, variable = system.force(id), system.variables[id]
        assert (force.direction, force.magnitude) == (direction, variable.as_name)
        assert (variable.role, variable.nonnegative) == (role, nonnegative)
        assert system.element(force.element).at == "B"


def test_the_coefficient_of_a_rough_surface_is_found_or_given(
    shelf: str, spoilt: Callable[[str, str], str]
) -> None:
    rough = '[[rough]]\nat = "B"\nnormal = "N_f"\nfriction = "f"\ncoefficient = "mu"'
    system = read_template(shelf + rough, "shelf.toml").system
    assert system.variables["mu"].role is Role.UNKNOWN
    (limit,) = system.conditions
    assert limit.left == Name("f", "f")
    assert limit.right == Product((Name("mu", "mu"), Name("N_f", "N_f")))
    given = 'mu = { name = "friction coefficient", choices = [0.3, 0.4], unit = "1" }\n[derived]'
    verge = read_template(spoilt("[derived]", given) + rough, "shelf.toml").system
    assert verge.variables["mu"].role is Role.GIVEN
    assert len(verge.conditions) == 1


def test_a_couple_is_given_or_found(shelf: str) -> None:
    system = read_template(shelf + '[[couple]]\nat = "B"\nsymbol = "C_0"', "shelf.toml").system
    assert system.couples[0].moment == Name("C_0", "C_0")
    stated = shelf + '[[couple]]\nat = "B"\nsymbol = "C_0"\nmoment = "-4 N*m"'
    system = read_template(stated, "shelf.toml").system
    assert system.variables["C_0"].role is Role.DEFINED


def test_a_cable_runs_toward_a_point(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('direction = "180 - theta"', 'toward = "W"')
    system = read_template(text, "shelf.toml").system
    d = Name("d", "d")
    back, up = Sum(((1, d), (1, L))), Number(Decimal("1.5"), UNITS["m"])
    slope = Call("atan2", (up, back))
    assert system.force("T").direction == Sum(((1, Number(Decimal(180))), (-1, slope)))
    assert system.element("T").toward == "W"


def test_an_unknown_may_be_a_position(spoilt: Callable[[str, str], str]) -> None:
    unknown = '[unknown]\nx = { name = "place", unit = "m" }\n'
    text = spoilt("[points]", unknown + '[points]\nX = ["x", 0]')
    variable = read_template(text, "shelf.toml").system.variables["x"]
    assert (variable.role, variable.nonnegative) == (Role.UNKNOWN, True)
    assert (variable.low, variable.high) == (None, None)


def test_an_unknown_has_the_bounds_an_author_states(spoilt: Callable[[str, str], str]) -> None:
    unknown = '[unknown]\nx = { name = "place", unit = "cm", from = -20, to = 150 }\n'
    text = spoilt("[points]", unknown + '[points]\nX = ["x", 0]')
    variable = read_template(text, "s.toml").system.variables["x"]
    assert (variable.low, variable.high) == (-0.2, 1.5)
    with pytest.raises(InputError, match="a value above from, which is 160"):
        read_template(text.replace("-20", "160"), "s.toml")


def test_an_unknown_that_nothing_uses_is_a_mistake(spoilt: Callable[[str, str], str]) -> None:
    unknown = '[unknown]\nx = { name = "place", unit = "m" }\n'
    (fault,) = faults_of(spoilt("[points]", unknown + "[points]"))
    assert fault.field == "unknown.x"
    assert fault.mend == "use it, or leave it out"


PLACES = [
    ('{ from = "A", distance = "d", toward = "B" }', (Link(Name("d", "d"), number(0)),)),
    ('{ from = "B", distance = "d", toward = "A" }', None),
    ('{ midpoint = ["A", "B"] }', (Link(Quotient(L, number(2)), number(0)),)),
    (
        '{ from = "A", distance = "d", direction = { from = "up", turn = 20, to = "left" } }',
        (Link(Name("d", "d"), number(110)),),
    ),
]


@pytest.mark.parametrize(("written", "links"), PLACES)
def test_each_form_of_a_point(
    spoilt: Callable[[str, str], str], written: str, links: tuple[Link, ...] | None
) -> None:
    text = spoilt("W = [", f"H = {written}\nW = [").replace('{ from = "C"', '{ from = "A"')
    text = text.replace('"L - d", direction', '"L", direction')
    found = read_template(text, "shelf.toml").system.points["H"].links
    back = (Link(L, number(0)), Link(Name("d", "d"), number(180)))
    assert found == (links or back)


# One spoilt passage, and the one fault it must give: field, then words of the message.
SPOILT = [
    ('id = "shelf"\n', "", "id", "add id = ..."),
    ('id = "shelf"\n', 'id = "My Shelf"\n', "id", "small letters"),
    ("revision = 1", 'revision = "1"', "revision", "a whole number"),
    ("revision = 1", "revision = 0", "revision", "a whole number"),
    ('title = "Shelf on a stay cable"', "title = 3", "title", "write it in quotes"),
    ('family = "beams"', 'family = "beam"', "family", 'did you mean "beams"?'),
    ("level = 2", "level = 9", "level", "from 1 to 5"),
    ('goals = ["torque balance"]', "goals = []", "goals", "a list of 1 to"),
    ('["rigging"]', '["riging"]', "cautions[0]", 'did you mean "rigging"?'),
    ("level = 2", 'level = 2\nview = "above"', "view", "one of side, plan"),
    ("level = 2", 'level = 2\nview = "plan"', "view", "a situation without weights"),
    ('pivot = "A"', 'pivot = "Q"', "pivot", "one of the points A, C, G, B, W"),
    ('pivot = "A"', 'pivto = "A"', "pivto", 'did you mean "pivot"?'),
    ("{{ L }}", "{{ Lenght }}", "statement", "one of the names"),
    ("{{ L }}", "{{ Rx }}", "statement", "R, T,"),  # components have no name to be written by
    ("{{ L }}", "{{ L", "statement", "leave other braces out"),
    ("{{ L }}", "{{ L.value }}", "statement", "{{ L.value }}"),
    ("{{ L }}", "{{ L | safe }}", "statement", "the filters symbol, equation"),
    ("{{ L }}", "{% for x in L %}{% endfor %}", "statement", "leave other braces out"),
    ("{{ L }}", "{{ 7 * 7 }}", "statement", "{{ 7 * 7 }}"),
    ('statement = "A shelf', 'text = ""\nstatement = "A shelf', "text", "one of the fields"),
    ('"A shelf of length {{ L }} is hinged at {{ A }}; find {{ T }}."', '""', "statement", "text"),
    ("to = 1.60", "to = 0.60", "given.L.to", "the range is empty"),
    ("to = 1.60", "to = 1.55", "given.L.to", "the last value reached is 1.50"),
    ("step = 0.10", "step = 0", "given.L.step", "above zero"),
    ("step = 0.10", "step = 0.00001", "given.L.step", "at most 10000 values"),
    ("step = 0.10, ", "", "given.L.step", "add step = ..."),
    ("from = 0.80", "from = nan", "given.L.from", "a number"),
    ("from = 0.80", 'from = "0.80 m"', "given.L.from", "without quotes or unit"),
    ("from = 0.80", "form = 0.80, from = 0.80", "given.L.form", 'did you mean "from"?'),
    ("[6.0, 2.0, 4.5]", "[]", "given.m.choices", "a list of 1 to"),
    ("[6.0, 2.0, 4.5]", "[2.0, 2.0]", "given.m.choices", "every value once"),
    ("[6.0, 2.0, 4.5]", "[2.0], from = 1", "given.m.from", "not both"),
    ('unit = "kg" }\ntree', 'unit = "kgs" }\ntree', "given.m.unit", 'did you mean "kg"?'),
    ('name = "shelf mass", ', "", "given.m.name", "what it is in words"),
    ('symbol = "M", ', "", "given.tree_mass.symbol", 'add symbol = "..."'),
    ('symbol = "M"', 'symbol = "mass"', "given.tree_mass.symbol", "a letter or Greek name"),
    ('symbol = "M"', 'symbol = "m"', "given.tree_mass.symbol", "a symbol that nothing else"),
    ("L = { name", "L = 3\nl = { name", "given.L", "a table"),
    ("theta = {", "sin = {", "given.sin", "choose another name"),
    ("0.85*L", "0.85*", "derived.d.is", "the text ends"),
    ("0.85*L", "0.85*m", "derived.d.is", "a mass, where a length is needed"),
    ("0.85*L", "L - 0.15", "derived.d.is", "write a unit after a plain number, as in 0.1 m"),
    ("round = 0.01", "round = -1", "derived.d.round", "above zero"),
    ('["d", 0]', '["dd", 0]', "points.C[0]", "no quantity named 'dd'"),
    ('["d", 0]', '["d", 0.5]', "points.C[1]", "a plain number, where a length is needed"),
    ('["d", 0]', '["d"]', "points.C", '["x", "y"]'),
    ('["d", 0]', '{ from = "B", distance = "d", direction = 0 }', "points.B", "circle"),
    ('from = "C"', 'from = "c"', "points.B.from", "one of the points A, C, G"),
    ("direction = 0 }", 'direction = "L" }', "points.B.direction", "where an angle is needed"),
    ('["d", 0]', '{ from = "A", distance = "d", toward = "A" }', "points.C.toward", "another"),
    ('["d", 0]', '{ from = "A", distance = "d", toward = "Q" }', "points.C.toward", "the points A"),
    ('["d", 0]', '{ from = "A", distance = "d" }', "points.C.direction", "add direction"),
    ('["d", 0]', '{ midpoint = ["A"] }', "points.C.midpoint", "two of the points"),
    ('["d", 0]', '{ midpoint = ["A", "C"] }', "points.C", "break the circle"),
    ('["d", 0]', '{ midpoint = ["A", "W"], at = 1 }', "points.C.at", "one of the fields"),
    ("W = [", "w = [", "points.w", "a capital letter"),
    ("W = [", "T = [", "points.T", "rename the point"),
    ('along = ["A", "B"]', 'along = ["A", "b"]', "body.shelf.along[1]", "one of the points"),
    ('along = ["A", "B"]', 'along = ["A"]', "body.shelf.along", "particle = true"),
    ('along = ["A", "B"]', "", "body.shelf.along", "add along"),
    ('along = ["A", "B"]', 'along = ["A", "B"]\nparticle = true', "body.shelf.along", "the one"),
    ('[[hinge]]\nat = "A"', '[[hinge]]\nat = "a"', "hinge[0].at", "one of the points"),
    ('[[hinge]]\nat = "A"', "[[hinge]]", "hinge[0].at", "add at = ..."),
    ('symbol = "R"', 'symbol = "force"', "hinge[0].symbol", "a letter or Greek name"),
    ('symbol = "R"', 'symbol = "L"', "hinge[0].symbol", "a symbol that nothing else has"),
    ('symbol = "R"', 'symbol = "R"\nbody = "wall"', "hinge[0].body", "one of shelf"),
    ("[[hinge]]", "[[hinges]]", "hinges", 'did you mean "hinge"?'),
    ("[[hinge]]", "[hinge]", "hinge", "write [[hinge]]"),
    ('direction = "180 - theta"', "", "cable[0].direction", "add direction"),
    ("180 - theta", "180 - L", "cable[0].direction", "a plain number added to a length"),
    ("180 - theta", "180 - tehta", "cable[0].direction", "did you mean 'theta'?"),
    ('"180 - theta"', '"0"\ntoward = "W"', "cable[0].direction", "not both"),
    ('direction = "180 - theta"', 'toward = "C"', "cable[0].toward", "another point"),
    ('mass = "m"', 'mass = "m"\nsymbol = "T"', "weight[0].symbol", "that nothing else has"),
    ('mass = "m"', 'mass = "m"\nsymbol = "R_x"', "weight[0].symbol", "R.x has this symbol"),
    ('mass = "m"', 'force = "T"', "weight[0].symbol", "that no other element has"),
    ('mass = "m"', "", "weight[0].mass", "either a mass or a force"),
    ('mass = "m"', 'mass = "L"', "weight[0].mass", "a length, where a mass is needed"),
    ('mass = "m"', 'mas = "m"\nmass = "m"', "weight[0].mas", 'did you mean "mass"?'),
    ('quantity = "T"', 'quantity = "S"', "find[0].quantity", "one of"),
    ('quantity = "T"', 'quantity = "L"', "find[0].quantity", "one of"),
    ('quantity = "T"', 'quantity = "T"\nas = "parts"', "find[0].as", "one of value"),
    ('"magnitude and direction"', '"size"', "find[1].as", "one of magnitude and direction"),
    ('that = "T < 1500 N"', 'that = "T"', "require[0].that", "one of < <= > >="),
    ('that = "T < 1500 N"', 'that = "T < 1500"', "require[0].that", "compared with"),
    ('that = "T < 1500 N"', 'that = "S < 1500 N"', "require[0].that", "no quantity named"),
    ('because = "a light cable"', "", "require[0].because", "add because"),
    ('shelf = "beam"', 'shelve = "beam"', "depicts.shelve", 'did you mean "shelf"?'),
    ('shelf = "beam"', "shelf = 1", "depicts.shelf", "text"),
    ('shelf = "beam"', 'shelf = "laddr"', "depicts.shelf", 'did you mean "ladder"?'),
]


@pytest.mark.parametrize(
    ("old", "new", "field", "words"), SPOILT, ids=[f"{r[2]}:{r[1][:24]}" for r in SPOILT]
)
def test_each_mistake_gives_one_fault_that_names_its_place(
    spoilt: Callable[[str, str], str], old: str, new: str, field: str, words: str
) -> None:
    (fault,) = faults_of(spoilt(old, new))
    assert fault.field == field
    assert words in f"{fault.found}\n{fault.expected}\n{fault.mend}"
    assert fault.file == "shelf.toml"


def test_all_faults_come_at_once(shelf: str) -> None:
    text = shelf.replace("level = 2", "level = 9").replace('unit = "kg"', 'unit = "kgs"')
    text = text.replace('at = "G"', 'at = "g"')
    fields = [fault.field for fault in faults_of(text)]
    assert fields == ["given.m.unit", "given.tree_mass.unit", "weight[0].at", "level"]


def test_what_uses_a_faulty_quantity_is_not_blamed(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('step = 0.10, unit = "m"', 'step = 0.10, unit = "metre"')
    assert [fault.field for fault in faults_of(text)] == ["given.L.unit"]


@pytest.mark.parametrize("text", ["id = ", "\x00", "a = [" * 2000, "x = 1\n" * 3])
def test_text_that_is_no_toml_is_one_fault(text: str) -> None:
    (fault,) = faults_of(text)
    assert "a TOML file" in fault.expected


def test_too_long_a_file_is_refused() -> None:
    (fault,) = faults_of("#" * 100_001)
    assert "at most 100000 characters" in fault.expected


def test_an_empty_file_names_everything_that_is_missing() -> None:
    fields = {fault.field for fault in faults_of("")}
    assert fields >= {"id", "title", "statement", "given", "body", "find"}


def test_a_particle_may_be_placed_at_the_one_point_it_is(pair: str) -> None:
    text = pair.replace("particle = true", 'particle = true\nalong = ["K"]')
    body = read_template(text, "pair.toml").system.body("ring")
    assert (body.outline, body.particle) == (("K",), True)


def test_a_particle_that_a_hinge_holds_is_at_the_hinge(pair: str) -> None:
    text = pair + '[[hinge]]\nbody = "ring"\nat = "K"\nsymbol = "R_1"\n'
    assert read_template(text, "pair.toml").system.body("ring").outline == ("K",)


CONTACT = """
[[contact]]
body = "ring"
other = "{other}"
at = "{at}"
direction = 90
symbol = "N_{at}"
"""


@pytest.mark.parametrize(("at", "placed"), [("K", True), ("KJ", False), ("", False)])
def test_a_particle_that_touches_a_body_at_one_point_is_there(
    pair: str, at: str, placed: bool
) -> None:
    text = pair + "".join(CONTACT.format(at=point, other="post") for point in at)
    assert (read_template(text, "pair.toml").system.body("ring").outline == ("K",)) is placed


def test_what_bodies_are_together_is_said_of_several(shelf: str, pair: str) -> None:
    assert read_template('whole = "frame"\n' + pair, "pair.toml").labels.together == "frame"
    (fault,) = faults_of('whole = "frame"\n' + shelf)
    assert (fault.field, fault.mend) == ("whole", "leave it out")
