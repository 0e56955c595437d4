"""What is told of diagrams: the largest values of supplied templates, where they are, and words."""

from __future__ import annotations

import pytest

from probgen.bank.reading import read_template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.problem.problem_figures import diagram_scene
from probgen.statics.internal_forces import Inside
from probgen.wording.diagram import diagram_passage, drawn_of
from probgen.wording.facts.diagram import DiagramRead, LargestInside
from probgen.wording.passage import Sentences
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from tests.bank.test_section import BEAM, BUILT_IN, LOAD, ON_TWO, TURNED, spread
from tests.situations import HEAD


def worked(text: str) -> tuple[Problem, Worked]:
    problem = prepare(read_template(HEAD + text, "trial.toml"), Convention())
    (own,) = work(problem, draw_class(problem, "diagram", ["one"]).draws)
    return problem, own


ASKED = '[[find]]\nquantity = "R"\nas = "components"\n[[diagram]]\n'
ONE = BEAM.replace("[6.0, 7.0]", "[6.0]").replace("900, 950", "900").replace("120, 130", "120")
EVEN = spread("A", "B", '"w"', '"w"')
DOWN = LOAD.replace("300", "270")
BENT = TURNED.replace('"C"', '"A"').replace("-400", "-3000")
CASES = [
    # 120 N/m on 6 m: 360 N at both ends, w L^2/8 in the middle
    (ONE + ON_TWO + EVEN + ASKED, "360", "A", "540", "", True),
    # 900 N at 1.5 m, drawn straight down: F b/L = 675 N at A, F a b/L there
    (ONE + ON_TWO + DOWN + ASKED, "675", "A", "1012.5", "C", True),
    # built in at B: w L and -w L^2/2 there
    (ONE + BUILT_IN + EVEN + ASKED, "-720", "B", "-2160", "B", False),
    # a couple of 3000 N m at the free end, where nothing shears, and 900 N against it at C
    (ONE + BUILT_IN + DOWN + BENT + ASKED, "-900", "C", "3000", "A", False),
]


@pytest.mark.parametrize(("text", "shear", "at", "moment", "there", "level"), CASES)
def test_the_largest_values_and_where(
    text: str, shear: str, at: str, moment: str, there: str, *, level: bool
) -> None:
    _, own = worked(text)
    (found,) = own.inside
    parts = diagram_passage(own.digits, found, own.complete).parts
    told = [f for part in parts if isinstance(part, Sentences) for f in part.facts]
    first, second = (fact for fact in told if isinstance(fact, LargestInside))
    sizes = [float(each.value.value) * each.value.unit.factor for each in (first, second)]  # type: ignore[union-attr]
    assert sizes == pytest.approx([float(shear), float(moment)], rel=5e-3)
    assert (first.at, second.at) == (at, there)
    assert (first.level, second.level) == (False, level)
    assert there or float(second.distance.value) == pytest.approx(3.0)


UP = spread("A", "B", '"-w"', '"-w"')
GROWING = spread("A", "B", "0", '"w"')
CHANGES = [
    (DOWN, False, False),
    (EVEN + DOWN, True, True),
    (UP, True, False),  # there the shear force grows
    (GROWING, True, False),
    (spread("A", "B", '"w"', "0"), True, False),
    (EVEN + GROWING.replace('"Q"', '"S"'), True, False),
]


@pytest.mark.parametrize(("loads", "spread", "even"), CHANGES)
def test_how_the_shear_force_changes_is_told_of_the_loads_there_are(
    loads: str, *, spread: bool, even: bool
) -> None:
    problem, own = worked(ONE + BUILT_IN + loads + ASKED)
    (found,) = own.inside
    parts = diagram_passage(own.digits, found, own.complete).parts
    told = [f for part in parts if isinstance(part, Sentences) for f in part.facts]
    (read,) = (fact for fact in told if isinstance(fact, DiagramRead))
    assert (read.spread, read.even) == (spread, even)
    said = plain_text(problem.language.say(read, problem.nouns))
    assert ("falls evenly under an even load" in said) == even
    assert ("along a spread load" in said) == (spread and not even)


def test_an_axial_force_is_drawn_where_there_is_one() -> None:
    problem, own = worked(ONE + ON_TWO + LOAD + ASKED)
    (found,) = own.inside
    assert drawn_of(found) == (Inside.AXIAL, Inside.SHEAR, Inside.MOMENT)
    words = diagram_scene(problem, own, "beam").words
    assert words.startswith("Along the beam, from left to right: axial force: ")
