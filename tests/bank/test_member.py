"""[[member]]: trusses read, and what an author can get wrong."""

from __future__ import annotations

import pytest

from probgen.bank.labels import Coined, Lettered, Piece, Sort
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.input.fault import InputError
from probgen.quantities.expression import evaluate
from tests.situations import HEAD

TEXT = (
    HEAD
    + """
[given]
p = { name = "panel length", choices = [2.0], unit = "m" }
P = { name = "load", choices = [12.0], unit = "kN" }
[points]
A = [0, 0]
B = ["p", 0]
C = ["p", "p"]
M = ["p/2", 0]
[[member]]
along = ["C", "B", "A"]
[[member]]
along = ["A", "C"]
[[hinge]]
at = "A"
symbol = "R"
[[roller]]
at = "B"
symbol = "N"
[[force]]
at = "C"
magnitude = "P"
direction = 0
[[find]]
quantity = "F_AC"
"""
)


def read(text: str = TEXT) -> Template:
    return read_template(text, "trial.toml")


def test_a_row_of_joints_is_as_many_members_less_one() -> None:
    system = read().system
    assert [(m.start, m.end, m.force.id) for m in system.members] == [
        ("B", "C", "F_BC"), ("A", "B", "F_AB"), ("A", "C", "F_AC"),
    ]  # fmt: skip
    ways = [float(evaluate(member.direction, {"p": 2.0})) for member in system.members]
    assert ways == pytest.approx([90.0, 0.0, 45.0])


def test_without_a_name_the_members_make_the_truss() -> None:
    (body,) = read().system.bodies
    assert (body.id, body.joints) == ("truss", ("B", "C", "A"))
    assert set(body.outline) == {"A", "B", "C"}


def test_a_body_left_to_its_members_has_a_name_of_its_own() -> None:
    text = TEXT.replace("[[member]]", '[body.roof]\nname = "roof truss"\n[[member]]', 1)
    template = read(text)
    assert [body.id for body in template.system.bodies] == ["roof"]
    assert template.labels.bodies["roof"] == "roof truss"
    assert {element.body for element in template.system.elements} == {"roof"}


def test_a_member_and_its_force_go_by_their_letters() -> None:
    labels, named = read().labels, Lettered(Piece.MEMBER, ("A", "C"))
    assert labels.quantities["F_AC"].name == Coined(Sort.MEMBER_FORCE, named)
    assert labels.elements["F_AC"].name == labels.elements["F_AC'"].name == named


def test_another_letter() -> None:
    text = TEXT.replace("[[member]]", '[[member]]\nsymbol = "S"').replace("F_AC", "S_AC")
    assert read(text).system.unknowns[:3] == ("S_BC", "S_AB", "S_AC")


@pytest.mark.parametrize("by", ["joints", "sections"])
def test_how_it_is_to_be_worked(by: str) -> None:
    assert read().system.by == ""
    assert read(TEXT.replace("level = 3", f'level = 3\nby = "{by}"')).system.by == by


FAULTS = [
    ('along = ["A", "C"]', 'along = ["A", "X"]', "member[1].along[1]", "one of the points A, B"),
    ('along = ["A", "C"]', 'along = ["A"]', "member[1].along", "two joints or more"),
    ('along = ["A", "C"]', 'along = ["A", "A"]', "member[1].along", "two joints or more"),
    ('along = ["A", "C"]', 'along = ["B", "A", "C"]', "member[1].along", "not there yet"),
    ('along = ["A", "C"]', 'along = ["A", "C"]\nsymbol = "F_1"', "member[1].symbol", "a letter"),
    (
        'along = ["A", "C"]',
        'along = ["A", "C"]\nlength = 2',
        "member[1].length",
        "one of the fields",
    ),
    ('at = "C"', 'at = "M"', "force[0].at", "one of the joints B, C, A"),
    ('at = "B"\nsymbol', 'at = "M"\nsymbol', "roller[0].at", "one of the joints B, C, A"),
    (
        "[[member]]",
        '[body.roof]\nalong = ["A", "B"]\n[[member]]',
        "member[0].body",
        "members alone",
    ),
    ("[[hinge]]", '[body.roof]\n[body.mast]\n[[hinge]]\nbody = "roof"', "body.mast", "or members"),
    ("[[find]]", '[depicts]\ntruss = "beam"\n[[find]]', "depicts.truss", "no word"),
    ("level = 3", 'level = 3\nby = "cuts"', "by", "joints, sections"),
]


@pytest.mark.parametrize(("old", "new", "field", "expected"), FAULTS)
def test_what_is_wrong_is_said(old: str, new: str, field: str, expected: str) -> None:
    text = TEXT.replace(old, new, 1)
    if "mast" in new:
        for entry in ("[[member]]", "[[roller]]", "[[force]]"):
            text = text.replace(entry, f'{entry}\nbody = "roof"')
    with pytest.raises(InputError) as caught:
        read(text)
    faults = {fault.field: fault for fault in caught.value.faults}
    assert field in faults, caught.value.faults
    assert expected in faults[field].expected
