"""What a sheet and a key have in common is made once, and tells nothing it should not."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

import pytest

from probgen.bank.bank import default_bank
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.exam import Exam
from probgen.course.issue import Erratum
from probgen.course.roster import Student
from probgen.course.version import Version
from probgen.figures.paper.tag import What
from probgen.mistakes.comparison import class_slips
from probgen.papers.page import Copy, cover_of, formulas_of, key_of, sheet_of
from probgen.problem.problem import draw_class, prepare, work
from probgen.problem.problem_figures import asks_for_sizes, situation_scene
from probgen.sheets.document import picture_name
from probgen.sheets.formula_page import formula_page
from probgen.statics.internal_forces import Inside
from probgen.statics.system import Form
from probgen.wording.block import Math, Picture
from probgen.wording.english import ENGLISH
from probgen.wording.sentence import plain_text
from probgen.working.convention import Convention

IDS = sorted(default_bank().files)
USUAL = Convention()


def copy_of(id: str, convention: Convention = USUAL) -> Copy:
    return copy_with([id], convention=convention)


def copy_with(ids: Sequence[str], large: bool = False, letter: str = "", **choices: Any) -> Copy:
    """A copy of some templates, worth 10 points, 11 and so on; choices: of the set."""
    convention = choices.setdefault("convention", USUAL)
    problems = tuple(prepare(default_bank().read(id), convention) for id in ids)
    worked = tuple(work(each, draw_class(each, "page", ["ada"]).draws)[0] for each in problems)
    assigned = tuple(Assigned(id, 10 + place) for place, id in enumerate(ids))
    problem_set = ProblemSet("M", "W", "class.csv", assigned, **choices)
    version = Version("CODE", "01-ada-1", Student("Ada", "1", "B"), letter=letter, large=large)
    return Copy(problem_set, version, problems, worked)


BEAM, SEESAW, JAW = "beam-stay-cable", "seesaw-two-riders", "jaw-bites-nut"


def test_a_sheet_tells_what_was_corrected_and_when() -> None:
    copy = copy_of(BEAM)
    version = replace(copy.version, errata=(Erratum("2027-03-12", "the mass of the beam"),))
    assert sheet_of(replace(copy, version=version)).header.errata == (
        "Corrected 12 March: the mass of the beam.",
    )


def test_a_sheet_holds_what_the_set_asks_for() -> None:
    copy = copy_with([BEAM, JAW], due="9 March", working=3.5, room="grid")
    sheet = sheet_of(copy)
    header = sheet.header
    assert (header.course, header.title, header.due) == ("M", "W", "9 March")
    assert (header.student_name, header.student_id, header.section) == ("Ada", "1", "B")
    assert (header.code, header.version) == ("CODE", "")
    assert [(p.number, p.points) for p in sheet.problems] == [(1, 10), (2, 11)]
    assert [p.title for p in sheet.problems] == [p.template.title for p in copy.problems]
    assert {(p.space, p.room) for p in sheet.problems} == {(35.0, "grid")}  # in mm
    assert (sheet.formulas, sheet.cover) == (None, None)


def test_g_is_said_once_where_a_weight_is_made_of_a_mass() -> None:
    assert sheet_of(copy_with([JAW])).preface == key_of(copy_with([JAW])).preface == ()
    for ids in ([BEAM], [JAW, BEAM], [BEAM, SEESAW]):
        copy = copy_with(ids)
        assert "9.80" in plain_text(copy.preface)
        assert sheet_of(copy).preface == key_of(copy).preface == copy.preface


def test_a_page_of_formulas_is_in_the_words_of_the_course() -> None:
    turned = Convention(turning="moment", positive="clockwise")
    assert formulas_of(copy_with([JAW])) is None
    usual = formulas_of(copy_with([JAW], formulas=True))
    moment = formulas_of(copy_with([JAW], formulas=True, convention=turned))
    assert usual == formula_page("torque", False, ENGLISH)
    assert moment == formula_page("moment", True, ENGLISH)
    assert formula_page("torque", True, ENGLISH) != usual
    assert sheet_of(copy_with([JAW], formulas=True)).formulas == usual


def test_a_cover_is_for_an_exam_that_has_one_and_for_large_print() -> None:
    assert cover_of(copy_with([BEAM])) is None
    assert cover_of(copy_with([BEAM], exam=Exam(2, cover=False), letter="A")) is None
    exam = cover_of(copy_with([BEAM, JAW], exam=Exam(2, notes=("Hush.",)), letter="B"))
    assert exam is not None
    assert (exam.notes, exam.scores) == (("Hush.",), (("1", 10), ("2", 11)))
    assert exam.header.version == "B"
    large = cover_of(copy_with([BEAM], large=True))
    assert large is not None
    assert (large.notes, large.scores) == ((), (("1", 10),))


def test_cautions_are_those_of_the_problems_each_once() -> None:
    kinds = {id: set(default_bank().read(id).cautions) for id in IDS}
    careful = [id for id in IDS if kinds[id]][:2]
    careless = next(id for id in IDS if not kinds[id])
    texts = dict(ENGLISH.page.cautions)
    assert sheet_of(copy_with([careless])).cautions == ()
    assert sheet_of(copy_with(careful, caution=False)).cautions == ()
    told = sheet_of(copy_with([careful[0], careful[0]])).cautions
    assert sorted(told) == sorted(texts[kind] for kind in kinds[careful[0]])


def test_a_sentence_that_two_kinds_of_caution_share_is_printed_once() -> None:
    told = sheet_of(copy_with(["derrick-hoist-rope"])).cautions
    assert [text.split()[0] for text in told] == ["Loads", "Cables", "Local"]
    assert len(set(told)) == len(told)


def test_where_problems_come_from_is_told_only_where_the_set_asks_for_it() -> None:
    assert sheet_of(copy_with([BEAM, JAW])).origins == ()
    origin = default_bank().read(BEAM).origin
    told = sheet_of(copy_with([BEAM, JAW], origins=True)).origins
    assert told[0] == f"1: {origin.author}, {origin.source}, {origin.licence}."
    assert [line[:2] for line in told] == ["1:", "2:"]


def test_parts_are_lettered_where_there_are_several() -> None:
    alone = next(id for id in IDS if len(default_bank().read(id).system.finds) == 1)
    (one,) = sheet_of(copy_with([alone])).problems
    assert [part.label for part in one.parts] == [""]
    (several,) = sheet_of(copy_with([BEAM])).problems
    assert [part.label for part in several.parts] == ["a", "b"]


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", IDS)
def test_each_answer_line_ends_with_the_unit_of_what_it_asks(id: str) -> None:
    """Units as the key rounds each answer, asked of the quantity itself."""
    copy = copy_of(id)
    (own,), (shown,) = copy.worked, sheet_of(copy).problems
    system = own.case.system
    drawn = shown.parts[len(system.finds) :]
    assert len(drawn) == len(system.to_draw)
    assert all(part.unit == "" for part in drawn)
    for find, part in zip(system.finds, shown.parts, strict=False):
        if find.form is Form.VALUE:
            unit = own.digits.final(find.quantity).unit
            assert part.unit == (unit.plain if unit else "")


def test_a_key_holds_marks_that_sum_to_the_points_and_what_may_be_wrong() -> None:
    copy = copy_with([BEAM, JAW])
    for solution, points in zip(key_of(copy).solutions, (10, 11), strict=True):
        assert solution.points == points == sum(mark.points for mark in solution.scheme)
        assert solution.slips == ()  # where nothing is known to go wrong, nothing is said
    slips = class_slips([own.digits for own in copy.worked[:1]], copy.problems[0].missteps)
    told = key_of(replace(copy, slips=(slips[0], ()))).solutions
    assert [len(solution.slips) for solution in told] == [1, 0]


def test_every_picture_a_key_asks_for_is_there() -> None:
    copy = copy_with([BEAM])
    (solution,) = key_of(copy).solutions
    blocks = [block for section in solution.sections for block in section.blocks]
    asked = {picture_name(block) for block in blocks if isinstance(block, Picture)}
    assert asked == set(solution.pictures)
    assert len(asked) >= 1


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", IDS)
def test_the_key_shows_the_sheet_s_figure_unless_a_size_is_sought(id: str) -> None:
    copy = copy_of(id)
    (face,) = copy.faces
    solved = situation_scene(face.problem, face.own, solved=True)
    (asked,), (answered,) = sheet_of(copy).problems, key_of(copy).solutions
    assert answered.figure == solved
    template = face.problem.template
    # Axes to draw into are on the sheet alone.
    more = asks_for_sizes(template) or bool(template.system.to_draw)
    assert (asked.figure != solved) <= more
    assert asked.statement == answered.statement


def test_some_template_asks_for_a_size() -> None:
    copies = [copy_of(id) for id in IDS]
    sought = [c for c in copies if asks_for_sizes(c.problems[0].template)]
    assert 0 < len(sought) < len(copies)
    assert any(sheet_of(c).problems[0].figure != key_of(c).solutions[0].figure for c in sought)


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", IDS)
def test_a_key_begins_with_all_that_is_drawn_and_all_that_is_asked(id: str) -> None:
    copy = copy_of(id)
    (own,), (solution,) = copy.worked, key_of(copy).solutions
    letters = {id: variable.as_name for id, variable in own.case.system.variables.items()}
    given = {each.symbol: each.value for each in solution.given}
    for name, value in own.draw.values.items():
        assert given[(Math((letters[name],)),)] == (Math((value,)),)
    system = own.case.system
    assert len(solution.asked) == len(system.finds) + len(system.to_draw)
    assert system.finds
    assert all(each.name for each in solution.given)


def test_a_figure_is_drawn_once_where_nothing_in_it_is_sought() -> None:
    copy = next(c for c in map(copy_of, IDS) if not asks_for_sizes(c.problems[0].template))
    (face,) = copy.faces
    assert key_of(copy).solutions[0].figure is face.figure


def test_the_side_of_a_direction_is_not_torn_apart() -> None:
    """ "32.1° above the horizontal, to the" with "right" alone on the next line."""
    (solution,) = key_of(copy_of("beam-stay-cable")).solutions
    printed = [plain_text(answer.printed) for answer in solution.answers]
    assert any(text.endswith("the horizontal, to\u00a0the\u00a0right") for text in printed)


def test_what_a_student_draws_has_axes_on_the_sheet_and_a_part_of_its_own() -> None:
    copy = copy_of("wing-wind-tunnel")
    (own,) = sheet_of(copy).problems
    assert own.figure is not None
    assert own.figure.showing(What.DIAGRAM, Inside.SHEAR)
    last = own.parts[-1]
    assert last.label == "c"
    assert plain_text(last.asked) == (
        "the diagrams of shear force and bending moment along the wing, drawn in the axes below it"
    )
    assert [blank.written for blank in last.blanks] == [False]
    (solution,) = key_of(copy).solutions
    assert solution.figure is not None
    assert not solution.figure.showing(What.DIAGRAM, Inside.SHEAR)
    assert plain_text(solution.asked[-1]) == plain_text(last.asked)
    drawn = solution.pictures["diagram wing"]
    assert drawn.scale == own.figure.scale
    told = [plain_text(mark.words) for mark in solution.scheme]
    assert any("shear force and bending moment drawn along the wing" in each for each in told)


def test_a_diagram_of_the_key_alone_leaves_the_sheet_as_it_is() -> None:
    (own,) = sheet_of(copy_of("footbridge-inside")).problems
    assert own.figure is not None
    assert not own.figure.showing(What.DIAGRAM, Inside.SHEAR)
