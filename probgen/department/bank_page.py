"""What a bank's pages are rendered with: each one file for a browser, with nothing fetched."""

from __future__ import annotations

from typing import Final

from jinja2 import ChoiceLoader, Environment, PackageLoader

from probgen.input.fault import counted_from_one
from probgen.sheets.html.pages import html_environment

_LAYOUTS: Final = ChoiceLoader(
    [
        PackageLoader("probgen.department", "layouts"),
        PackageLoader("probgen.sheets.html", "layouts"),
    ]
)


def page_environment(words: object, trials: int) -> Environment:
    """Of the layouts of a bank; words: what they print; trials: equal draws that are shown."""
    environment = html_environment(_LAYOUTS, words)
    environment.filters["field"] = counted_from_one
    environment.globals["trials"] = trials
    return environment
