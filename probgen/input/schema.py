"""Data from a file made into objects by their classes, within bounds; every fault at once.

cattrs does the walk; this says what a field may hold and words what is wrong.  Nothing is taken
for something else: a number is no text, true is no number, a field that no class has is a fault.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from types import MappingProxyType
from typing import Any, Final, Literal, TypeVar, get_args, get_origin

from cattrs import BaseValidationError, Converter, ForbiddenExtraKeysError
from cattrs.errors import ClassValidationError, IterableValidationError
from cattrs.gen import make_dict_structure_fn, override

from probgen.input.fault import Fault, InputError, one_of, shown
from probgen.input.text import LONGEST_TEXT

T = TypeVar("T")
Hook = Callable[[Any, Any], Any]


@dataclass(frozen=True, slots=True)
class Bound:
    """What one field must be besides its type: `holds` for it, told as `expected`.

    form: what it must be before it is made into anything, for lists and tables.
    """

    expected: str
    holds: Callable[[Any], bool]
    form: type = object


def within(least: float, most: float) -> Bound:
    """A number from `least` to `most`; NaN is none."""
    return Bound(f"a number from {least} to {most}", lambda value: least <= value <= most)


def entries(least: int, most: int, form: type = list) -> Bound:
    """A list (or a table, with `form` dict) of so many entries."""
    kind = "list" if form is list else "table"
    expected = f"a {kind} of {least} to {most} entries"
    return Bound(expected, lambda value: least <= len(value) <= most, form)


def matching(pattern: str, expected: str) -> Bound:
    """A text of a form, as a whole."""
    compiled = re.compile(pattern, re.DOTALL)
    return Bound(expected, lambda value: compiled.fullmatch(value) is not None, str)


def listed(words: Collection[str]) -> Bound:
    """One of the words."""
    return Bound(one_of(words), lambda value: value in words, str)


class WrongError(ValueError):
    """A value that is not what its place expects."""

    def __init__(self, found: object, expected: str) -> None:
        super().__init__(expected)
        self.found, self.expected = found, expected


class Schema:
    """How data become objects.

    bounds: of fields, by class and name; a text without one has at most `LONGEST_TEXT` characters.
    hooks: how what JSON has not is made, such as bytes; a hook raises WrongError.
    called: what a file calls a class's fields, where that is another word; both are read.
    """

    def __init__(
        self,
        bounds: Mapping[type, Mapping[str, Bound]],
        hooks: Mapping[Any, Callable[[Any], object]],
        called: Mapping[type, Mapping[str, str]] = MappingProxyType({}),
    ) -> None:
        self._bounds = bounds
        self._called = called
        self._converter = Converter(forbid_extra_keys=True)
        for plain, make in (*_PLAIN.items(), *hooks.items()):
            self._converter.register_structure_hook(plain, _alone(make))
        self._converter.register_structure_hook_factory(is_dataclass, self._of_class)
        self._converter.register_structure_hook_factory(_is_choice, _one_word)

    def read(self, content: object, kind: type[T], where: str, mend: str) -> T:
        """The object that data describe; `where` names the file, `mend` helps with any fault.

        Raises InputError with every fault there is.
        """
        try:
            return self._converter.structure(content, kind)
        except (BaseValidationError, WrongError) as error:
            found = _told(error, "", self._called)
            faults = [Fault(where, field, *told, mend) for field, told in found]
            raise InputError(faults) from None

    def _of_class(self, kind: type) -> Hook:
        """Reads a class's own objects, each field within its bound."""
        bounds, called = self._bounds.get(kind, {}), self._called.get(kind, {})
        own = {
            name: override(
                rename=called.get(name),
                struct_hook=self._bounded(bounds[name]) if name in bounds else None,
            )
            for name in {**bounds, **called}
        }
        make: Hook = make_dict_structure_fn(kind, self._converter, **own)  # type: ignore[arg-type]

        def read(value: Any, kind: Any) -> Any:
            if not isinstance(value, dict):
                raise WrongError(value, "a table")
            return make({called.get(name, name): each for name, each in value.items()}, kind)

        return read

    def _bounded(self, bound: Bound) -> Hook:
        def read(value: Any, kind: Any) -> Any:
            if not isinstance(value, bound.form):
                raise WrongError(value, bound.expected)
            found = value if kind is str else self._converter.structure(value, kind)
            if not bound.holds(value):
                raise WrongError(value, bound.expected)
            return found

        return read


def _alone(make: Callable[[Any], object]) -> Hook:
    return lambda value, _: make(value)


def _text(value: Any) -> str:
    if not isinstance(value, str) or len(value) > LONGEST_TEXT:
        raise WrongError(value, f"a text of at most {LONGEST_TEXT} characters")
    return value


def _whole(value: Any) -> int:
    if type(value) is not int:
        raise WrongError(value, "a whole number")
    return value


def _float(value: Any) -> float:
    if type(value) not in (int, float):
        raise WrongError(value, "a number")
    return float(value)


def _flag(value: Any) -> bool:
    if not isinstance(value, bool):
        raise WrongError(value, "true or false")
    return value


_PLAIN: Final[dict[Any, Callable[[Any], object]]] = {
    str: _text, int: _whole, float: _float, bool: _flag,
}  # fmt: skip


def _is_choice(kind: Any) -> bool:
    return get_origin(kind) is Literal


def _one_word(kind: Any) -> Hook:
    words = get_args(kind)

    def read(value: Any, _: Any) -> Any:
        if not any(type(value) is type(word) and value == word for word in words):
            raise WrongError(value, one_of(map(str, words)))
        return value

    return read


def _told(
    error: BaseException, path: str, called: Mapping[type, Mapping[str, str]]
) -> Iterator[tuple[str, tuple[str, str]]]:
    """The place of each fault with what was found there and what was expected."""
    if isinstance(error, ClassValidationError | IterableValidationError):
        noted, others = error.group_exceptions()
        for inner, note in noted:
            if isinstance(error, IterableValidationError):
                yield from _told(inner, f"{path}[{getattr(note, 'index', '')}]", called)
            else:
                name = getattr(note, "name", "")
                name = called.get(error.cl, {}).get(name, name)
                yield from _told(inner, f"{path}.{name}".lstrip("."), called)
        for inner in others:
            yield from _told(inner, path, called)
    elif isinstance(error, ForbiddenExtraKeysError):
        for key in sorted(error.extra_fields):
            words = called.get(error.cl, {})
            names = [words.get(field.name, field.name) for field in fields(error.cl)]
            yield (f"{path}.{key}" if path else key), (shown(key), one_of(names, "the fields "))
    elif isinstance(error, WrongError):
        yield path, (shown(error.found), error.expected)
    else:  # a field that is not there is a KeyError of its name
        yield path, ("", "a value" if isinstance(error, KeyError) else "a value of another kind")
