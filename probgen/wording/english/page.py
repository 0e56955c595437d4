"""The words of the pages, in English."""

from __future__ import annotations

from typing import Final

from probgen.wording.page_words import PageWords

_LICENSED: Final = "Local codes and licensed practice decide."

PAGE: Final = PageWords(
    language="en",
    name="Name",
    id="Id",
    section="Section",
    code="Code",
    version="Version",
    versions="Versions",
    draft="DRAFT",
    date="Date",
    due="Due",
    page="page",
    page_of="of",
    continued="continued",
    drawn="draw",
    by_hand="with values of its own",
    points="points",
    points_head="Points",
    find="Find",
    given="Given",
    asked="Asked",
    caution="Caution.",
    origins="Where the problems come from.",
    verdicts=(
        ("right", "right"),
        ("carried", "right by carrying forward"),
        ("unit", "unit wrong"),
        ("sign", "sign or side wrong"),
        ("slip", "a known slip"),
        ("wrong", "wrong"),
        ("unread", "to be read by a person"),
        ("empty", "empty"),
    ),
    decided="read by a person",
    still_open="open",
    feedback="Feedback",
    typed="Yours",
    verdict="Verdict",
    verdicts_head="Verdicts, and % of the points",
    commonest_slips="Commonest slips",
    teach_again="Steps to teach again: where papers part from the key",
    cautions=(
        ("body", "The body is idealised, its limbs as rigid rods: not for clinical use."),
        (
            "ladder",
            "The ladder is idealised: not for setting up a ladder; follow local codes and its "
            "maker's rules.",
        ),
        (
            "lifting",
            "Loads and supports are idealised: not for planning a lift.",
        ),
        (
            "rigging",
            "Cables and fixings are idealised: not for design or rigging.",
        ),
        ("design", "Members and supports are idealised: not for design."),
        *((kind, _LICENSED) for kind in ("lifting", "rigging", "design")),
    ),
    key="Key",
    key_mark="Worked key",
    solutions="Solutions",
    answers="Answers",
    full_marks="full marks",
    marks="Marks",
    goes_wrong="What goes wrong here",
    formulas="Formulas",
    problem="Problem",
    out_of="of",
    sum="Sum",
    papers="Papers",
    keys="Keys",
    problems="Problems",
    paper="Paper",
    seat="Seat",
    needs="Needs",
    spare="spare",
    large="large print",
)
