"""The headings of a class list: what a column is for, by the words that the trade uses."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from typing import Final

Columns = Mapping[str, int]
"""Where the column of each meaning stands."""

_ADDRESSES: Final = (
    "loginid", "login", "username", "userid", "netid", "account", "emailaddress", "email", "mail",
)  # fmt: skip
"""Headings of what tells students apart where they have no number."""
_HEADINGS: Final[dict[str, tuple[str, ...]]] = {
    "name": (
        "studentname", "fullname", "name", "student", "displayname", "nameofstudent", "names",
        "learnername", "learner", "candidatename", "candidate", "participantname", "participant",
        "lastfirst", "lastnamefirstname", "surnamefirstname", "surnamegivenname", "firstlast",
        "firstnamelastname", "sortablename", "preferredname", "legalname",
    ),
    "first": (
        "firstname", "givenname", "forename", "givennames", "firstnames", "forenames", "first",
        "given", "preferredfirstname", "legalfirstname", "firstmiddlename",
    ),
    "last": (
        "lastname", "surname", "familyname", "surnames", "last", "family", "legallastname",
    ),
    "id": (
        "studentid", "studentnumber", "studentno", "studentidnumber", "idnumber", "id",
        "matriculationnumber", "matriculationno", "matricnumber", "matricno", "registrationnumber",
        "registrationno", "enrolmentnumber", "enrollmentnumber", "rollnumber", "rollno",
        "candidatenumber", "candidateno", "indexnumber", "universityid", "collegeid", "schoolid",
        "campusid", "learnerid", "personid", "sisid", "sid", "number", *_ADDRESSES,
    ),
    "section": (
        "section", "sections", "sectionname", "sectionnumber", "group", "groupname", "class",
        "classname", "tutorial", "tutorialgroup", "recitation", "discussion", "lab", "labsection",
        "coursesection", "cohort", "stream", "period",
    ),
    "seat": ("seat", "seatnumber", "seatno", "place", "desk", "desknumber"),
    "large": ("largeprint", "large", "print", "fontsize", "textsize", "enlargedprint", "enlarged"),
    "numbers_of": ("numbersof", "sameas", "oldid", "formerid"),
    "version": ("version",),
    "time": (
        "extratime", "extendedtime", "additionaltime", "timeextension", "extratimepercent",
        "timeallowance", "timemultiplier",
    ),
}  # fmt: skip
"""Headings by what they mean, letters and digits only; of several in a file the first here wins."""

_NEEDS: Final = re.compile("accommodation|accomodation|arrangement|adjustment|needs|disabilit")
"""In a heading of what is told about single students' needs."""


def find_columns(header: Sequence[str]) -> Columns:
    """Where the columns we know stand; what stands between parentheses in a heading is left out."""
    plain = [_plain(cell) for cell in header]
    found: dict[str, int] = {}
    for meaning, headings in _HEADINGS.items():
        place = next((plain.index(heading) for heading in headings if heading in plain), None)
        if place is not None:
            found[meaning] = place
    needs = (place for place, heading in enumerate(plain) if _NEEDS.search(heading))
    if (place := next(needs, None)) is not None:
        found["needs"] = place
    return found


def other_ids(header: Sequence[str], columns: Columns) -> list[str]:
    """The headings of other columns that might have been meant for the ids."""
    numbers = set(_HEADINGS["id"]) - set(_ADDRESSES)
    others = (cell for place, cell in enumerate(header) if place != columns.get("id"))
    return [cell for cell in others if _plain(cell) in numbers]


def is_header(row: Sequence[str]) -> bool:
    """Whether a row has the headings that a class list cannot do without."""
    columns = find_columns(row)
    return "id" in columns and ("name" in columns or {"first", "last"} <= columns.keys())


def known_headings(row: Sequence[str]) -> int:
    """How many headings of a row we know."""
    return len(find_columns(row))


def _plain(heading: str) -> str:
    return re.sub(r"\(.*?\)|[\W_]", "", heading.casefold())
