"""What a class's numbers say: items, slips and steps counted, versions and values compared."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from probgen.marking.class_report import ClassReport, class_report
from probgen.marking.finding import Finding
from probgen.marking.form import Paper
from probgen.marking.marks import Marked
from probgen.marking.scores import Item, Scores, scores
from probgen.marking.tally import Tally, tally
from probgen.wording.facts.class_marks import (
    AlphaFound,
    ItemAgainst,
    ItemAsked,
    ItemEasierOn,
    ItemsHard,
    PapersLeftOut,
    ValueMatters,
    VersionsAlike,
    VersionsDiffer,
)
from tests.marking.test_item_statistics import LSAT
from tests.marking.test_marks import PAPERS, marked, table


def report(papers: tuple[Marked, ...], points: Scores | None = None) -> ClassReport:
    """Of papers with the same problem twice; points: in the place of those they earn."""
    problems = [at.problem for at in papers[0].problems]
    own = points or scores([each.paper for each in papers], table(papers))
    return class_report(tally(papers, problems), own, problems, exam=False)


def of_scores(points: Scores) -> ClassReport:
    """Of an exam of which the points alone are known."""
    return class_report(Tally(), points, [], exam=True)


def test_verdicts_and_facilities_of_items() -> None:
    found = report(PAPERS).items
    assert [each.item for each in found[:2]] == [Item(1, "T", 4), Item(1, "t", 6)]
    assert found[0].verdicts == {Finding.RIGHT: 1, Finding.WRONG: 1, Finding.UNREAD: 2}
    assert (found[0].papers, found[0].facility) == (2, 0.5)
    assert (found[1].papers, found[1].facility) == (4, 0.625)


def test_slips_and_steps_are_counted_once_a_paper_the_commonest_first() -> None:
    """2.00 N is M in the place of M g; 12.3 N is nothing."""
    papers = marked(("2.00", "30"), ("2.00", "30"), ("12.3", "30"), ("19.6", "30"))
    found = report(papers)
    assert [(each.told, each.slips[0].slip) for each in found.slips] == [
        ((1, 2), "mass_as_weight"), ((2, 2), "mass_as_weight"),
    ]  # fmt: skip
    assert [each.told for each in found.steps] == [(1, 1), (2, 1)]  # a weight is no step to T


def of_lsat(versions: str = "A", lost: dict[str, int] | None = None) -> Scores:
    """The law schools' items as one problem's, papers dealt to versions in turn.

    lost: of some versions how many of the five items nobody gets right.
    """
    points = LSAT[np.random.default_rng(2).permutation(1000)].copy()
    owners = [versions[place % len(versions)] for place in range(1000)]
    for version, count in (lost or {}).items():
        points[np.array([owner == version for owner in owners]), :count] = 0.0
    papers = tuple(Paper("", str(n), "", owner) for n, owner in enumerate(owners))
    return Scores(papers, tuple(Item(1, str(n), 1) for n in range(5)), points)


def test_statistics_of_items_are_those_published() -> None:
    found = of_scores(of_lsat())
    assert found.alpha == pytest.approx(0.2950, abs=5e-5)
    assert found.facts[0] == AlphaFound(found.alpha, 5, 1000)
    assert [each.with_rest for each in found.items] == pytest.approx(
        [0.1128, 0.1532, 0.1728, 0.1444, 0.1216], abs=5e-5
    )


def test_items_that_hardly_anybody_gets_right_are_told_and_no_others() -> None:
    for lost, hard in ((0, []), (1, ["0"]), (2, ["0", "1"])):
        found = of_scores(of_lsat(lost={"A": lost})).facts
        told = [each for fact in found if isinstance(fact, ItemsHard) for each in fact.items]
        assert told == [ItemAsked(1, answer) for answer in hard]


def test_an_item_that_goes_against_the_others_is_told() -> None:
    plain = of_lsat()
    turned = replace(plain, points=plain.points.copy())
    turned.points[:, 2] = 1.0 - turned.points[:, 2]
    told = [fact for fact in of_scores(turned).facts if isinstance(fact, ItemAgainst)]
    assert [fact.item.answer for fact in told] == ["2"]
    assert told[0].correlation == pytest.approx(-0.1728, abs=5e-5)
    assert not any(isinstance(f, ItemAgainst) for f in of_scores(plain).facts)


def test_versions_dealt_in_turn_are_alike_and_it_is_said_what_would_be_seen() -> None:
    (told,) = (f for f in of_scores(of_lsat("AB")).facts
               if isinstance(f, VersionsAlike))  # fmt: skip
    spread = LSAT.sum(axis=1).std()
    assert told.versions == ("A", "B")
    assert told.least == pytest.approx(2.8 * spread * math.sqrt(2 / 500), rel=0.01)


def test_a_harder_version_and_its_items_are_told() -> None:
    found = of_scores(of_lsat("ABC", {"B": 1})).facts
    (told,) = (fact for fact in found if isinstance(fact, VersionsDiffer))
    assert (told.hardest, told.easiest) in (("B", "A"), ("B", "C"))
    assert told.apart == pytest.approx(0.924, abs=0.15)
    items = [fact for fact in found if isinstance(fact, ItemEasierOn)]
    assert ("B", "0") in {(fact.version, fact.item.answer) for fact in items if fact.ratio < 1.0}


def test_a_value_that_goes_with_the_points_is_told() -> None:
    papers = marked(*[("19.6", "30")] * 12)
    given = papers[0].problems[0].draw
    name = next(iter(given.values))
    spread: tuple[Marked, ...] = ()
    for place, each in enumerate(papers):
        number = replace(given.values[name], value=given.values[name].value + place)
        draw = replace(given, values={**given.values, name: number})
        own = tuple(at._replace(draw=draw) for at in each.problems)
        spread += (replace(each, problems=own),)
    points = scores([each.paper for each in papers], table(papers))
    grown = replace(points, points=points.points * np.linspace(0.1, 1.0, 12)[:, None])
    found = [fact for fact in report(spread, grown).facts if isinstance(fact, ValueMatters)]
    assert {(fact.problem, fact.given) for fact in found} == {(1, name), (2, name)}
    assert all(fact.correlation == pytest.approx(1.0) for fact in found)
    assert not any(isinstance(fact, ValueMatters) for fact in report(spread, points).facts)


def test_spreads_of_versions_come_in_order_and_count_what_is_known_of_a_paper() -> None:
    """Paper 0 of B has one item open, paper 1 of A both."""
    points = np.array([[1.0, math.nan], [math.nan, math.nan], [1.0, 1.0], [0.0, 1.0]])
    papers = tuple(Paper("", str(n), "", owner) for n, owner in enumerate("BABA"))
    items = tuple(Item(1, str(n), 1) for n in range(2))
    spreads = of_scores(Scores(papers, items, points)).spreads
    whole = [each for each in spreads if each.by == "version" and not each.place]
    assert [(each.group, each.papers, each.mean) for each in whole] == [
        ("A", 1, 1.0),
        ("B", 2, 1.5),
    ]
    assert [each.deviation for each in whole] == pytest.approx(
        [math.nan, math.sqrt(0.5)], nan_ok=True
    )


def test_open_papers_are_left_out_of_sums_and_that_is_told() -> None:
    assert PapersLeftOut(2) in report(PAPERS).facts
