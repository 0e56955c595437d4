import pytest

from probgen.quantities.dimension import (
    DimensionError,
    common_dimension,
    dimension_of,
    phrase,
    require_dimension,
)
from probgen.quantities.expression import Expression, Lump, Name, Root
from probgen.quantities.parser import parse
from probgen.quantities.unit import (
    ANGLE,
    FORCE,
    LENGTH,
    MASS,
    PLAIN,
    TORQUE,
    Dimension,
)

DIMENSIONS = {"L": LENGTH, "m": MASS, "theta": ANGLE, "F": FORCE, "k": PLAIN}
SCOPE = {id: Name(id, id) for id in DIMENSIONS}


def tree(text: str) -> Expression:
    return parse(text, SCOPE)


@pytest.mark.parametrize(
    ("text", "dimension"),
    [
        ("L/2", LENGTH),
        ("L + 0", LENGTH),
        ("L + 0.1 m", LENGTH),
        ("F*L*sin(theta)", TORQUE),
        ("180 - theta", ANGLE),
        ("sin(30) + k", PLAIN),
        ("atan2(L, 2 m)", ANGLE),
        ("asin(k)", ANGLE),
        ("acos(k)", ANGLE),
        ("atan(F/F)", ANGLE),
        ("sqrt(L^2 + L*L)", LENGTH),
        ("hypot(L, 3 cm)", LENGTH),
        ("max(L, 0)", LENGTH),
        ("L/L", PLAIN),
        ("m/L^2", Dimension(-2, 1)),
        ("0 + L", LENGTH),
        ("30 + theta", ANGLE),
        ("2*L", LENGTH),
        ("sqrt(k)", PLAIN),
        ("sqrt(4)", PLAIN),
        ("abs(F)", FORCE),
        ("min(F, 3 N)", FORCE),
        ("cos(theta)", PLAIN),
        ("tan(45)", PLAIN),
        ("atan2(k, 2)", ANGLE),
        ("rad(theta)", PLAIN),
        ("exp(k*rad(theta))", PLAIN),
        ("ln(F/F)", PLAIN),
        ("deg(ln(k))", ANGLE),
        ("3", PLAIN),
        ("3 N*m", TORQUE),
    ],
)
def test_dimension_of_an_expression(text: str, dimension: Dimension) -> None:
    assert dimension_of(tree(text), DIMENSIONS) == dimension


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("L + 0.1", "a plain number added to a length; write a unit"),
        ("L - m", "a mass added to a length"),
        ("theta + k", "a plain number added to an angle"),
        ("sin(L)", "a length, where an angle"),
        ("asin(L)", "asin of a length"),
        ("acos(L)", "acos of a length"),
        ("atan(L)", "atan of a length"),
        ("asin(theta)", "asin of an angle"),
        ("exp(theta)", "exp of an angle; it needs a plain number; rad(beta) is an angle as"),
        ("ln(F)", "ln of a force; it needs a plain number"),
        ("rad(k)", "a plain number, where an angle"),
        ("deg(L)", "deg of a length"),
        ("sqrt(L)", "square root of a length"),
        ("atan2(L, m)", "a mass put beside a length"),
        ("cos(k)", "a plain number, where an angle"),
        ("tan(L)", "a length, where an angle"),
        ("L + k", "a plain number added to a length"),
        ("L + 1*1", "a plain number added to a length"),
        ("hypot(L, 3)", "a plain number put beside a length"),
        ("sqrt(F*F*L)", "square root of a quantity of another kind"),
    ],
)
def test_mixed_kinds_are_refused(text: str, words: str) -> None:
    with pytest.raises(DimensionError) as caught:
        dimension_of(tree(text), DIMENSIONS)
    assert words in str(caught.value)


@pytest.mark.parametrize(("text", "wanted"), [("90", ANGLE), ("0", FORCE), ("2 m", LENGTH)])
def test_plain_numbers_stand_for_degrees_and_zero_for_anything(
    text: str, wanted: Dimension
) -> None:
    require_dimension(tree(text), DIMENSIONS, wanted)


@pytest.mark.parametrize(("text", "wanted"), [("90", LENGTH), ("k", ANGLE), ("L", FORCE)])
def test_another_kind_than_wanted_is_refused(text: str, wanted: Dimension) -> None:
    with pytest.raises(DimensionError, match="is needed"):
        require_dimension(tree(text), DIMENSIONS, wanted)


def test_sides_of_a_comparison_share_a_dimension() -> None:
    assert common_dimension(tree("theta"), tree("30"), DIMENSIONS) == ANGLE
    with pytest.raises(DimensionError, match="compared with"):
        common_dimension(tree("F"), tree("1500"), DIMENSIONS)


def test_numbers_inside_an_equation_solved_numerically_have_the_kind_of_its_unknown() -> None:
    root = Root(parse("L - 2 m", SCOPE), "L", 0.0, 9.0)
    assert dimension_of(root, DIMENSIONS) == LENGTH
    assert dimension_of(Lump(tree("L/2")), DIMENSIONS) == LENGTH


@pytest.mark.parametrize(
    ("text", "hinted"), [("L + 0.1", True), ("L - m", False), ("theta + k", True)]
)
def test_a_unit_is_asked_for_where_a_plain_number_stands(text: str, hinted: bool) -> None:
    with pytest.raises(DimensionError) as caught:
        dimension_of(tree(text), DIMENSIONS)
    assert ("write a unit" in str(caught.value)) is hinted


@pytest.mark.parametrize(("dimension", "told"), [(ANGLE, "an angle"), (FORCE, "a force")])
def test_the_article_of_a_kind(dimension: Dimension, told: str) -> None:
    assert phrase(dimension) == told
