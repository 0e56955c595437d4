"""What waits for a review, and verdicts as they are given."""

from datetime import date
from pathlib import Path

import pytest

from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.reviews import Review, Verdict
from probgen.department.change import Kind
from probgen.department.review import Reviewed, give_verdict, reviewed
from probgen.department.standing import Status
from probgen.input.fault import InputError
from tests.banks import HEAD, make_bank, put, review, template_text

IDS = ("forearm-load", "seesaw-two-riders")


@pytest.fixture
def bank(tmp_path: Path) -> Path:
    return make_bank(tmp_path)


def give(
    bank: Path, verdict: Verdict, *ids: str, person: str = "A. Reader", note: str = "",
    revision: int | None = None,
) -> tuple[Reviewed, ...]:  # fmt: skip
    said = Review("", 0, "", person, date(2027, 5, 3), verdict, note)
    return give_verdict(read_bank_folder(bank), ids, revision, said)


def test_the_newest_revision_waits_with_what_is_other_in_it(bank: Path) -> None:
    review(bank, "forearm-load", 1)
    one, other = reviewed(read_bank_folder(bank))
    assert (one.waits, one.change, other.waits) == (False, None, True)
    put(bank, "forearm-load", 2, template_text("forearm-load", 2, level="5"))
    one, _ = reviewed(read_bank_folder(bank))
    assert one.change is not None
    assert (one.waits, one.change.kinds) == (True, (Kind.PARTICULARS,))
    (first,) = reviewed(read_bank_folder(bank), ["forearm-load"], 1)
    assert first.standing.status is Status.APPROVED
    put(bank, "forearm-load", 3, template_text("forearm-load", 3, level="5"))
    one, _ = reviewed(read_bank_folder(bank))
    assert one.change is not None
    assert one.change.kinds == ()  # beside the revision before it, and not beside the first


def test_a_verdict_holds_until_the_text_is_edited(bank: Path) -> None:
    found = give(bank, Verdict.APPROVED, *IDS, note="  as it is ")
    assert [each.standing.status for each in found] == [Status.APPROVED] * 2
    assert found[0].standing.said[0].note == "as it is"
    put(bank, "forearm-load", 1, template_text("forearm-load", level="5"))
    (edited,) = reviewed(read_bank_folder(bank), ["forearm-load"])
    assert (edited.standing.status, len(edited.standing.outdated)) == (Status.NOT_PROPOSED, 1)


def test_who_has_proposed_it_cannot_approve_unless_the_bank_is_kept_alone(bank: Path) -> None:
    give(bank, Verdict.PROPOSED, *IDS)
    before = (bank / "reviews.csv").read_text("utf-8")
    with pytest.raises(InputError, match="neither wrote nor proposed") as error:
        give(bank, Verdict.APPROVED, *IDS, person="a. reader")
    assert len(error.value.faults) == 2
    assert (bank / "reviews.csv").read_text("utf-8") == before
    give(bank, Verdict.CHANGES_WANTED, "forearm-load")
    (bank / "bank.toml").write_text(HEAD + "own_approval = true\n", "utf-8")
    (one,) = give(bank, Verdict.APPROVED, "forearm-load")
    assert one.standing.status is Status.APPROVED


@pytest.mark.parametrize(
    ("ids", "revision", "person", "note", "said"),
    [
        (("forearm-lode", "seesaw"), None, "A. Reader", "", "did you mean"),
        (("forearm-load",), 3, "A. Reader", "", "its revisions 1"),
        (("forearm-load",), None, "\u2800", "", "a text that can be seen"),
        (("forearm-load",), None, "A. Reader", "\x07", "the control character"),
        (("forearm-load",), None, "A. Reader", "x" * 1001, "at most 1000"),
        (("forearm-load",), None, "A. Reader", "=" + "x" * 999, "at most 1000"),
    ],
)
def test_what_is_wrong_is_told_and_nothing_written(
    bank: Path, ids: tuple[str, ...], revision: int | None, person: str, note: str, said: str
) -> None:
    with pytest.raises(InputError, match=said):
        give(bank, Verdict.APPROVED, *ids, person=person, note=note, revision=revision)
    assert not (bank / "reviews.csv").exists()


def test_person_and_note_are_judged_at_once_by_their_names(bank: Path) -> None:
    with pytest.raises(InputError) as error:
        give(bank, Verdict.APPROVED, "forearm-load", person=" ", note="\x07")
    assert [fault.field for fault in error.value.faults] == ["person", "note"]


def test_faults_of_templates_come_at_once_and_a_file_under_another_number(bank: Path) -> None:
    put(bank, "forearm-load", 4, template_text("forearm-load", 3))
    put(bank, "seesaw-two-riders", 1, template_text("seesaw-two-riders", level="9"))
    with pytest.raises(InputError) as error:
        list(reviewed(read_bank_folder(bank)))
    assert [fault.field for fault in error.value.faults] == ["revision", "level"]
