"""What follows from a plan alone: worked out once for all who have the same problem."""

from __future__ import annotations

from typing import Final

from probgen.quantities.recent import kept

_PLANS: Final = 64  # more than a set has problems

kept_by_plan = kept(_PLANS)
"""A decorator: the function keeps its results for the plans it was asked about last."""
