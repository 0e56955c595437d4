"""Which way numbers that are asked count as positive, where only axes or a custom decide that."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from probgen.bank.template import Template
from probgen.quantities.expression import names_in
from probgen.statics.system import Form, Kind, System
from probgen.wording.couples_asked import couples_asked
from probgen.wording.facts.asked import CutSigns, SectionSigns, SignsAsked
from probgen.working.fact import Fact


def signs_asked(templates: Iterable[Template]) -> Iterator[Fact]:
    """What a sheet with these problems says of signs, once for all of them."""
    own = tuple(templates)
    if any(body.part_of for each in own for body in each.system.bodies):
        yield SectionSigns()
    if any(_asks_of_a_cut(each.system) for each in own):
        yield CutSigns()
    views = [each.labels.plan for each in own if _asks_components(each.system)]
    signs = SignsAsked(
        False in views, True in views, any(any(couples_asked(e.system)) for e in own)
    )
    if signs != SignsAsked():
        yield signs


def _asks_of_a_cut(system: System) -> bool:
    """Whether what acts at an author's own cut is asked; a section's is asked of a part."""
    whole = {body.id for body in system.bodies if not body.part_of}
    exerted = [
        *((f.magnitude, f.element) for f in system.forces if f.body in whole),
        *((c.moment, c.element) for c in system.couples if c.body in whole),
    ]
    cut = {id for size, own in exerted if _is_cut(system, own) for id in names_in(size)}
    return not cut.isdisjoint(_asked(system))


def _asks_components(system: System) -> bool:
    return any(find.form is Form.COMPONENTS for find in system.finds)


def _is_cut(system: System, element: str) -> bool:
    return system.element(element).kind is Kind.CUT


def _asked(system: System) -> set[str]:
    return {find.quantity for find in system.finds}
