"""What is wrong with a template's draws or its figure, said to its author."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from probgen.bank.template import Template
from probgen.figures.measured.proportion import Amiss, Disturbance
from probgen.quantities.symbol import unmarked
from probgen.quantities.unit import LENGTH
from probgen.statics.flaw import Flaw, FlawKind
from probgen.statics.plausibility import NEAR_AXIS
from probgen.statics.quantity_id import Quantity
from probgen.statics.system import Kind, System
from probgen.wording.english import names
from probgen.wording.nouns import Nouns

_IMPLAUSIBLE: Final = (
    FlawKind.TURNED_LOAD,
    FlawKind.LIFTING_WEIGHT,
    FlawKind.OFF_BODY,
    FlawKind.OFF_SECTION,
    FlawKind.HOLE_BEYOND,
    FlawKind.NEAR_AXIS,
    FlawKind.NO_DIRECTION,
)
_ONLY_PULL: Final = (Kind.CABLE, Kind.MUSCLE, Kind.ROPE)
_ONLY_PUSH: Final = (Kind.CONTACT, Kind.ROLLER, Kind.ROUGH)


def flaws_told(template: Template, flaws: Iterable[Flaw]) -> str:
    """What is wrong with one draw, in one line."""
    return unmarked("; ".join(_told(template, flaw) for flaw in flaws))


def disturbance_told(template: Template, disturbance: Disturbance) -> str:
    """What is elsewhere in a figure than in truth."""
    points = " and ".join(disturbance.points)
    body = unmarked(template.labels.bodies.get(disturbance.body, ""))
    match disturbance.amiss:
        case Amiss.OFF_BODY:
            return f"{points} lies off the {body}"
        case Amiss.CHANGED_PLACES:
            return f"{points} change places along the {body}"
        case Amiss.TOGETHER:
            return f"{points} fall together"


def untold(template: Template, quantity: str) -> str:
    """A datum that a statement does not tell: its id and what it is called."""
    named = names.quantity(quantity, Nouns(template.system, template.labels))
    return unmarked(f"{quantity} ({named})")


def _told(template: Template, flaw: Flaw) -> str:
    """One flaw in words, quantities by their names and ids, values in their units."""
    if flaw.kind in _IMPLAUSIBLE:
        return _implausible(template, flaw)
    system = template.system
    nouns = Nouns(system, template.labels)
    name, value = _name(nouns, flaw.quantity), _shown(template, flaw)
    limit = names.limit(flaw.limit, nouns) if flaw.limit else ""
    match flaw.kind:
        case FlawKind.UNBALANCED:
            return "the balances do not close"
        case FlawKind.DISPUTED:
            return "the second solver finds other values"
        case FlawKind.NO_VALUE:
            return (
                f"{name} has no value for these numbers: a denominator is zero, its lever arm say, "
                "or no value in its range balances the forces; change the range"
            )
        case FlawKind.NEGATIVE:
            return f"{name} comes out negative, {value}{_why_not(system, flaw.quantity)}"
        case FlawKind.TOO_LOW:
            return f"{name} is below {value}"
        case FlawKind.TOO_HIGH:
            return f"{name} is above {value}"
        case FlawKind.SECOND_VALUE:
            return f"{name} may also be {value}: narrow its range with from and to"
        case FlawKind.OTHER_FORMULA:
            return (
                f"{name} is {value}, by another formula than in most draws, such as past a right "
                "angle: keep all draws on one side, with a [[require]] or other ranges"
            )
        case FlawKind.PASSED:
            return limit
        case FlawKind.PASSED_AT_ZERO:
            return f"{limit} already with {flaw.quantity} = 0: raise the limit or change the values"
        case FlawKind.NO_LENGTH:
            return f"the {template.labels.bodies[flaw.body]} has no length to be cut along"
        case FlawKind.LARGER_ELSEWHERE:
            return _larger_elsewhere(template, flaw)
    raise AssertionError(flaw.kind)


def _larger_elsewhere(template: Template, flaw: Flaw) -> str:
    """Where a bending moment is that is no smaller than the one asked as the largest."""
    largest = template.system.largest
    asked = next(each for each in largest if each.moment == flaw.quantity)
    unit = template.units.unit_of(LENGTH)
    there = f"{flaw.value / unit.factor:.4g} {unit.plain} from {flaw.place}"
    said = f"between {' and '.join(asked.between)}" if asked.between else f"at {asked.at}"
    return (
        f"the bending moment is as large or larger {there}, not largest {said} ({asked.moment}): "
        f"keep it there with a [[require]] on {asked.place} and the loads, or ask for it elsewhere"
    )


def _implausible(template: Template, flaw: Flaw) -> str:
    """A flaw that no balance minds."""
    labels = template.labels
    nouns = Nouns(template.system, labels)
    if flaw.quantity in labels.elements:
        name = names.the_element(flaw.quantity, nouns)
        symbol = labels.elements[flaw.quantity].symbol
    else:
        name = names.the(names.quantity(flaw.quantity, nouns))
        symbol = labels.quantities[flaw.quantity].symbol
    noun = labels.bodies.get(flaw.body, "")
    match flaw.kind:
        case FlawKind.TURNED_LOAD:
            return f"the load of {name} ({symbol}) is below zero somewhere along its length"
        case FlawKind.LIFTING_WEIGHT:
            return f"the weight of {name} ({symbol}) is below zero"
        case FlawKind.HOLE_BEYOND:
            return f"{name} ({symbol}) is cut out beyond the {noun}"
        case FlawKind.OFF_SECTION:
            return f"the section at {flaw.place} is not on the {noun}"
        case FlawKind.OFF_BODY:
            return f"{name} acts at {flaw.place}, which lies beyond the {noun}"
        case FlawKind.NO_DIRECTION:
            return (
                f"the force from {name} ({symbol}) is zero, so it has no direction: ask for its "
                "components, or keep it from zero with a [[require]] or other ranges"
            )
    axis = "vertical" if flaw.place == "x" else "horizontal"
    of = Quantity(flaw.quantity)
    small = of.x if flaw.place == "x" else of.y
    return (
        f"the force from {name} ({symbol}) is so nearly {axis} that the tolerance of a direction "
        f"cannot tell which side is meant; add a [[require]] with that = "
        f'"abs({small}) > {NEAR_AXIS}*hypot({of.x}, {of.y})" and a because'
    )


def _name(nouns: Nouns, quantity: str) -> str:
    return f"{names.quantity(quantity, nouns)} ({quantity})" if quantity else ""


def _shown(template: Template, flaw: Flaw) -> str:
    """A value in its quantity's unit, or in one of the system that the template is read in."""
    if not flaw.quantity:
        return ""
    variable, units = template.system.variables[flaw.quantity], template.units
    unit = variable.unit if units.speaks(variable.unit) else units.unit_of(variable.dimension)
    return f"{flaw.value / unit.factor:.4g} {unit.plain}".strip()


def _why_not(system: System, quantity: str) -> str:
    """Why a negative value has no meaning, for what pulls or pushes."""
    kinds = {force.kind for force in system.forces if force.id == quantity}
    if kinds & set(_ONLY_PULL):
        return ": it can only pull; turn it round or change the values"
    if kinds & set(_ONLY_PUSH):
        return ": a surface can only push, so the body lifts off there; change the values"
    if Kind.STRUT in kinds:
        return ": it can only push; turn it round or change the values"
    return ""
