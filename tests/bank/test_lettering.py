"""Which letters in symbols and names are those of points."""

from collections.abc import Iterator

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.lettering import lettered
from probgen.bank.reading import in_each_system, read_template
from probgen.input.fault import InputError
from probgen.quantities.expression import Name, number, times
from probgen.quantities.symbol import GREEK, read_symbol, runs, unmarked

OWN = sorted(default_bank().files)


def test_a_part_keeps_all_but_its_symbols() -> None:
    weight = times(number(2), Name("T_B", "T_B"))
    (made,) = lettered((weight,), ("B",))
    assert made == weight
    assert [each.symbol for each in _names(made)] == ["T_𝐵"]
    assert lettered(weight, ("C",)) is weight


def test_a_name_mentions_points(shelf: str) -> None:
    text = shelf.replace('name = "shelf mass"', 'name = "mass beyond {{ A }}"', 1)
    assert read_template(text, "s.toml").labels.quantities["m"].name == "mass beyond 𝐴"


def test_a_name_mentions_points_alone(shelf: str) -> None:
    text = shelf.replace('name = "shelf mass"', 'name = "mass beyond {{ Q }}"', 1)
    with pytest.raises(InputError, match="a point"):
        read_template(text, "s.toml")


@pytest.mark.parametrize("id", OWN)
def test_every_subscript_follows_the_rule(id: str) -> None:
    """Italic where it stands for something in this problem, upright where it describes."""
    for template in in_each_system(default_bank().read(id)):
        system, points = template.system, {*template.system.points, "G"}  # G: a centre of mass
        labels = {**template.labels.elements, **template.labels.quantities}
        for id, label in labels.items():
            component = id in system.variables and bool(system.variables[id].component_of)
            for part in read_symbol(label.symbol).subscripts:
                expected = "".join(_faces(unmarked(part), points, component))
                assert "".join("/r"[it] * len(t) for t, it in runs(part)) == expected, label.symbol


def _faces(part: str, points: set[str], component: bool) -> Iterator[str]:
    """Of each character: "r" for italic, "/" for upright."""
    rest = part[:-1] if component or part in ("x", "y") else part
    stands = rest in GREEK or all(letter in points for letter in rest)
    yield ("r" if stands else "/") * len(rest)
    yield "r" * (len(part) - len(rest))


def _names(part: object) -> Iterator[Name]:
    if isinstance(part, Name):
        yield part
    for each in getattr(part, "factors", ()):
        yield from _names(each)
