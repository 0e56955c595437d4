"""How near two students' answers are, and who could copy, against a plain loop over pairs."""

from itertools import combinations

import numpy as np
import pytest

from probgen.draws.nearness import Answers, Copying, alike, apart, copying


def answers(*rows: tuple[tuple[float, float], ...], turning: tuple[bool, ...] = ()) -> Answers:
    """A row a student: pairs of a value and its tolerance."""
    table = np.array(rows, dtype=float).reshape(len(rows), -1, 2)
    return Answers(table[..., 0], table[..., 1], turning or (False,) * table.shape[1])


APART = {
    "in units of the tolerance": (answers(((100, 2),), ((105, 2),)), 2.5),
    "of the smaller one, the other way too": (answers(((105, 4),), ((100, 2),)), 2.5),
    "the answer that differs most": (answers(((100, 2), (7, 1)), ((101, 2), (10, 1))), 3.0),
    "directions meet behind": (answers(((179, 1),), ((-178, 1),), turning=(True,)), 3.0),
    "numbers do not": (answers(((179, 1),), ((-178, 1),)), 357.0),
    "the same": (answers(((3, 1),), ((3, 1),)), 0.0),
    "the same, and none other will do": (answers(((0, 0),), ((0, 0),)), 0.0),
    "none other will do": (answers(((0, 0),), ((1, 1),)), np.inf),
    "nothing asked": (answers((), ()), 0.0),
}


@pytest.mark.parametrize(("two", "steps"), APART.values(), ids=APART)
def test_apart(two: Answers, steps: float) -> None:
    one, other = two.rows([0]), two.rows([1])
    assert apart(one, other).tolist() == apart(other, one).tolist() == [[steps]]


@pytest.mark.parametrize(("two", "steps"), APART.values(), ids=APART)
def test_alike_are_those_at_most_one_tolerance_apart(two: Answers, steps: float) -> None:
    one, other = alike(two.rows([0]), two.rows([1]))
    assert (len(one), len(other)) == ((1, 1) if steps <= 1 else (0, 0))


def drawn_class(students: int) -> Answers:
    """Three answers, the second a direction; a few tolerances wide, so that many could copy."""
    chance = np.random.default_rng(7)
    values = chance.uniform(0.0, [12.0, 360.0, 9.0], (students, 3))
    return Answers(
        values, chance.uniform(1.0, [2.0, 90.0, 2.0], (students, 3)), (False, True, False)
    )


def test_every_pair_that_could_copy_is_found_and_no_other() -> None:
    own = drawn_class(40)
    steps = apart(own, own)
    found = set(zip(*(each.tolist() for each in alike(own, own)), strict=True))
    assert found == {(a, b) for a in range(40) for b in range(40) if steps[a, b] <= 1.0}
    assert 40 < len(found) < 400


@pytest.mark.parametrize("students", [0, 1, 2, 63, 64, 65, 200])
def test_copying_of_a_class(students: int) -> None:
    own = drawn_class(students)
    pairs = [
        {a, b}
        for a, b in combinations(range(students), 2)
        if apart(own.rows([a]), own.rows([b]))[0, 0] <= 1.0
    ]
    share = len(pairs) / (students * (students - 1) / 2) if students > 1 else 0.0
    exposed = len(set().union(*pairs))
    found = copying(own)
    assert found == Copying(students, found.share, exposed)
    assert found.share == pytest.approx(share)
    assert (exposed > 0) == (students > 2)
