import pytest

from probgen.bank.labels import Reason
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import InputError
from probgen.quantities.expression import Name, Product, number
from probgen.statics.system import Condition

RX, RY, T = Name("R.x", "R_x"), Name("R.y", "R_y"), Name("T", "T")


def read(text: str) -> Template:
    return read_template(text, "shelf.toml")


def test_an_equation_of_the_author_becomes_a_condition(shelf: str) -> None:
    entry = '[[condition]]\nthat = "R.x = 2*R.y"\nbecause = "so it is built"\n'
    template = read(shelf + entry + entry)
    first, second = template.system.conditions
    assert (first.left, first.right) == (RX, Product((number(2), RY)))
    assert (first.id, second.id) == ("1", "2")
    assert template.labels.reasons == dict.fromkeys("12", "so it is built")


def test_a_share_is_a_ratio_of_two_forces(shelf: str) -> None:
    template = read(shelf + '[[share]]\nof = "R.y"\nto = "T"\nratio = 1')
    assert template.system.conditions == (Condition("1", RY, T),)
    assert template.labels.reasons == {"1": Reason.RATIO_STATED}


def test_a_limit_keeps_its_name_and_holds_where_it_is_reached(shelf: str) -> None:
    entry = '[[limit]]\nthat = "T < 900 N"\nname = "the cable breaks"'
    template = read(f'{shelf}{entry}\n[[limit]]\nid = "up"\nthat = "R.y >= 0"\nname = "it lifts"')
    first, second = template.system.limits
    assert (first.id, first.left, first.relation) == ("limit_1", T, "<=")
    assert template.labels.limits == {"limit_1": "the cable breaks", "up": "it lifts"}
    assert (second.id, second.relation) == ("up", ">=")
    assert [r.because for r in template.requirements] == [
        "the cable breaks",
        "it lifts",
        "a light cable",
    ]


# An entry added to the shelf, and the one fault it must give.
SPOILT = [
    ('[[condition]]\nthat = "R.x = R.y"', "condition[0].because", "add because"),
    ('[[condition]]\nthat = "R.x"\nbecause = "b"', "condition[0].that", "expected = after"),
    ('[[condition]]\nthat = "R.x < T"\nbecause = "b"', "condition[0].that", "expected = after"),
    ('[[condition]]\nthat = "R.x = m"\nbecause = "b"', "condition[0].that", "compared with"),
    ('[[condition]]\nbecause = "b"', "condition[0].that", "an equation, such as"),
    ('[[share]]\nof = "R.x"\nto = "T"', "share[0].ratio", "add ratio"),
    ('[[share]]\nof = "L"\nto = "T"\nratio = 1', "share[0].of", "a length, where a force"),
    ('[[share]]\nof = "T"\nto = "T_2"\nratio = 1', "share[0].to", "no quantity named 'T_2'"),
    ('[[limit]]\nthat = "T <= 9 N"', "limit[0].name", "what happens beyond it"),
    ('[[limit]]\nthat = "T = 9 N"\nname = "n"', "limit[0].that", "one of < <= > >="),
    ('[[limit]]\nthat = "T <= 9"\nname = "n"', "limit[0].that", "compared with"),
    ('[[limit]]\nid = "9"\nthat = "T <= 9 N"\nname = "n"', "limit[0]", "letters, digits"),
    (
        '[[limit]]\nid = "a"\nthat = "T < 9 N"\nname = "n"\n'
        '[[limit]]\nid = "a"\nthat = "T < 8 N"\nname = "n"',
        "limit[1].id",
        "that no other limit has",
    ),
]


@pytest.mark.parametrize(("entry", "field", "words"), SPOILT, ids=[row[0][:40] for row in SPOILT])
def test_each_mistake_is_one_fault(shelf: str, entry: str, field: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        read(shelf + entry)
    (fault,) = caught.value.faults
    assert fault.field == field
    assert words in f"{fault.expected}\n{fault.mend}"
