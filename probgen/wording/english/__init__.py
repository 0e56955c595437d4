"""English: the words of every fact.

Another language is another package like this one, and a `Language` made of it.
"""

from probgen.wording.english import asked, balance, ending, forces, marks, papers, torque
from probgen.wording.english.page import PAGE
from probgen.wording.english.saying import say
from probgen.wording.language import Language

ENGLISH = Language(say, PAGE)

__all__ = ["ENGLISH", "asked", "balance", "ending", "forces", "marks", "papers", "torque"]
