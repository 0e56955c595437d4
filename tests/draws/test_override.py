from collections.abc import Callable

import pytest

from probgen.bank.template import Template
from probgen.draws.draw import draw
from probgen.draws.override import with_values
from probgen.input.fault import InputError
from probgen.quantities.unit import METRE


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


def test_all_faults_come_at_once(hook: Callable[..., Template]) -> None:
    template = hook()
    with pytest.raises(InputError) as caught:
        with_values(template, draw(template, "s", "ann"), {"L": "1 kg", "x": "2"}, "a.toml")
    places = [(fault.file, fault.field) for fault in caught.value.faults]
    assert places == [("a.toml", "L"), ("a.toml", "x")]
