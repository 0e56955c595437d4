"""Answers: results with the words they are printed in."""

from __future__ import annotations

from dataclasses import dataclass, field

from probgen.quantities.expression import Number
from probgen.quantities.printing import plain
from probgen.wording.language import Language
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import plain_text
from probgen.working.result import Result


@dataclass(frozen=True, slots=True)
class Answer(Result):
    """A result as it is printed: rounded, with its unit, or in words."""

    printed: str = field(kw_only=True)


def told_answer(result: Result, nouns: Nouns, language: Language) -> Answer:
    """A result in a language's words."""
    shown = result.shown
    printed = plain(shown) if isinstance(shown, Number) else plain_text(language.say(shown, nouns))
    return Answer(
        result.id,
        result.kind,
        result.find,
        result.owner,
        result.symbol,
        result.asked,
        result.value,
        result.unit,
        shown,
        result.angle_from_x,
        printed=printed,
    )
