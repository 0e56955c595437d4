"""HTML pages: jinja2 layouts that loop and print, and never calculate.

What a layout prints is escaped by jinja2; running text goes through the filter `inlines`, figures
through `picture`, blocks through `blocks(pictures)` or, for a section, `step(pictures)`, and
formulas through `formula`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from jinja2 import BaseLoader, Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from probgen.figures.paper.scene import Scene
from probgen.figures.writers.svg import svg
from probgen.sheets.document import Key, Sheet, picture_name
from probgen.sheets.html.blocks import Draw, write_blocks, write_formula, write_inlines, write_step
from probgen.wording.block import Block, Section
from probgen.wording.english import ENGLISH
from probgen.wording.page_words import PageWords

Pictures = Mapping[str, Scene]

_ROOM: Final = "probgen.sheets.html"
_INK: Final = "currentColor"  # black on a light page, white on a dark one


class HtmlPages:
    """Sheets and keys as parts of a page, and the whole file around them."""

    def __init__(self, words: PageWords = ENGLISH.page) -> None:
        self._environment = html_environment(PackageLoader(_ROOM, "layouts"), words)

    def sheet(self, sheet: Sheet) -> str:
        """One sheet as an `article`."""
        return self._print("sheet.html.j2", sheet=sheet)

    def key(self, key: Key) -> str:
        """One key as an `article`."""
        return self._print("key.html.j2", key=key)

    def whole(self, title: str, *articles: str, reloads: bool = False) -> str:
        """A file that needs no other: its style within, no script, nothing fetched.

        reloads: whether a browser is to show it anew every second.
        """
        articles_in = map(Markup, articles)
        return self._print("whole.html.j2", title=title, articles=articles_in, reloads=reloads)

    def _print(self, name: str, **given: object) -> str:
        return self._environment.get_template(name).render(given)


def html_environment(layouts: BaseLoader, words: object) -> Environment:
    """What renders HTML layouts: all that they print is escaped but what the filters make.

    words: what they have as `words`.
    """
    environment = Environment(
        loader=layouts,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        autoescape=True,
    )
    environment.globals["words"] = words
    environment.filters.update(
        inlines=write_inlines,
        picture=_picture,
        blocks=_blocks,
        step=_step,
        formula=write_formula,
    )
    return environment


def _picture(scene: Scene | None) -> Markup:
    """A figure that says in words what it shows; nothing for none."""
    if scene is None:
        return Markup("")
    return Markup("<figure>{}</figure>").format(Markup(svg(scene, ink=_INK)))


def _blocks(blocks: Iterable[Block], pictures: Pictures) -> Markup:
    return write_blocks(blocks, _draw(pictures))


def _step(section: Section, pictures: Pictures) -> Markup:
    return write_step(section, _draw(pictures))


def _draw(pictures: Pictures) -> Draw:
    """How the figures are drawn that blocks stand for; KeyError when one is missing."""
    return lambda picture: _picture(pictures[picture_name(picture)])
