"""Papers counted: the sum of a class's chunks is what all of its papers come to."""

from __future__ import annotations

import math
import pickle
from dataclasses import replace

from probgen.marking.finding import Finding
from probgen.marking.tally import tally, together
from probgen.quantities.expression import evaluate
from tests.marking.test_marks import marked

# T of the third paper is M taken for M g, that of the fourth is nothing; its own angle follows.
PAPERS = marked(("19.6", "30"), ("a", ""), ("2.00", "30"), ("12.3", "30"), ("2.00", "0"))
PROBLEMS = [at.problem for at in PAPERS[0].problems]


def test_verdicts_slips_and_steps_are_counted_by_problem() -> None:
    found = tally(PAPERS, PROBLEMS)
    for place in (1, 2):
        assert found.verdicts[place, "T", Finding.RIGHT] == 1
        assert found.verdicts[place, "T", Finding.SLIP] == 2
        assert found.verdicts[place, "t", Finding.EMPTY] == 1
        assert found.parts[place, "T"] == 1
    papers = {(place, slips[0][0]): count for (place, slips), count in found.slips.items()}
    assert papers == {(1, "mass_as_weight"): 2, (2, "mass_as_weight"): 2}
    assert [way[0].slip for way in found.missteps.values()] == ["mass_as_weight"] * 2


def test_values_drawn_stand_in_the_order_of_the_papers() -> None:
    without = replace(PAPERS[1], problems=PAPERS[1].problems[:1])
    found = tally([PAPERS[0], without], PROBLEMS).drawn
    value = float(evaluate(PAPERS[0].problems[0].draw.values["M"], {}))
    assert found[1, "M"] == [value, value]
    assert found[2, "M"][0] == value
    assert math.isnan(found[2, "M"][1])


def test_chunks_add_up_to_the_class_in_its_order() -> None:
    """As they come back from other processes."""
    chunks = [tally(PAPERS[at : at + 2], PROBLEMS) for at in (0, 2, 4)]
    found = together(pickle.loads(pickle.dumps(each)) for each in chunks)
    whole = tally(PAPERS, PROBLEMS)
    for name in ("verdicts", "slips", "parts", "drawn"):
        assert list(getattr(found, name).items()) == list(getattr(whole, name).items())
    assert found.missteps.keys() == whole.missteps.keys()
