"""Slips in our own templates: the wrong numbers by formulas written here, and what is told of them.

Each formula is the mechanism of a slip worked by hand, with the data of the draw in coherent units.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from math import atan, cos, degrees, pi, radians, sin, tan

import pytest

from probgen.bank.reading import read_template
from probgen.mistakes.unnoticed import unnoticed
from probgen.mistakes.variant import Misstep, wrong_values
from probgen.problem.problem import Worked, draw_class, prepare, work
from probgen.quantities.expression import Name
from probgen.statics.plan import Plan
from probgen.working.convention import Convention
from probgen.working.tolerance import half_width
from tests.mistakes.supplied import OWN, problem, told, works


class Data(Mapping[str, float]):
    """Givens by their id, as attributes; g too."""

    def __init__(self, values: Mapping[str, float]) -> None:
        self.values_by_id = values

    def __getattr__(self, id: str) -> float:
        return self.values_by_id[id]

    def __getitem__(self, id: str) -> float:
        return self.values_by_id[id]

    def __iter__(self):  # type: ignore[no-untyped-def]
        return iter(self.values_by_id)

    def __len__(self) -> int:
        return len(self.values_by_id)


Formula = Callable[[Data], float]


def s(angle: float) -> float:
    return sin(radians(angle))


def c(angle: float) -> float:
    return cos(radians(angle))


def porch(d: Data, snow: float, at: float) -> float:
    return (d.deck_load * d.length**2 / 2 + snow * d.length * at * d.length) / d.post_at


def inside(d: Data, arm: float) -> float:
    """The stand roof's M_D, with an arm (m) of what is spread beyond the bolt."""
    beyond = d.roof_load * (d.reach - d.bolt_at)
    return -d.sign_load * (d.sign_at - d.bolt_at) - beyond * arm


def wing(d: Data, lift: float, at: float) -> float:
    return d.engine * d.g * d.engine_at - lift * at * d.span


def mean_height(d: Data) -> float:
    masses = d.case_mass + d.book_mass + d.player_mass
    return (d.case_mass * 0.90 + d.book_mass * d.book_height + d.player_mass * 1.88) / masses


def held(d: Data) -> float:
    """The ground's push on the ladder-holds ladder, N_g = W - N_b cos(theta)."""
    torque = d.ladder_mass * d.length / 2 + d.picker_mass * d.picker_at
    push = torque * d.g * c(d.ladder_angle) / d.branch_at
    return (d.ladder_mass + d.picker_mass) * d.g - push * c(d.ladder_angle)


