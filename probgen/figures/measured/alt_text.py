"""A figure in words, for readers who cannot see it: one or two sentences from the system."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from probgen.bank.labels import Labels
from probgen.figures.measured.vector import Vector
from probgen.quantities.printing import symbol_plain
from probgen.statics.system import Body, Element, Kind, System

_HELD: Final = (
    Kind.HINGE, Kind.FIXED, Kind.ROLLER, Kind.CONTACT, Kind.ROUGH, Kind.CABLE, Kind.MUSCLE,
    Kind.ROPE, Kind.SPRING, Kind.STRUT, "cut",
)  # fmt: skip
_COMPASS: Final = (
    "to the right", "up and to the right", "straight up", "up and to the left", "to the left",
    "down and to the left", "straight down", "down and to the right",
)  # fmt: skip


def situation_words(system: System, labels: Labels) -> str:
    """What a situation shows: each body, what holds it, and what loads it."""
    return " ".join(_body_words(system, labels, body) for body in system.bodies)


def _body_words(system: System, labels: Labels, body: Body) -> str:
    elements = [e for e in system.elements if e.body == body.id]
    holds = _unique(_at(labels, e, body) for e in elements if e.kind in _HELD)
    loads = _unique(_load(labels, e, body) for e in elements if e.kind not in _HELD)
    parts = [f"is held by {_listed(holds)}"] if holds else []
    if loads:
        parts.append(f"{'carries' if holds else 'is acted on by'} {_listed(loads)}")
    told = (f"The {_noun(labels, body)}", " and ".join(parts))
    return f"{' '.join(filter(None, told))}."


def _load(labels: Labels, element: Element, body: Body) -> str:
    if element.kind == Kind.WEIGHT:
        return f"the weight of {_at(labels, element, body)}"
    return _at(labels, element, body)


def _at(labels: Labels, element: Element, body: Body) -> str:
    """What exerts a force, and where on a body with extent."""
    where = f" at {symbol_plain(element.at)}" if element.at and len(body.outline) > 1 else ""
    return f"{labels.elements[element.id].name}{where}"


def diagram_words(
    labels: Labels, body: Body, forces: Sequence[Vector], letters: Sequence[str]
) -> str:
    """What a free-body diagram shows: every force, where, and which way.

    letters: the point of each force.
    """
    told = [
        f"{symbol_plain(force.symbol)}"
        + (f" at {symbol_plain(letter)}" if len(body.outline) > 1 else "")
        + f" {towards(force.direction)}"
        for force, letter in zip(forces, letters, strict=True)
    ]
    return f"Free-body diagram of the {_noun(labels, body)}: {_listed(told)}."


def towards(direction: float) -> str:
    """A direction in words: within half a degree of an axis, or in which quarter."""
    turn = direction % 360.0
    if abs((turn + 45.0) % 90.0 - 45.0) < 0.5:
        return _COMPASS[2 * round(turn / 90.0) % 8]
    return _COMPASS[2 * int(turn // 90.0) + 1]


def _noun(labels: Labels, body: Body) -> str:
    return labels.bodies[body.id].removeprefix("the ")


def _unique(words: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(words))


def _listed(words: Sequence[str]) -> str:
    if len(words) < 3:
        return " and ".join(words)
    return ", ".join(words[:-1]) + " and " + words[-1]
