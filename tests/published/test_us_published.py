"""Published answers in US customary units, through the template language.

J. P. Den Hartog, Mechanics (1948; Dover 1961), problems 26, 29, 33 and 68, as worked and compared
with the book's answers in the repository drdrang/mechanics (commit 400dd56, src/problem026.md).
D. Baker and W. Haynes, Engineering Statics: Open and Interactive (CC BY-NC-SA 4.0), chapter 7,
example "Beam Reactions", in the repository dantheboatman/EngineeringStatics (commit 3ca253a99).
I. J. Levinson, Statics and Strength of Materials, example 4.4, page 72, as computed in the
repository FOSSEE/Python-Textbook-Companions.  Only numbers are taken from them.
"""

from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.draws.draw import completed
from probgen.problem.problem import prepare, tell_steps, work
from probgen.quantities.unit import US_CUSTOMARY
from probgen.working.convention import Convention

HERE = Path(__file__).parent / "customary"
ANSWERS = [
    ("dh-026", {"W": 2500, "P": 1500}, {"N": 875, "R.y": 1625}),
    ("dh-029", {"W": 7000, "slant": 0}, {"P": 14000}),
    ("dh-029", {"W": 7000, "slant": 30}, {"P": 6616}),
    ("dh-033", {}, {"T": 2000, "F": 200}),
    ("dh-068", {}, {"R": 14708, "N": 18385}),
    ("es-7-beam", {}, {"R.y": 196.7, "N": 393.3}),
    ("le-4-4", {}, {"N_A": 6600, "N_B": 4400}),
]


@pytest.mark.parametrize(("id", "values", "printed"), ANSWERS)
def test_published_answers_in_pounds(
    id: str, values: dict[str, int], printed: dict[str, float]
) -> None:
    text = (HERE / f"{id}.toml").read_text(encoding="utf-8")
    problem = prepare(
        read_template(text, f"{id}.toml", US_CUSTOMARY), Convention(units=US_CUSTOMARY)
    )
    givens = {given.id: given.choices[0] for given in problem.template.givens}
    chosen = {given: type(first)(values.get(given, first)) for given, first in givens.items()}
    (own,) = work(problem, [completed(problem.template, chosen)])
    found = {answer.id: (answer.value, answer.unit) for answer in own.answers}
    for id_, value in printed.items():
        assert found[id_][0] == pytest.approx(value, abs=0.5 if isinstance(value, int) else 0.05)
        assert found[id_][1] == "lbf"
    assert tell_steps(problem, own)
