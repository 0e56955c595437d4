"""What the figures of the tests are told in: English, with their templates' nouns."""

from __future__ import annotations

from probgen.bank.template import Template
from probgen.wording.english import ENGLISH
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import plain_text
from probgen.working.fact import Fact, Tell


def telling(template: Template) -> Tell:
    nouns = Nouns(template.system, template.labels)

    def tell(fact: Fact) -> str:
        return plain_text(ENGLISH.say(fact, nouns))

    return tell
