"""The words of a bank's catalogue beside what its templates say."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.wording.change_words import ChangeWords


@dataclass(frozen=True, slots=True)
class CatalogueWords:
    """One language's words, as plain text; layouts have them as `words`.

    language: its tag by BCP 47, "en".  {places} are filled by the layout: by numbers, or by a name.
    skip: the link past the search; counted: what is shown, {shown} of {all}; none_shown: when
    nothing is; search_for: what can be looked for.
    choose: the label of a tick; chosen: {count} of them; take_lines: what the lines are for;
    of_bank: the bank they name; copied: when they were.
    reviewed: before where it stands; use_last, facility, facility_of: of a template's uses, {share}
    of its points; uses, day and those after: a table of them, and heads of its columns.
    view: opens a template's own view; draw: of {number}; over: of how many {draws}.
    proved: {draws} of them, with the largest {residual}; drops: before shares of draws that a
    requirement drops; to_mend: before what check complains of; clean: when it does not.
    revision_first: of the first one; revision_same: of one in which nothing is other.
    working_of, wrong_in: of the one draw that is worked.
    cautions: pairs of a kind and its words.
    """

    language: str
    catalogue: str
    keeper: str
    problems: str
    skip: str
    looking: str
    search: str
    search_for: str
    family: str
    level: str
    goal: str
    any_goal: str
    clear: str
    counted: str
    none_shown: str
    choose: str
    chosen: str
    your_choice: str
    take_lines: str
    of_bank: str
    copy: str
    copied: str
    copy_by_hand: str
    drop_all: str
    find: str
    given: str
    goals: str
    minutes: str
    revision: str
    author: str
    source: str
    licence: str
    language_of_texts: str
    replaces: str
    reviewed: str
    use_last: str
    facility: str
    facility_of: str
    view: str
    draws: str
    draw: str
    spreads: str
    over: str
    answers: str
    goes_wrong: str
    working: str
    working_of: str
    wrong_in: str
    findings: str
    proved: str
    drops: str
    to_mend: str
    remarks: str
    clean: str
    uses: str
    day: str
    course: str
    assignment: str
    students: str
    papers_marked: str
    history: str
    revision_first: str
    revision_same: str
    change: ChangeWords
    caution: str
    cautions: tuple[tuple[str, str], ...]
