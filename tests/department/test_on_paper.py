"""One draw as it is printed."""

from dataclasses import replace
from decimal import Decimal

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.department.on_paper import first_on_paper


def test_values_of_another_state_are_taken_where_they_fit() -> None:
    template = default_bank().read("forearm-load")
    first = first_on_paper(template)
    wider = read_template(template.source.replace("to = 8.0", "to = 80.0"), "wider")
    own, like = first_on_paper(wider), first_on_paper(wider, first.draw)
    assert own.draw.values != first.draw.values == like.draw.values
    assert like.sheet.statement == first.sheet.statement
    assert [each.printed for each in like.solution.answers] == [
        each.printed for each in first.solution.answers
    ]


def test_values_without_a_solution_give_way_to_its_own() -> None:
    template = default_bank().read("forearm-load")
    first = first_on_paper(template)
    angle = first.draw.values["muscle_angle"]
    along = {**first.draw.values, "muscle_angle": replace(angle, value=Decimal(90))}
    found = first_on_paper(template, replace(first.draw, values=along))
    assert found.draw == first.draw
