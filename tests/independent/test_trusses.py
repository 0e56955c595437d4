"""Random trusses against the matrix of their joints, and against anaStruct and PyNite.

The matrix knows two equations a joint and nothing else; the programs find the forces by the
stiffness of elastic members, which has no influence on what is statically determinate.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from random import Random

import numpy as np
import pytest

from probgen.bank.reading import read_template
from probgen.statics.plan import find_plan
from probgen.statics.proof import prove
from probgen.statics.solution import solve
from tests.independent.programs import by_anastruct, by_pynite
from tests.independent.sketch import Frame
from tests.situations import HEAD

AGREEMENT = 1e-9
"""Largest difference, relative to the largest force."""
OF_STIFFNESS = 1e-6
"""The same from what a program iterates to."""
TRUSSES, QUICK = 200, 10
"""Random trusses; every test run compares the first few."""
CASES = [
    pytest.param(seed, marks=[] if seed < QUICK else [pytest.mark.proof]) for seed in range(TRUSSES)
]
LETTERS = "ABCDEFGHIJ"


Ends = tuple[str, str]


def force(member: Ends) -> str:
    """The id of the force in a member."""
    return f"F_{member[0]}{member[1]}"


@dataclass(frozen=True)
class Truss:
    """places: of the joints, metres; loads: x and y, newtons; hinge, roller: the joints held."""

    places: dict[str, tuple[float, float]]
    members: tuple[Ends, ...]
    loads: dict[str, tuple[float, float]]
    hinge: str
    roller: str
    asked: tuple[Ends, ...]
    by: str

    @property
    def text(self) -> str:
        """It as a template."""
        points = "".join(f'{name} = ["{x} m", "{y} m"]\n' for name, (x, y) in self.places.items())
        rows = "".join(f'[[member]]\nalong = ["{a}", "{b}"]\n' for a, b in self.members)
        each = [
            (f"{letter}_{at}", at, size, way)
            for at, pair in self.loads.items()
            for size, way, letter in zip(pair, (0, 90), "PQ", strict=True)
        ]
        givens = "".join(
            f'{id} = {{ name = "load {id}", choices = [{size}], unit = "N" }}\n'
            for id, _, size, _ in each
        )
        loads = "".join(
            f'[[force]]\nat = "{at}"\nmagnitude = "{id}"\ndirection = {way}\n'
            for id, at, _, way in each
        )
        asked = "".join(f'[[find]]\nquantity = "{force(member)}"\n' for member in self.asked)
        by = f'by = "{self.by}"\n' if self.by else ""
        return (
            f"{HEAD}{by}[given]\n{givens}[points]\n{points}{rows}"
            f'[[hinge]]\nat = "{self.hinge}"\nsymbol = "R"\n'
            f'[[roller]]\nat = "{self.roller}"\nsymbol = "N"\n{loads}{asked}'
        )


def truss(seed: int) -> Truss:
    """A triangle, and joint after joint pinned to two that a member joins already.

    A roller's force is drawn upward by a first load that outweighs the others.  No joint lies on a
    member that is not its own: PyNite would join them.
    """
    chance = Random(seed)
    places = {"A": (0.0, 0.0), "B": (2.0, 0.0), "C": (1.0, round(chance.uniform(0.8, 2.0), 2))}
    members = [("A", "B"), ("B", "C"), ("A", "C")]
    for name in LETTERS[3 : chance.randint(4, 9)]:
        for _ in range(200):
            one, other = chance.choice(members)
            place = _beside(places[one], places[other], chance)
            apart = min(abs(complex(*place) - complex(*each)) for each in places.values()) > 0.5
            new = places | {name: place}
            if apart and not _touching(new, [*members, (one, name), (other, name)]):
                break
        places[name] = place
        members += [(one, name), (other, name)]
    free = [name for name in places if name not in "AB"]
    loads = {
        name: (float(chance.randint(-40, 40)), float(chance.randint(-90, -20)))
        for name in chance.sample(free, chance.randint(1, len(free)))
    }
    asked = tuple(chance.sample(members, chance.randint(1, 3)))
    return Truss(
        places, tuple(members), loads, "A", "B", asked, chance.choice(["", "joints", "sections"])
    )


def _beside(
    one: tuple[float, float], other: tuple[float, float], chance: Random
) -> tuple[float, float]:
    start, end = complex(*one), complex(*other)
    side = chance.choice((-1, 1)) * chance.uniform(0.6, 1.2)
    place = start + (end - start) * complex(chance.uniform(0.2, 0.8), side)
    return round(place.real, 2), round(place.imag, 2)


def _touching(places: dict[str, tuple[float, float]], members: list[Ends]) -> bool:
    """Whether a joint lies on a member between two others."""
    for one, other in members:
        start, along = complex(*places[one]), complex(*places[other]) - complex(*places[one])
        for name in places.keys() - {one, other}:
            seen = (complex(*places[name]) - start) / along
            if 0.0 < seen.real < 1.0 and abs(seen.imag) * abs(along) < 0.01:
                return True
    return False


def by_matrix(model: Truss) -> dict[str, float]:
    """Every member's force and the supports', N, from two equations a joint."""
    unknowns = [*map(force, model.members), "R.x", "R.y", "N"]
    rows = {(joint, axis): 2 * n + axis for n, joint in enumerate(model.places) for axis in (0, 1)}
    matrix, loads = np.zeros((len(rows), len(unknowns))), np.zeros(len(rows))
    for column, (a, b) in enumerate(model.members):
        way = np.subtract(model.places[b], model.places[a])
        unit = way / np.hypot(*way)
        for axis in (0, 1):
            matrix[rows[a, axis], column] = unit[axis]
            matrix[rows[b, axis], column] = -unit[axis]
    for place, row in enumerate([(model.hinge, 0), (model.hinge, 1), (model.roller, 1)]):
        matrix[rows[row], len(model.members) + place] = 1.0
    for joint, pair in model.loads.items():
        for axis in (0, 1):
            loads[rows[joint, axis]] = -pair[axis]
    found = np.linalg.solve(matrix, loads)
    return dict(zip(unknowns, found.tolist(), strict=True))


def framed(model: Truss) -> Frame:
    """It as bars that turn freely at their ends, in the order of its members."""
    return Frame(
        model.places,
        [(one, other, "tie") for one, other in model.members],
        {model.hinge: "hinge", model.roller: "roller"},
        [(at, x, y, 0.0) for at, (x, y) in model.loads.items()],
    )


@cache
def worked(seed: int) -> tuple[Truss, dict[str, float], dict[str, float], bool]:
    """A truss, what its plan reaches, what the second solver finds, and whether the proof holds."""
    model = truss(seed)
    known = {"g": np.array([9.8])}
    for at, pair in model.loads.items():
        known |= {
            f"{letter}_{at}": np.array([size]) for letter, size in zip("PQ", pair, strict=True)
        }
    plan = find_plan(read_template(model.text, "truss.toml").system, known)
    solved = solve(plan, known)
    proof = prove(plan, solved)
    told, second = (
        {id: float(np.ravel(value)[0]) for id, value in values.items()}
        for values in (solved, proof.values)
    )
    return model, told, second, bool(proof.holds.all())


@pytest.mark.parametrize("seed", CASES)
def test_the_forces_are_those_of_the_joint_matrix(seed: int) -> None:
    model, told, second, holds = worked(seed)
    expected = by_matrix(model)
    size = max(map(abs, expected.values()))
    for member in model.asked:
        assert told[force(member)] == within(expected[force(member)], size)
    for member in model.members:  # the second solver gives those no step was needed for
        assert second[force(member)] == within(expected[force(member)], size)
    assert holds or expected["N"] < 0.0


@pytest.mark.parametrize("seed", CASES)
def test_the_forces_are_those_of_two_programs_for_structures(seed: int) -> None:
    model, told, second, _ = worked(seed)
    for program in (by_anastruct, by_pynite):
        theirs = program(framed(model))
        pulls = {force(model.members[place]): pull for place, pull in theirs.pulls.items()}
        (x, y, _), (_, up, _) = (theirs.reactions[node] for node in (model.hinge, model.roller))
        expected = pulls | {"R.x": x, "R.y": y, "N": up}
        size = max(map(abs, expected.values()))
        assert len(pulls) == len(model.members)
        assert {force(member) for member in model.asked} <= told.keys()
        for ours in (told, second):
            for id in expected.keys() & ours.keys():
                assert abs(ours[id] - expected[id]) <= OF_STIFFNESS * size, id
        assert expected.keys() <= second.keys()


def within(value: float, size: float) -> object:
    return pytest.approx(value, abs=AGREEMENT * size)
