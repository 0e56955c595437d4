"""What a build notes in the banks that it drew from."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from probgen.bank import bank_lock
from probgen.bank.bank import default_bank, read_file
from probgen.bank.uses import read_uses
from probgen.build.use import note_use, uses_of
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.roster import Student
from probgen.draws.draw import draw
from tests.banks import make_bank
from tests.records import Column, record_of

DAY = date(2027, 9, 3)
CLASS = (Student("Ada", "1", "A"), Student("Bo", "2", "B"), Student("Cy", "3", "A"))
SET = ProblemSet(
    "Mechanics",
    "Week 2",
    "class.csv",
    (Assigned("forearm-load", 5), Assigned("seesaw-two-riders", 5, sections=("A",))),
)


def test_a_row_for_each_template_of_a_bank_and_none_for_others(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bank = make_bank(tmp_path / "bank")
    paths = [bank / "templates" / id / "r1.toml" for id in ("forearm-load", "seesaw-two-riders")]
    templates = [read_file(path) for path in paths]
    columns = [
        Column(t.id, t.source, [draw(t, "seed", each.id) for each in CLASS]) for t in templates
    ]
    record = record_of(SET, CLASS, ("A1", "B1", "C1"), columns)
    assert note_use(record, templates, DAY) == ()
    found = read_uses(bank)
    assert [(use.template, use.students, use.kind) for use in found] == [
        ("forearm-load", 3, "homework"), ("seesaw-two-riders", 2, "homework"),
    ]  # fmt: skip
    assert {(use.course, use.assignment, use.day) for use in found} == {
        ("Mechanics", "Week 2", DAY)
    }
    supplied = [default_bank().read(template.id) for template in templates]
    assert uses_of(record, supplied, DAY) == {}
    monkeypatch.setattr(bank_lock, "PATIENCE", 0.0)
    with bank_lock.held(bank):
        (remark,) = note_use(record, templates, DAY)
    assert remark.endswith(f"somebody else is writing to {bank}")
    (bank / "uses").joinpath("mechanics.csv").write_text("spoilt")
    (remark,) = note_use(record, templates, DAY)
    assert "not noted" in remark
    nobody = replace(record, students=())
    assert uses_of(nobody, templates, DAY) == {}
