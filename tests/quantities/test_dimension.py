import pytest

from probgen.quantities.dimension import (
    DimensionError,
    common_dimension,
    dimension_of,
    require_dimension,
)
from probgen.quantities.expression import Expression, Name
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
        ("sqrt(L)", "square root of a length"),
        ("atan2(L, m)", "a mass put beside a length"),
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
