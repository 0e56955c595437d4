"""The figures of one worked problem, as scenes that any writer can print."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from functools import partial
from typing import Final

from probgen.bank.proportions import drawn_sizes
from probgen.bank.statement import Mention, statement_pieces
from probgen.bank.template import Template
from probgen.figures.freebody.diagram import Subject, free_bodies
from probgen.figures.inside.axes import with_axes
from probgen.figures.inside.diagram import Row, diagram
from probgen.figures.paper.scene import Scene
from probgen.figures.situation.drawing import situation
from probgen.figures.situation.shape import look_of
from probgen.input.fault import Fault, InputError
from probgen.input.time_limit import within
from probgen.problem.problem import Problem, Worked, shown_values
from probgen.quantities.expression import Name
from probgen.quantities.unit import ANGLE, FORCE, LENGTH
from probgen.statics.equation import Axis, Equation
from probgen.statics.internal_forces import Inside
from probgen.statics.link import is_link
from probgen.statics.numeric_equations import coordinates
from probgen.statics.system import Kind, Role, System
from probgen.statics.taken_as_one import made_of
from probgen.statics.truss import without_idle
from probgen.wording.diagram import drawn_of, inside_shown
from probgen.wording.facts.diagram import AxesPrepared
from probgen.wording.inside import plain_value, unit_of
from probgen.working.bodies_used import (
    as_told,
    bodies_used,
    is_piece,
    steps_compared,
)

_LETTERS: Final = {
    Inside.AXIAL: Name("N", "N"),
    Inside.SHEAR: Name("V", "V"),
    Inside.MOMENT: Name("M", "M"),
}
_SECONDS: Final = 3.0
"""Of processor time for a figure; the supplied templates take some hundredths."""


def every_scene(problem: Problem, own: Worked) -> Iterator[tuple[str, Scene]]:
    """The figures of a problem with their names: "situation", "free-body-shelf"."""
    yield "situation", situation_scene(problem, own, solved=False)
    shown = free_body_scenes(problem, own)
    for body in as_told(problem.plan).system.bodies:
        if body.id not in shown and is_piece(own.case.system, body):
            continue  # a joint of a truss that no balance is written of
        scene = shown.get(body.id) or free_body_scene(problem, own, body.id)
        yield f"free-body-{body.id}", scene
    for id in problem.template.system.diagrams:
        yield f"diagram-{id}", diagram_scene(problem, own, id)


def situation_scene(problem: Problem, own: Worked, solved: bool) -> Scene:
    """The figure of a problem's situation, to scale unless its template says otherwise.

    solved: with the lengths and angles that were to be found in their true size; a sheet's figure
    is drawn from the data alone, so that none of them can be measured on it.
    """
    template, givens = problem.template, own.draw.values
    # A truss is drawn as it is read, before it was taken apart; a beam as it is before it is cut.
    system = (template.system if template.system.members else own.case.system).uncut
    known = {id: own.case.values[id] for id in (*givens, "g")}
    values = own.complete if solved else known
    labels, depicts = template.labels, template.depicts
    with _drawable(template, own):
        named, drawn = (*points_told(template), *pulls_told(template)), drawn_sizes(template, known)
        shown = system, labels, values, depicts, givens
        untold, cuts = letters_untold(template), tuple(_sections(own, named))
        return situation(
            *shown, tell=problem.tell, named=named, untold=untold, drawn=drawn, sections=cuts
        )


def _sections(own: Worked, named: Collection[str]) -> Iterator[tuple[str, str]]:
    """The bodies that are cut where the statement says, and where, each once."""
    system, letters = own.case.system, set(named)
    parts = {part.id: part.part_of for part in system.bodies if part.part_of}
    cuts = (e for e in system.elements if e.kind is Kind.CUT and e.body in parts)
    yield from dict.fromkeys((parts[e.body], e.at) for e in cuts if e.at in letters)


def diagram_scene(problem: Problem, own: Worked, body: str) -> Scene:
    """What acts inside a body, drawn along it, below the situation or a bare bar."""
    digits, template = own.digits, problem.template
    found = next(each for each in own.inside if each.body == body)
    with _drawable(template, own):
        rows = tuple(
            Row(of, _LETTERS[of], unit_of(digits, of).plain, partial(plain_value, digits, of))
            for of in drawn_of(found)
        )
        scene = situation_scene(problem, own, solved=True)
        first, *asked = _places(own, own.case.system, body)
        words = problem.tell(inside_shown(digits, found))
        sections = tuple(abs(each - first) for each in asked)
        if drawn_sizes(template, own.case.values):  # not to scale, as the curves have to be
            return diagram(found, None, first, rows, words, sections)
        return diagram(found, scene, first * scene.scale, rows, words, sections)


def _places(own: Worked, system: System, body: str) -> Iterator[complex]:
    """Where a body begins, and where sections cut it (m)."""
    places = coordinates(system, own.complete)
    parts = {part.id for part in system.bodies if part.part_of == body}
    cuts = (e.at for e in system.elements if e.kind is Kind.CUT and e.body in parts)
    for name in (system.body(body).outline[0], *cuts):
        x, y = places[name]
        yield complex(float(x), float(y))


def sheet_scene(problem: Problem, own: Worked, scene: Scene) -> Scene:
    """The figure on a sheet: that of the situation, and below it axes for what is to be drawn."""
    digits, system = own.digits, own.case.system
    places = coordinates(system, own.complete)
    for found in own.inside:
        if found.body in problem.template.system.to_draw:
            x, y = places[system.body(found.body).outline[0]]
            start = complex(float(x), float(y)) * scene.scale
            drawn = drawn_of(found)
            kinds = tuple((of, _LETTERS[of], unit_of(digits, of).plain) for of in drawn)
            words = problem.tell(AxesPrepared(found.body, drawn))
            scene = with_axes(scene, start, found.length, kinds, words)
    return scene


def free_body_scenes(problem: Problem, own: Worked) -> dict[str, Scene]:
    """Each body the working shows, alone with all forces on it; their arrows are to one scale."""
    return _alone(problem, own, _together(problem, own))


def free_body_scene(problem: Problem, own: Worked, body: str) -> Scene:
    """A body alone with all forces on it, and the pivot the working takes torques about; its arrows
    are as long as among all the bodies the working shows, where it is one of them.
    """
    together = _together(problem, own)
    return _alone(problem, own, together if body in together else [body])[body]


def _together(problem: Problem, own: Worked) -> list[str]:
    """The bodies the working shows alone: those of its balances, and links."""
    used, system = bodies_used(problem.plan), as_told(problem.plan).system
    return [body.id for body in system.bodies if body in used or is_link(system, body)]


def _alone(problem: Problem, own: Worked, bodies: Sequence[str]) -> dict[str, Scene]:
    template = problem.template
    with _drawable(template, own, len(bodies)):
        scenes = free_bodies(
            _told(problem),
            template.labels,
            own.complete,
            [_subject(problem, body) for body in bodies],
            tell=problem.tell,
            positive=problem.convention.positive,
            drawn=drawn_sizes(template, own.case.values),
            wedges=template.depicts.wedges,
        )
    return dict(zip(bodies, scenes, strict=True))


def _subject(problem: Problem, body: str) -> Subject:
    """A body with what its diagram shows of the working."""
    bodies = made_of(as_told(problem.plan).system.body(body))
    balance = _torques(problem, bodies)
    pivot = balance.about if balance else ""
    looks = {id: look_of(problem.template.depicts, id) for id in bodies}
    return Subject(body, pivot, looks, balance, _axes(problem, bodies))


def _told(problem: Problem) -> System:
    """The system as its diagrams tell it: with bodies taken as one, without idle members, and with
    no reaction marked that acts on a body the working needs no diagram of.
    """
    told = without_idle(as_told(problem.plan).system, problem.plan.steps)
    shown = {body.id for body in bodies_used(problem.plan)}
    hidden = {id for f in told.forces if f.body not in shown for id in (f.id, f.pair)}
    forces = tuple(replace(f, pair="") if f.id in hidden else f for f in told.forces)
    return replace(told, forces=forces)


@contextmanager
def _drawable(template: Template, own: Worked, figures: int = 1) -> Iterator[None]:
    """Tells of values that leave nothing to draw: points in one place, a length of zero."""
    try:
        with within(figures * _SECONDS, template.path, "drawing its figure"):
            yield
    except ArithmeticError:
        expected = "values whose figure can be drawn, with no two of its points in one place"
        mend = "change the values, or the template's ranges or [[require]]"
        fault = Fault(template.path, "", shown_values(own.draw), expected, mend)
        raise InputError([fault]) from None


def asks_for_sizes(template: Template) -> bool:
    """Whether a length or an angle is sought, which the sheet's figure must not show."""
    return any(
        variable.role is Role.UNKNOWN and variable.dimension in (LENGTH, ANGLE)
        for variable in template.system.variables.values()
    )


