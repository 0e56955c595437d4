"""The page is read back: whole, escaped, needing no other file, with all that a card holds."""

import re
from base64 import b64encode
from dataclasses import replace
from datetime import date
from functools import cache
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from probgen.bank.bank import Bank
from probgen.bank.uses import Use, note_uses
from probgen.build.workers import Crew
from probgen.department import catalogue_page as module
from probgen.department.catalogue import Catalogue, catalogue_of
from probgen.department.catalogue_page import catalogue_page
from probgen.input.toml import parse_toml
from probgen.problem.lookup import choose_bank
from probgen.wording.english.catalogue import CATALOGUE
from tests import markup
from tests.banks import make_bank, put, review, template_text, without_origin
from tests.markup import Reader, one_line

HOSTILE = '<script>alert(1)</script> & \\"<img src=x onerror=alert(2)>'


def hostile_bank(folder: Path) -> Bank:
    """A bank whose texts try to be markup, with a template of three revisions."""
    bank = make_bank(folder, [])
    for id in ("seesaw-two-riders", "cabinet-slide-or-tip"):
        put(bank, id, 1, without_origin(template_text(id)))
    typed = f'"{HOSTILE}"'
    first = template_text("forearm-load", title=typed, author=typed, source=typed, minutes="12")
    put(bank, "forearm-load", 1, first)
    second = first.replace("revision = 1", "revision = 2").replace("still in one", "calm in <b>one")
    put(bank, "forearm-load", 2, second)
    third = second.replace("revision = 2", "revision = 3")
    put(bank, "forearm-load", 3, third.replace("90 + muscle_angle", "90 - muscle_angle"))
    head = bank / "bank.toml"
    head.write_text(head.read_text("utf-8").replace("Keeper of the bank", HOSTILE), "utf-8")
    return choose_bank(str(bank), Path(), "BANK", "")


@cache
def catalogue() -> Catalogue:
    with TemporaryDirectory() as folder:
        bank = hostile_bank(Path(folder))
        use = Use(
            date(2027, 9, 1), HOSTILE, "Week 2", "exam", "forearm-load", 1, "ab12", 90, 80, 0.724
        )
        note_uses(Path(folder), [use])
        review(Path(folder), "forearm-load", 3)
        return catalogue_of(bank, Crew(1), lambda stage, done, total: None)


@cache
def page() -> str:
    return catalogue_page(catalogue())


@cache
def read() -> Reader:
    return markup.read(page())


def words() -> str:
    return one_line(read())


def test_every_template_has_a_card_and_every_id_is_there_once() -> None:
    assert [each["id"] for each in read().all("article")] == [
        "seesaw-two-riders",
        "cabinet-slide-or-tip",
        "forearm-load",
    ]
    ids = read().ids
    assert len(ids) == len(set(ids))
    pointed = [
        (each.get("for") or each.get("aria-labelledby") or (each.get("href") or "")[1:])
        for _, each in read().found
    ]
    assert {each for each in pointed if each} <= set(ids)


def test_nothing_is_fetched_and_one_script_runs() -> None:
    for tag, attributes in read().found:
        assert tag not in {"link", "img", "iframe", "object", "base"}
        assert not {"src", "onload", "onclick", "onerror", "style"} & attributes.keys()
        assert (attributes.get("href") or "#").startswith("#")
    assert "url(" not in page()
    assert "@import" not in page()
    assert set(re.findall(r"https?://[^\s\"<]+", page())) == {"http://www.w3.org/2000/svg"}
    (script,) = re.findall(r"<script>(.*?)</script>", page(), re.DOTALL)
    digest = b64encode(sha256(script.encode()).digest()).decode()
    policy = next(each for each in read().all("meta") if "http-equiv" in each)["content"]
    assert policy is not None
    assert policy.startswith("default-src 'none';")
    assert f"script-src 'sha256-{digest}'" in policy
    assert "unsafe-inline" not in policy.partition("script-src")[2]


def test_what_an_author_typed_stands_there_as_typed() -> None:
    for typed in ("<script>alert", "<img", "<b>one"):
        assert typed not in page()
    assert words().count('<script>alert(1)</script> & "<img src=x onerror=alert(2)>') >= 4
    assert "calm in <b>one" in words()


def test_a_card_says_all_that_is_known_and_nothing_that_is_not() -> None:
    cards = {part.split('"')[0]: part for part in page().split('<article id="')[1:]}
    known, unknown = cards["forearm-load"], cards["seesaw-two-riders"]
    for name in (
        "minutes",
        "author",
        "licence",
        "reviewed",
        "use_last",
        "facility",
        "uses",
        "history",
    ):
        word = f">{getattr(CATALOGUE, name)}</{'h4' if name in ('uses', 'history') else 'dt'}>"
        assert word in known, name
        assert (word in unknown) == (name == "history"), name
    assert "<dd>2027-09-01</dd>" in known
    assert "<dd>72 % of the points</dd>" in known
    assert "<dd>12</dd>" in known
    assert "<dd>approved</dd>" in known
    assert "<td>Week 2</td><td>1</td><td>90</td><td>80</td><td>72 %</td>" in known


def test_a_view_has_draws_histograms_slips_working_findings_and_history() -> None:
    (card,) = (each for each in catalogue().cards if each.id == "forearm-load")
    view = page().split('<article id="forearm-load"')[1].split("</article>")[0]
    assert view.count('<div class="draw">') == 6
    spreads = card.spreads.given + card.spreads.answers
    assert view.count('<div class="spread">') == len(spreads) == 9
    for spread in spreads:
        assert spread.histogram is not None
        assert spread.histogram.outline in view
        assert f"<span>{spread.histogram.low}</span><span>{spread.histogram.high}</span>" in view
    assert len(card.solution.sections) == view.count('<div class="step">') > 3
    assert CATALOGUE.goes_wrong in view
    assert CATALOGUE.proved.split("{")[1].split("}")[1].split(";")[0] in view
    assert dict(CATALOGUE.cautions)["body"] in view
    for told in ("<del>still</del>", "<ins>calm</ins>", "other physics", "<del>+</del>"):
        assert told in view
    (trials,) = view.split(f'<th scope="col">{CATALOGUE.change.numbers}</th>')[1:]
    assert trials.split("</table>")[0].count('<th scope="row">') == 3


def test_the_lines_of_a_tick_are_those_of_an_assignment() -> None:
    values = [
        each["value"] or ""
        for each in read().all("input")
        if "name" not in each and each.get("value")
    ]
    told = [parse_toml(each, "lines")["problem"] for each in values]
    assert told == [[{"template": card.id, "points": 10}] for card in catalogue().cards]


def test_a_release_is_named_beside_the_lines() -> None:
    named = catalogue_page(replace(catalogue(), release="statics-2027.1"))
    assert "bank = &#34;statics-2027.1&#34;" in named
    assert "bank = " not in page()


def test_words_come_from_the_language() -> None:
    other = replace(CATALOGUE, view="Ansicht", language="de", search="Suche")
    found = catalogue_page(catalogue(), other)
    assert '<html lang="de">' in found
    assert ">Suche</label>" in found
    assert CATALOGUE.view not in found


@pytest.mark.parametrize(
    ("value", "shown"),
    [(0.0, "0"), (3.2e-13, "3 × 10<sup>−13</sup>"), (2.6e4, "3 × 10<sup>4</sup>")],
)
def test_small_numbers_are_powers_of_ten(value: float, shown: str) -> None:
    assert module._power(value) == shown
