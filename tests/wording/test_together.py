"""Equations solved together are told the way that was gone: divided, put in, taken out."""

from __future__ import annotations

from probgen.working.convention import Convention
from tests.situations import HEAD
from tests.wording.own_telling import told, told_of

LEVEL = Convention(torque="components", axes="level")


def after(lines: list[str], heading: str) -> list[str]:
    """The lines of the passage with a heading."""
    start = lines.index(f"# {heading}") + 1
    ends = [at for at, line in enumerate(lines) if line.startswith("# ") and at > start]
    return lines[start : min([*ends, len(lines)])]


def in_order(lines: list[str], *wanted: str) -> None:
    """The wanted lines stand among the lines, or end them, one after the other."""
    rest = iter(lines)
    for line in wanted:
        found = any(each == line or each.endswith(f". {line}") for each in rest)
        assert found, f"{line!r} is not where it should be in {lines}"


def test_a_rope_is_found_by_division_and_pythagoras() -> None:
    in_order(
        after(told_of("ring-three-ropes"), "Force balance"),
        "The balances say:",
        "F_3 cos γ = F_1 cos α − F_2 cos β",
        "F_3 sin γ = F_1 sin α + F_2 sin β",
        "We divide the second of these by the first, so that F_3 drops out:",
        "tan γ = (F_1 sin α + F_2 sin β)/(F_1 cos α − F_2 cos β)",
        "F_3 = √((F_1 cos α − F_2 cos β)² + (F_1 sin α + F_2 sin β)²)",
    )


def test_the_mass_drops_out_of_a_slope_on_the_verge() -> None:
    in_order(
        after(told_of("plank-raised-slowly"), "Three equations together"),
        "N = W cos θ",
        "f = W sin θ",
        "We divide the second of these by the first, so that W drops out:",
        "tan θ = f/N",
        "We put f = μ N into this, which leaves θ as the only unknown:",
        "tan θ = μ",
        "With it:",
        "f = W sin θ",
    )


def test_along_level_axes_the_normal_force_drops_out() -> None:
    lines = after(told_of("plank-raised-slowly", LEVEL), "Three equations together")
    in_order(
        lines,
        "We put f = μ N into ΣF_x = 0; N drops out, which leaves θ as the only unknown:",
        "−sin θ + μ cos θ = 0",
    )


def test_what_a_condition_says_is_put_in_and_the_rest_taken_out() -> None:
    lines = after(told_of("crate-ramp-strap", LEVEL), "Three equations together")
    in_order(
        lines,
        "We put f = μ N into both balances and solve ΣF_x = 0 for N,",
        "and put this into ΣF_y = 0:",
        "(T cos θ/(sin θ − μ cos θ)) cos θ + μ (T cos θ/(sin θ − μ cos θ)) sin θ + T sin θ − W = 0",
        "Then, multiplied by sin θ − μ cos θ and with (sin θ)² + (cos θ)² = 1, this leaves T as "
        "the only unknown:",
        "T = W (sin θ − μ cos θ)",
    )


def test_a_stated_share_is_put_in() -> None:
    lines = after(told_of("gate-two-hinges"), "Two equations together")
    in_order(
        lines,
        "We put R_1y = R_2y into ΣF_y = 0, which leaves R_2y as the only unknown:",
        "2 R_2y − W_g − W_c = 0",
    )
    assert not any("solve for R_1y" in line for line in lines)


KNOT = (
    HEAD
    + """
[given]
m = { name = "mass", choices = [5.0], unit = "kg" }
alpha = { name = "slope", choices = [30], unit = "deg" }
beta = { name = "slope", choices = [45], unit = "deg" }
[body.knot]
particle = true
[[weight]]
mass = "m"
symbol = "W"
[[cable]]
direction = "180 - alpha"
symbol = "T_1"
[[cable]]
direction = "beta"
symbol = "T_2"
[[find]]
quantity = "<asked>"
"""
)


def test_what_is_not_asked_is_taken_out() -> None:
    for asked, other, a in (("T_1", "T_2", "β"), ("T_2", "T_1", "α")):
        lines = told(KNOT.replace("<asked>", asked))
        in_order(
            lines,
            f"We solve ΣF_x = 0 for {other},",
            f"and put this into ΣF_y = 0, which leaves {asked} as the only unknown, "
            f"with sin {a}/(cos {a}) = tan {a}:",
        )
        assert not any(line.startswith("With it") for line in lines)


def test_equations_solved_together_say_first_why_their_sums_are_zero() -> None:
    opening, *lines = after(told_of("lantern-two-cords"), "Force balance")
    assert opening.startswith("The forces on the knot balance: along x and along y")
    assert [line for line in lines[:3] if "together they give" in line] == lines[2:3]
    assert "above the horizontal, to the left: −T_1 cos α along x and T_1 sin α along y." in opening


