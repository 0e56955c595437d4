"""Verdicts on templates, as a bank's reviews.csv has them."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.reviews import Review, Verdict, add_reviews, read_reviews, text_mark
from probgen.input.fault import InputError
from tests.banks import make_bank, review

DIGEST = "0d1f3a77c2be" + "a" * 52
ROW = Review(
    "forearm-load", 1, DIGEST[:12], "A. Reader", date(2027, 5, 3), Verdict.APPROVED, "well, =1"
)


@pytest.fixture
def bank(tmp_path: Path) -> Path:
    return make_bank(tmp_path)


def read(bank: Path, text: str) -> tuple[Review, ...]:
    (bank / "reviews.csv").write_text(text, "utf-8")
    return read_reviews(read_bank_folder(bank))


def test_rows_are_read_as_they_stand(bank: Path) -> None:
    assert read_reviews(read_bank_folder(bank)) == ()
    review(bank, "forearm-load", 1, note="fine")
    review(bank, "seesaw-two-riders", 1, "changes wanted", person="  B.  Reader ")
    one, other = read_reviews(read_bank_folder(bank))
    assert (one.template, one.revision, one.verdict, one.note) == (
        "forearm-load", 1, Verdict.APPROVED, "fine",
    )  # fmt: skip
    assert (other.person, other.date, other.note) == ("B. Reader", date(2027, 5, 3), "")


@pytest.mark.parametrize("mark", [",", ";", "\t"])
def test_columns_in_any_order_and_further_ones(bank: Path, mark: str) -> None:
    heads = "Verdict,room,Date,template,revision,text,note,person"
    row = f"Approved,7,2027-05-03,forearm-load,r1,{DIGEST[:12]},,A. Reader"
    (found,) = read(bank, f"{heads}\n\n{row}\n".replace(",", mark))
    assert (found.verdict, found.revision, found.person) == (Verdict.APPROVED, 1, "A. Reader")


HEAD = "template,revision,text,person,date,verdict,note\n"
GOOD = f"forearm-load,1,{DIGEST[:12]},A. Reader,2027-05-03,approved,\n"


@pytest.mark.parametrize(
    ("old", "new", "field", "said"),
    [
        ("forearm-load", "forearm-lode", "line 2, template", 'did you mean "forearm-load"'),
        (",1,", ",2,", "line 2, revision", "forearm-load's revisions 1"),
        (",1,", ",one,", "line 2, revision", "a revision, such as 2"),
        (DIGEST[:12], "1.3E+17", "line 2, text", "have the template reviewed again"),
        (DIGEST[:12], DIGEST[:11], "line 2, text", "12 to 64 digits"),
        ("A. Reader", " ", "line 2, person", "a name"),
        ("2027-05-03", "03.05.2027", "line 2, date", "a date such as"),
        ("2027-05-03", "2027-02-30", "line 2, date", "a date such as"),
        ("2027-05-03", "20270503", "line 2, date", "a date such as"),
        ("approved", "aproved", "line 2, verdict", 'did you mean "approved"'),
        ("approved", "yes", "line 2, verdict", "changes wanted"),
        ("date,", "day,", "line 1", 'a heading "date"'),
        ("A. Reader", '"A. Reader', "line 2", "close every quotation mark"),
    ],
)
def test_one_fault_with_its_line(bank: Path, old: str, new: str, field: str, said: str) -> None:
    with pytest.raises(InputError) as error:
        read(bank, (HEAD + GOOD).replace(old, new))
    (fault,) = error.value.faults
    assert fault.field == field
    assert said in str(error.value)


def test_all_faults_at_once_and_sides_of_a_merge(bank: Path) -> None:
    wrong = GOOD.replace("approved", "good").replace("2027", "27")
    with pytest.raises(InputError) as error:
        read(bank, HEAD + wrong + GOOD + wrong)
    assert [fault.field for fault in error.value.faults] == [
        "line 2, date", "line 2, verdict", "line 4, date", "line 4, verdict",
    ]  # fmt: skip
    with pytest.raises(InputError, match="not merged"):
        read(bank, f"{HEAD}<<<<<<< mine\n{GOOD}=======\n{GOOD}>>>>>>> theirs\n")


def test_what_was_withdrawn_may_be_taken_away(bank: Path) -> None:
    gone = GOOD.replace("forearm-load", "long-gone")
    with pytest.raises(InputError, match="the id of a template in the bank"):
        read(bank, HEAD + gone)
    assert len(read(bank, HEAD + gone + gone.replace("approved", "withdrawn"))) == 2


@pytest.mark.parametrize(
    "before",
    [
        "",
        "\n",
        HEAD,
        HEAD + GOOD.rstrip(),
        (HEAD + GOOD).replace("\n", "\r\n"),
        "\ufeff" + HEAD.replace(",", ";"),
        "room,note,verdict,date,person,text,revision,template\n",
    ],
)
def test_a_row_is_added_and_all_else_stays(bank: Path, before: str) -> None:
    path = bank / "reviews.csv"
    path.write_bytes(before.encode())
    known = read_reviews(read_bank_folder(bank))
    add_reviews(read_bank_folder(bank), [ROW])
    after = path.read_bytes().decode()
    assert after.startswith(before.strip("\n"))
    assert ("\r\n" in after) == ("\r\n" in before)
    assert after.count("\n") == max(before.rstrip().count("\n"), 0) + 2
    *others, added = read_reviews(read_bank_folder(bank))
    assert tuple(others) == known
    assert added.note == "well,' =1"  # no spreadsheet takes a part of it for a formula
    assert (added.template, added.text, added.date) == (ROW.template, ROW.text, ROW.date)


def test_nothing_is_added_to_what_cannot_be_read(bank: Path) -> None:
    path = bank / "reviews.csv"
    path.write_text("<<<<<<< mine\n" + HEAD, "utf-8")
    with pytest.raises(InputError, match="not merged"):
        add_reviews(read_bank_folder(bank), [ROW])
    assert path.read_text("utf-8") == "<<<<<<< mine\n" + HEAD


@pytest.mark.parametrize(
    ("digest", "mark"),
    [
        (DIGEST, DIGEST[:12]),
        ("123456789012" + "ab" * 26, "123456789012a"),
        ("12345e789012" + "34e" + "0" * 49, "12345e78901234e"),
        ("1" * 64, "1" * 64),
    ],
)
def test_digits_that_no_spreadsheet_takes_for_a_number(digest: str, mark: str) -> None:
    assert text_mark(digest) == mark


def test_rows_of_several_at_one_moment_are_all_there(tmp_path: Path) -> None:
    bank = read_bank_folder(make_bank(tmp_path))
    people = [f"Reader {place}" for place in range(24)]
    with ThreadPoolExecutor(8) as pool:
        done = pool.map(lambda person: add_reviews(bank, [replace(ROW, person=person)]), people)
        assert len(list(done)) == len(people)
    assert sorted(each.person for each in read_reviews(bank)) == sorted(people)