WING, STAND, PANEL = "wing-wind-tunnel", "stand-roof-inside", "panel-pressed-wall"
PAINTER, CRATE, BOX, PORCH = (
    "painter-board-seat",
    "crate-ramp-strap",
    "box-pulled-from-under",
    "porch-roof-snow",
)
BOOKCASE, SPRINGS, LANTERN, RAISED = (
    "bookcase-centre-tilt",
    "spring-scales-baskets",
    "lantern-two-cords",
    "plank-raised-slowly",
)
CASES: list[tuple[str, str, str, str, Formula]] = [
    (PAINTER, "one_strand", "", "T", lambda d: (d.worker_mass + d.board_mass + d.pot_mass) * d.g),
    (PAINTER, "normal_is_weight", "pull", "N", lambda d: d.worker_mass * d.g),
    (PAINTER, "load_forgotten", "", "T", lambda d: (d.worker_mass + d.board_mass) * d.g / 2),
    ("kneecap-squat", "one_strand", "", "R.magnitude", lambda d: d.tension),
    ("kneecap-squat", "sizes_added", "", "R.magnitude", lambda d: 2 * d.tension),
    (
        "kneecap-squat",
        "sin_cos_swap",
        "one",
        "R.magnitude",
        # both strands: R_x from the sines, R_y from the cosines
        lambda d: (
            d.tension
            * (
                (s(d.upper_angle) + s(d.lower_angle)) ** 2
                + (c(d.lower_angle) - c(d.upper_angle)) ** 2
            )
            ** 0.5
        ),
    ),
    (CRATE, "normal_is_weight", "slope", "N", lambda d: d.mass * d.g),
    (CRATE, "normal_is_weight", "slope", "T", lambda d: d.mass * d.g * (s(d.ramp_angle) - d.mu)),
    (CRATE, "friction_left_out", "", "T", lambda d: d.mass * d.g * s(d.ramp_angle)),
    (
        CRATE,
        "friction_reversed",
        "",
        "T",
        lambda d: d.mass * d.g * (s(d.ramp_angle) + d.mu * c(d.ramp_angle)),
    ),
    (PANEL, "friction_left_out", "", "P", lambda d: d.mass * d.g / s(d.theta)),
    (
        PANEL,
        "friction_reversed",
        "",
        "P",
        lambda d: d.mass * d.g / (s(d.theta) - d.mu * c(d.theta)),
    ),
    (RAISED, "friction_of_weight", "", "f", lambda d: d.mu * d.mass * d.g),
    (RAISED, "tangent_inverted", "angle", "slope", lambda d: 90 - degrees(atan(d.mu))),
    (
        BOX,
        "normal_is_weight",
        "carried",
        "P",
        lambda d: (d.upper_mu * d.upper_mass + d.lower_mu * d.lower_mass) * d.g,
    ),
    (
        BOX,
        "friction_left_out",
        "one",
        "P",
        lambda d: d.lower_mu * (d.upper_mass + d.lower_mass) * d.g,
    ),
    (
        BOX,
        "friction_reversed",
        "one",
        "P",
        lambda d: (d.lower_mu * (d.upper_mass + d.lower_mass) - d.upper_mu * d.upper_mass) * d.g,
    ),
    (BOX, "exchanged", "", "T", lambda d: d.lower_mu * d.upper_mass * d.g),
    (WING, "load_as_even", "", "M_A", lambda d: wing(d, d.w_0 * d.span, 3 / 8)),
    (WING, "load_as_triangle", "", "M_A", lambda d: wing(d, d.w_0 * d.span / 2, 1 / 3)),
    (WING, "load_at_middle", "curve", "M_A", lambda d: wing(d, 2 * d.w_0 * d.span / 3, 1 / 2)),
    (STAND, "load_at_end", "", "M_D", lambda d: inside(d, d.reach - d.bolt_at)),
    (PORCH, "load_not_halved", "", "N_2", lambda d: porch(d, d.snow_load, 1 / 3)),
    (PORCH, "load_at_middle", "", "N_2", lambda d: porch(d, d.snow_load / 2, 1 / 2)),
    (
        PORCH,
        "equal_sharing",
        "",
        "N_2",
        lambda d: (d.deck_load + d.snow_load / 2) * d.length / 2,
    ),
    (BOOKCASE, "half_forgotten", "", "phi", lambda d: degrees(atan(d.depth / mean_height(d)))),
    (BOOKCASE, "unweighted_mean", "", "y_G", lambda d: (0.90 + d.book_height + 1.88) / 3),
    (
        "cabinet-slide-or-tip",
        "half_forgotten",
        "arm",
        "P",
        lambda d: d.mass * d.g * d.depth / d.push_height,
    ),
    (SPRINGS, "transmitted_left_out", "", "F_1", lambda d: d.upper_mass * d.g),
    (
        "garland-two-lanterns",
        "transmitted_left_out",
        "part",
        "gamma",
        # T_2 cos b, which is right, is m_1 g/(tan a - tan b)
        lambda d: degrees(atan(d.right / d.left * (tan(radians(d.alpha)) - tan(radians(d.beta))))),
    ),
    (
        SPRINGS,
        "exchanged",
        "",
        "lower_stretch",
        lambda d: d.lower_mass * d.g / d.upper_stiffness,
    ),
    (LANTERN, "equal_sharing", "", "T_2", lambda d: d.mass * d.g / 2),
    (
        LANTERN,
        "component_sign",
        "axis",
        "T_2",
        # T_1 pulls down: T_2 sin b - T_1 sin a = W with T_1 cos a = T_2 cos b
        lambda d: (
            d.mass * d.g / (s(d.right_angle) - tan(d.left_angle * pi / 180) * c(d.right_angle))
        ),
    ),
    ("ring-three-ropes", "sizes_added", "", "F_3", lambda d: d.first + d.second),
    (
        "table-pulley-sand",
        "own_weight_forgotten",
        "",
        "sand",
        lambda d: d.mu * (d.box_mass + d.drill_mass),
    ),
    (
        "wheelbarrow-compost",
        "wrong_end",
        "",
        "F",
        lambda d: (
            (d.barrow_mass * d.barrow_at + d.load_mass * (d.grip_at - d.load_at)) * d.g / d.grip_at
        ),
    ),
    (
        "ladder-smooth-wall",
        "normal_at_wall_is_weight",
        "total",
        "N_w",
        lambda d: (d.ladder_mass + d.climber_mass) * d.g,
    ),
    ("ladder-smooth-wall", "normal_at_wall_is_weight", "own", "N_w", lambda d: d.ladder_mass * d.g),
    ("ladder-holds", "friction_at_limit", "", "f", lambda d: d.mu * held(d)),
    (
        "seesaw-two-riders",
        "inverted_arm_ratio",
        "",
        "distance_2",
        lambda d: d.distance_1 * d.mass_2 / d.mass_1,
    ),
    (
        "reaction-board",
        "half_forgotten",
        "arm",
        "x",
        lambda d: d.inset + (d.reading - d.board_mass) * (d.length - d.inset) / d.body_mass,
    ),
]


def plans(plan: Plan) -> tuple[Plan, ...]:
    return tuple(branch.plan for branch in plan.branches) or (plan,)


