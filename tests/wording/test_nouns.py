"""What an author calls things is found by the ids that facts hold."""

from __future__ import annotations

import pytest

from probgen.bank.labels import ByKind
from probgen.statics.system import Find, Form
from probgen.wording.nouns import NO_NOUNS, Nouns
from tests.situations import FIND_T, HINGED, SHELF, STAYED, TWO_BEAMS, worked

OWN_WORDS = (
    SHELF
    + HINGED
    + STAYED
    + 'name = "steel wire"\n'
    + FIND_T.replace("[[find]]", '[[find]]\nwording = "how hard the wire pulls"')
    + '[[limit]]\nid = "snaps"\nthat = "T <= 900 N"\nname = "the wire snaps"\n'
    + '[[condition]]\nthat = "M = 8.0 kg"\nbecause = "a scale shows it"\n'
)


def nouns_of(text: str) -> Nouns:
    return worked(text)[0].nouns


def test_each_thing_has_its_author_s_words() -> None:
    text = OWN_WORDS.replace('M = { name = "load mass", choices = [8.0], unit = "kg" }\n', "")
    unknown = '[unknown]\nM = { name = "load mass", unit = "kg" }\n[points]'
    nouns = nouns_of(text.replace("[points]", unknown))
    assert nouns.body("shelf") == "shelf"
    assert nouns.element("T") == "steel wire"
    assert nouns.quantity("d") == "distance to the cable"
    assert nouns.limit("snaps") == "the wire snaps"
    assert nouns.reason("1") == "a scale shows it"
    assert nouns.asked(Find("T", Form.VALUE)) == "how hard the wire pulls"


def test_what_the_author_leaves_unsaid_is_empty() -> None:
    nouns = nouns_of(SHELF + HINGED + STAYED + FIND_T)
    assert nouns.reason("1") == ""
    assert nouns.asked(Find("T", Form.VALUE)) == ""


def test_a_couple_is_called_after_what_exerts_it() -> None:
    motor = '[[couple]]\nbody = "right"\nat = "B"\nmoment = "5 N*m"\nsymbol = "M_m"\n'
    nouns = nouns_of(TWO_BEAMS + motor + 'name = "motor"\n')
    assert (nouns.couple("M_m"), nouns.couple("M_A")) == ("motor", ByKind.SUPPORT)


def test_whole_papers_have_no_nouns() -> None:
    assert NO_NOUNS.reason("1") == ""
    with pytest.raises(KeyError):
        NO_NOUNS.body("shelf")
