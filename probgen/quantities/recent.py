"""What was worked out lately, for the very same thing: worked out once, and kept for a while."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from functools import wraps
from typing import Concatenate, ParamSpec, TypeVar

Thing = TypeVar("Thing")
Words = ParamSpec("Words")
Result = TypeVar("Result")
Work = Callable[Concatenate[Thing, Words], Result]


def kept(most: int) -> Callable[[Work[Thing, Words, Result]], Work[Thing, Words, Result]]:
    """A decorator: the function keeps its results for the things it was asked about last.

    most: for how many things.  They are told apart by identity, as what cannot be hashed must be,
    and as numbers must be that are equal and not printed alike (4.0 and 4.00); those kept are
    held, so that no other thing can get the identity of one.  The function follows from its
    arguments alone; the further ones are hashable, and given by position.
    """

    def keeping(work: Work[Thing, Words, Result]) -> Work[Thing, Words, Result]:
        things: OrderedDict[int, tuple[Thing, dict[tuple[Hashable, ...], Result]]] = OrderedDict()

        @wraps(work)
        def remembered(thing: Thing, /, *words: Words.args, **named: Words.kwargs) -> Result:
            # Taken out and put in at the end: whole also while another thread does the same.
            found = things.pop(id(thing), None) or (thing, {})
            things[id(thing)] = found
            if len(things) > most:
                things.popitem(last=False)
            results = found[1]
            if words not in results:
                results[words] = work(thing, *words, **named)
            return results[words]

        return remembered

    return keeping
