"""What TeX set but not as it should be is told with document, student and problem."""

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.papers.chunk import Chunk, print_chunk
from probgen.papers.typesetter import Typesetter
from probgen.problem.problem import draw_class, prepare
from probgen.sheets.house import House
from probgen.working.convention import Convention

IDS = ("seesaw-two-riders", "forearm-load")
SET = ProblemSet("M", "W", "class.csv", tuple(Assigned(id, 10) for id in IDS))


def remarks_of(layouts: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
    problems = tuple(prepare(default_bank().read(id), Convention()) for id in IDS)
    draws = tuple(draw_class(problem, "remarks", ["1"]).draws[0] for problem in problems)
    version = Version("CODE", "01-ada", Student("Ada", "1"), draws)
    chunk = Chunk((version,), frozenset({"01-ada"}))
    printed = print_chunk(chunk, SET, problems, Typesetter(house=House(layouts=layouts)))
    assert printed.losses == ()
    return printed.remarks


def test_supplied_layouts_leave_nothing_to_remark() -> None:
    assert remarks_of(()) == ()


def test_a_layout_that_is_too_wide() -> None:
    own = r"\nextmark{<< '2 Slab' | bookmark >>}\problemhead{2}{Slab}{}\hbox to 1mm{\hskip 3mm}"
    assert remarks_of((("sheet.tex.j2", own),)) == (
        (
            "sheets/01-ada.pdf",
            "Ada (1), problem 2 Slab: something is 2.0 mm too wide for its place",
        ),
    )