def letters_untold(template: Template) -> frozenset[str]:
    """What the working alone computes, such as a weight, and neither the statement nor a question
    calls by its letter: a sheet's figure is not to show it.
    """
    texts = (template.statement, *template.labels.finds.values())
    pieces = (each for text in texts for each in statement_pieces(text))
    told = {each.id for each in pieces if isinstance(each, Mention)}
    told |= {find.quantity for find in template.system.finds}
    variables = template.system.variables.values()
    worked = {each.as_name.id for each in variables if each.role is Role.DEFINED}
    return frozenset(worked - told)


def points_told(template: Template) -> tuple[str, ...]:
    """The points the statement calls by their letters, which the figure has to show."""
    told = {each.id for each in statement_pieces(template.statement) if isinstance(each, Mention)}
    return tuple(name for name in template.system.points if name in told)


def pulls_told(template: Template) -> tuple[str, ...]:
    """The unknown forces the statement calls by a letter alone, which stands at the line that pulls
    so.
    """
    told = {each.id for each in statement_pieces(template.statement) if isinstance(each, Mention)}
    variables = template.system.variables.items()
    pulls = ((id, each) for id, each in variables if id in told and each.dimension == FORCE)
    found = tuple(id for id, each in pulls if each.role is Role.UNKNOWN)
    return tuple(id for id in found if id not in template.system.points)


def _axes(problem: Problem, bodies: tuple[str, ...]) -> tuple[Axis, ...]:
    """The axes along which the plan sums the forces on a body, or on several taken as one."""
    steps = (step for plan in problem.plan.ways for step in plan.steps)
    equations = (equation for step in steps for equation in step.equations)
    axes = (each.axis for each in equations if each.bodies == bodies and each.axis)
    return tuple(dict.fromkeys(axes))


def _torques(problem: Problem, bodies: tuple[str, ...]) -> Equation | None:
    """The first torque balance of a body, or of several taken as one, that the plan writes.

    Those told whichever limit is reached first come before the others.
    """
    steps = (*steps_compared(problem.plan), *problem.plan.steps_told)
    equations = (equation for step in steps for equation in step.equations)
    balances = (each for each in equations if each.kind == "torque")
    return next((balance for balance in balances if balance.bodies == bodies), None)
