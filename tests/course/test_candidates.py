"""What rules choose among."""

from datetime import date
from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.bank_path import read_bank
from probgen.bank.uses import Use, note_uses
from probgen.course.assignment import Assigned, ProblemSet
from probgen.course.candidates import candidates
from probgen.course.choice import Candidate
from probgen.input.fault import InputError
from tests.banks import make_bank

SET = ProblemSet("Mechanics", "Week 2", "c.csv", (Assigned("forearm-load", 5),))


def test_the_last_use_but_that_in_this_assignment_counts(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "bank")
    own = Use(date(2027, 9, 3), "Mechanics", "Week 2", "homework", "forearm-load", 1, "a", 9)
    other = Use(date(2026, 9, 3), "Mechanics", "Week 2 A", "exam", "forearm-load", 1, "a", 9)
    older = Use(date(2025, 9, 3), "Statics", "Week 2", "exam", "forearm-load", 1, "a", 9)
    note_uses(bank, [own, other, older])
    found = {each.id: each for each in candidates(read_bank(bank), SET)}
    assert (found["forearm-load"].last, found["seesaw-two-riders"].last) == ("2026-09-03", "")
    forearm = default_bank().read("forearm-load")
    assert found["forearm-load"] == Candidate(
        forearm.id, forearm.family, forearm.level, forearm.goals, "2026-09-03"
    )
    (bank / "uses/statics.csv").write_text("spoilt")
    with pytest.raises(InputError, match=r"statics\.csv"):
        candidates(read_bank(bank), SET)


def test_templates_of_no_bank_were_never_used() -> None:
    found = candidates(default_bank(), SET)
    assert len(found) == len(default_bank().files)
    assert {each.last for each in found} == {""}
