"""What pulls with a force that is told says so, once; a spring tells its stiffness."""

from __future__ import annotations

import pytest

from probgen.figures.paper.scene import Label, Stated
from tests.figures.readings import TEMPLATES, prepared, scenes_of, solved

ROPES, SPRINGS = ["F_1", "F_2", "F_3"], ["k_1", "k_2"]


@pytest.mark.parametrize(
    ("name", "letters"), [("ring-three-ropes", ROPES), ("spring-scales-baskets", SPRINGS)]
)
def test_each_line_has_what_is_told_of_it(name: str, letters: list[str]) -> None:
    problem = prepared(next(path for path in TEMPLATES if path.stem == name))
    (own,) = solved(problem, 1)
    found = []
    for label in scenes_of(problem, own)[0].labels:
        assert isinstance(label, Label)
        text = label.text.symbol if isinstance(label.text, Stated) else label.text
        symbol = getattr(text, "symbol", "")
        found += [symbol] if symbol[:2] in ("F_", "k_") else []
    assert sorted(found) == letters
