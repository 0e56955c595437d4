"""The words of a page that holds two states of a bank against each other."""

from __future__ import annotations

from dataclasses import dataclass

from probgen.wording.change_words import ChangeWords


@dataclass(frozen=True, slots=True)
class ComparisonWords:
    """One language's words, as plain text; layouts have them as `words`.

    language: its tag by BCP 47, "en".  title: of the states {before} and {after}; counted: how many
    are {new}, {gone}, {changed} and the {same}; contents: names the list of what is other.
    renamed: chapter of what has another id alone.  revisions: from {old} to {new}.
    scheme: what points are given for, {points} of them.  cautions: pairs of a kind and its words.
    """

    language: str
    comparison: str
    title: str
    counted: str
    skip: str
    contents: str
    new: str
    gone: str
    renamed: str
    revision: str
    revisions: str
    find: str
    scheme: str
    points: str
    no_solution: str
    change: ChangeWords
    caution: str
    cautions: tuple[tuple[str, str], ...]
