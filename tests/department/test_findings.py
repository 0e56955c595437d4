"""What a check finds stands on a card, also when it is a fault."""

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.department.findings import findings
from probgen.problem.template_check import check_template
from tests.banks import template_text


def test_a_sound_template_has_its_draws_proved() -> None:
    template = default_bank().read("diving-board")
    found, checked = findings(template, 200), check_template(template, 200)
    assert (found.proved, found.residual) == (checked.proved, checked.residual)
    assert found.dropped == tuple(map(str, checked.dropped))
    assert found.dropped
    assert not found.faults


def test_what_the_check_complains_of_is_kept() -> None:
    text = template_text("forearm-load").replace("leans {{ muscle_angle }}", "leans a little")
    found = findings(read_template(text, "own.toml"), 50)
    assert found.proved == 0
    (fault,) = found.faults
    assert "muscle_angle" in fault
