"""An issue: what all papers of an assignment have in common at one time."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from hashlib import blake2b
from typing import Any, Final

from probgen import __version__
from probgen.course.assignment import ProblemSet
from probgen.sheets.house import USUAL, House

_UNPRINTED: Final = (
    "roster", "seed", "banks", "style", "layouts", "run", "problems", "exam", "avoid", "again",
)  # fmt: skip
"""Fields of a set that stand on no paper as they are: paths, the seed, what is said otherwise."""
_YOUNGER: Final[Mapping[str, Any]] = {
    "due_in": (), "method order": "shortest", "method pivot": "simplest",
    "method trusses": "shortest",
}  # fmt: skip
"""Parts that the first papers with codes knew nothing of, as they were all the same."""
_NEVER: Final = object()
_OF_A_PROBLEM: Final = ("sections", "parts", "marks")
"""And what an assignment may say of a problem since."""


@dataclass(frozen=True, slots=True)
class FrozenTemplate:
    """A template as it was when papers were made of it; source: its whole text."""

    template_id: str
    revision: int
    source: str


@dataclass(frozen=True, slots=True)
class Erratum:
    """What was corrected, as an instructor says it, and on which day ("2027-03-12")."""

    day: str
    what: str


@dataclass(frozen=True, slots=True)
class Issue:
    """templates: one for each problem of the set; erratum: what led to it, None for the first.

    version: of probgen, when it was made.  draft: whether its papers are not to be handed out.
    """

    set: ProblemSet
    templates: tuple[FrozenTemplate, ...]
    house: House = USUAL
    erratum: Erratum | None = None
    version: str = __version__
    draft: bool = False


def digest_of(text: str) -> str:
    """By which a text is known again."""
    return blake2b(text.encode("utf-8", "surrogatepass"), digest_size=16).hexdigest()


def canonical(data: Any) -> str:
    """Data as one text, the same for the same data."""
    return json.dumps(data, ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def printed_parts(issue: Issue) -> Mapping[str, Any]:
    """All of an issue that papers are made from, but for their look, by what it is called.

    Plain data: a set's fields, "method NAME" for each choice of the method, "problem N" for each
    problem.
    """
    problem_set = issue.set
    data = asdict(problem_set)
    parts = {name: value for name, value in data.items() if name not in _UNPRINTED}
    parts |= {f"method {name}": value for name, value in parts.pop("convention").items()}
    parts["method units"] = problem_set.convention.units.name
    exam = problem_set.exam
    parts["exam"] = exam and [exam.cover, list(exam.notes)]
    rows = zip(problem_set.problems, issue.templates, strict=True)
    for number, (assigned, frozen) in enumerate(rows, start=1):
        own = asdict(assigned)
        parts[f"problem {number}"] = [
            frozen.template_id,
            frozen.revision,
            digest_of(frozen.source),
            assigned.points,
            assigned.pivot,
            *([name, said] for name in _OF_A_PROBLEM if (said := own[name])),
        ]
    return parts


def issue_digest(issue: Issue) -> str:
    """The digest of all that its papers have in common, but for their look.

    Where a part that is younger than the codes says nothing, papers have the codes they had.
    """
    parts = printed_parts(issue)
    told = {name: part for name, part in parts.items() if part != _YOUNGER.get(name, _NEVER)}
    return digest_of(canonical(told))
