"""What a person can do about a fault by the front end's own means, which therefore words it.

A command line names an option, a page in a browser shows a button; what reads, works and builds
knows neither.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class OtherFolder:
    """Have what is made put into another folder."""


@dataclass(frozen=True, slots=True)
class OtherFolderOrReplace:
    """Have what is made put into another folder, or begin anew and keep the old build."""


@dataclass(frozen=True, slots=True)
class Replace:
    """Begin anew, and keep the old build."""


@dataclass(frozen=True, slots=True)
class SeeTemplates:
    """Look up the ids of the templates there are."""


@dataclass(frozen=True, slots=True)
class NewBank:
    """Make a bank in a folder."""

    folder: str


@dataclass(frozen=True, slots=True)
class WorkAgain:
    """Work a template with given values, to see a failure again.

    template: an id or a path; values: as they are typed, in each given's own unit.
    customary: in US customary units.
    """

    template: str
    values: Mapping[str, str]
    customary: bool = False


@dataclass(frozen=True, slots=True)
class TrustLayouts:
    """Use the layouts that a record carries, or a folder of layouts that the person has."""


@dataclass(frozen=True, slots=True)
class CorrectOrReplace:
    """Correct what was handed out, or begin anew and keep the old build beside the new one."""


@dataclass(frozen=True, slots=True)
class TakeEdited:
    """Take a record as it is, although somebody has edited it."""


@dataclass(frozen=True, slots=True)
class OwnNote:
    """Say in words of one's own when solutions were released."""


@dataclass(frozen=True, slots=True)
class BuildIt:
    """Build a class from an assignment file."""

    path: str


@dataclass(frozen=True, slots=True)
class WorkIt:
    """Work the problem of a template's file."""

    path: str


Remedy = (
    OtherFolder
    | OtherFolderOrReplace
    | Replace
    | SeeTemplates
    | NewBank
    | TrustLayouts
    | WorkAgain
    | CorrectOrReplace
    | TakeEdited
    | OwnNote
    | BuildIt
    | WorkIt
)
