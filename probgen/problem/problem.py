"""One problem of a set: its template with the plan of its solution, and the students' cases.

The plan is found once, symbolically; a whole class is then solved and proved in one go.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from types import MappingProxyType
from typing import Final

import numpy as np
from numpy.typing import NDArray

from probgen.bank.template import Template
from probgen.draws.class_draws import ClassDraws, NoDrawError, class_draws
from probgen.draws.classroom import Classmates, Classroom
from probgen.draws.draw import Draw, Values
from probgen.draws.draw import draw as draw_one
from probgen.draws.nearness import Answers
from probgen.draws.requirement import requirements_hold, stacked
from probgen.draws.sample import sample
from probgen.draws.spread import Looked, Spread
from probgen.input.fault import Fault, InputError
from probgen.input.time_limit import within
from probgen.mistakes.wrong_working import Missteps, plan_missteps
from probgen.problem.dropped import why_refused
from probgen.problem.flaw_words import flaws_told
from probgen.quantities.expression import Value, evaluate
from probgen.quantities.printing import plain
from probgen.statics.flaw import Flaw
from probgen.statics.internal_forces import InternalForces, bodies_cut, internal_forces
from probgen.statics.method import Method
from probgen.statics.plan import Plan, find_plan
from probgen.statics.proof import Proof, prove
from probgen.statics.refusal import Refusal
from probgen.statics.solution import solve, unknown_in_directions
from probgen.wording.answer import Answer, told_answer
from probgen.wording.block import Section
from probgen.wording.diagram import diagram_passage
from probgen.wording.english import ENGLISH
from probgen.wording.key import tell
from probgen.wording.language import Language
from probgen.wording.nouns import Nouns
from probgen.wording.passage import Passage
from probgen.wording.sentence import plain_text
from probgen.wording.unused import Unused, unused_balances
from probgen.working.asked import asked_answers
from probgen.working.case import Case, case_of
from probgen.working.convention import Convention
from probgen.working.digits import Digits, working_units
from probgen.working.fact import Fact
from probgen.working.result import results, targets
from probgen.working.scheme import Mark, scheme
from probgen.working.shares import USUAL, Shares

_PROBES: Final = 8
_ATTEMPTS: Final = 100
_TRIED: Final = 1000  # draws that tell why a template has none that are fit for use
_RANGED: Final = 1000  # draws that tell how far the answers of a template go
_SECONDS: Final = 4.0
"""Of processor time for each stage; the supplied templates take some hundredths."""
_SECONDS_A_STUDENT: Final = 0.1
"""More of it for each of a class; here they take some thousandths."""


@dataclass(frozen=True)
class Problem:
    """A template ready to be worked for any number of students, in one course's convention."""

    template: Template
    plan: Plan
    convention: Convention
    language: Language = ENGLISH

    @property
    def nouns(self) -> Nouns:
        """The author's words."""
        return Nouns(self.plan.system, self.template.labels, self.convention.turning)

    def tell(self, fact: Fact) -> str:
        """A fact in the problem's language, as one line of plain text."""
        return plain_text(self.language.say(fact, self.nouns))

    @property
    def needs_gravity(self) -> bool:
        """Whether a weight is made of a mass, so that g is to be told."""
        return "g" in self.template.system.names_used

    @cached_property
    def unused(self) -> Unused:
        """The balances left for a look back at the end, written once for all students."""
        with within(_SECONDS, self.template.path, "planning its working"):
            return unused_balances(self.plan)

    @cached_property
    def missteps(self) -> Missteps:
        """What may go wrong in a working, found once for all students."""
        with within(_SECONDS, self.template.path, "looking for slips"):
            probe = probe_values(self)
            units = working_units(self.template.system, self.convention)
            return plan_missteps(self.plan, probe, units, self.convention.figures)

    @cached_property
    def _schemes(self) -> dict[tuple[int, Shares], tuple[Mark, ...]]:
        return {}

    def scheme(self, points: int, shares: Shares = USUAL) -> tuple[Mark, ...]:
        """What points are given for, found once for all students."""
        key = points, shares
        if key not in self._schemes:
            self._schemes[key] = scheme(self.plan, self.convention, points, shares)
        return self._schemes[key]

    def settle(self) -> None:
        """Finds what all students share, which is then sent along to other processes."""
        _ = self.unused, self.missteps


@dataclass(frozen=True)
class Worked:
    """One student's problem, solved and proved.

    digits: its printed numbers.
    complete: values of every quantity, also of forces the working did not need, for the figures.
    residual: the largest relative residual of any balance; difference: from the second solver.
    """

    draw: Draw
    digits: Digits
    complete: Mapping[str, float]
    answers: tuple[Answer, ...]
    residual: float
    difference: float

    @property
    def case(self) -> Case:
        return self.digits.case

    @cached_property
    def inside(self) -> tuple[InternalForces, ...]:
        """What acts inside each body that has a diagram, or whose largest moment is asked."""
        system = self.case.system
        whole, bodies = system.uncut, bodies_cut(system)
        return tuple(internal_forces(whole, self.complete, body) for body in bodies)


