"""What all papers of an assignment have in common, as plain data."""

from dataclasses import fields, replace

from probgen.course.assignment import Assigned, ProblemSet, SectionDue
from probgen.course.issue import (
    FrozenTemplate,
    Issue,
    canonical,
    digest_of,
    issue_digest,
    printed_parts,
)
from probgen.working.convention import Convention

SET = ProblemSet("M", "W", "class.csv", (Assigned("a", 5), Assigned("b", 5)))
ISSUE = Issue(SET, (FrozenTemplate("a", 1, "x"), FrozenTemplate("b", 2, "y")))
UNPRINTED = {"roster", "seed", "banks", "style", "layouts", "run", "avoid", "again"}
"""Of a set's fields those that stand on no paper; whoever adds a field decides here."""


def test_every_field_of_a_set_and_of_a_method_counts_but_what_is_on_no_paper() -> None:
    parts = printed_parts(ISSUE)
    own = {field.name for field in fields(ProblemSet)} - UNPRINTED - {"problems", "convention"}
    method = {f"method {field.name}" for field in fields(Convention)}
    assert parts.keys() == own | method | {"problem 1", "problem 2"}


def test_the_same_data_are_the_same_text() -> None:
    assert canonical({"b": 1, "a": ["ö"]}) == canonical({"a": ["ö"], "b": 1}) == '{"a":["ö"],"b":1}'
    assert issue_digest(ISSUE) == issue_digest(Issue(SET, ISSUE.templates))


def test_a_part_younger_than_the_codes_that_says_nothing_leaves_them_as_they_were() -> None:
    told = dict(printed_parts(ISSUE))
    assert told.pop("due_in") == ()
    assert told.pop("method order") == "shortest"
    assert told.pop("method pivot") == "simplest"
    assert told.pop("method trusses") == "shortest"
    assert issue_digest(ISSUE) == digest_of(canonical(told))
    due = replace(ISSUE, set=replace(SET, due_in=(SectionDue("B", "6 May"),)))
    ordered = replace(ISSUE, set=replace(SET, convention=Convention(order="forces first")))
    pivoted = replace(ISSUE, set=replace(SET, convention=Convention(pivot="support")))
    cut = replace(ISSUE, set=replace(SET, convention=Convention(trusses="sections")))
    assert len({issue_digest(each) for each in (ISSUE, due, ordered, pivoted, cut)}) == 5
