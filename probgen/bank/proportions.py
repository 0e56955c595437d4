"""The proportions of a figure where true ones would hide what matters: the table [picture].

    [picture]
    insertion = "9 cm"              # drawn so long for everybody
    lean = "2*lean"                 # twice what the student's own number says

Labels say the student's numbers all the same, and the figure that it is not to scale.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final

import numpy as np

from probgen.bank.bounds import bounds
from probgen.bank.scope import Scope
from probgen.bank.template import Template
from probgen.input.fault import nearest, one_of
from probgen.input.table import Table
from probgen.quantities.expression import Expression, evaluate, names_in
from probgen.quantities.unit import ANGLE, LENGTH

_DRAWN: Final = (LENGTH, ANGLE)


def read_picture(table: Table, scope: Scope) -> dict[str, Expression]:
    """Every entry of [picture]: the size a length or an angle is drawn at, by its id.

    The scope holds the givens and the derived quantities, and nothing that is to be found.
    """
    sizes = {}
    known = [id for id, each in scope.variables.items() if each.dimension in _DRAWN]
    for id in table.content:
        if id in scope.doubtful or (id not in scope.variables and not scope.whole):
            continue
        if id not in known:
            expected = one_of(known, "the given lengths and angles ")
            table.fault(id, id, expected, nearest(id, known))
            continue
        dimension = scope.variables[id].dimension
        size = scope.expression(table, id, dimension)
        if not table.faulty(id) and dimension == LENGTH and bounds(size, scope.bounds)[1] <= 0:
            table.fault(id, table.content[id], "a length above zero")
        sizes[id] = size
    return sizes


def drawn_sizes(template: Template, values: Mapping[str, float]) -> dict[str, float]:
    """The sizes figures are drawn with in place of one draw's own; none for figures to scale.

    values: coherent values of givens, derived quantities and g; so are the sizes.  A derived
    length or angle follows what it is computed from, unless [picture] states it too.  A size that
    is none, such as one divided by zero, is left out.
    """
    with np.errstate(all="ignore"):
        sizes = {id: float(evaluate(size, values)) for id, size in template.picture.items()}
        for each in template.derived:
            follows = names_in(each.expression) & sizes.keys()
            if follows and each.id not in sizes and each.unit.dimension in _DRAWN:
                sizes[each.id] = float(evaluate(each.expression, {**values, **sizes}))
    return {id: size for id, size in sizes.items() if math.isfinite(size)}