def test_equations_of_several_bodies_say_whose_sums_are_zero_though_told_before() -> None:
    lines = after(told_of("ridge-two-pallets"), "Four equations together")
    of_right, of_left = (
        next(n for n, line in enumerate(lines) if f"on the {side} pallet balance: along" in line)
        for side in ("right", "left")
    )
    assert of_left < lines.index("ΣF_∥ = −f_1 + T − W_1 sin α = 0") < of_right
    assert of_right < lines.index("ΣF_∥ = −f_2 − T + W_2 sin β = 0")


def test_ropes_that_hold_no_weight_may_be_level_and_have_no_horizontal() -> None:
    assert not any("horizontal" in line for line in told_of("ring-three-ropes"))


def test_a_weight_on_a_slope_has_its_angle_explained_once() -> None:
    for name in ("crate-ramp-strap", "plank-raised-slowly"):
        said = [line for line in told_of(name) if "W points straight down, so it is at θ" in line]
        (line,) = said
        assert "W cos θ square to the surface and W sin θ along it" in line


def test_a_rope_that_pulls_twice_is_counted() -> None:
    lines = told_of("painter-board-seat")
    assert any("The rope acts twice along y, with T each time: 2 T together." in x for x in lines)
    assert "ΣF_y = 2 T − W_w − W_b − W_p = 0" in lines
    assert not any("T + T" in line for line in lines)


OVER_PULLEYS = (
    HEAD
    + """
[given]
P = { name = "left weight", choices = [5.0], unit = "N" }
Q = { name = "right weight", choices = [4.0], unit = "N" }
W = { name = "middle weight", choices = [7.0], unit = "N" }
[unknown]
alpha = { name = "left angle", unit = "deg", from = 0, to = 90, measured = "from the vertical" }
beta = { name = "right angle", unit = "deg", from = 0, to = 90, measured = "from the vertical" }
[body.ring]
particle = true
[[cable]]
direction = "90 + alpha"
magnitude = "P"
symbol = "P"
[[cable]]
direction = "90 - beta"
magnitude = "Q"
symbol = "Q"
[[weight]]
force = "W"
[[find]]
quantity = "alpha"
[[find]]
quantity = "beta"
"""
)


def test_two_angles_of_a_knot_are_found_by_squares() -> None:
    lines = told(OVER_PULLEYS)
    in_order(
        after(lines, "Force balance"),
        "Q cos β = −P cos α + W",
        "Q sin β = P sin α",
        "We square both and add them: the squares of sine and cosine add up to one, so β drops "
        "out:",
        "Q² = W² + P² − 2 W P cos α",
        "α = arccos((W² + P² − Q²)/(2 W P))",
    )
    in_order(lines, "sin β = P sin α/Q")


HUNG = (
    HEAD
    + """
[given]
b = { name = "width", choices = [0.80], unit = "m" }
h = { name = "distance between the hinges", choices = [1.60], unit = "m" }
W = { name = "weight", choices = [98.0], unit = "N" }
[points]
A = [0, 0]
B = [0, "h"]
C = ["b", "h"]
D = ["b", 0]
G = ["b/2", "h/2"]
[body.door]
along = ["A", "B", "C", "D", "A"]
[[hinge]]
at = "A"
symbol = "H"
[[hinge]]
at = "B"
symbol = "K"
[[weight]]
at = "G"
force = "W"
[[find]]
quantity = "H.x"
"""
)


def test_what_two_hinges_share_is_told_to_be_left_open() -> None:
    """Of 98.0 N at half the width, about the upper hinge: 98.0 N x 0.40 m/(1.60 m)."""
    lines = told(HUNG)
    left = "Statics alone does not give H_y and K_y; they are not needed for what is asked."
    assert any(left in line for line in lines)
    assert not any("not plain" in line for line in lines)
    assert any(line.endswith("= 24.5 N") for line in lines)


def test_the_sum_of_two_angles_is_told_where_it_shortens_the_result() -> None:
    in_order(
        after(told_of("piano-guide-rope"), "Force balance"),
        "P cos β cos α − W_p sin α − P sin β sin α = 0",
        "By the addition theorem cos β cos α − sin β sin α is cos(α + β):",
        "P = W_p sin α/cos(α + β)",
    )


CARTS = """
[given]
W_1 = { name = "weight of one", choices = [30], unit = "N" }
W_2 = { name = "weight of the other", choices = [20], unit = "N" }
a = { name = "slope", choices = [30], unit = "deg" }
[unknown]
t = { name = "angle of the rod", unit = "deg", from = -60, to = 60 }
[body.left]
particle = true
[body.right]
particle = true
[[weight]]
body = "left"
force = "W_1"
symbol = "P_1"
[[weight]]
body = "right"
force = "W_2"
symbol = "P_2"
[[contact]]
body = "left"
direction = "90 - a"
symbol = "N_1"
[[contact]]
body = "right"
direction = "90 + a"
symbol = "N_2"
[[strut]]
body = "right"
other = "left"
direction = "t"
symbol = "S"
[[find]]
quantity = "t"
"""


