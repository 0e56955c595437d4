"""All of the ink stays inside the margins, and TeX has nothing to remark."""

from collections.abc import Iterator, Sequence

import pytest

from probgen.papers.typesetter import Kind
from probgen.press.batch import Printed
from probgen.working.convention import Convention
from tests.papers.ink import whites
from tests.papers.looks import LOOKS, Look, copies, printed

HANGING = 1.0  # mm by which a point or hyphen may stand in the margin, and what a pixel takes
FOOT = 5.0  # mm below the foot line, at the least


def strays(documents: Sequence[Printed], look: Look) -> Iterator[str]:
    """What leaves the margins, or its place."""
    for each in documents:
        name = f"{each.pile}, draw {each.name}"
        yield from (f"{name}: {blemish.words}" for blemish in each.blemishes)
        for number, white in enumerate(whites(each.pdf), start=1):
            beside = look.margin - min(white.left, white.right)
            if beside > HANGING or white.bottom < FOOT or white.top < FOOT:
                yield f"{name}, page {number}: {beside:.1f} mm beyond the margin, {white}"


@pytest.mark.parametrize(
    ("id", "look"),
    [
        ("beam-stay-cable", "letter"),  # two figures beside each other's text
        ("cellar-hatch-rope", "A4"),
        ("head-over-phone", "A4, sans"),
        ("gate-two-hinges", "letter, sans"),
        ("tiptoe-achilles", "letter, large"),
        ("bent-back-toolbox", "letter, large"),  # as high as a page
    ],
)
def test_ink_stays_inside_the_margins(id: str, look: str) -> None:
    documents = printed(copies([id], 4), LOOKS[look])
    assert list(strays(documents, LOOKS[look])) == []


@pytest.mark.parametrize("id", ["tiptoe-achilles", "bent-back-toolbox"])  # their longest lines
def test_so_it_does_where_torques_are_told_by_components(id: str) -> None:
    made = copies([id], 4, Convention(torque="components"))
    for look in ("letter", "A4, sans"):
        assert list(strays(printed(made, LOOKS[look], (Kind.KEYS,)), LOOKS[look])) == []
