"""How likely each slip is, and what speaks for it.

Nobody has counted how often each is made: research is put before teaching practice, and the order
within each group is a judgement.  What a statement itself tells (a printed distance, a slope that
bears the load too) moves a slip behind all others: see `Misstep.unlikely`.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from probgen.mistakes.variant import Misstep

_PRACTICE: Final = "common practice"
_STUMBLING: Final = (
    "abstract of 'Identifying stumbling blocks in the development of student understanding of "
    "moments of forces'"
)
LIKELIHOOD: Final[Mapping[str, str]] = {
    # Literature: reported in research on how students learn statics.
    "whole_length_for_weight": "related: Ortiz, Heron & Shaffer, Am. J. Phys. 73, 545 (2005)",
    "distance_not_perpendicular": _STUMBLING,
    "friction_at_limit": "Statics Concept Inventory: Steif & Dantzler; Johnson (abstract)",
    "tension_equals_load": "Am. J. Phys. 78, 1412 (2010), abstract",
    "no_angle": f"{_STUMBLING}; a standard trap in public teaching notes",
    # Common practice: what only few situations offer, which is what they are set for.
    "one_strand": _PRACTICE,
    "equal_sharing": _PRACTICE,
    "normal_is_weight": _PRACTICE,
    "friction_of_weight": _PRACTICE,
    "friction_left_out": _PRACTICE,
    "friction_reversed": _PRACTICE,
    "other_limit": _PRACTICE,
    "load_not_halved": _PRACTICE,
    "load_at_middle": _PRACTICE,
    "load_as_triangle": _PRACTICE,
    "load_as_even": _PRACTICE,
    "hole_added": _PRACTICE,
    "hole_forgotten": _PRACTICE,
    "centroid_halfway": _PRACTICE,
    "shape_not_halved": _PRACTICE,
    "half_forgotten": _PRACTICE,
    "unweighted_mean": _PRACTICE,
    "transmitted_left_out": _PRACTICE,
    "reaction_left_out": _PRACTICE,
    "member_turned": _PRACTICE,
    "load_left_out": _PRACTICE,
    "pull_left_out": _PRACTICE,
    "couple_turned": _PRACTICE,
    "couple_left_out": _PRACTICE,
    # In the order of a working: weights, angles, torques, balances, joints, numbers.
    "own_weight_forgotten": _PRACTICE,
    "load_forgotten": _PRACTICE,
    "sin_cos_swap": _PRACTICE,
    "wrong_reference_line": _PRACTICE,
    "component_sign": _PRACTICE,
    "arm_from_elsewhere": _PRACTICE,
    "torque_sign": _PRACTICE,
    "inverted_arm_ratio": _PRACTICE,
    "sizes_added": _PRACTICE,
    "exchanged": _PRACTICE,
    "joint_added_not_subtracted": _PRACTICE,
    "hinge_vertical_only": f"{_PRACTICE}; University Physics vol. 1, 12.2 warns of it",
    "hinge_along_body": f"{_PRACTICE}; University Physics vol. 1, 12.2 asks about it",
    "joint_is_total_weight": _PRACTICE,
    "component_only": _PRACTICE,
    "tangent_inverted": _PRACTICE,
    "angle_sign": _PRACTICE,
    "wrong_end": _PRACTICE,
    "load_at_end": _PRACTICE,
    "mass_as_weight": _PRACTICE,
    "normal_at_wall_is_weight": _PRACTICE,
    "mu_inverted": _PRACTICE,
    "unit_not_converted": _PRACTICE,
    "calculator_radians": _PRACTICE,
    "balance_sign": _PRACTICE,
    "early_rounding": f"{_PRACTICE}: seen in a published answer",
}
"""What speaks for each slip, the likeliest first."""

ANYWHERE: Final = frozenset(
    {"unit_not_converted", "calculator_radians", "balance_sign", "early_rounding"}
)
"""Slips with numbers and signs that spoil one quantity as well as another."""

_PLACE: Final = {id: place for place, id in enumerate(LIKELIHOOD)}


def rank(misstep: Misstep) -> tuple[bool, int]:
    """For sorting: the likeliest first, those that the statement makes unlikely last."""
    return misstep.unlikely, _PLACE[misstep.slip]
