"""Equal draws worked in two states of a template."""

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.department.trial import TRIALS, trials

BEFORE = default_bank().read("forearm-load")


def test_another_way_to_write_the_same_has_the_same_answers() -> None:
    text = BEFORE.source.replace('mass = "load_mass"', 'mass = "2*load_mass - load_mass"')
    found = trials(BEFORE, read_template(text, "after"))
    assert len(found) == TRIALS == 20
    assert all(trial.agree for trial in found)
    assert found[0].before == found[0].after


def test_another_side_is_no_agreement_although_the_angle_is_the_same() -> None:
    text = BEFORE.source.replace("90 + muscle_angle", "90 - muscle_angle")
    found = trials(BEFORE, read_template(text, "after"))
    assert not any(trial.agree for trial in found)
    sizes = [(dict(t.before)["B"], dict(t.after)["B"]) for t in found]
    assert all(one == other for one, other in sizes)


def test_what_is_not_known_before_has_a_value_of_its_own_and_no_solution_is_no_answer() -> None:
    extra = '\nextra = { name = "pull", symbol = "P", from = 1, to = 5, step = 1, unit = "N" }'
    pull = '\n[[force]]\nat = "H"\nsymbol = "P"\nmagnitude = "extra"\ndirection = "270"\n\n[[find]]'
    text = BEFORE.source.replace("[given]", f"[given]{extra}", 1).replace("[[find]]", pull, 1)
    text = text.replace("{{ insertion }}", "{{ insertion }} and a pull {{ extra }}")
    found = trials(BEFORE, read_template(text, "after"))
    assert not any(trial.agree for trial in found)
    falling = BEFORE.source.replace("90 + muscle_angle", "270 + muscle_angle")  # it would push
    none = trials(BEFORE, read_template(falling, "after"))
    assert {trial.after for trial in none} == {()}
    assert not any(trial.agree for trial in none)


def test_where_some_draws_have_no_solution_the_others_are_worked() -> None:
    text = BEFORE.source.replace("90 + muscle_angle", "90 + 30*muscle_angle")  # it pushes in some
    found = trials(BEFORE, read_template(text, "after"))
    assert {bool(trial.after) for trial in found} == {True, False}
    assert all(trial.before for trial in found)
