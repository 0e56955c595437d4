"""The systems figures are tried on, random values for them, and their solution by least squares."""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from probgen.bank.depiction import Depictions
from probgen.bank.labels import Labels
from probgen.bank.reading import read_template
from probgen.bank.template import Template
from probgen.figures.freebody.diagram import free_body
from probgen.figures.measured.survey import survey
from probgen.figures.paper.scene import Scene, heading
from probgen.figures.situation.drawing import situation
from probgen.quantities.expression import Name, Number, evaluate
from probgen.statics.system import Kind, Role, System
from tests.figures.telling import telling

CASES = ("beam", "forearm", "ladder", "seesaw")
SEEDS = range(30)
GRAVITY = 9.80


@dataclass(frozen=True, slots=True)
class Case:
    """A template with one set of values: `values` coherent, solved ones included."""

    template: Template
    values: Mapping[str, float]
    givens: Mapping[str, Number]

    @property
    def system(self) -> System:
        return self.template.system

    @property
    def labels(self) -> Labels:
        return self.template.labels

    @property
    def known(self) -> dict[str, float]:
        """The values that stand on a student's sheet."""
        return {name: self.values[name] for name in (*self.givens, "g")}

    def situation(
        self,
        values: Mapping[str, float] | None = None,
        depicts: Depictions | None = None,
        drawn: Mapping[str, float] | None = None,
    ) -> Scene:
        """Its figure, from what stands on the sheet unless there are other values."""
        depicts = self.template.depicts if depicts is None else depicts
        shown = (self.system, self.labels, values or self.known, depicts, self.givens)
        return situation(*shown, tell=telling(self.template), drawn=drawn)

    def alone(
        self, body: str, pivot: str, values: Mapping[str, float] | None = None, **choices: Any
    ) -> Scene:
        """The free-body diagram of one body."""
        shown = (self.system, self.labels, values or self.values, body, pivot)
        return free_body(*shown, tell=telling(self.template), **choices)


def read_case(name: str) -> Template:
    path = Path(__file__).parent / "cases" / f"{name}.toml"
    return read_template(path.read_text(encoding="utf-8"), path.name)


def _fits(values: Mapping[str, float]) -> bool:
    """Whether everything lies on its body, a little apart."""
    length = values.get("length", np.inf)
    cable, load = values.get("cable_at", 0.0), values.get("load_at", 0.0)
    return max(cable, load, values.get("climber_at", 0.0)) <= 0.97 * length and (
        "cable_at" not in values or cable > 0.4 * length
    )


def drawn(template: Template, seed: int) -> Case:
    """Random values from the template's ranges, solved."""
    chance = random.Random(f"{template.id}/{seed}")
    while True:
        givens = {g.id: Number(chance.choice(g.choices), g.unit) for g in template.givens}
        values = {id: float(evaluate(number, {})) for id, number in givens.items()}
        if _fits(values):
            return Case(template, solved(template.system, {**values, "g": GRAVITY}), givens)


def solved(system: System, values: Mapping[str, float]) -> dict[str, float]:
    """All values: forces from the equilibrium of the one body, by least squares.

    A seesaw's unknown distance is found first, from the torques about its pivot.
    """
    known = dict(values)
    for definition in system.definitions:
        known[definition.variable] = float(evaluate(definition.expression, known))
    if "distance_2" in system.variables:
        known["distance_2"] = known["mass_1"] * known["distance_1"] / known["mass_2"]
    places = survey(system, Labels(), known).places
    unknowns = sorted(
        {
            force.magnitude.id
            for force in system.forces
            if isinstance(force.magnitude, Name) and force.magnitude.id not in known
        }
    )
    matrix, right = np.zeros((3, len(unknowns))), np.zeros(3)
    for force in system.forces:
        unit = heading(float(evaluate(force.direction, known)))
        at = places[force.point]
        column = np.array([unit.real, unit.imag, at.real * unit.imag - at.imag * unit.real])
        if isinstance(force.magnitude, Name) and force.magnitude.id in unknowns:
            matrix[:, unknowns.index(force.magnitude.id)] += column
        else:
            right -= column * float(evaluate(force.magnitude, known))
    found = np.linalg.lstsq(matrix, right, rcond=None)[0]
    assert np.allclose(matrix @ found, right, atol=1e-6)
    known.update(zip(unknowns, map(float, found), strict=True))
    return known


@pytest.fixture(scope="session")
def cases() -> dict[tuple[str, int], Case]:
    """Every case with every seed."""
    templates = {name: read_case(name) for name in CASES}
    return {(name, seed): drawn(templates[name], seed) for name in CASES for seed in SEEDS}


@pytest.fixture(scope="session", params=CASES)
def draws(request: pytest.FixtureRequest, cases: dict[tuple[str, int], Case]) -> list[Case]:
    """The draws of one case, each with other values."""
    return [cases[request.param, seed] for seed in SEEDS]


def unknown_forces(system: System) -> set[str]:
    """Ids of the forces whose magnitude is to be found."""
    return {
        force.id
        for force in system.forces
        if force.kind is not Kind.WEIGHT
        and isinstance(force.magnitude, Name)
        and system.variables[force.magnitude.id].role is Role.UNKNOWN
    }
