"""The guide's pages for a beginner: its first template works, and every message is explained."""

import ast
import re
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.cli.bank.check import doubt_told
from probgen.department.doubt import Doubt, DoubtKind
from probgen.problem.problem import draw_class, prepare, work
from probgen.problem.template_check import check_template
from probgen.working.convention import Convention
from tests.problem.test_flaw_words import TOLD

ROOT = Path(__file__).parents[2]
GUIDE = (ROOT / "templates" / "README.md").read_text(encoding="utf-8")
FIRST = "\n".join(re.findall(r"^```toml whole\n(.*?)^```", GUIDE, re.M | re.S))
EXPLAINED = {
    phrase
    for cell in re.findall(r"^\| ([^|]*\*[^|]*) \|", GUIDE, re.M)
    for phrase in re.findall(r"\*([^*]+)\*", cell)
}
"""What stands in slanted letters in the first column of a table."""


def test_the_first_template_is_worked_and_checked() -> None:
    template = read_template(FIRST, "plank-by-one-end.toml")
    assert check_template(template, 2000).proved == 2000
    problem = prepare(template, Convention())
    (own,) = work(problem, draw_class(problem, "guide", ["one"]).draws)
    values = own.case.values
    length, reach = values["L"], values["d"]
    beam, can = 9.8 * values["m"], 9.8 * values["M"]
    assert values["F"] == pytest.approx(beam / 2 + can * reach / length)
    assert values["N"] == pytest.approx(beam + can - values["F"])


@pytest.mark.parametrize("said", [said for _, _, said in TOLD])
def test_what_a_proof_finds_is_explained(said: str) -> None:
    assert any(phrase in said for phrase in EXPLAINED)


@pytest.mark.parametrize("kind", DoubtKind)
def test_what_is_doubted_is_explained(kind: DoubtKind) -> None:
    said = "\n".join(doubt_told(Doubt(kind, 0.5, "T", "L = 2 m", "told")))
    assert any(phrase in said for phrase in EXPLAINED)


STATICS = "\n".join(
    path.read_text(encoding="utf-8") for path in (ROOT / "probgen" / "statics").glob("*.py")
)


def test_what_is_refused_is_explained() -> None:
    """One row for each place that refuses; what nothing holds and what contradicts are of one."""
    rows = re.search(r"What has no solution at all:\n\n(.*?)\n\n", GUIDE, re.S)
    assert rows is not None
    phrases = re.findall(r"^\| \*([^*]+)\*", rows[1], re.M)
    assert [phrase for phrase in phrases if phrase not in STATICS] == []
    refusing = [
        node
        for node in ast.walk(ast.parse(STATICS.replace("from __future__ import annotations\n", "")))
        if isinstance(node, ast.Raise) and ast.unparse(node).startswith("raise Refusal(")
    ]
    assert len(phrases) == len(refusing) + 1