def prepare(template: Template, convention: Convention, language: Language = ENGLISH) -> Problem:
    """The problem, with its plan found on a few draws of no student.

    Raises InputError when the situation cannot be solved as stated.
    """
    own = convention
    method = Method(own.torque, own.positive, own.axes, own.order, own.pivot, own.trusses)
    try:
        with (
            within(_SECONDS, template.path, "planning its working"),
            np.errstate(all="ignore"),  # what has no value is no way to go
        ):
            probes = coherent_values(_probes(template), convention)
            plan = find_plan(template.system, probes, method)
    except Refusal as refusal:
        expected = "a situation that statics alone can solve"
        fault = Fault(template.path, "", template.id, expected, str(refusal))
        raise InputError([fault]) from None
    return Problem(template, plan, convention, language)


def draw_class(
    problem: Problem,
    seed: str,
    students: Sequence[str],
    taken: Collection[Values] = (),
    barred: Mapping[str, Collection[Values]] = MappingProxyType({}),
    had: Collection[Values] = (),
    among: Classmates | None = None,
) -> ClassDraws:
    """The draws of a class; every one meets the template's requirements and passes its proof.

    students: their ids; taken, barred, had: as `class_draws` has them.
    among: the class they are of, over which their answers are spread.
    Raises InputError when too few draws of the template do, NoneLeftError as `class_draws` does.
    """

    def accept(draws: Sequence[Draw]) -> Sequence[bool]:
        return fit(problem, draws)

    seconds = _SECONDS + _SECONDS_A_STUDENT * len(students)
    try:
        with within(seconds, problem.template.path, "drawing its numbers"):
            spread = _spread(problem, seed, among) if among and students else None
            return class_draws(problem.template, seed, students, accept, taken, barred, had, spread)
    except NoDrawError as error:
        expected = "draws that meet every requirement and pass their proof"
        template = problem.template
        reasons = why_refused(template, *proved_values(problem, sample(template, _TRIED).values))
        mend = f"{error}; dropped are {'; '.join(map(str, reasons))}"
        raise InputError([Fault(template.path, "", template.id, expected, mend)]) from None


def _spread(problem: Problem, seed: str, among: Classmates) -> Spread | None:
    """A class as far as it has numbers; None where no draw shows what there is to spread."""

    def look(drawn: Mapping[str, NDArray[np.float64]]) -> Looked:
        return _looked(problem, drawn)

    probes = look(sample(problem.template, _RANGED).values)
    if not probes.fit.any():
        return None
    classroom = Classroom(among.beside, probes.answers.rows(probes.fit))
    spread = Spread(problem.template, seed, classroom, look)
    spread.seat(among.draws)
    return spread


def fit(problem: Problem, draws: Sequence[Draw]) -> tuple[bool, ...]:
    """Whether each draw meets the template's requirements and passes its proof."""
    if not draws:
        return ()
    return tuple(bool(fits) for fits in _fit(problem, _solved(problem, stacked(draws))))


def answers_of(problem: Problem, draws: Sequence[Draw]) -> Answers:
    """The numbers that are asked for; at least one draw."""
    return _asked(problem, _solved(problem, stacked(draws)))


def _looked(problem: Problem, drawn: Mapping[str, NDArray[np.float64]]) -> Looked:
    solved = _solved(problem, drawn)
    return Looked(_fit(problem, solved), _asked(problem, solved))


def _asked(problem: Problem, solved: Mapping[str, NDArray[np.float64]]) -> Answers:
    return asked_answers(problem.plan, problem.template.labels, problem.convention, solved)


def _fit(problem: Problem, solved: Mapping[str, NDArray[np.float64]]) -> NDArray[np.bool_]:
    held = requirements_hold(problem.template, solved)
    chosen = np.flatnonzero(held)  # a proof takes longer than all else
    with np.errstate(all="ignore"):
        some = {name: value[chosen] for name, value in solved.items()}
        held[chosen] = prove(problem.plan, some).holds
    return held


