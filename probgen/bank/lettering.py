"""The letters of a problem's points marked, as they are italic wherever they are printed.

A symbol T_A is printed with an italic A where A is a point, and with an upright one where it only
describes (`probgen.quantities.symbol`).  An author writes a point in a name as in the statement,
"load at {{ C }}".
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any, Final, TypeVar

from probgen.bank.labels import Labels
from probgen.input.fault import Faults, nearest, one_of
from probgen.quantities.symbol import italic, with_names

_Part = TypeVar("_Part")
_MENTION: Final = re.compile(r"\{\{\s*(.*?)\s*\}\}")


def lettered(part: _Part, points: Collection[str]) -> _Part:
    """A part of a template, the letters of points marked in the subscripts of its symbols."""
    marked: _Part = _changed(
        part, lambda field, text: with_names(text, points) if field == "symbol" else text
    )
    return marked


def names_lettered(labels: Labels, points: Collection[str], faults: Faults) -> Labels:
    """The labels, the points mentioned in names marked, and those in the symbols.

    How something is asked for is a text as the statement is, and left as it is.
    """

    def mentioned(found: re.Match[str]) -> str:
        name = found[1]
        if name not in points:
            faults.add("name", found[0], one_of(points, "a point: "), nearest(name, points))
        return italic(name)

    rest: Labels = _changed(
        replace(labels, finds={}), lambda field, text: _MENTION.sub(mentioned, text)
    )
    return replace(lettered(rest, points), finds=labels.finds)


def _changed(part: Any, change: Callable[[str, str], str], field: str = "") -> Any:
    """A part with every text in it changed, itself where none is; a change is told the field."""
    if isinstance(part, str):
        return change(field, part)
    if isinstance(part, Mapping):
        held = {key: _changed(each, change) for key, each in part.items()}
        return held if any(held[key] is not part[key] for key in held) else part
    if type(part) is tuple:
        parts = tuple([_changed(each, change) for each in part])
        return parts if any(new is not old for new, old in zip(parts, part, strict=True)) else part
    if not is_dataclass(part) or isinstance(part, type):
        return part
    own = {each.name: getattr(part, each.name) for each in fields(part) if each.init}
    made = {name: _changed(each, change, name) for name, each in own.items()}
    changed = {name: each for name, each in made.items() if each is not own[name]}
    return replace(part, **changed) if changed else part
