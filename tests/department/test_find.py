"""Templates found by what is wanted of them."""

from datetime import date

import pytest

from probgen.department.entry import Entry
from probgen.department.find import Wanted, find
from probgen.input.fault import InputError

OLD = Entry("arm", 1, "Arm", "limbs", 2, ("Joint force",), ("force",), 10, "", 3, 90,
            date(2026, 5, 1), 0.4)  # fmt: skip
NEW = Entry("beam", 2, "Beam", "beams", 3, ("Hinge", "joint"), ("force", "angle"), 0, "")
BOTH = (OLD, NEW)

CASES = [
    (Wanted(), BOTH),
    (Wanted(goal="joint"), BOTH),
    (Wanted(goal="HINGE"), (NEW,)),
    (Wanted(level=2), (OLD,)),
    (Wanted(family="beams"), (NEW,)),
    (Wanted(asks="angle"), (NEW,)),
    (Wanted(minutes=10), (OLD,)),
    (Wanted(minutes=9), ()),
    (Wanted(unused_since=date(2026, 5, 1)), (NEW,)),
    (Wanted(unused_since=date(2026, 5, 2)), BOTH),
    (Wanted(easier_than=0.4), (OLD,)),
    (Wanted(easier_than=0.41), ()),
    (Wanted(level=2, family="beams"), ()),
]


@pytest.mark.parametrize(("wanted", "found"), CASES)
def test_all_that_is_said_must_fit(wanted: Wanted, found: tuple[Entry, ...]) -> None:
    assert find(BOTH, wanted, "bank") == found


def test_words_that_no_template_has_are_slips() -> None:
    with pytest.raises(InputError) as error:
        find(BOTH, Wanted(goal="Hing e", family="beam", asks="forces"), "bank")
    assert [fault.field for fault in error.value.faults] == ["goal", "family", "asks"]
    assert all("did you mean" in fault.mend for fault in error.value.faults)
