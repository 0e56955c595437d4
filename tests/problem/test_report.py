"""A worked problem as data: the contract's shape, and text without mark-up."""

import json
from decimal import Decimal

import pytest

from probgen.bank.bank import default_bank
from probgen.problem.report import as_data, plain_lines
from probgen.problem.single import work_single
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Relation
from probgen.quantities.unit import NEWTON
from probgen.wording.block import Display, Itemize, Math, Paragraph, Text

FORCE = Math((Name("T", "T"), Relation("="), Number(Decimal("40"), NEWTON)))


def test_the_contract_s_object() -> None:
    single = work_single("ladder-smooth-wall", 2)
    revision = default_bank().read("ladder-smooth-wall").revision
    data = json.loads(json.dumps(as_data(single)))
    assert list(data) == ["template", "revision", "values", "answers", "steps", "proof"]
    assert (data["template"], data["revision"]) == ("ladder-smooth-wall", revision)
    drawn = single.worked.draw.values
    assert {id: entry["unit"] for id, entry in data["values"].items()} == {
        id: number.unit.name if number.unit else "1" for id, number in drawn.items()
    }
    assert all(data["values"][id]["value"] == float(n.value) for id, n in drawn.items())
    assert all(step.keys() == {"title", "text", "equations"} for step in data["steps"])


def test_a_direction_has_its_angle_beside_its_words() -> None:
    answers = {entry["id"]: entry for entry in as_data(work_single("beam-stay-cable"))["answers"]}
    assert answers.keys() == {"T", "R.magnitude", "R.direction", "R.x", "R.y"}
    assert [id for id, entry in answers.items() if "angle_from_x" in entry] == ["R.direction"]
    x, y, size = (answers[f"R.{part}"]["value"] for part in ("x", "y", "magnitude"))
    assert complex(x, y) == pytest.approx(
        size * 1j ** (answers["R.direction"]["angle_from_x"] / 90.0)
    )


def test_blocks_as_plain_text() -> None:
    sentence = (Text("So\nthe pull is "), FORCE, Text("."))
    assert plain_lines(Paragraph(sentence)) == ["So the pull is T = 40 N."]
    assert plain_lines(Itemize((sentence, sentence))) == ["- So the pull is T = 40 N."] * 2
    assert plain_lines(Display(())) == []
