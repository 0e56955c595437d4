"""Numbers of other assignments: known again, and taken for a template's own where they are."""

from __future__ import annotations

from decimal import Decimal

from probgen.course.numbers_had import Had, each_once, values_had
from probgen.draws.draw import Draw
from probgen.quantities.expression import Number
from probgen.quantities.unit import UNITS
from probgen.working.convention import Convention
from tests.terms import lamp, problem_of

LAMP = problem_of(lamp(), Convention()).template


def had(
    owner: str, mass: str, unit: str = "kg", template: str = "lamp", length: str = "0.40"
) -> Had:
    values = {"m": Number(Decimal(mass), UNITS[unit]), "L": Number(Decimal(length), UNITS["m"])}
    return Had(owner, Draw(template, 1, values))


def test_the_same_numbers_of_the_same_owner_count_once_in_whatever_order() -> None:
    two, three, other = had("7", "2.0"), had("7", "3.0"), had("8", "2.0")
    once = each_once([three, two, other, two])
    assert sorted(each.key for each in once) == [each.key for each in once]
    assert once == each_once([other, two, three, three])
    assert len(once) == 3


def test_sets_are_by_owner_and_in_the_order_of_the_givens() -> None:
    found = values_had([had("7", "2.0"), had("7", "3.0"), had("", "4.0")], LAMP)
    assert found == {
        "7": {(Decimal("2.0"), Decimal("0.40")), (Decimal("3.0"), Decimal("0.40"))},
        "": {(Decimal("4.0"), Decimal("0.40"))},
    }


def test_numbers_of_another_template_in_another_unit_or_without_a_given_are_others() -> None:
    short = Had("7", Draw("lamp", 1, {"m": Number(Decimal("2.0"), UNITS["kg"])}))
    assert values_had([had("7", "2.0", "g"), had("7", "2.0", template="sign"), short], LAMP) == {}