def test_an_angle_in_sums_is_written_apart_before_its_tangent() -> None:
    """By hand: tan t = (20 - 30)/(20 + 30) cot 30°, so t = -19.1°."""
    lines = after(told(HEAD + CARTS), "Two equations together")
    in_order(
        lines,
        "P_1 cos(t − a) − P_2 cos(t + a) = 0",
        "We write sine and cosine of each sum with t by those of t and of the rest:",
        "P_1 cos t cos a + P_1 sin t sin a − P_2 cos t cos a + P_2 sin t sin a = 0",
        "tan t = (P_2 − P_1) cos a/((P_2 + P_1) sin a)",
        "= −19.11° ≈ −19.1°",
    )
    assert sum("leans as far from the vertical" in line for line in lines) == 1
    assert lines[0].count("leans as far from the vertical") == 1
    assert any("Likewise the components of P_2 are" in line for line in lines)


def test_what_is_done_to_the_rest_is_said() -> None:
    """sin a from below the fraction; on a slope with level axes also by Pythagoras."""
    (said,) = [line for line in told_of("piano-guide-rope") if "the only unknown" in line]
    assert said == "Then, multiplied by sin α, this leaves P as the only unknown:"
    level = Convention(torque="components", axes="level")
    lines = told_of("trough-ramp-winch", level)
    assert next(line for line in lines if "the only unknown" in line) == (
        "Then, multiplied by sin θ − μ cos θ and with (sin θ)² + (cos θ)² = 1, this leaves T_1 as "
        "the only unknown:"
    )
    (said,) = [line for line in told_of("lantern-two-cords") if "and put this" in line]
    assert said == (
        "and put this into ΣF_y = 0, which leaves T_2 as the only unknown, with sin α/(cos α) = "
        "tan α:"
    )


ONE_ROPE = (
    HEAD
    + """
[given]
F_1 = { name = "pull", choices = [60], unit = "N" }
F_2 = { name = "other pull", choices = [80], unit = "N" }
[unknown]
t = { name = "angle", unit = "deg", from = 0, to = 90 }
[body.ring]
particle = true
[[force]]
direction = 180
magnitude = "F_1"
name = "wind"
[[force]]
direction = 270
magnitude = "F_2"
name = "hand"
[[cable]]
direction = "t"
symbol = "T"
name = "rope"
[[find]]
quantity = "T"
"""
)


def test_a_size_by_pythagoras_is_told_with_the_angle_it_was_solved_with() -> None:
    in_order(
        after(told(ONE_ROPE), "Force balance"),
        "tan t = F_2/F_1",
        "T = √(F_1² + F_2²)",
    )


def test_torques_that_are_solved_with_something_else_have_their_reasons() -> None:
    lines = told_of("band-brake-hoist")
    start = lines.index("# Which forces turn the drum and band about C?")
    assert lines[start + 1].startswith("We take torques about the shaft C. R_x and R_y act there,")
    assert lines.index("# Two equations together") > start


LAMPS = (
    HEAD
    + """
weight = [
  { body = "one", mass = "m_1", symbol = "W_1" },
  { body = "two", mass = "m_2", symbol = "W_2" },
]
cable = [
  { body = "one", direction = 140, symbol = "T_1" },
  { body = "one", other = "two", at = "B", toward = "C", symbol = "T_2" },
  { body = "two", direction = 55, symbol = "T_3" },
]
find = [{ quantity = "phi" }, { quantity = "T_1" }]
[given]
m_1 = { name = "one mass", choices = [7.5], unit = "kg" }
m_2 = { name = "other mass", choices = [9.0], unit = "kg" }
[unknown]
phi = { name = "angle of the middle cord", unit = "deg", from = -60, to = 60 }
[points]
B = [0, 0]
C = { from = "B", distance = "1 m", direction = "-phi" }
[body]
one = { particle = true, along = ["B"], name = "knot B" }
two = { particle = true, along = ["C"], name = "knot C" }
"""
)


def test_knots_whose_balances_are_taken_together_are_one_body() -> None:
    """Said once, with the forces on them; the knot that is balanced alone is told without."""
    lines = told(LAMPS)
    (line,) = [line for line in lines if "as one body" in line]
    assert line == (
        "We take the knot B and the knot C as one body: the forces between them (T_2) come in "
        "equal and opposite pairs and cancel. Four forces act on it from outside:"
    )
    balanced = [each for each in lines if "The forces on the two together balance" in each]
    assert balanced
    assert lines.index(line) < lines.index(balanced[0])
