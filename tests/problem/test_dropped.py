"""What drops draws, counted and told."""

from __future__ import annotations

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.draws.sample import sample
from probgen.input.fault import InputError
from probgen.problem.dropped import Dropped, misses, percent, why_refused
from probgen.problem.problem import draw_class, prepare, proved_values
from probgen.working.convention import Convention
from tests.situations import FIND_T, HINGED, SHELF, STAYED


def asking(*rows: tuple[str, str]) -> str:
    """The shelf on its cable (190.6 N), a load of 8.0 kg or none of it, and what is required."""
    text = (SHELF + HINGED + STAYED + FIND_T).replace("[8.0]", "[8.0, 4.0, 2.0, 1.0]")
    stated = (f'[[require]]\nthat = "{that}"\nbecause = "{why}"\n' for that, why in rows)
    return text + "".join(stated)


def test_every_requirement_is_counted_by_itself() -> None:
    template = read_template(asking(("M < 5 kg", "light"), ("M < 3 kg", "lighter")), "own.toml")
    made = sample(template, 100)
    missed = misses(template, {**made.values, "T": np.zeros(100)})
    assert list(missed) == ["M < 5 kg (light)", "M < 3 kg (lighter)"]
    assert [int(wrong.sum()) for wrong in missed.values()] == [
        int(np.sum(made.values["M"] > 5.0)),
        int(np.sum(made.values["M"] > 3.0)),
    ]


def test_reasons_come_the_most_frequent_first_and_flaws_after_requirements_are_met() -> None:
    """At -40 degrees the cable would have to push, whatever the load."""
    text = asking(("M < 3 kg", "light")).replace("choices = [40]", "choices = [-40]")
    problem = prepare(read_template(text, "own.toml"), Convention())
    solved, proof = proved_values(problem, sample(problem.template, 400).values)
    one, other = why_refused(problem.template, solved, proof)
    assert one.share + other.share == pytest.approx(1.0)
    assert {"light" in one.by, "light" in other.by} == {True, False}
    flaw = one if "light" not in one.by else other
    assert flaw.by.startswith("tension in the cable (T) comes out negative")
    assert flaw.share == pytest.approx(0.5, abs=0.15)


def test_a_class_without_draws_is_told_what_drops_them() -> None:
    problem = prepare(read_template(asking(("M > 9 kg", "heavy")), "own.toml"), Convention())
    with pytest.raises(InputError) as caught:
        draw_class(problem, "s", ["1"])
    assert caught.value.faults[0].mend.endswith("; dropped are 100 % by M > 9 kg (heavy)")


@pytest.mark.parametrize(
    ("share", "said"),
    [(1.0, "100 %"), (0.1249, "12 %"), (0.0994, "9.9 %"), (0.0996, "10 %"), (0.004, "0.4 %"),
     (0.0005, "0.1 %"), (0.0002, "under 0.1 %")],
)  # fmt: skip
def test_shares(share: float, said: str) -> None:
    assert percent(share) == said
    assert str(Dropped("T < 9 N (weak)", share)) == f"{said} by T < 9 N (weak)"
