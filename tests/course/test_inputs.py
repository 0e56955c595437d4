"""What an assignment file names: read together, its faults told together."""

from dataclasses import replace
from pathlib import Path

import pytest

from probgen.course.assignment import Assigned, BankNames, ProblemSet
from probgen.course.inputs import read_inputs
from probgen.course.print_run import PrintRun
from probgen.input.fault import InputError
from tests.banks import make_bank

SET = ProblemSet("M", "W", "class.csv", (Assigned("seesaw-two-riders", 5),))


@pytest.fixture
def assignment(tmp_path: Path) -> Path:
    (tmp_path / "class.csv").write_text("Name,ID,Seat\nAda,1,B2\nBo,2,A10\nCy,3,A2\n")
    return tmp_path / "assignment.toml"


def test_students_come_in_the_order_of_the_print_run(assignment: Path) -> None:
    by_seat = replace(SET, run=PrintRun(order="seat"))
    orders = {
        each.run.order: [student.name for student in read_inputs(each, assignment, None).students]
        for each in (SET, by_seat)
    }
    assert orders == {"roster": ["Ada", "Bo", "Cy"], "seat": ["Cy", "Bo", "Ada"]}


def test_some_need_no_seat_where_others_have_one(assignment: Path) -> None:
    by_seat = replace(SET, run=PrintRun(order="seat"))
    for seats, said in ((("B2", ""), ""), (("", ""), "a class list with seats")):
        rows = [f"{name},{n},{seat}" for n, (name, seat) in enumerate(zip("AB", seats))]  # noqa: B905
        (assignment.parent / "class.csv").write_text("\n".join(["Name,ID,Seat", *rows]))
        if said:
            with pytest.raises(InputError, match=said):
                read_inputs(by_seat, assignment, None)
        else:
            assert len(read_inputs(by_seat, assignment, None).students) == 2


def test_templates_come_in_the_order_of_the_set_about_the_course_s_pivot(assignment: Path) -> None:
    named = (Assigned("beam-stay-cable", 5, "C"), *SET.problems)
    templates = read_inputs(replace(SET, problems=named), assignment, None).templates
    assert [template.id for template in templates] == ["beam-stay-cable", "seesaw-two-riders"]
    assert [template.system.pivot for template in templates] == ["C", ""]


def test_faults_of_every_input_come_at_once(assignment: Path) -> None:
    wrong = replace(
        SET,
        roster="gone.csv",
        banks=BankNames(("nowhere",)),
        style="gone.toml",
        problems=(Assigned("no-such", 1), Assigned("beam-stay-cable", 1, "Q")),
    )
    with pytest.raises(InputError) as caught:
        read_inputs(wrong, assignment, None)
    fields = [fault.field for fault in caught.value.faults]
    assert fields == ["", "bank", "problem[0].template", "problem[1].pivot", ""]
    files = [Path(fault.file).name for fault in caught.value.faults]
    assert files == ["gone.csv", *["assignment.toml"] * 3, "gone.toml"]


def test_templates_of_several_banks(assignment: Path) -> None:
    for name in ("forearm-load", "beam-stay-cable"):
        make_bank(assignment.parent / name, [name])
    named = (Assigned("beam-stay-cable", 5), Assigned("forearm-load", 5))
    several = replace(SET, problems=named, banks=BankNames(("forearm-load", "beam-stay-cable")))
    templates = read_inputs(several, assignment, None).templates
    assert [template.id for template in templates] == ["beam-stay-cable", "forearm-load"]
    assert all("/r1.toml" in template.path for template in templates)


def test_layouts_named_besides_come_before_the_set_s_own(assignment: Path) -> None:
    own, named = (assignment.parent / name for name in ("own", "named"))
    for folder in (own, named):
        folder.mkdir()
        (folder / "sheet.tex.j2").write_text(f"of {folder.name}")
    with_own = replace(SET, layouts="own")
    houses = [read_inputs(with_own, assignment, each).house for each in (None, named)]
    assert [dict(house.layouts)["sheet.tex.j2"] for house in houses] == ["of own", "of named"]


def test_seats_are_needed_for_their_order(assignment: Path) -> None:
    (assignment.parent / "class.csv").write_text("Name,ID\nAda,1\n")
    with pytest.raises(InputError) as caught:
        read_inputs(replace(SET, run=PrintRun(order="seat")), assignment, None)
    (fault,) = caught.value.faults
    assert (fault.field, fault.expected) == ("print.order", "a class list with seats")
