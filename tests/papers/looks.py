"""Pages in every look they are printed in: paper, letters, size of print."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import Copy
from probgen.papers.typesetter import Kind, Typesetter
from probgen.press.batch import Document, Printed, print_batch
from probgen.problem.problem import draw_class, prepare, work
from probgen.sheets.document import Paper
from probgen.sheets.house import House
from probgen.sheets.style import PLAIN, HouseStyle
from probgen.working.convention import Convention

SANS = HouseStyle("sans", "sans")


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


def copies(ids: Sequence[str], draws: int, convention: Convention | None = None) -> list[Copy]:
    """Papers of these templates, one a draw."""
    method = convention or Convention()
    problems = tuple(prepare(default_bank().read(id), method) for id in ids)
    students = [str(number) for number in range(draws)]
    worked = [work(each, draw_class(each, "looks", students).draws) for each in problems]
    slips = [
        class_slips([own.digits for own in column], problem.missteps)
        for problem, column in zip(problems, worked, strict=True)
    ]
    problem_set = ProblemSet("M", "W", "class.csv", tuple(Assigned(id, 10) for id in ids))
    version = Version("CODE", "", Student("Ada", "1"))
    return [
        Copy(problem_set, replace(version, name=name), problems, own, wrong)
        for name, own, wrong in zip(
            students, zip(*worked, strict=True), zip(*slips, strict=True), strict=True
        )
    ]


def printed(made: Sequence[Copy], look: Look, kinds: Sequence[Kind] = ()) -> tuple[Printed, ...]:
    """Their sheets and keys, or those kinds of them that a look has."""
    return _printed(written(made, look, kinds))


def written(made: Sequence[Copy], look: Look, kinds: Sequence[Kind] = ()) -> list[Document]:
    """They before they are printed."""
    made = [replace(copy, version=replace(copy.version, large=look.large)) for copy in made]
    typesetter = Typesetter(look.paper, house=House(look.style))
    wanted = [kind for kind in kinds or look.kinds if kind in look.kinds]
    return [typesetter.document(kind, copy) for kind in wanted for copy in made]


def reprinted(documents: Sequence[Document], first: Copy, look: Look) -> tuple[Printed, ...]:
    """What is written for a look in another one, equally large: only its preamble differs.

    first: the one that each kind of them begins with.
    """
    anew = {each.pile: each for each in written([first], look)}
    begun = {each.pile: each.body for each in reversed(documents)}
    assert begun == {pile: each.body for pile, each in anew.items()}
    return _printed([replace(each, preamble=anew[each.pile].preamble) for each in documents])


def _printed(documents: Sequence[Document]) -> tuple[Printed, ...]:
    batch = print_batch(documents)
    assert batch.failures == ()
    return batch.printed
