"""Distributed loads: the line each lies on, and what stands on what."""

from __future__ import annotations

import pytest

from probgen.figures.measured.distributed import covers, rows, spread_of
from probgen.figures.paper.scene import (
    Arrow,
)
from probgen.figures.paper.tag import What
from probgen.quantities.printing import plain
from tests.figures.seen import tagged, touching
from tests.figures.sketches import BEAM, LOADS, alone, loaded, read, sketch, surveyed


@pytest.mark.parametrize("kind", LOADS)
def test_distributed_load_is_read_back_from_its_resultant(kind: str) -> None:
    template, values, _ = read(loaded(kind))
    element = next(e for e in template.system.elements if e.kind == "distributed")
    load = spread_of(surveyed(template, values), element)
    assert load is not None
    assert (load.start, load.end) == (0j, 3 + 0j)
    assert load.shares == pytest.approx(LOADS[kind][1])


@pytest.mark.parametrize("kind", LOADS)
def test_distributed_load_is_drawn_in_both_figures(kind: str) -> None:
    template, values, _ = read(loaded(kind))
    scene = sketch(loaded(kind))
    diagram = alone(template, {**values, "R.x": 0, "R.y": 9, "M_A": 9}, "shelf", "A")
    assert len([s for s in tagged(scene, "distributed") if isinstance(s, Arrow)]) >= 3
    assert tagged(diagram, "distributed")
    assert tagged(diagram, "force:Q_s")
    assert touching(scene) == touching(diagram) == []


def test_a_load_given_as_a_number_is_labelled_with_it_and_nothing_is_said_of_none() -> None:
    text = BEAM + (
        '\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "Q_s"\nstart = "9 N/m"\nend = 0\n'
    )
    template, values, _ = read(text)
    element = next(e for e in template.system.elements if e.kind == "distributed")
    load = spread_of(surveyed(template, values), element)
    assert load is not None
    assert [plain(each) for each in load.names] == ["9 N/m"]


CURVE = """
[[distributed]]
from = "A"
to = "B"
symbol = "Q_s"
intensity = "w*(1 - (x/L)^2)"
"""


def test_a_load_by_a_formula_has_its_true_shape() -> None:
    template, values, _ = read(BEAM + CURVE)
    (row,) = rows(surveyed(template, values), template.system.elements, 60.0, 3.0, 17.0)
    last = len(row.heights) - 1
    for place, height in enumerate(row.heights):
        assert height == pytest.approx(row.heights[0] * (1 - (place / last) ** 2), abs=1e-9)
    assert row.heights[0] > 17.0  # higher than an even one, so that its shape is seen
    assert row.edge[last // 2].real == pytest.approx(90.0)
    assert row.highest == row.edge[0] == row.tops[0]
    scene = sketch(BEAM + CURVE)
    assert len([s for s in tagged(scene, "distributed") if isinstance(s, Arrow)]) >= 8
    assert touching(scene) == []


@pytest.mark.parametrize(
    ("load", "labels"),
    [
        ("w*(1 - (x/L)^2)", {"w": 0.0, "Q_s": 1.5}),  # its value where it begins
        ("w*(x/L)^2", {"w": 3.0, "Q_s": 1.5}),  # where it ends
        ("4*w*x/L*(1 - x/L)", {"w": 1.5, "Q_s": 2.25}),  # at its highest
        ("2*w*(x/L)^2", {"Q_s": 1.5}),  # nowhere: the load's own letter alone
    ],
)
def test_what_a_curve_is_given_by_stands_where_it_has_that_value(
    load: str, labels: dict[str, float]
) -> None:
    scene = sketch(BEAM + CURVE.replace("w*(1 - (x/L)^2)", load))
    found = {
        each.tag.of: each.box.centre.real
        for each in scene.labels
        if each.tag.what is What.LABEL and each.tag.of in ("w", "Q_s")
    }
    assert found.keys() == labels.keys()
    for of, place in labels.items():
        assert found[of] == pytest.approx(place * scene.scale, abs=16.0)


def test_a_load_stands_on_a_curved_one() -> None:
    even = '\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "Q_t"\nload = "w"\n'
    template, values, _ = read(BEAM + CURVE + even)
    low, high = rows(surveyed(template, values), template.system.elements, 60.0, 3.0, 17.0)
    assert low.element.id == "Q_t"  # the even one below
    assert high.feet == pytest.approx(low.tops)


def test_second_load_stands_on_the_first_and_both_are_labelled() -> None:
    text = BEAM + "".join(
        f'\n[[distributed]]\nfrom = "A"\nto = "B"\nsymbol = "{symbol}"\n{size}\n'
        for symbol, size in (("Q_s", 'load = "w"'), ("Q_t", 'start = "2*w"\nend = 0'))
    )
    template, values, _ = read(text)
    low, high = rows(surveyed(template, values), template.system.elements, 60.0, 3.0, 17.0)
    assert high.feet == pytest.approx(low.tops)
    assert high.heights[0] == pytest.approx(2 * low.heights[0], rel=0.2)
    assert touching(sketch(text)) == []


def test_a_row_stands_on_the_side_its_load_comes_from() -> None:
    for direction, side in ((270, 1), (90, -1)):
        template, values, _ = read(loaded("even") + f"\ndirection = {direction}")
        (row,) = rows(surveyed(template, values), template.system.elements, 60.0, 3.0, 17.0)
        assert row.feet == pytest.approx((3j * side, 180 + 3j * side))
        assert row.tops[0] == pytest.approx(20j * side)
        assert not covers(row, row)
