"""A load by a formula, integrated exactly: its resultant, and the torque of it."""

from __future__ import annotations

from probgen.quantities.polynomial import Polynomial, polynomial
from probgen.statics.system import Intensity


def curve_of(load: Intensity) -> Polynomial:
    """The load (N/m) as a polynomial in the distance along it.  Raises ValueError for another."""
    read = polynomial(load.load, load.along)
    if read is None:
        raise ValueError(f"{load.load} is no polynomial in {load.along.symbol}")
    return read


def moments(load: Intensity) -> tuple[Polynomial, Polynomial]:
    """The integrals of w dx (N) and of x w dx (N m) from one end of a load to the other."""
    read = curve_of(load)
    force, turning = read.antiderivative(), read.times_letter().antiderivative()
    return force.between(load.low, load.high), turning.between(load.low, load.high)
