"""Which revision of a template a release may take."""

from pathlib import Path

import pytest

from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.reviews import read_reviews
from probgen.department.candidate import candidates
from probgen.department.standing import Status, by_revision
from probgen.input.fault import Faults
from tests.banks import make_bank, put, review, template_text

ID = "forearm-load"


@pytest.mark.parametrize(
    ("verdicts", "taken", "status"),
    [
        ({}, 0, Status.NOT_PROPOSED),
        ({1: "approved"}, 1, Status.NOT_PROPOSED),
        ({1: "approved", 2: "approved"}, 2, Status.NOT_PROPOSED),
        ({1: "approved", 2: "approved", 3: "approved"}, 3, Status.APPROVED),
        ({1: "approved", 3: "changes wanted"}, 1, Status.CHANGES_WANTED),
        ({1: "approved", 2: "withdrawn"}, 0, Status.NOT_PROPOSED),
        ({1: "approved", 2: "withdrawn", 3: "approved"}, 3, Status.APPROVED),
        ({1: "approved", 3: "withdrawn"}, 0, Status.WITHDRAWN),
    ],
)
def test_the_newest_that_is_approved(
    tmp_path: Path, verdicts: dict[int, str], taken: int, status: Status
) -> None:
    bank = make_bank(tmp_path, [ID])
    put(bank, ID, 2)
    put(bank, ID, 3)
    for revision, verdict in verdicts.items():
        review(bank, ID, revision, verdict)
    found = read_bank_folder(bank)
    (one,) = candidates(found, [ID], by_revision(read_reviews(found)), Faults(""))
    assert (one.template.revision if one.template else 0, one.status) == (taken, status)
    assert one.newest == 3
    assert one.waits == (status not in (Status.APPROVED, Status.WITHDRAWN))


def test_what_cannot_be_read_is_a_fault_and_the_rest_is_found(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    put(bank, ID, 2, template_text(ID, 2, level="9"))
    found, faults = read_bank_folder(bank), Faults("")
    (one,) = candidates(found, list(found.revisions), {}, faults)
    assert one.id == "seesaw-two-riders"
    assert [fault.field for fault in faults.found] == ["level"]
