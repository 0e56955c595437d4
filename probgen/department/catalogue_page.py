"""A catalogue as one page for a browser: no other file, no server, nothing fetched.

The page may run one script, the one that stands in it: its policy names that by its digest.
"""

from __future__ import annotations

import json
from base64 import b64encode
from hashlib import sha256
from typing import Final

from markupsafe import Markup

from probgen.department.bank_page import page_environment
from probgen.department.card import Card
from probgen.department.catalogue import Catalogue
from probgen.department.histogram import HEIGHT, WIDTH
from probgen.problem.dropped import percent
from probgen.wording.catalogue_words import CatalogueWords
from probgen.wording.english.catalogue import CATALOGUE
from probgen.wording.sentence import plain_text

_POINTS: Final = 10
_TRIALS: Final = 3  # equal draws that are shown of other physics


def catalogue_page(catalogue: Catalogue, words: CatalogueWords = CATALOGUE) -> str:
    """The whole page."""
    environment = page_environment(words, _TRIALS)
    environment.filters.update(
        lines=_lines,
        plain=plain_text,
        power=_power,
        percent=percent,
    )
    environment.globals["box"] = WIDTH, HEIGHT
    script = environment.get_template("catalogue.js").render()
    given = {"catalogue": catalogue, "script": Markup(script), "digest": _digest(script)}
    return environment.get_template("catalogue.html.j2").render(given)


def _digest(script: str) -> str:
    """As a page's policy names a script."""
    return f"sha256-{b64encode(sha256(script.encode()).digest()).decode()}"


def _power(value: float) -> Markup:
    """A small number as a digit times a power of ten; zero as it is."""
    digit, _, exponent = f"{value:.0e}".partition("e")
    if not value:
        return Markup(digit)
    return Markup("{} × 10<sup>{}</sup>").format(digit, str(int(exponent)).replace("-", "−"))


def _lines(card: Card) -> str:
    """What an assignment file says of a problem."""
    return f"[[problem]]\ntemplate = {json.dumps(card.id)}\npoints = {_POINTS}\n"
