"""Changes of templates sorted into their kinds."""

from typing import NamedTuple

import pytest

from probgen.bank.reading import read_template
from probgen.department import comparison
from probgen.department.change import Difference, Kind
from probgen.department.comparison import compare
from tests.banks import template_text
from tests.department.spoiling import changed

MANY = 500


class Prepared(NamedTuple):
    """A problem whose plan is its template's text, so that no two are alike."""

    plan: str
    convention: object = None


class Mark(NamedTuple):
    kinds: tuple[str, ...]
    points: int


ONE = [
    ('"90 + muscle_angle"', '"90 - muscle_angle"', (Kind.PHYSICS,)),
    ('M = ["insertion", 0]', 'M = ["insertion", "0.01*insertion"]', (Kind.PHYSICS, Kind.FIGURE)),
    ("from = 2.0, to = 18.0", "from = 3.0, to = 18.0", (Kind.NUMBERS,)),  # in US customary alone
    ('symbol = "m_b"', 'symbol = "m_c"', (Kind.WORDS,)),
    ('name = "weight of the bag"', 'name = "weight of the sack"', (Kind.WORDS,)),
    ('cautions = ["body"]', 'cautions = ["body", "lifting"]', (Kind.WORDS,)),
    ('insertion = "9 cm"', 'insertion = "8 cm"', (Kind.FIGURE,)),
    ('family = "limbs"', 'family = "levers"', (Kind.PARTICULARS,)),
    ('quantity = "B"', 'quantity = "B"\nvaries = true', (Kind.PARTICULARS,)),
    ("[given]", "\n[given]", (Kind.LAYOUT,)),
    ("revision = 1", "revision = 2", ()),
]


@pytest.mark.parametrize(("old", "new", "kinds"), ONE)
def test_one_change_of_one_kind(old: str, new: str, kinds: tuple[Kind, ...]) -> None:
    before = read_template(template_text("forearm-load"), "before")
    assert old in before.source
    after = read_template(before.source.replace(old, new), "after")
    found = compare(before, after)
    assert found.kinds == kinds


def test_points_for_other_steps_are_other_marks_unless_physics_is(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    before = read_template(template_text("forearm-load"), "before")
    wider = read_template(before.source.replace("to = 8.0", "to = 9.0"), "after")
    assert compare(before, wider).kinds == (Kind.NUMBERS,)
    monkeypatch.setattr(comparison, "prepare", lambda template, _: Prepared(template.source))
    monkeypatch.setattr(comparison, "scheme", lambda plan, *_: [Mark((plan,), 1)])
    found = compare(before, wider)
    assert found.kinds == (Kind.NUMBERS, Kind.MARKS)
    assert [len(marks) for marks in found.marks] == [1, 1]


def test_what_cannot_be_read_in_us_customary_is_compared_all_the_same() -> None:
    before = read_template(template_text("forearm-load"), "before")
    text = before.source.replace("from = 2.0, to = 18.0", "from = 20.0, to = 18.0")
    assert Kind.NUMBERS in compare(before, read_template(text, "after")).kinds


def test_fields_are_told_as_they_are_typed() -> None:
    before = read_template(template_text("forearm-load"), "before")
    text = before.source.replace("to = 8.0", "to = 9.0").replace("level = 2", "level = 3")
    found = compare(before, read_template(text.replace("revision = 1", "revision = 2"), ""))
    assert found.revisions == (1, 2)
    assert found.differences == (
        Difference("level", "2", "3"), Difference("given.load_mass.to", "8.0", "9.0"),
    )  # fmt: skip


def wrongly_sorted(seeds: range) -> list[str]:
    wrong = []
    for seed in seeds:
        before, after, kinds = changed(seed)
        found = set(compare(before, after).kinds)
        hidden = {Kind.LAYOUT} if len(kinds) > 1 else set()  # a comment beside something else
        follows = {Kind.MARKS} if Kind.NUMBERS in kinds else set()  # another plan may be shorter
        follows |= {Kind.WORDS} if Kind.FIGURE in kinds else set()  # what stands, does not hang
        if not kinds - hidden <= found <= kinds - hidden | follows:
            wrong.append(f"{seed}: {before.id} {sorted(kinds)}, found {sorted(found)}")
    return wrong


def test_changes_are_sorted_into_their_kinds() -> None:
    assert wrongly_sorted(range(40)) == []


@pytest.mark.proof
def test_many_changes_are_sorted_into_their_kinds() -> None:
    assert wrongly_sorted(range(MANY)) == []
