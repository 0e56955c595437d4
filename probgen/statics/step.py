"""A step of a plan: an equation solved for a quantity."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.quantities.expression import Expression
from probgen.statics.equation import Equation


@dataclass(frozen=True, slots=True)
class Step:
    """One equation solved for one quantity: unknown = expression.

    removed: unknowns of the same bodies that the choice of pivot or axis keeps out of the equation.
    others: further roots of the equation, which lie where the quantity may not.
    reduced: the equation with what was taken out of others put in, as an expression that is zero.
    put_in: unknowns of the others whose values are in it; dropped: those that then stood in every
    term.
    divided: the equations with the unknown angle's cosine and sine, one divided by the other.
    squared: those with another angle's cosine and sine, squared and added to leave that out.
    idle: it finds that a member of a truss carries nothing, being alone to pull along an axis.
    partners: on the first step of equations that had to be solved together, the steps of the
    others; they follow in the plan as far as their quantities are needed.
    """

    unknown: str
    equation: Equation
    expression: Expression
    removed: tuple[str, ...] = ()
    partners: tuple[Step, ...] = ()
    reduced: Expression | None = None
    others: tuple[Expression, ...] = ()
    put_in: tuple[str, ...] = ()
    dropped: tuple[str, ...] = ()
    divided: tuple[Equation, Equation] | None = None
    squared: tuple[Equation, Equation] | None = None
    idle: bool = False

    @property
    def equations(self) -> tuple[Equation, ...]:
        """The equation, and those it had to be solved with."""
        return (self.equation, *(partner.equation for partner in self.partners))