def work(problem: Problem, draws: Sequence[Draw]) -> tuple[Worked, ...]:
    """Every draw solved and proved, in order.

    Raises InputError naming the values of every draw whose solution is no solution.
    """
    if not draws:
        return ()
    seconds = _SECONDS + _SECONDS_A_STUDENT * len(draws)
    with within(seconds, problem.template.path, "solving it"):
        solved, proof = proved(problem, draws)
    faults = [
        _refused(problem.template, draw, blamed)
        for draw, blamed in zip(draws, proof.faults, strict=True)
        if blamed
    ]
    if faults:
        raise InputError(faults)
    worked, sought = list[Worked](), targets(problem.plan, problem.template.labels)
    values = _listed(proof.values, len(draws))
    told_of = unknown_in_directions(problem.plan.system) & values.keys()
    found = _listed(solved, len(draws))
    for place, draw in enumerate(draws):
        own = {name: column[place] for name, column in found.items()}
        own |= {name: values[name][place] for name in told_of if name not in own}
        numbers = {**draw.values, "g": problem.convention.g}
        case = case_of(problem.plan, problem.template.labels, numbers, own)
        residual = float(proof.max_residual[place])
        difference = float(proof.second_solver_difference[place])
        digits = Digits(case, problem.convention)
        told = tuple(
            told_answer(result, problem.nouns, problem.language)
            for result in results(digits, sought)
        )
        every = {name: column[place] for name, column in values.items()}
        complete = {**every, **case.values}
        worked.append(Worked(draw, digits, complete, told, residual, difference))
    return tuple(worked)


def _listed(values: Mapping[str, Value], count: int) -> dict[str, list[float]]:
    """Columns as lists of floats, an entry a draw."""
    return {
        name: np.broadcast_to(np.asarray(value, float), count).tolist()
        for name, value in values.items()
    }


def tell_steps(problem: Problem, own: Worked) -> tuple[Section, ...]:
    """The worked steps.  Raises InputError where no printed digits would lead to the result."""
    try:
        with within(_SECONDS, problem.template.path, "telling its working"):
            told = [*tell(own.digits, problem.unused, own.inside), *_drawn(own)]
    except ArithmeticError as error:
        template = problem.template
        expected = "values whose working can be printed"
        mend = f"change the values, or the template's ranges: {error}"
        fault = Fault(template.path, "", shown_values(own.draw), expected, mend)
        raise InputError([fault]) from None
    return tuple(problem.language.section(passage, problem.nouns) for passage in told)


def _drawn(own: Worked) -> Iterator[Passage]:
    """What acts inside each body that has a diagram: by expressions, then drawn."""
    for inside in own.inside:
        if inside.body in own.case.system.diagrams:
            yield diagram_passage(own.digits, inside, own.complete)


def proved(problem: Problem, draws: Sequence[Draw]) -> tuple[dict[str, NDArray[np.float64]], Proof]:
    """Solution and proof, one entry a draw; what has no value is the proof's to blame."""
    return proved_values(problem, stacked(draws))


def proved_values(
    problem: Problem, drawn: Mapping[str, NDArray[np.float64]]
) -> tuple[dict[str, NDArray[np.float64]], Proof]:
    """As `proved`, of coherent values of everything drawn, one entry a draw."""
    solved = _solved(problem, drawn)
    with np.errstate(all="ignore"):
        return solved, prove(problem.plan, solved)


def _solved(
    problem: Problem, drawn: Mapping[str, NDArray[np.float64]]
) -> dict[str, NDArray[np.float64]]:
    count = len(next(iter(drawn.values())))
    with np.errstate(all="ignore"):
        solved = solve(problem.plan, _with_gravity(drawn, count, problem.convention))
    return {name: np.broadcast_to(value, count) for name, value in solved.items()}


def _probes(template: Template) -> list[Draw]:
    """A few draws that show how the situation's equations depend on one another."""
    made: list[Draw] = []
    for attempt in range(_ATTEMPTS):
        with suppress(ArithmeticError):
            made.append(draw_one(template, "probe", str(attempt)))
        if len(made) == _PROBES:
            return made
    if not made:
        expected = "derived quantities that have values"
        mend = "look for a division by zero or the root of a negative number"
        raise InputError([Fault(template.path, "derived", template.id, expected, mend)])
    return made


def coherent_values(
    draws: Sequence[Draw], convention: Convention
) -> dict[str, NDArray[np.float64]]:
    """Coherent values of everything drawn, and g, one entry a draw."""
    return _with_gravity(stacked(draws), len(draws), convention)


def probe_values(problem: Problem) -> dict[str, NDArray[np.float64]]:
    """Coherent values of a few draws of no student, by which a plan and its slips are found."""
    return coherent_values(_probes(problem.template), problem.convention)


def _with_gravity(
    drawn: Mapping[str, NDArray[np.float64]], draws: int, convention: Convention
) -> dict[str, NDArray[np.float64]]:
    return {**drawn, "g": np.full(draws, float(evaluate(convention.g, {})))}


def _refused(template: Template, draw: Draw, flaws: Sequence[Flaw]) -> Fault:
    said = flaws_told(template, flaws)
    mend = "change the values, or the template's ranges or [[require]]"
    expected = "a solution that passes its proof"
    return Fault(template.path, said, shown_values(draw), expected, mend)


def shown_values(draw: Draw) -> str:
    """The values of a draw on one line, for messages."""
    return ", ".join(f"{name} = {plain(value)}" for name, value in draw.values.items())
