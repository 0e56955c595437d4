"""A class that was marked, in English."""

from __future__ import annotations

from probgen.quantities.expression import Name
from probgen.wording.block import Text
from probgen.wording.english import names
from probgen.wording.english.grammar import counted
from probgen.wording.english.saying import say
from probgen.wording.english.slips import one_slip
from probgen.wording.facts.class_marks import (
    AlphaFound,
    ItemAgainst,
    ItemAsked,
    ItemEasierOn,
    ItemsHard,
    PapersLeftOut,
    SlipCounted,
    StepCounted,
    ValueMatters,
    VersionsAlike,
    VersionsDiffer,
)
from probgen.wording.nouns import Nouns
from probgen.wording.sentence import Inlines, filled, listed
from probgen.working.result import ResultKind, target_of


@say.register
def item_asked(fact: ItemAsked, nouns: Nouns) -> Inlines:
    own, id = fact.nouns, fact.answer
    asked = target_of(own.system, own.labels, id)
    match asked and asked.kind:
        case ResultKind.LIMIT:
            return (Text("what happens first"),)
        case ResultKind.VERDICT:
            return (Text(f"whether it holds (if not, {names.limit(id, own)})"),)
        case ResultKind.MAGNITUDE | ResultKind.DIRECTION as kind if asked:
            direction = "direction of the " if kind is ResultKind.DIRECTION else ""
            by, letter = names.the_element(asked.owner, own), Name(asked.owner, asked.symbol)
            return filled("{direction}force from {by} {R}", direction=direction, by=by, R=letter)
        case _:
            return _quantity(id, own)


def _quantity(id: str, nouns: Nouns) -> Inlines:
    """What an author calls it, and its letter; the id where nobody has named it."""
    label = nouns.labels.quantities.get(id)
    if label is None:
        return (Text(id),)
    return filled("{named} {q}", named=names.quantity(id, nouns), q=Name(id, label.symbol))


def _item(item: ItemAsked) -> Inlines:
    return filled("problem {n}, {asked}", n=str(item.problem), asked=say(item, item.nouns))


def _chance(p: float) -> str:
    return "p < 0.001" if p < 0.001 else f"p = {p:.2g}"


@say.register
def alpha_found(fact: AlphaFound, nouns: Nouns) -> Inlines:
    if fact.alpha >= 0.8:
        meant = "the sum tells students apart well"
    elif fact.alpha >= 0.6:
        meant = "the sum tells students apart fairly, as homework mostly does"
    else:
        meant = "the items ask for different things, or are too few for the sum to tell much"
    over = f"{counted(fact.items, 'item')} on {counted(fact.papers, 'paper')}"
    return (Text(f"Cronbach's alpha is {fact.alpha:.2f} over {over}: {meant}."),)


@say.register
def papers_left_out(fact: PapersLeftOut, nouns: Nouns) -> Inlines:
    papers = counted(fact.papers, "paper")
    told = f"{papers} with answers that a person has to decide yet are left out of sums"
    return (Text(f"{told[:1].upper()}{told[1:]}."),)


@say.register
def items_hard(fact: ItemsHard, nouns: Nouns) -> Inlines:
    items = listed([_item(each) for each in fact.items], "; and ", "; ")
    return filled("Less than {part} % of the points are earned in {items}.",
                  part=f"{100 * fact.part:.0f}", items=items)  # fmt: skip


@say.register
def item_against(fact: ItemAgainst, nouns: Nouns) -> Inlines:
    pattern = (
        "Papers that are good otherwise do worse in {item} (correlation {r}): look whether its "
        "statement or key misleads."
    )
    return filled(pattern, item=_item(fact.item), r=f"{fact.correlation:.2f}")


@say.register
def versions_alike(fact: VersionsAlike, nouns: Nouns) -> Inlines:
    versions = listed(fact.versions, " and ")
    pattern = (
        "Versions {versions} differ by no more than chance may bring about (Kruskal-Wallis, {p}). "
        "That is no proof that they are alike: with so few papers, two versions less than about "
        "{least} points apart would mostly go unnoticed."
    )
    return filled(pattern, versions=versions, p=_chance(fact.p), least=f"{fact.least:.2g}")


@say.register
def versions_differ(fact: VersionsDiffer, nouns: Nouns) -> Inlines:
    pattern = (
        "Versions {versions} differ by more than chance mostly brings about (Kruskal-Wallis, {p}): "
        "papers of {hardest} have {apart} points fewer than those of {easiest} on average. Who "
        "got which version may play a part too."
    )
    return filled(
        pattern,
        versions=listed(fact.versions, " and "),
        p=_chance(fact.p),
        hardest=fact.hardest,
        easiest=fact.easiest,
        apart=f"{fact.apart:.2g}",
    )


@say.register
def item_easier_on(fact: ItemEasierOn, nouns: Nouns) -> Inlines:
    way = "easier" if fact.ratio > 1.0 else "harder"
    size = "much" if fact.large else "somewhat"
    by_chance = max(1, round(fact.comparisons / 20))
    odds = f"odds {fact.ratio:.2g} times"
    if fact.low > 0.0:
        odds = f"{odds}, {fact.low:.2g} to {fact.high:.2g}"
    asked = say(fact.item, fact.item.nouns)
    told = f"is {size} {way} on version {fact.version} for papers as good otherwise"
    chance = f"of {fact.comparisons} comparisons about {by_chance} may look so by chance"
    rest = f"{told} (Mantel-Haenszel, {odds}); {chance}."
    return filled("Problem {n}, {asked}, {rest}", n=str(fact.item.problem), asked=asked, rest=rest)


@say.register
def value_matters(fact: ValueMatters, nouns: Nouns) -> Inlines:
    way = "more" if fact.correlation > 0.0 else "fewer"
    return filled(
        "In problem {n}, papers with a larger {given} earn {way} points (Spearman {r}, {p}).",
        n=str(fact.problem),
        given=_quantity(fact.given, fact.nouns),
        way=way,
        r=f"{fact.correlation:.2f}",
        p=_chance(fact.p),
    )


@say.register
def slip_counted(fact: SlipCounted, nouns: Nouns) -> Inlines:
    slips = listed([one_slip(fact.turning, each, nouns) for each in fact.slips], "; and with it ")
    return filled("{where}: {slips}", where=_where(fact.problem, fact.papers), slips=slips)


@say.register
def step_counted(fact: StepCounted, nouns: Nouns) -> Inlines:
    step = say(fact.step, nouns)
    return filled("{where}: {step}", where=_where(fact.problem, fact.papers), step=step)


def _where(problem: int, papers: int) -> str:
    return f"Problem {problem}, {counted(papers, 'paper')}"
