"""How often a slip that marking names is the one that was made, and what is named for no slip.

Every family of templates gets so many papers; the seed of what is printed is used for nothing else.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field
from random import Random
from typing import Final

from probgen.bank.bank import default_bank
from probgen.marking.finding import Finding
from probgen.marking.judged import Judged, judged
from probgen.marking.policy import Policy
from probgen.problem.problem import prepare
from probgen.working.convention import Convention
from tests.bench.line import at_least, at_most
from tests.bench.simulated import Paper, Students

SEED: Final = "papers that nothing was tuned on"
PAPERS: Final = 10_000  # a family
_TRUE, _CHANCE = 0.99, 0.02


@dataclass
class Counted:
    """named: answers put down to slips; true: those that are so, one of several named counting too.

    papers, found: by kind, and those of them on which some slip is named.
    """

    named: int = 0
    true: int = 0
    papers: Counter[str] = field(default_factory=Counter)
    found: Counter[str] = field(default_factory=Counter)
    together: Counter[int] = field(default_factory=Counter)
    wrong: Counter[tuple[str, str]] = field(default_factory=Counter)

    def part(self, kind: str) -> float:
        return self.found[kind] / max(1, self.papers[kind])


def bench(papers: int = PAPERS) -> None:
    for family, counted in measured(papers, SEED):
        at_least(f"slips-named-truly-{family}", counted.true / max(1, counted.named), _TRUE)
        at_most(f"random-numbers-named-{family}", counted.part("random"), _CHANCE)
        shares = ", ".join(f"{kind} {counted.part(kind):.1%}" for kind in sorted(counted.papers))
        print(f"{family}: of {counted.papers.total():,} papers a slip is named on {shares}")


def measured(papers: int, seed: str) -> Iterable[tuple[str, Counted]]:
    """The counts of each family."""
    bank = default_bank()
    families: dict[str, list[str]] = {}
    for id in bank.files:
        families.setdefault(bank.read(id).family, []).append(id)
    for family, ids in sorted(families.items()):
        counted = Counted()
        for id in ids:
            count(counted, id, -(-papers // len(ids)), Random(f"{seed} {id}"))
        yield family, counted


def count(counted: Counted, id: str, papers: int, chance: Random) -> None:
    """Adds the papers of one template."""
    problem = prepare(default_bank().read(id), Convention())
    filled = list(Students(problem, chance).papers(papers))
    found = judged(
        problem, [paper.own for paper in filled], [paper.typed for paper in filled], 10, Policy()
    )
    for paper, answers in zip(filled, found, strict=True):
        counted.papers[paper.kind] += 1
        named = [own for own in answers if own.finding is Finding.SLIP]
        counted.found[paper.kind] += bool(named)
        for own in named:
            counted.named += 1
            right = is_true(own, paper)
            counted.true += right
            counted.together[len(own.slips)] += 1
            if not right:
                counted.wrong[paper.kind, id] += 1


def is_true(own: Judged, paper: Paper) -> bool:
    """Whether some way that is named has slips that were made, and no others.

    Of two slips one alone may be named, where the other changes nothing that can be seen.
    """
    made = paper.slips.keys if paper.slips else frozenset()
    return any(way.keys <= made for way in own.slips)
