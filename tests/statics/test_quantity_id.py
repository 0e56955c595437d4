"""Ids put together in one place, and taken apart nowhere."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from probgen.statics import quantity_id
from probgen.statics.quantity_id import (
    Quantity,
    QuantityPart,
    back_id,
    joint_id,
    part_id,
    pull_id,
)

PACKAGE = Path(quantity_id.__file__).parents[1]
BELOW = {"input", "quantities"}  # these rooms know no ids; they have dots in paths and decimals
FILES = [
    file
    for file in sorted(PACKAGE.rglob("*.py"))
    if file != Path(quantity_id.__file__) and file.relative_to(PACKAGE).parts[0] not in BELOW
]
END = re.compile(r"\.(x|y|magnitude|direction|limit)\b")

NAMED = [
    ("T", "T", QuantityPart.WHOLE),
    ("R.x", "R", QuantityPart.X),
    ("R_1.y", "R_1", QuantityPart.Y),
    ("R.magnitude", "R", QuantityPart.MAGNITUDE),
    ("J.direction", "J", QuantityPart.DIRECTION),
    ("m.limit", "m", QuantityPart.LIMIT),
]


@pytest.mark.parametrize(("id", "owner", "part"), NAMED)
def test_an_owner_and_a_part_are_an_id(id: str, owner: str, part: QuantityPart) -> None:
    assert str(Quantity(owner, part)) == id


def test_a_tension_is_told_from_the_pulls_of_its_rope() -> None:
    assert pull_id("T", 2) == "T.2"


def test_what_acts_back_and_the_pieces_of_a_truss_have_ids_of_their_own() -> None:
    assert back_id("R.x") == "R.x'"
    assert joint_id("A") == "joint-A"
    assert part_id(["A", "B"]) == "part-A-B"


def test_a_quantity_knows_what_else_its_owner_has() -> None:
    of = Quantity("R", QuantityPart.MAGNITUDE)
    assert (of.x, of.y, of.components) == ("R.x", "R.y", ("R.x", "R.y"))
    assert (of.magnitude, of.direction, of.limit) == ("R.magnitude", "R.direction", "R.limit")


@pytest.mark.parametrize("part", QuantityPart)
def test_a_quantity_is_one_thing(part: QuantityPart) -> None:
    of = Quantity("R", part)
    assert of.is_magnitude == (part is QuantityPart.MAGNITUDE)
    assert of.is_direction == (part is QuantityPart.DIRECTION)


def test_a_magnitude_is_printed_in_the_unit_of_its_components() -> None:
    parts = (QuantityPart.WHOLE, QuantityPart.Y, QuantityPart.MAGNITUDE)
    assert [Quantity("R", part).unit_id for part in parts] == ["R", "R.y", "R.x"]


def test_nobody_else_puts_ids_together_or_takes_them_apart() -> None:
    found = [f"{file.relative_to(PACKAGE)}:{line}" for file in FILES for line in _ends(file)]
    assert found == []


@pytest.mark.parametrize(
    "line",
    [
        'owner = id.removesuffix(".magnitude")',
        'turned = id.endswith((".x", ".y"))',
        'x = values[f"{id}.x"]',
        'part = f"{id}.{axis}"',
        'owner, _, part = id.partition(".")',
        'whole = "." not in id',
        'unit = id.replace(".magnitude", ".x")',
    ],
)
def test_such_a_line_is_seen(line: str, tmp_path: Path) -> None:
    (tmp_path / "own.py").write_text(line, encoding="utf-8")
    assert list(_ends(tmp_path / "own.py"))


def _ends(file: Path) -> Iterator[int]:
    """The lines in which the end of an id stands, or the dot before it is looked for."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        match node:
            case ast.Constant(str(text)) if END.fullmatch(text):
                yield node.lineno
            case ast.JoinedStr(values):
                yield from (node.lineno for _ in _joined(values))
            case ast.Compare(ast.Constant("."), [ast.In() | ast.NotIn()]):
                yield node.lineno
            case ast.Call(ast.Attribute(_, "partition" | "rpartition" | "split" | "rsplit")) if any(
                isinstance(each, ast.Constant) and each.value == "." for each in node.args
            ):
                yield node.lineno


def _joined(values: list[ast.expr]) -> Iterator[ast.expr]:
    """The texts in a formatted string that put an end to what stands before them."""
    for before, text, after in zip(values, values[1:], [*values[2:], None], strict=False):
        if isinstance(before, ast.FormattedValue) and isinstance(text, ast.Constant):
            dot = text.value == "." and isinstance(after, ast.FormattedValue)
            if dot or END.match(str(text.value)):
                yield text
