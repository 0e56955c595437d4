"""An edited record that is taken: what its editions no longer are gets codes of its own."""

from dataclasses import replace
from decimal import Decimal

from probgen.course.edited import recoded
from probgen.course.record import Record
from probgen.draws.draw import Draw
from tests.terms import begun, class_of


def edited(record: Record) -> Record:
    (printing,) = record.printings
    first, *others = printing.editions
    (own,) = first.draws
    values = {**own.values, "m": replace(own.values["m"], value=Decimal("5.5"))}
    changed = replace(first, draws=(Draw("lamp", 1, values),))
    return replace(record, printings=(replace(printing, editions=(changed, *others)),))


def test_nothing_changes_in_a_record_as_it_was() -> None:
    record = begun(class_of(5))
    assert recoded(record) == (record, ())


def test_only_the_edited_paper_gets_another_code_and_that_is_said() -> None:
    record = begun(class_of(5))
    found, remarks = recoded(edited(record))
    before, after = ([e.code for e in each.editions] for each in (record, found))
    assert after[0] not in before
    assert after[1:] == before[1:]
    assert (len(record.copying), found.copying) == (1, ())
    assert remarks == (
        f"Student 1 (1): the record's paper {before[0]} has been edited; "
        f"as it is now its code is {after[0]}",
    )


def test_codes_without_a_secret_stay() -> None:
    record = replace(begun(class_of(5)), secret="")
    assert recoded(edited(record)) == (edited(record), ())
