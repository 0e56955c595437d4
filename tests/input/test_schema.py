"""Data become objects within bounds, and every fault is told with its place."""

from dataclasses import dataclass, field
from typing import Literal

import pytest

from probgen.input.fault import InputError
from probgen.input.schema import Schema, WrongError, entries, listed, matching, within


@dataclass(frozen=True)
class Leaf:
    size: float = 1.0
    kind: Literal["round", "flat"] = "round"


@dataclass(frozen=True)
class Tree:
    name: str
    age: int
    leaves: tuple[Leaf, ...] = ()
    old: bool = False
    marks: dict[str, str] = field(default_factory=dict)
    tag: bytes = b""


def tag(value: object) -> bytes:
    if value != "ok":
        raise WrongError(value, "ok")
    return b"ok"


BOUNDS = {
    Tree: {
        "name": matching("[A-Z][a-z]+", "a name"),
        "age": within(0, 900),
        "leaves": entries(0, 3),
        "marks": entries(0, 1, dict),
    },
    Leaf: {"size": within(0, 1)},
}
SCHEMA = Schema(BOUNDS, {bytes: tag})
GOOD = {
    "name": "Oak", "age": 3, "leaves": [{"size": 1, "kind": "flat"}], "old": True,
    "marks": {"a": "b"}, "tag": "ok",
}  # fmt: skip


def test_data_become_objects() -> None:
    assert SCHEMA.read(GOOD, Tree, "a.json", "") == Tree(
        "Oak", 3, (Leaf(1.0, "flat"),), True, {"a": "b"}, b"ok"
    )
    assert SCHEMA.read({"name": "Oak", "age": 3}, Tree, "a.json", "") == Tree("Oak", 3)


CALLED = Schema(BOUNDS, {bytes: tag}, {Tree: {"leaves": "foliage"}, Leaf: {"kind": "shape"}})


@pytest.mark.parametrize("words", [("leaves", "kind"), ("foliage", "shape")], ids=str)
def test_a_field_is_read_by_what_files_call_it_and_by_its_own_name(words: tuple[str, str]) -> None:
    leaves, kind = words
    content = {"name": "Oak", "age": 3, leaves: [{kind: "flat"}]}
    assert CALLED.read(content, Tree, "a.json", "").leaves == (Leaf(kind="flat"),)
    for wrong, place in (({kind: 3}, "foliage[0].shape"), ({"size": 2}, "foliage[0].size")):
        with pytest.raises(InputError) as refused:
            CALLED.read({**content, leaves: [wrong]}, Tree, "a.json", "")
        assert [fault.field for fault in refused.value.faults] == [place]
    with pytest.raises(InputError, match="foliage"):
        CALLED.read({"name": "Oak", "age": 3, "leafs": []}, Tree, "a.json", "")


WRONG = [
    ("name", "oak", "name", "a name"),
    ("name", 3, "name", "a name"),
    ("name", ["Oak"], "name", "a name"),
    ("age", "3", "age", "a whole number"),
    ("age", True, "age", "a whole number"),
    ("age", 3.0, "age", "a whole number"),
    ("age", 901, "age", "from 0 to 900"),
    ("age", None, "age", "a whole number"),
    ("old", 1, "old", "true or false"),
    ("leaves", "none", "leaves", "a list of 0 to 3 entries"),
    ("leaves", {"size": 1}, "leaves", "a list"),
    ("leaves", [{}] * 4, "leaves", "0 to 3"),
    ("leaves", [{}, 3], "leaves[1]", "a table"),
    ("leaves", [{"size": 2}], "leaves[0].size", "from 0 to 1"),
    ("leaves", [{"size": float("nan")}], "leaves[0].size", "from 0 to 1"),
    ("leaves", [{"size": "1"}], "leaves[0].size", "a number"),
    ("leaves", [{"kind": "square"}], "leaves[0].kind", "one of round, flat"),
    ("leaves", [{"kind": ["flat"]}], "leaves[0].kind", "one of round, flat"),
    ("leaves", [{"sort": "flat"}], "leaves[0].sort", "the fields size, kind"),
    ("marks", ["a"], "marks", "a table"),
    ("marks", {"a": 3}, "marks[a]", "a text"),
    ("marks", {"a": "x" * 1001}, "marks[a]", "at most 1000 characters"),
    ("tag", "no", "tag", "ok"),
    ("extra", 1, "extra", "one of the fields"),
]


@pytest.mark.parametrize(("key", "value", "place", "words"), WRONG)
def test_each_fault_has_its_place(key: str, value: object, place: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        SCHEMA.read({**GOOD, key: value}, Tree, "a.json", "take another")
    (fault,) = caught.value.faults
    assert (fault.file, fault.field, fault.mend) == ("a.json", place, "take another")
    assert words in fault.expected


def test_all_faults_at_once() -> None:
    with pytest.raises(InputError) as caught:
        SCHEMA.read({"age": -1, "leaves": [{"size": 7}, {"kind": 1}]}, Tree, "a.json", "")
    places = {fault.field for fault in caught.value.faults}
    assert places == {"name", "age", "leaves[0].size", "leaves[1].kind"}


@pytest.mark.parametrize("content", [None, [], "x", 3])
def test_what_is_no_table_is_no_object(content: object) -> None:
    with pytest.raises(InputError, match="a table"):
        SCHEMA.read(content, Tree, "a.json", "")


def test_listed_words() -> None:
    assert listed(["a", "b"]).holds("a")
    assert not listed(["a", "b"]).holds("c")
