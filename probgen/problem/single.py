"""One problem worked on its own: the Nth draw of a template, or values set by hand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from probgen.bank.bank import default_bank
from probgen.draws.draw import Draw
from probgen.draws.override import with_values
from probgen.problem.lookup import choose_template
from probgen.problem.problem import Problem, Worked, draw_class, prepare, work
from probgen.working.convention import Convention

_SEED = "single"


@dataclass(frozen=True, slots=True)
class Single:
    """One worked problem.

    remarks: values outside the range the template draws from; number: which draw it is, 0 for none
    that has one; by_hand: whether some of its values were stated.
    """

    problem: Problem
    worked: Worked
    remarks: tuple[str, ...] = field(default=())
    number: int = 0
    by_hand: bool = False


def work_single(
    named: str,
    number: int = 1,
    stated: Mapping[str, str] | None = None,
    convention: Convention | None = None,
    *,
    template_from: str = "template",
    values_from: str = "values",
) -> Single:
    """Works the `number`th draw of a template, with stated values in place of drawn ones.

    named: a template's id or the path of its file; stated: texts such as {"d": "35 cm"}.
    template_from, values_from: where the two were stated, for messages.
    Raises InputError for an unknown template, faulty values, or values that have no solution.
    """
    method = convention or Convention()
    template = choose_template(named, default_bank(), Path(), template_from, "", method.units)
    problem = prepare(template, method)
    made, remarks = with_values(template, draw_single(problem, number), stated or {}, values_from)
    (worked,) = work(problem, [made])
    return Single(problem, worked, remarks, number, by_hand=bool(stated))


def draw_single(problem: Problem, number: int) -> Draw:
    """The `number`th draw of a problem on its own.  Raises InputError as `draw_class` does."""
    return draw_class(problem, _SEED, [str(number)]).draws[0]
