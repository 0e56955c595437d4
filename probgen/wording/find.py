"""What is asked, as a phrase."""

from __future__ import annotations

from probgen.bank.labels import Labels
from probgen.statics.state import limits_to
from probgen.statics.system import Find, Force, Form, Kind, System
from probgen.wording.block import Inline
from probgen.wording.facts.asked import ForceAsked, LimitsAsked, QuantityAsked, UtmostAsked
from probgen.wording.language import Language
from probgen.wording.nouns import Nouns
from probgen.wording.statement import tell_text
from probgen.working.fact import Fact


def tell_find(find: Find, nouns: Nouns, language: Language) -> tuple[Inline, ...]:
    """ "the tension in the cable, T"; in the author's words where there are any."""
    if own := nouns.asked(find):
        return tell_text(own, nouns, language)
    return language.say(_asked(nouns.system, nouns.labels, find), nouns)


def _asked(system: System, labels: Labels, find: Find) -> Fact:
    limits = tuple(limit.id for limit in limits_to(system, find))
    if find.form is Form.HOLDS:
        return LimitsAsked(tuple(id for id in limits if find.quantity in ("", id)))
    if find.form in (Form.LARGEST, Form.SMALLEST):
        quantity = system.variables[find.quantity].as_name
        return UtmostAsked(quantity, find.form is Form.LARGEST, limits)
    if find.form is Form.VALUE or find.quantity not in labels.elements:
        on = next((f.body for f in system.forces if f.id == find.quantity and _is_push(f)), "")
        return QuantityAsked(system.variables[find.quantity].as_name, on)
    whole, body = labels.whole(find.quantity), _one_of_two(system, find.quantity)
    return ForceAsked(find.quantity, whole, find.form is Form.COMPONENTS, body)


def _is_push(force: Force) -> bool:
    """Whether a force between two bodies is one of a contact; a rope is not asked to be told of."""
    return bool(force.pair) and force.kind in (Kind.CONTACT, Kind.ROUGH, Kind.ROLLER)


def _one_of_two(system: System, element: str) -> str:
    """The body that a force acts on which acts the opposite way on another; "" where none does."""
    if all(each.of != element for each in system.elements):
        return ""
    return next(each.body for each in system.elements if each.id == element)
