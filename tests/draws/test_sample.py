"""Many draws in one go: the same values as single draws have, every choice about as often."""

from collections.abc import Callable

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.draws.draw import completed
from probgen.draws.sample import candidates, sample


def test_values_are_those_of_single_draws(hook: Callable[..., Template]) -> None:
    template = hook()
    made = sample(template, 200)
    assert len(made) == 200
    for place in range(200):
        chosen = {
            given.id: given.choices[made.places[row, place]]
            for row, given in enumerate(template.givens)
        }
        single = completed(template, chosen)
        assert made.draw(place) == single
        assert {id: value[place] for id, value in made.values.items()} == single.coherent()


def test_every_choice_comes_about_as_often(hook: Callable[..., Template]) -> None:
    """Seven masses in 7000 draws: 1000 each, give or take 29 (a binomial's deviation)."""
    template = hook()
    places = sample(template, 7000).places[[given.id for given in template.givens].index("m")]
    counts = np.bincount(places, minlength=7)
    assert len(counts) == 7
    assert np.all(np.abs(counts - 1000) < 6 * 29)


def test_givens_are_drawn_apart(hook: Callable[..., Template]) -> None:
    lengths, masses = sample(hook(), 5000).places
    assert abs(np.corrcoef(lengths, masses)[0, 1]) < 6 / np.sqrt(5000)


def test_a_longer_sample_begins_as_a_shorter_one(hook: Callable[..., Template]) -> None:
    long, short = sample(hook(), 300), sample(hook(), 30)
    assert np.array_equal(long.places[:, :30], short.places)


def test_draws_without_a_value_are_left_out(hook: Callable[..., Template]) -> None:
    """q has none at L = 0.50 m with the centimetre taken away: a division by zero."""
    text = hook().source.replace("(L - 0.5 m + 1 cm)", "(L - 0.5 m)")
    made = sample(read_template(text, "hook.toml"), 400)
    assert 0 < len(made) < 400
    assert made.values["L"].min() > 0.5
    assert all(np.isfinite(value).all() for value in made.values.values())


@pytest.mark.parametrize("draws", [1, 2])
def test_few_draws(hook: Callable[..., Template], draws: int) -> None:
    assert len(sample(hook(), draws)) == draws


def test_a_student_s_candidates_follow_from_the_student_alone(
    hook: Callable[..., Template],
) -> None:
    template = hook()
    made = candidates(template, "seed", ["ada", "bea", "cid"], 5)
    assert len(made) == 15
    alone = candidates(template, "seed", ["bea"], 5)
    assert np.array_equal(made.places[:, 5:10], alone.places)
    assert made.draw(6) == alone.draw(1)
    assert {id: value[5:10].tolist() for id, value in made.values.items()} == {
        id: value.tolist() for id, value in alone.values.items()
    }


@pytest.mark.parametrize(
    ("seed", "student", "turn"), [("other", "bea", 0), ("seed", "cid", 0), ("seed", "bea", 1)]
)
def test_another_seed_student_or_turn_has_other_candidates(
    hook: Callable[..., Template], seed: str, student: str, turn: int
) -> None:
    template = hook("30.00")
    one = candidates(template, "seed", ["bea"], 50)
    other = candidates(template, seed, [student], 50, turn)
    assert np.count_nonzero((one.places == other.places).all(axis=0)) < 5


def test_candidates_without_a_value_keep_their_places(hook: Callable[..., Template]) -> None:
    """As above; who has which follows from the place."""
    text = hook().source.replace("(L - 0.5 m + 1 cm)", "(L - 0.5 m)")
    made = candidates(read_template(text, "hook.toml"), "seed", ["ada", "bea"], 40)
    assert len(made) == 80
    assert np.array_equal(np.isfinite(made.values["q"]), made.values["L"] > 0.5)
    assert not np.isfinite(made.values["q"]).all()