@pytest.mark.parametrize(
    ("name", "slip", "way", "answer", "formula"), CASES, ids=[f"{n}-{i}" for n, i, *_ in CASES]
)
def test_a_slip_gives_what_its_formula_gives(
    name: str, slip: str, way: str, answer: str, formula: Formula
) -> None:
    every = [each for own in problem(name).missteps for each in own]
    made: list[Misstep] = [each for each in every if (each.slip, each.way) == (slip, way)]
    assert made
    for own in works(name):
        data = {id: own.case.values[id] for id in own.case.numbers}
        found = [float(wrong_values(each, data)[answer]) for each in made]
        expected = formula(Data(data))
        assert any(each == pytest.approx(expected, rel=1e-9) for each in found), (expected, found)


@pytest.mark.parametrize("axes", ["simplest", "level"])
def test_friction_is_left_out_or_turned_in_each_balance_it_stands_in(axes: str) -> None:
    """Also where two balances are solved together: the push is the right one either way."""
    text = OWN[CRATE].read_text(encoding="utf-8")
    crate = prepare(read_template(text, CRATE), Convention(axes=axes))  # type: ignore[arg-type]
    (own,) = work(crate, draw_class(crate, "slips", ["0"]).draws)
    d = Data({id: own.case.values[id] for id in own.case.numbers})
    weight, share = d.mass * d.g, {"friction_left_out": 0.0, "friction_reversed": 1.0}
    made = [each for ways in crate.missteps for each in ways if each.slip in share]
    assert {each.slip for each in made} == {*share}
    for each in made:
        found = wrong_values(each, d.values_by_id)
        pull = weight * (s(d.ramp_angle) + share[each.slip] * d.mu * c(d.ramp_angle))
        assert float(found["T"]) == pytest.approx(pull)
        assert float(found["N"]) == pytest.approx(weight * c(d.ramp_angle))


def test_friction_between_two_bodies_is_left_out_or_turned_on_both() -> None:
    """A wedge under a leg: its friction on the leg lessens what the leg presses with.

    By hand, with k = 0 or -1 for 1 in both: N_1 (cos t - k mu_1 sin t) = W and
    P = N_1 (sin t + k mu_1 cos t) + mu_2 W.
    """
    wedge = problem("bench-leg-wedge")
    (own,) = work(wedge, draw_class(wedge, "slips", ["0"]).draws)
    d = Data({id: own.case.values[id] for id in own.case.numbers})
    shares = {"friction_left_out": 0.0, "friction_reversed": -1.0}
    made = [each for ways in wedge.missteps for each in ways if each.slip in shares]
    told = [each for each in made if each.parts["f"] == Name("f_1", "f_1")]
    assert [each.slip for each in told] == [*shares]
    for each in told:
        k = shares[each.slip] * d.mu_1
        push = d.W / (c(d.theta) - k * s(d.theta))
        found = wrong_values(each, d.values_by_id)
        assert float(found["N_1"]) == pytest.approx(push)
        assert float(found["P"]) == pytest.approx(
            push * (s(d.theta) + k * c(d.theta)) + d.mu_2 * d.W
        )


def test_the_other_limit_is_a_slip() -> None:
    """A cabinet that tips at m g b/(2h) slides at mu m g, and the other way round.

    The floor's push is then at its edge, or mu h beside its middle.
    """
    for own, slipped in zip(
        works("cabinet-slide-or-tip"), told("cabinet-slide-or-tip"), strict=True
    ):
        d = Data(own.case.values)
        ways = {d.mu * d.mass * d.g, d.mass * d.g * d.depth / 2 / d.push_height}
        others = [each for each in slipped if each.id == "other_limit"]
        assert own.case.values["P"] == pytest.approx(min(ways))
        places = {d.depth, d.depth / 2 + d.mu * d.push_height}
        assert others
        for other in others:
            assert other.value == pytest.approx(max({"P": ways, "x": places}[other.answer]))


# What a template lets pass.


def passes_without_angle(own: Worked) -> bool:
    """A hatch whose rope is taken as square to it: T' = W cos(t)/2."""
    d, weight = Data(own.case.values), own.case.values["mass"] * own.case.values["g"]
    pull = weight * c(d.hatch_angle) / 2
    return bool(abs(pull - d.T) <= half_width(own.digits, "T"))


HIGH = {"from = 0.90, to = 1.20, step = 0.02": "from = 1.40, to = 1.90, step = 0.05", "68": "120"}
"""The hook so high above the hatch that its rope is nearly square to it."""


def test_a_rope_nearly_square_to_a_flap_lets_its_angle_be_left_out() -> None:
    text = OWN["cellar-hatch-rope"].read_text(encoding="utf-8")
    for low, high in HIGH.items():
        assert low in text
        text = text.replace(low, high)
    high_hook = prepare(read_template(text, "high.toml"), Convention())
    draws = draw_class(high_hook, "slips", [str(each) for each in range(40)]).draws
    own = work(high_hook, draws)
    found = unnoticed([each.digits for each in own], high_hook.missteps)
    (no_angle,) = [e for e in found if (e.misstep.slip, e.misstep.way) == ("no_angle", "one")]
    assert no_angle.draws == sum(passes_without_angle(each) for each in own) > 0
    assert [each.draws for each in found] == sorted((e.draws for e in found), reverse=True)


def test_no_draws_let_nothing_pass() -> None:
    assert unnoticed([], problem(PAINTER).missteps) == ()
