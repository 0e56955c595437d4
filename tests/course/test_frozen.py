"""Templates from a record: read again, and held against what was drawn from them."""

from dataclasses import replace
from decimal import Decimal

import pytest

from probgen.course.frozen import frozen_problems
from probgen.course.issue import FrozenTemplate
from probgen.draws.draw import Draw
from probgen.input.fault import InputError
from tests.terms import begun, class_of, lamp

RECORD = begun(class_of(3))


def test_a_record_has_all_that_its_papers_are_worked_from() -> None:
    (problem,) = frozen_problems(RECORD.issue, RECORD.current, "record.json")
    assert (problem.template.id, problem.template.source) == ("lamp", lamp())


HALF = '[derived]\nh = { name = "half", is = "L/2", round = 0.01, unit = "m" }\n'
SOURCES = {
    "another revision": (lamp(revision=2), "lamp, revision 2"),
    "a range without the values": (lamp(low="50.0", high="60.0"), "can be drawn"),
    "other quantities": (lamp().replace("[points]", f"{HALF}[points]"), "each in its unit"),
}


@pytest.mark.parametrize(("source", "said"), SOURCES.values(), ids=SOURCES)
def test_a_template_that_does_not_give_the_numbers_is_refused(source: str, said: str) -> None:
    issue = replace(RECORD.issue, templates=(FrozenTemplate("lamp", 1, source),))
    with pytest.raises(InputError, match=said) as caught:
        frozen_problems(issue, RECORD.current, "record.json")
    assert len(caught.value.faults) == 1 or said == "can be drawn"  # not told of every paper


def test_a_value_nobody_draws_is_refused() -> None:
    first = RECORD.current[0]
    values = {**first.draws[0].values}
    values["m"] = replace(values["m"], value=Decimal("2.25"))
    changed = replace(first, draws=(Draw("lamp", 1, values),))
    with pytest.raises(InputError, match=r"values\.m\.drawn 2"):
        frozen_problems(RECORD.issue, [RECORD.current[1], changed], "record.json")
