"""What marking reads: tables of answers, a department's rules, and tables marked before."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from probgen.build.workers import Crew
from probgen.marking.answers_file import read_answers
from probgen.marking.changed import read_earlier
from probgen.marking.chunk import mark
from probgen.marking.form import columns
from probgen.marking.marks import HEADINGS, Row
from probgen.marking.policy import Policy
from probgen.marking.policy_file import read_policy
from tests.fuzz.target import Target, written
from tests.marking.lamps import record_of, table
from tests.terms import lamp, problem_of

RECORD = record_of(4)
TYPED = {"1": ("19.6", "N"), "2": ("4,9·10^1", "N"), "3": ("0.0196 kN", ""), "4": ("-12", "N")}


@cache
def _answers() -> tuple[bytes, ...]:
    text = table(RECORD, TYPED)
    return text.encode(), text.replace(",", ";").encode("utf-16")


def _marked(content: bytes, folder: Path) -> None:
    problems = (problem_of(lamp(), RECORD.set.convention),)
    path = written(folder, "typed", content)
    typed = read_answers(path, RECORD, columns(RECORD, problems), [], dict)
    mark(RECORD, problems, typed, Policy(), {}, feedback=True, crew=Crew(1))


RULES = """
[marking]
carried = 1.0
unit = 0.5
sign = 0.25
slip = 0.5
figures = 0.1
tolerance = 0.03
[marking.columns]
"Student ID" = "id"
"problem one" = "problem 1"
"Week 3 (50)" = "sum"
"Remarks" = ""
"""


def _rules(content: bytes, folder: Path) -> None:
    read_policy(written(folder, "rules.toml", content), 1)


def _tables() -> tuple[bytes, ...]:
    row = Row(*("x" for _ in HEADINGS))._replace(
        id="1", problem="1", answer="T", typed="19.6", points="8", of="8", changed="7.5",
        counts="7.5", given="", given_for="",
    )  # fmt: skip
    rows = [HEADINGS, row, row._replace(id="2", changed="")]
    return ("\n".join(",".join(each) for each in rows).encode(),)


def _earlier(content: bytes, folder: Path) -> None:
    written(folder, "answer-marks.csv", content)
    read_earlier(folder / "answer-marks", folder / "look-at", {"1", "2"})


MARKED = (
    Target("answers", _answers, _marked),
    Target("rules", lambda: (RULES.encode(),), _rules),
    Target("marks", _tables, _earlier),
)
