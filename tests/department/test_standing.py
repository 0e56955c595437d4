"""What stands for a revision after what was said of it."""

from dataclasses import replace
from datetime import date

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.origin import Origin
from probgen.bank.release import text_digest
from probgen.bank.reviews import Review, Verdict
from probgen.department.standing import Status, by_revision, is_writer, standing

TEMPLATE = replace(
    default_bank().read("forearm-load"), origin=Origin(author="Ada Quill, Ben Stone and C. Dorn")
)
DIGEST = text_digest(TEMPLATE.source)
P, A, C, W = Verdict
WORDS = {"P": P, "A": A, "C": C, "W": W}


def rows(told: str, text: str = DIGEST) -> list[Review]:
    """ "P Ada Quill; A Reader": a verdict a day, by their first letters."""
    said = [each.strip().partition(" ") for each in told.split(";") if each]
    return [
        Review(
            "forearm-load", TEMPLATE.revision, text[:12], person, date(2027, 5, day), WORDS[word]
        )
        for day, (word, _, person) in enumerate(said, start=1)
    ]


@pytest.mark.parametrize(
    ("told", "status"),
    [
        ("", Status.NOT_PROPOSED),
        ("P Ada Quill", Status.PROPOSED),
        ("A Reader", Status.APPROVED),
        ("P Editor; A Reader", Status.APPROVED),
        ("P Editor; A Editor", Status.PROPOSED),
        ("A ada  quill", Status.PROPOSED),
        ("A Ben Stone; A C. Dorn", Status.PROPOSED),
        ("A Ben Stone; A Reader", Status.APPROVED),
        ("C Reader; A Other", Status.CHANGES_WANTED),
        ("C Reader; A Other; A reader", Status.APPROVED),
        ("A Reader; C Reader", Status.CHANGES_WANTED),
        ("C Reader; P Editor; A Other", Status.APPROVED),
        ("A Reader; P Editor", Status.PROPOSED),
        ("A Reader; W Keeper", Status.WITHDRAWN),
        ("W Keeper; P Editor; A Reader", Status.APPROVED),
        ("P Reader; P Editor; A Reader", Status.PROPOSED),
    ],
)
def test_status(told: str, status: Status) -> None:
    assert standing(TEMPLATE, by_revision(rows(told)), own_approval=False).status is status


def test_one_who_keeps_a_bank_alone_may_approve() -> None:
    reviews = by_revision(rows("P Ada Quill; A Ada Quill"))
    assert standing(TEMPLATE, reviews, own_approval=True).status is Status.APPROVED
    found = standing(TEMPLATE, reviews, own_approval=False)
    assert found.not_counted == ("Ada Quill",)


def test_verdicts_on_another_text_are_outdated() -> None:
    edited = replace(TEMPLATE, source=f"# a remark\n{TEMPLATE.source}")
    found = standing(edited, by_revision(rows("A Reader")), own_approval=False)
    assert (found.status, len(found.outdated), found.said) == (Status.NOT_PROPOSED, 1, ())
    other = replace(TEMPLATE, revision=TEMPLATE.revision + 1)
    assert standing(other, by_revision(rows("A Reader")), own_approval=False).outdated == ()


def test_dates_and_not_lines_say_what_came_last() -> None:
    said = rows("C Reader; A Reader")
    reviews = by_revision(reversed(said))
    assert standing(TEMPLATE, reviews, own_approval=False).status is Status.APPROVED
    assert list(reviews["forearm-load", TEMPLATE.revision]) == said


def test_writers_by_name() -> None:
    assert is_writer("ben stone", TEMPLATE, [])
    assert not is_writer("Ben", TEMPLATE, [])
    assert not is_writer("", replace(TEMPLATE, origin=Origin()), [])
    assert is_writer("Editor", TEMPLATE, rows("P Editor"))
