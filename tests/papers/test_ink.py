"""All of the ink stays inside the margins, and TeX has nothing to remark."""

from dataclasses import dataclass, replace

import pytest

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.papers.page import Copy
from probgen.papers.typesetter import Kind, Typesetter
from probgen.problem.problem import draw_class, prepare, work
from probgen.sheets.document import Paper
from probgen.sheets.house import House
from probgen.sheets.style import PLAIN, HouseStyle
from probgen.working.convention import Convention
from tests.papers.ink import whites

IDS = sorted(default_bank().files)
SANS = HouseStyle("sans", "sans")
HANGING = 1.0  # mm by which a point or hyphen may stand in the margin, and what a pixel takes
FOOT = 5.0  # mm below the foot line, at the least


@dataclass(frozen=True)
class Look:
    paper: Paper = "letter"
    style: HouseStyle = PLAIN
    large: bool = False

    @property
    def margin(self) -> float:
        return 18.0 if self.large else 24.0  # of the preamble layout, mm

    @property
    def kinds(self) -> tuple[Kind, ...]:
        return (Kind.SHEETS,) if self.large else tuple(Kind)  # a key is never in large print


LOOKS = {
    "letter": Look(),
    "A4": Look("a4"),
    "letter, sans": Look(style=SANS),
    "A4, sans": Look("a4", SANS),
    "letter, large": Look(large=True),
    "A4, large": Look("a4", large=True),
}


def strays(id: str, draws: int, look: Look) -> list[str]:
    """What leaves the margins, or its place, in sheets and keys of a template."""
    problem = prepare(default_bank().read(id), Convention())
    worked = work(problem, draw_class(problem, "ink", [str(n) for n in range(draws)]).draws)
    problem_set = ProblemSet("M", "W", "class.csv", (Assigned(id, 10),))
    version = Version("CODE", "", Student("Ada", "1"), large=look.large)
    copies = [
        Copy(problem_set, replace(version, name=str(n)), (problem,), (own,))
        for n, own in enumerate(worked)
    ]
    typesetter = Typesetter(look.paper, house=House(look.style))
    documents = [typesetter.document(kind, copy) for kind in look.kinds for copy in copies]
    batch = typesetter.print(documents)
    assert batch.failures == ()
    found = []
    for each in batch.printed:
        name = f"{each.pile} {id}, draw {each.name}"
        found += [f"{name}: {blemish.words}" for blemish in each.blemishes]
        for number, white in enumerate(whites(each.pdf), start=1):
            beside = look.margin - min(white.left, white.right)
            if beside > HANGING or white.bottom < FOOT or white.top < FOOT:
                found.append(f"{name}, page {number}: {beside:.1f} mm beyond the margin, {white}")
    return found


@pytest.mark.parametrize(
    ("id", "look"),
    [
        ("beam-stay-cable", "letter"),  # two figures beside each other's text
        ("cellar-hatch-rope", "A4"),
        ("head-over-phone", "A4, sans"),
        ("gate-two-hinges", "letter, sans"),
        ("tiptoe-achilles", "letter, large"),
    ],
)
def test_ink_stays_inside_the_margins(id: str, look: str) -> None:
    assert strays(id, 4, LOOKS[look]) == []


@pytest.mark.proof
@pytest.mark.parametrize("look", LOOKS)
@pytest.mark.parametrize("id", IDS)
def test_ink_stays_inside_the_margins_over_many_draws(id: str, look: str) -> None:
    assert strays(id, 100, LOOKS[look]) == []
