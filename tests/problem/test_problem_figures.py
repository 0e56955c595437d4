"""Free-body diagrams beside what the key says of the same body, for every template."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.bank.support import component_symbol
from probgen.figures.paper.scene import Arrow, Label, Scene, bearing, bounds
from probgen.figures.paper.segment import crosses
from probgen.figures.paper.tag import What
from probgen.problem.problem import Problem, Worked, prepare, tell_steps
from probgen.problem.problem_figures import (
    _torques,
    diagram_scene,
    every_scene,
    free_body_scene,
    free_body_scenes,
    letters_untold,
    situation_scene,
)
from probgen.quantities.expression import Name, Number
from probgen.quantities.formula import Balance
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Body, Kind
from probgen.statics.truss import without_idle
from probgen.wording.facts.forces import ForceNamed, JointForce, JointReaction
from probgen.wording.forces import forces_passage
from probgen.wording.passage import Items
from probgen.wording.stretch import place_letter
from probgen.working.bodies_used import as_told
from probgen.working.convention import Convention
from probgen.working.digits import Digits
from probgen.working.direction import Way, way_of
from tests.figures.readings import TEMPLATES, prepared, solved
from tests.figures.seen import box_of, tagged, touching
from tests.situations import FIND_T, HINGED, SHELF, STAYED, STAYED_SHELF, worked
from tests.two_states import two_crates
from tests.wording.own_telling import lines_of


def told(problem: Problem, own: Worked, body: Body) -> Iterator[tuple[str, Way]]:
    """The id of every force the key names on a body, and which way it says it acts."""
    digits = Digits(own.case, problem.convention)
    system = without_idle(own.case.system, own.case.plan.steps)
    passage = forces_passage(digits, body)
    for part in passage.parts:
        for fact in part.facts if isinstance(part, Items) else ():
            if isinstance(fact, JointForce | JointReaction):
                ids = system.element(fact.element).forces
                named = {system.force(id).magnitude: id for id in ids}
                yield from ((named[letter], way) for letter, way in fact.parts)
            elif isinstance(fact, ForceNamed):
                ids = system.element(fact.element).forces
                force = next(
                    each
                    for each in map(system.force, ids)
                    if each.part == fact.part and each.magnitude == fact.letter
                )
                yield force.id, fact.way


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_the_lever_arms_of_a_diagram_are_those_of_a_balance_of_its_body(path: Path) -> None:
    problem = prepared(path)
    for body in problem.template.system.bodies:
        balance = _torques(problem, (body.id,))
        assert balance is None or (balance.kind, balance.bodies) == ("torque", (body.id,))


def arrows_of(scene: Scene) -> dict[str, Arrow]:
    """The arrows of forces and of their components, by the ids of these."""
    shapes = (*tagged(scene, "force"), *tagged(scene, "component"))
    return {str(s.tag).partition(":")[2]: s for s in shapes if isinstance(s, Arrow)}


@pytest.mark.one_in(4)
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_every_arrow_points_the_way_the_text_says(path: Path) -> None:
    problem = prepared(path)
    for own in solved(problem, 30):
        for body in own.case.system.bodies:
            arrows = arrows_of(free_body_scene(problem, own, body.id))
            for id, way in told(problem, own, body):
                arrow = arrows[id]
                assert way_of(round(bearing(arrow.head - arrow.tail), 6)) == way, id


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_action_and_reaction_are_drawn_equally_long(path: Path) -> None:
    problem = prepared(path)
    for own in solved(problem, 3):
        scenes = free_body_scenes(problem, own)
        drawn = {id: each for scene in scenes.values() for id, each in arrows_of(scene).items()}
        for force in own.case.system.forces:
            if force.id in drawn and force.pair in drawn:
                one, other = drawn[force.id], drawn[force.pair]
                assert abs(one.head - one.tail) == pytest.approx(abs(other.head - other.tail))


def test_a_diagram_is_the_same_alone_as_among_those_of_its_problem() -> None:
    (path,) = (path for path in TEMPLATES if path.stem == "crowbar-stone")
    problem = prepared(path)
    (own,) = solved(problem, 1)
    scenes = free_body_scenes(problem, own)
    assert list(scenes) == ["stone", "bar"]
    assert scenes == {body: free_body_scene(problem, own, body) for body in scenes}


def test_bodies_taken_as_one_are_drawn_for_their_balance_and_each_for_its_own() -> None:
    """The pivot, the axes and the lengths of a balance are in the diagram of what it is of."""
    path = next(path for path in TEMPLATES if path.stem == "stepladder-tie")
    problem = prepared(path)
    (own,) = solved(problem, 1)
    scenes = free_body_scenes(problem, own)
    assert list(scenes) == ["left+right", "right", "left"]
    pivots = {id: [str(p.tag.of) for p in tagged(each, "pivot")] for id, each in scenes.items()}
    assert pivots == {"left+right": ["A"], "right": ["O"], "left": []}
    assert arrows_of(scenes["left+right"]).keys() == {"N_1", "N_2", "W_s", "W_d"}
    assert tagged(scenes["left+right"], "dimension:feet")
    assert not tagged(scenes["left"], "dimension")
    assert scenes["left+right"].words.startswith(
        "Free-body diagram of the left side and the right side together: "
    )
    assert [name for name, _ in every_scene(problem, own)] == [
        "situation", "free-body-left+right", "free-body-right", "free-body-left",
    ]  # fmt: skip


def test_a_reaction_is_marked_where_both_of_a_pair_are_drawn() -> None:
    marked = {}
    for stem in ("stepladder-tie", "climbing-triangle"):
        problem = prepared(next(path for path in TEMPLATES if path.stem == stem))
        (own,) = solved(problem, 1)
        scenes = free_body_scenes(problem, own).items()
        marked[stem] = {id for id, scene in scenes if tagged(scene, "pair")}
    assert marked == {"stepladder-tie": {"left", "right"}, "climbing-triangle": set()}


def test_the_pivot_drawn_is_of_a_balance_that_every_key_tells() -> None:
    """Where the cabinet tips first no torques are taken about K."""
    problem = prepared(next(path for path in TEMPLATES if path.stem == "cabinet-slide-or-tip"))
    balance = _torques(problem, ("cabinet",))
    assert balance is not None
    assert balance.about == "Q"


def test_bodies_that_stand_together_have_height_for_the_arms_below_them() -> None:
    """A frame hardly higher than broad: its longest arrow, usually 58 pt, is at least half that."""
    problem = prepared(next(path for path in TEMPLATES if path.stem == "climbing-triangle"))
    for own in solved(problem, 12):
        scene = free_body_scenes(problem, own)["left+right"]
        arrows = arrows_of(scene).values()
        assert max(abs(arrow.head - arrow.tail) for arrow in arrows) >= 29.0
        below_name = [shape for shape in scene.shapes if shape.tag.what is not What.NOTE]
        assert bounds(below_name).height <= 215.0
        assert not scene.strained


SAID = {"g", "x", "y", "r_x", "r_y", "phi"}
"""What the words themselves say: the pull of gravity, the axes, the angle of a force found."""


def letters_in(told: object) -> Iterator[str]:
    """The symbols of all quantities, and the points of torque balances, in what is told."""
    if isinstance(told, Name):
        yield told.symbol
    elif isinstance(told, Balance):
        yield from (told.about,) if told.kind != "force" and told.about else ()
    elif isinstance(told, tuple):
        for each in told:
            yield from letters_in(each)
    elif is_dataclass(told):
        for part in fields(told):
            yield from letters_in(getattr(told, part.name))


def unseen(problem: Problem, own: Worked) -> set[str]:
    """Letters of the key that stand in no figure, nor in a table of what is given and asked."""
    scenes = [situation_scene(problem, own, solved=True)]
    scenes += free_body_scenes(problem, own).values()
    scenes += [diagram_scene(problem, own, body) for body in problem.template.system.diagrams]
    seen = {letter for scene in scenes for label in scene.labels for letter in letters_in(label)}
    if problem.template.system.diagrams:  # said to be the distance of a section
        seen.add(place_letter(own.digits).symbol)
    labels = problem.template.labels.quantities
    seen |= {labels[given.id].symbol for given in problem.template.givens}
    seen |= {own.case.labels.whole(element.id).symbol for element in own.case.system.elements}
    # A key says what B_x is where it first uses it, and what is worked out has a heading.
    wholes = [e.id for e in own.case.system.elements if e.kind is Kind.RESULTANT]
    seen |= {labels[id].symbol for whole in wholes for id in Quantity(whole).components}
    forces = {letter for force in own.case.system.forces for letter in letters_in(force.magnitude)}
    seen |= {component_symbol(letter, axis) for letter in forces for axis in "xy"}
    names, finds = own.case.labels.quantities, own.case.system.finds
    seen |= {names[find.quantity].symbol for find in finds if find.quantity in names} | SAID
    points = set(problem.template.system.points)
    steps = tell_steps(problem, own)
    lines = (line for step in steps for block in step.blocks for line in lines_of(block))
    if any("∥, the line of" in line for line in lines):  # a check says which line that is
        seen.add("∥")
    held = set(letters_in(steps)) - seen
    rows = {each for each in held if set(each) <= points}  # of points: a member AB, seen by A and B
    return (held - rows) | {letter for row in rows for letter in row} - seen


def cross(scene: Scene) -> list[str]:
    """The arrows of forces that cross elsewhere than at their ends."""
    found = []
    arrows = [shape for shape in tagged(scene, "force") if isinstance(shape, Arrow)]
    for one, other in combinations(arrows, 2):
        a, b, c, d = one.tail, one.head, other.tail, other.head
        apart = min(abs(a - c), abs(a - d), abs(b - c), abs(b - d)) > 1.0
        if apart and crosses((a.real, a.imag, b.real, b.imag), (c.real, c.imag, d.real, d.imag)):
            found.append(f"{one.tag!s} / {other.tag!s}")
    return found


METHODS = [Convention(torque="angle"), Convention(torque="arm"), Convention(torque="components")]


@cache
def problem_in(path: Path, convention: Convention) -> Problem:
    return prepare(read_template(path.read_text(encoding="utf-8"), path.name), convention)


@pytest.mark.one_in(6)
@pytest.mark.parametrize("convention", METHODS, ids=lambda each: each.torque)
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_every_letter_of_the_key_is_seen(path: Path, convention: Convention) -> None:
    problem = problem_in(path, convention)
    assert [unseen(problem, own) for own in solved(problem, 1)] == [set()]


@pytest.mark.proof
@pytest.mark.parametrize("convention", METHODS, ids=lambda each: each.torque)
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_every_letter_is_seen_in_ten_draws(path: Path, convention: Convention) -> None:
    problem = problem_in(path, convention)
    assert [unseen(problem, own) for own in solved(problem, 10)] == [set()] * 10


CROWDED = {"leg-raise-cuff": 3, "stepladder-tie": 4}
"""In how many of a hundred draws arrows cross, where no side is free; none elsewhere."""


@pytest.mark.proof
@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_arrows_cross_in_no_free_body_diagram(path: Path) -> None:
    """And no label of them touches anything; a hundred draws, the methods in turn."""
    crossed = 0
    for place, convention in enumerate(METHODS):
        problem = problem_in(path, convention)
        for own in solved(problem, 100)[place :: len(METHODS)]:
            bodies = as_told(problem.plan).system.bodies
            scenes = [free_body_scene(problem, own, body.id) for body in bodies]
            assert [touching(scene) for scene in scenes] == [[]] * len(scenes)
            crossed += any(cross(scene) for scene in scenes)
    assert crossed <= CROWDED.get(path.stem, 0)


def test_axes_of_working_to_a_limit_are_drawn() -> None:
    """The least pull on a crate about to slip, with sums along and square to its slope."""
    scene = free_body_scene(*worked(two_crates()), "crate")
    assert {"∥", "⊥"} <= {letter for label in scene.labels for letter in letters_in(label)}


# A letter the working alone has, where the statement, a wording or a question tells it, or none.
PER_LENGTH = 'w = { name = "weight per length", choices = [20], unit = "N/m" }\n'
COMPUTED = '[[weight]]\nat = "B"\nforce = "w*L"\nsymbol = "W_c"\n'
TELLINGS = [
    ("Own.", "", False),
    ("The weight is {{ W_c | symbol }}.", "", True),
    ("Own.", 'wording = "the tension, beside {{ W_c }}"\n', True),
    ("Own.", '[[find]]\nquantity = "W_c"\n', True),
]


@pytest.mark.parametrize(("statement", "question", "shown"), TELLINGS)
def test_a_sheet_s_figure_has_no_letter_that_no_text_tells(
    statement: str, question: str, shown: bool
) -> None:
    text = SHELF.replace('statement = "Own."', f'statement = "{statement}"')
    text = text.replace("[points]", PER_LENGTH + "[points]")
    text += COMPUTED + HINGED + STAYED + FIND_T + question + '[depicts]\nW_c = "centre of mass"\n'
    problem, own = worked(text)
    assert bool(tagged(situation_scene(problem, own, solved=False), "label:W_c")) is shown


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.stem)
def test_no_supplied_sheet_has_a_letter_that_no_text_tells(path: Path) -> None:
    problem = prepared(path)
    (own,) = solved(problem, 1)
    scene = situation_scene(problem, own, solved=False)
    for id in letters_untold(problem.template):
        assert not tagged(scene, f"label:{id}"), id


PULLS = [("Own.", False), ("It pulls with {{ T }}.", True)]


@pytest.mark.parametrize(("statement", "shown"), PULLS)
def test_a_pull_the_statement_calls_by_a_letter_has_it_at_its_line(
    statement: str, shown: bool
) -> None:
    text = STAYED_SHELF.replace('statement = "Own."', f'statement = "{statement}"')
    problem, own = worked(text)
    assert bool(tagged(situation_scene(problem, own, solved=False), "label:T")) is shown


def test_two_states_of_a_thing_that_look_alike_are_told_apart_by_their_pulls() -> None:
    (path,) = (path for path in TEMPLATES if path.stem == "trough-ramp-winch")
    problem = prepared(path)
    (own,) = solved(problem, 1)
    scene = situation_scene(problem, own, solved=False)
    for pull in ("T_1", "T_2"):
        (label,) = tagged(scene, f"label:{pull}")
        assert isinstance(label, Label)
        ropes = {each: box_of(scene, f"cable:{each}") for each in ("T_1", "T_2")}
        assert min(ropes, key=lambda each: label.box.gap(ropes[each])) == pull


def test_a_force_that_acts_off_its_body_is_joined_to_it_by_a_dashed_line() -> None:
    (path,) = (path for path in TEMPLATES if path.stem == "hip-walking-stick")
    problem = prepared(path)
    (own,) = solved(problem, 1)
    scene = free_body_scene(problem, own, "upper")
    assert len(tagged(scene, "reference:upper")) == 1


def test_a_diagram_tells_what_is_asked_at_a_section() -> None:
    (path,) = (path for path in TEMPLATES if path.stem == "footbridge-inside")
    problem = prepared(path)
    (own,) = solved(problem, 1)
    labels = diagram_scene(problem, own, "beam").labels
    told = [float(each.text.value) for each in labels if isinstance(each.text, Number)]
    for asked in ("V_D", "M_D"):
        assert any(one == pytest.approx(own.case.values[asked], rel=0.005) for one in told)
