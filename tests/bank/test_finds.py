from collections.abc import Callable

import pytest

from probgen.bank.labels import Label, Reason
from probgen.bank.reading import read_template
from probgen.input.fault import InputError
from probgen.quantities.expression import Name, Quotient, evaluate
from probgen.quantities.parser import parse
from probgen.quantities.unit import FORCE, PLAIN, Dimension
from probgen.statics.system import Find, Form, Role, System
from tests.bank.conftest import SHELF

LIMIT = '[[limit]]\nid = "breaks"\nthat = "T < 900 N"\nname = "the cable breaks"\n'


def system_of(text: str) -> System:
    return read_template(text, "shelf.toml").system


def scope_of(system: System) -> dict[str, Name]:
    return {id: variable.as_name for id, variable in system.variables.items()}


WORKED_OUT = [
    ('ratio = "T/(W_s + W_t)"\nsymbol = "n"\nname = "share"', "n", "T/(W_s + W_t)", PLAIN),
    ('value = "hypot(R.x, T)"\nunit = "kN"\nsymbol = "S"\nname = "s"', "S", "hypot(R.x, T)", FORCE),
]


@pytest.mark.parametrize(("fields", "id", "expression", "dimension"), WORKED_OUT)
def test_what_is_asked_may_be_worked_out_from_what_is_found(
    shelf: str, fields: str, id: str, expression: str, dimension: Dimension
) -> None:
    system = system_of(f"{shelf}[[find]]\n{fields}")
    variable = system.variables[id]
    assert (variable.role, variable.dimension) == (Role.DEFINED, dimension)
    assert system.definitions[-1].expression == parse(expression, scope_of(system))
    assert system.finds[-1] == Find(id, Form.VALUE)


