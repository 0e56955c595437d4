from collections.abc import Callable
from decimal import Decimal

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.template import Template
from probgen.draws.draw import draw
from probgen.draws.override import _converted, with_values
from probgen.input.fault import InputError
from probgen.quantities.unit import METRE, UNITS


@pytest.mark.parametrize(
    ("text", "printed"),
    [
        ("0.700", "0.700"),
        ("70 cm", "0.7"),
        ("2 m", "2"),
        ("100cm", "1"),
        ("1 ft", "0.3048"),
        ("0.6", "0.6"),
    ],
)
def test_a_value_is_taken_in_its_unit(
    hook: Callable[..., Template], text: str, printed: str
) -> None:
    template = hook()
    made, _ = with_values(template, draw(template, "s", "ann"), {"L": text})
    assert str(made.values["L"].value) == printed
    assert made.values["L"].unit == METRE


@pytest.mark.parametrize(
    ("value", "old", "new", "printed"),
    [("70", "cm", "mm", "700"), ("1", "ft", "in", "12"), ("304.8", "mm", "ft", "1"),
     ("2.5", "kN", "N", "2500")],
)  # fmt: skip
def test_a_value_is_converted_to_any_unit(value: str, old: str, new: str, printed: str) -> None:
    assert str(_converted(Decimal(value), UNITS[old], UNITS[new])) == printed


def test_derived_quantities_follow_and_the_rest_stays(hook: Callable[..., Template]) -> None:
    template = hook()
    start = draw(template, "s", "ann")
    made, _ = with_values(template, start, {"L": "0.66"})
    assert str(made.values["d"].value) == "0.33"
    assert made.values["m"] == start.values["m"]
    made, _ = with_values(template, start, {"d": "0.2"})
    assert str(made.values["d"].value) == "0.2"


def test_a_value_outside_the_range_is_remarked_on(hook: Callable[..., Template]) -> None:
    template = hook()
    start = draw(template, "s", "ann")
    _, remarks = with_values(template, start, {"L": "2 m", "m": "2.2"})
    (remark,) = remarks
    assert "L = 2 m lies outside" in remark
    assert "0.50 m to 0.80 m" in remark


def test_a_value_at_the_end_of_the_range_lies_in_it(hook: Callable[..., Template]) -> None:
    template = hook()
    start = draw(template, "s", "ann")
    for stated in ({"L": "0.50", "m": "4.0"}, {"L": "0.80", "m": "1.0"}):
        assert with_values(template, start, stated)[1] == ()
    assert len(with_values(template, start, {"L": "0.81", "m": "0.9"})[1]) == 2


def test_a_value_may_be_a_thousand_times_what_is_drawn(hook: Callable[..., Template]) -> None:
    """Lengths are drawn up to 0.80 m, which counts as 1 m; masses up to 4.0 kg."""
    template = hook()
    start = draw(template, "s", "ann")
    for within, beyond in ({"L": "1000"}, {"L": "1000.1"}), ({"m": "4 t"}, {"m": "4000.1"}):
        with_values(template, start, within)
        with pytest.raises(InputError):
            with_values(template, start, beyond)
    with pytest.raises(InputError):
        with_values(template, start, {"L": "-1001"})


def test_a_derived_quantity_may_be_stated_too(hook: Callable[..., Template]) -> None:
    template = hook()
    start = draw(template, "s", "ann")
    made, _ = with_values(template, start, {"d": "20000 cm", "q": "3"})
    assert [str(made.values[id].value) for id in ("d", "q")] == ["200", "3"]


@pytest.mark.parametrize(
    ("text", "printed"), [("1 yd", "0.9144"), ("1/3 m", None), ("7 in", "0.1778")]
)
def test_units_are_converted_exactly(
    hook: Callable[..., Template], text: str, printed: str | None
) -> None:
    template = hook()
    start = draw(template, "s", "ann")
    if printed is None:
        with pytest.raises(InputError):
            with_values(template, start, {"L": text})
    else:
        made, _ = with_values(template, start, {"L": text})
        assert str(made.values["L"].value) == printed


def test_twelve_figures_are_kept_where_there_is_no_end(hook: Callable[..., Template]) -> None:
    """4 kg are 8.81849048740 lb; an ounce of 28.349523125 g is 0.028349523125 kg."""
    template = hook()
    made, _ = with_values(template, draw(template, "s", "ann"), {"m": "100 oz"})
    assert str(made.values["m"].value) == "2.8349523125"
    made, _ = with_values(template, draw(template, "s", "ann"), {"m": "0.1 slug"})
    assert str(made.values["m"].value) == "1.45939029372"


FAULTS = [
    ({"l": "1 m"}, "l", 'did you mean "L"?'),
    ({"mass": "1 kg"}, "mass", "one of the quantities L, m, d, q"),
    ({"L": "1 kg"}, "L", "kg is a unit of mass"),
    ({"L": "long"}, "L", "no quantity named"),
    ({"L": "1 + 1"}, "L", "a length: a number in m, or with its unit"),
    ({"L": ""}, "L", "the text ends"),
    ({"L": "0.49 m"}, "L", "0"),
]


@pytest.mark.parametrize(("stated", "field", "words"), FAULTS)
def test_what_cannot_be_taken_is_a_fault(
    hook: Callable[..., Template], stated: dict[str, str], field: str, words: str
) -> None:
    template = hook()
    with pytest.raises(InputError) as caught:
        with_values(template, draw(template, "s", "ann"), stated)
    (fault,) = caught.value.faults
    assert (fault.file, fault.field) == ("values", field)
    assert words in f"{fault.expected} {fault.mend}"


def test_a_symbol_as_it_is_printed_is_told_the_name() -> None:
    template = default_bank().read("beam-stay-cable")
    with pytest.raises(InputError, match='m_b is the symbol of "beam_mass"'):
        with_values(template, draw(template, "s", "ann"), {"m_b": "20"})


def test_all_faults_come_at_once(hook: Callable[..., Template]) -> None:
    template = hook()
    with pytest.raises(InputError) as caught:
        with_values(template, draw(template, "s", "ann"), {"L": "1 kg", "x": "2"}, "a.toml")
    places = [(fault.file, fault.field) for fault in caught.value.faults]
    assert places == [("a.toml", "L"), ("a.toml", "x")]
