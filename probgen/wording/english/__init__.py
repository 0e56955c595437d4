"""English: the words of every fact.

Another language is another package like this one, and a `Language` made of it.
"""

from probgen.wording.english import (
    angle,
    asked,
    balance,
    class_marks,
    diagram,
    ending,
    figures,
    forces,
    formulas,
    last_look,
    level_part,
    load,
    marked,
    marks,
    member,
    papers,
    section,
    signs,
    slips,
    together,
    torque,
)
from probgen.wording.english.page import PAGE
from probgen.wording.english.saying import say
from probgen.wording.language import Language

_WORDS = (
    angle,
    asked,
    balance,
    class_marks,
    diagram,
    ending,
    figures,
    forces,
    formulas,
    last_look,
    level_part,
    load,
    marked,
    marks,
    member,
    papers,
    section,
    signs,
    slips,
    together,
    torque,
)
"""The modules that register what they say."""

ENGLISH = Language(say, PAGE)
