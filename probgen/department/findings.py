"""What the check of a template finds, for those who choose it."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.bank.template import Template
from probgen.course.typed_texts import remarks_on_template
from probgen.input.fault import InputError
from probgen.problem.template_check import check_template


@dataclass(frozen=True, slots=True)
class Findings:
    """Of so many draws that were proved; residual: the largest of any balance, relative.

    dropped: what turns draws away, and what share of them; faults: what should be mended;
    remarks: on texts that no page can show as they were typed.
    """

    proved: int = 0
    residual: float = 0.0
    dropped: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()


def findings(template: Template, draws: int) -> Findings:
    """The check over so many draws; what it complains of is kept, not raised."""
    remarks = tuple(remarks_on_template(template.id, template.source))
    try:
        checked = check_template(template, draws)
    except InputError as error:
        return Findings(faults=tuple(map(str, error.faults)), remarks=remarks)
    dropped = tuple(map(str, checked.dropped))
    return Findings(checked.proved, checked.residual, dropped, (), remarks)
