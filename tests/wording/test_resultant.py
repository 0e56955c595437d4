"""Magnitude and direction of a force told from its components.

By hand: the hinge of the shelf pulls with R_x = 145.99 N and R_y = -4.90 N: 146.07 N, arctan of
4.90/145.99 = 1.92° below the horizontal.  With the cable straight up R_x is zero and R = 4.90 N.
"""

from __future__ import annotations

from probgen.quantities.expression import Name
from probgen.wording.block import Display, Math, Paragraph, Text
from probgen.wording.english import ENGLISH
from probgen.wording.facts.ending import ForceActs, OneComponent
from probgen.wording.nouns import Nouns
from probgen.wording.passage import Sentences
from probgen.wording.resultant import resultant_passages
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention
from probgen.working.direction import Way
from tests.situations import FIND_R, FIND_T, HINGED, SHELF, STAYED, STAYED_SHELF, worked
from tests.wording.own_telling import told_of
from tests.wording.shown import shown

USUAL = Convention()


def told(text: str, convention: Convention = USUAL) -> tuple[list[str], ForceActs]:
    """Equations, or the one component, as texts, and what the force does."""
    _, own = worked(text, convention)
    (passage,) = resultant_passages(own.digits)
    assert shown(passage.heading) == "ResultantHeading(R)"
    rows = [row for part in passage.parts if isinstance(part, Display) for row in part.rows]
    facts = [f for part in passage.parts if isinstance(part, Sentences) for f in part.facts]
    (acts,) = [fact for fact in facts if isinstance(fact, ForceActs)]
    alone = [fact for fact in facts if isinstance(fact, OneComponent)]
    return [shown(each) for each in (*rows, *alone)], acts


def test_magnitude_and_steepness() -> None:
    rows, acts = told(STAYED_SHELF)
    assert rows == [
        "R = √(R_x² + R_y²) = √((146 N)² + (−4.90 N)²)",
        "= 146.1 N ≈ 146 N",
        "φ = arctan(|R_y|/|R_x|)",
        "= arctan(4.90 N/(146 N)) = 1.9°",
    ]
    assert (acts.element, acts.body, shown(acts.size)) == ("R", "shelf", "146 N")
    assert shown(acts.direction.shown) == "1.9°"
    assert acts.direction.way == Way(None, False, True)  # downward, to the right


def test_from_the_vertical_where_the_course_measures_so() -> None:
    rows, _ = told(STAYED_SHELF, Convention(direction="vertical"))
    assert rows[2:] == ["φ = arctan(|R_x|/|R_y|)", "= arctan(146 N/(4.90 N)) = 88.1°"]


def test_the_angle_s_letter_is_told_with_its_side() -> None:
    _, own = worked(STAYED_SHELF)
    (passage,) = resultant_passages(own.digits)
    section = ENGLISH.section(passage, Nouns(own.case.system, own.case.labels))
    (told,) = [block for block in section.blocks if isinstance(block, Paragraph)]
    assert plain_text(told.inlines).startswith(
        "R_x > 0 and R_y < 0: to the right and down, so φ is the angle below the horizontal."
    )


def test_another_letter_where_phi_is_taken() -> None:
    own_phi = STAYED_SHELF.replace('name = "angle",', 'name = "angle", symbol = "phi",')
    rows, _ = told(own_phi)
    assert rows[2] == "ψ = arctan(|R_y|/|R_x|)"


def test_one_component_is_the_whole_force() -> None:
    """R_x = 0: the force is R_y."""
    text = SHELF + HINGED + STAYED.replace('"180 - theta"', "90") + FIND_T + FIND_R
    rows, acts = told(text)
    assert rows == ["OneComponent(R, R_x, R_y, False)"]
    assert shown(acts.size) == "4.90 N"


def test_a_level_force() -> None:
    """The cable at 1.00 m carries 117.6 N m/1.00 m, all there is: only a push of 50 N is left."""
    text = SHELF.replace("[0.96]", "[1.00]") + HINGED + STAYED.replace('"180 - theta"', "90")
    push = '[[force]]\nat = "A"\ndirection = 180\nmagnitude = "50 N"\nsymbol = "P"\n'
    rows, acts = told(text + push + FIND_T + FIND_R)
    assert rows == ["OneComponent(R, R_y, R_x, True)"]
    assert shown(acts.size) == "50.0 N"


def test_only_what_is_asked_so() -> None:
    _, own = worked(SHELF + HINGED + STAYED + FIND_T)
    assert list(resultant_passages(own.digits)) == []


def test_the_letter_in_its_heading_is_a_formula() -> None:
    _, own = worked(STAYED_SHELF)
    (passage,) = resultant_passages(own.digits)
    section = ENGLISH.section(passage, Nouns(own.case.system, own.case.labels))
    assert section.title == "Magnitude and direction of R"
    assert section.heading == (Text("Magnitude and direction of "), Math((Name("R", "R"),)))


def test_the_angle_s_letter_is_told_in_every_quadrant() -> None:
    lines = told_of("beam-stay-cable", Convention(direction="axis"))
    assert any("quadrant. φ is the angle with the x axis, so R points 360° − " in x for x in lines)
