"""An assignment's rules followed."""

from dataclasses import replace
from pathlib import Path

from probgen.build.chosen import with_choice
from probgen.course.assignment import Assigned, BankNames, ProblemSet
from probgen.course.rule import Rule
from probgen.input.fault import Faults
from tests.banks import make_bank

RULED = Assigned("", 5, rule=Rule(family="limbs"))
SET = ProblemSet("M", "W", "c.csv", (Assigned("well-windlass", 5), RULED), banks=BankNames(("b",)))


def test_templates_come_from_the_banks_of_the_assignment(tmp_path: Path) -> None:
    make_bank(tmp_path / "b")
    faults = Faults("a.toml")
    found = with_choice(SET, tmp_path / "a.toml", "seed", None, faults)
    assert [each.template for each in found.problems] == ["well-windlass", "forearm-load"]
    assert faults.found == []


def test_what_cannot_be_read_leaves_the_rule_out_and_is_told_once(tmp_path: Path) -> None:
    faults = Faults("a.toml")
    found = with_choice(SET, tmp_path / "a.toml", "seed", None, faults)
    assert [each.template for each in found.problems] == ["well-windlass"]
    assert faults.found == []
    bank = make_bank(tmp_path / "b")
    (bank / "uses").mkdir()
    (bank / "uses/m.csv").write_text("spoilt")
    unruled = with_choice(SET, tmp_path / "a.toml", "seed", None, faults)
    assert unruled == replace(SET, problems=SET.problems[:1])
    assert len(faults.found) == 1
