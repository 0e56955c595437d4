"""The guide's table of goals, families and levels, made of the supplied templates.

`python -m tests.bank.goal_table` writes it anew between its marks in templates/README.md.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable
from pathlib import Path
from typing import Final

from probgen.bank.bank import default_bank
from probgen.bank.reading import FAMILIES
from probgen.bank.template import Template

GUIDE: Final = Path(__file__).parents[2] / "templates" / "README.md"
_MARKED: Final = re.compile(r"(?<=<!-- goals -->\n).*?(?=<!-- end of goals -->)", re.S)


def goal_table(templates: Iterable[Template]) -> str:
    """A row a goal, in the order of the alphabet; a column a family, with the levels there are."""
    levels: dict[str, dict[str, set[int]]] = defaultdict(lambda: defaultdict(set))
    for template in templates:
        for goal in template.goals:
            levels[goal][template.family].add(template.level)
    rows = [["goal", *FAMILIES], ["---"] * (1 + len(FAMILIES))]
    for goal in sorted(levels):
        cells = (sorted(levels[goal][family]) for family in FAMILIES)
        rows.append([goal, *(", ".join(map(str, own)) for own in cells)])
    return "".join(f"| {' | '.join(row)} |\n" for row in rows)


def kept_table() -> str:
    """The table that the guide has now."""
    found = _MARKED.search(GUIDE.read_text(encoding="utf-8"))
    assert found is not None
    return found[0]


if __name__ == "__main__":
    text = GUIDE.read_text(encoding="utf-8")
    made = goal_table(default_bank().read_all())
    GUIDE.write_text(_MARKED.sub(lambda _: made, text), encoding="utf-8")