def test_the_statement_may_name_what_is_worked_out(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt("find {{ T }}", "find {{ n }}")
    text += '[[find]]\nratio = "T/W_s"\nsymbol = "n"\nname = "share"'
    assert "n" in system_of(text).variables


def test_a_single_force_may_be_asked_with_its_direction(shelf: str) -> None:
    system = system_of(shelf.replace('quantity = "T"', 'quantity = "T"\nas = "components"'))
    found = {d.variable: d.expression for d in system.definitions}
    assert found["T.x"] == parse("-T*cos(theta)", scope_of(system))
    assert found["T.y"] == parse("T*sin(theta)", scope_of(system))
    assert system.finds[0] == Find("T", Form.COMPONENTS)


def test_several_forces_may_be_taken_together(shelf: str) -> None:
    text = shelf + '[[find]]\nresultant = ["T", "W_t"]\nsymbol = "F"\nname = "cable and tree"'
    read = read_template(text, "shelf.toml")
    system = read.system
    found = {d.variable: d.expression for d in system.definitions}
    assert found["F.y"] == parse("T*sin(theta) - W_t", scope_of(system))
    element = system.element("F")
    assert (element.body, element.forces) == ("shelf", ())
    assert read.labels.elements["F"] == Label("F", "cable and tree")
    assert system.finds[-1] == Find("F", Form.MAGNITUDE_AND_DIRECTION)


FORMS = [
    ('quantity = "T"\nas = "largest"', Find("T", Form.LARGEST)),
    ('quantity = "W_t"\nas = "smallest"', Find("W_t", Form.SMALLEST)),
    ('quantity = "breaks"\nas = "holds"', Find("breaks", Form.HOLDS)),
    ('as = "holds"\nwording = "does it hold"', Find("", Form.HOLDS)),
]


@pytest.mark.parametrize(("fields", "find"), FORMS)
def test_what_is_asked_about_limits(shelf: str, fields: str, find: Find) -> None:
    read = read_template(f"{shelf}{LIMIT}[[find]]\n{fields}", "shelf.toml")
    assert read.system.finds[-1] == find
    assert len(read.requirements) == 1  # the limit is asked about, so it need not be kept


def test_the_centre_of_mass_is_asked_by_its_coordinates(shelf: str) -> None:
    system = system_of(shelf + '[[find]]\ncentre_of_mass = ["W_s", "W_t"]\nunit = "cm"')
    (find,) = system.finds[2:]  # all is on one level, so y is not asked
    assert find == Find("x_G", Form.VALUE)
    expected = "(m*(L/2) + tree_mass*L)/(m + tree_mass)"
    assert system.definitions[-1].expression == parse(expected, scope_of(system))
    assert system.variables["x_G"].unit.name == "cm"


def test_why_a_quantity_is_so(shelf: str) -> None:
    rows = '[[find]]\ncentre_of_mass = ["W_s", "W_t"]\n[[find]]\nratio = "T/W_s"\n'
    rows += 'symbol = "n"\nname = "share"\nbecause = "so it is"\n'
    reasons = read_template(shelf + rows, "shelf.toml").labels.reasons
    assert (reasons["x_G"], reasons["n"]) == (Reason.CENTRE_OF_MASS, "so it is")


def test_weights_given_as_forces_have_a_centre_too(spoilt: Callable[[str, str], str]) -> None:
    text = spoilt('mass = "m"', 'force = "20 N"\nsymbol = "W_s"')
    text += '[[find]]\ncentre_of_mass = ["W_s"]\nsymbol = "C"'
    system = system_of(text)
    centre = system.definitions[-1].expression
    assert isinstance(centre, Quotient)
    assert centre.bottom == Name("W_s", "W_s")
    assert system.finds[-1].quantity == "x_C"


def test_a_mass_and_a_weight_count_alike_in_a_centre(spoilt: Callable[[str, str], str]) -> None:
    """19.6 N at 1 m and 6 kg (58.8 N) at 2 m: x = 137.2/78.4 m; kilograms and newtons never add."""
    text = spoilt('mass = "m"', 'force = "19.6 N"\nsymbol = "W_s"')
    text += '[[find]]\ncentre_of_mass = ["W_s", "W_t"]'
    system = system_of(text)
    centre = system.definitions[-1].expression
    values = {"L": 2.0, "d": 1.7, "W_s": 19.6, "W_t": 58.8}
    assert evaluate(centre, values) == pytest.approx(137.2 / 78.4)


def test_a_centre_off_both_axes_has_two_coordinates(spoilt: Callable[[str, str], str]) -> None:
    """3 kg at (1 m, 0.5 m) and 6 kg at (2 m, 0): x = 15/9 m, y = 1.5/9 m."""
    text = spoilt('["L/2", "0"]', '["L/2", "L/4"]') + '[[find]]\ncentre_of_mass = ["W_s", "W_t"]'
    system = system_of(text)
    assert system.finds[2:] == (Find("x_G", Form.VALUE), Find("y_G", Form.VALUE))
    values = {"L": 2.0, "d": 1.7, "m": 3.0, "tree_mass": 6.0}
    found = {d.variable: d.expression for d in system.definitions}
    assert evaluate(found["x_G"], values) == pytest.approx(15 / 9)
    assert evaluate(found["y_G"], values) == pytest.approx(1.5 / 9)
    assert [system.variables[id].unit.name for id in ("x_G", "y_G")] == ["m", "m"]


# A find added to the shelf, and the one fault it must give.
SPOILT = [
    ('ratio = "T"\nsymbol = "n"\nname = "n"', "ratio", "a force, where a plain number"),
    ('ratio = "T/W_z"\nsymbol = "n"\nname = "n"', "ratio", "no quantity named 'W_z'"),
    ('ratio = "T/W_s"\nsymbol = "n"', "name", "what it is in words"),
    ('ratio = "T/W_s"\nname = "n"', "symbol", "add symbol"),
    ('ratio = "T/W_s"\nsymbol = "L"\nname = "n"', "symbol", "that nothing else has"),
    ('ratio = "T/W_s"\nsymbol = "n"\nname = "n"\nas = "value"', "as", "one of the fields"),
    ('value = "T"\nsymbol = "S"\nname = "n"', "unit", 'a unit, such as "m"'),
    ('value = "T"\nsymbol = "S"\nname = "n"\nunit = "kg"', "value", "where a mass is needed"),
    ('quantity = "T"\nas = "largest"', "as", "a limit that can be reached"),
    ('as = "holds"', "as", "a limit that can be reached"),
    ('quantity = "R"\nas = "largest"', "as", "one of magnitude and direction"),
    ('quantity = "T"\nas = ""', "as", "one of value"),
    ('resultant = ["T", "R"]\nsymbol = "F"\nname = "n"', "resultant[1]", "the forces R.x"),
    ('resultant = ["T"]\nsymbol = "R"\nname = "n"', "symbol", "that no other element has"),
    ('resultant = ["T"]\nsymbol = "L"\nname = "n"', "symbol", "that nothing else has"),
    ('resultant = ["T"]\nsymbol = "F"', "name", "what exerts it"),
    ("centre_of_mass = []", "centre_of_mass", "a list of 1 to"),
    ('centre_of_mass = ["W_s", "T"]', "centre_of_mass[1]", "one of the weights W_s, W_t"),
    ('centre_of_mass = ["W_s"]\nunit = "kg"', "unit", "a unit of length"),
    ('centre_of_mass = ["W_s"]\nsymbol = "mass"', "symbol", "a letter or Greek name"),
]


@pytest.mark.parametrize(("fields", "field", "words"), SPOILT, ids=[row[0] for row in SPOILT])
def test_each_mistake_is_one_fault(shelf: str, fields: str, field: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        system_of(f"{shelf}[[find]]\n{fields}")
    (fault,) = caught.value.faults
    assert fault.field == f"find[2].{field}"
    assert words in f"{fault.expected}\n{fault.mend}"


def test_a_limit_that_is_not_there_cannot_be_asked_about(shelf: str) -> None:
    with pytest.raises(InputError) as caught:
        system_of(f'{shelf}{LIMIT}[[find]]\nquantity = "slips"\nas = "holds"')
    (fault,) = caught.value.faults
    assert (fault.field, fault.expected) == ("find[2].quantity", "one of breaks")


def test_an_answer_may_state_its_unit() -> None:
    text = SHELF.replace('quantity = "T"', 'quantity = "T"\nunit = "kN"')
    assert read_template(text, "t.toml").system.variables["T"].unit.name == "kN"
    with pytest.raises(InputError) as caught:
        read_template(text.replace('"kN"', '"cm"'), "t.toml")
    assert "a unit of force" in str(caught.value)


@pytest.mark.parametrize("form", ["", '\nas = "components"', '\nas = "magnitude and direction"'])
def test_the_same_is_asked_once(shelf: str, form: str) -> None:
    asking = f'[[find]]\nquantity = "{"R" if form else "T"}"{form}\n'
    text = shelf[: shelf.index("[[find]]")] + asking + asking
    with pytest.raises(InputError) as caught:
        read_template(text, "shelf.toml")
    (fault,) = caught.value.faults
    assert (fault.field, fault.expected) == ("find[1].quantity", "something that is not asked yet")


def test_what_is_asked_may_be_said_to_vary(shelf: str) -> None:
    assert read_template(shelf, "shelf").varying == frozenset()
    text = shelf.replace('quantity = "T"', 'quantity = "T"\nvaries = true', 1)
    assert read_template(text, "shelf").varying == {"T"}
    assert read_template(text, "shelf").system == read_template(shelf, "shelf").system
    with pytest.raises(InputError, match="varies"):
        read_template(text.replace("= true", '= "R"'), "shelf")


WORDINGS = [
    ("the force {{ T }} at {{ A }}", None),
    ("the {{ m | quantity }} {{ m }}", None),
    ("the force {{ U }}", '"{{ U }}"'),
    ("the force {{ T | equation }}", '"| equation"'),
    ("the force { T }", '"{"'),
]


@pytest.mark.parametrize(("wording", "found"), WORDINGS)
def test_what_asks_for_something_names_what_there_is(
    shelf: str, wording: str, found: str | None
) -> None:
    text = shelf + f'[[find]]\nquantity = "W_t"\nwording = "{wording}"\n'
    if found is None:
        assert read_template(text, "shelf.toml").labels.finds[Find("W_t", Form.VALUE)] == wording
        return
    with pytest.raises(InputError) as caught:
        read_template(text, "shelf.toml")
    (fault,) = caught.value.faults
    assert (fault.field, fault.found) == ("find[2].wording", found)
