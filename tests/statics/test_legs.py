"""Lengths by their legs, where a direction that lengths tell crosses them."""

from probgen.quantities.expression import Call, Name, negative, number
from probgen.quantities.printing import plain
from probgen.statics.geometry import angle_of
from probgen.statics.legs import with_legs
from probgen.statics.slope import slant_of
from probgen.statics.system import Link

D, L, TH, AL = (Name(id, id) for id in ("d", "L", "theta", "alpha"))


def test_a_way_across_a_slope_that_lengths_tell_is_taken_by_its_legs() -> None:
    """L at theta, before a force along atan2(d, L): no sine of a difference of the two."""
    slanted = (Link(L, TH),)
    assert with_legs(slanted, angle_of(AL)) == slanted
    found = with_legs(slanted, angle_of(Call("atan2", (D, L))))
    told = [(plain(leg.length), plain(leg.direction)) for leg in found]
    assert told == [("L cos θ", "0"), ("L sin θ", "90")]
    down = (Link(L, negative(Call("atan2", (D, L)))),)  # twice the slope between them
    assert len(with_legs(down, angle_of(Call("atan2", (D, L))))) == 2
    assert with_legs(down, angle_of(number(0))) == down


def test_the_legs_of_a_slant_are_its_sides() -> None:
    """Not sqrt(L^2 + d^2) times L/sqrt(L^2 + d^2)."""
    rising = Call("atan2", (D, L))
    slanted = (Link(slant_of(L, D), negative(rising)),)
    told = [plain(leg.length) for leg in with_legs(slanted, angle_of(rising))]
    assert told == ["L", "−d"]
