"""A comparison's page is read back, and looked at in a browser."""

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Literal

import pytest
from selenium.webdriver.common.keys import Keys

from probgen.build.workers import Crew
from probgen.department.compared import Comparison, compared
from probgen.department.comparison_page import comparison_page
from probgen.department.state import read_state
from probgen.department.trial import TRIALS
from probgen.wording.english.comparison import COMPARISON
from tests import markup
from tests.banks import make_bank, put, template_text
from tests.browser import Browser, browser

HOSTILE = '<script>alert(1)</script> & \\"<img src=x onerror=alert(2)>'


@cache
def comparison() -> Comparison:
    """Other physics, other marks, other words of somebody who tries to write markup, one new."""
    with TemporaryDirectory() as folder:
        ids = ("forearm-load", "seesaw-two-riders", "well-windlass")
        before = make_bank(Path(folder) / "before", ids)
        after = make_bank(Path(folder) / "after", ids[2:])
        physics = template_text(ids[0], 2, direction='"90 - muscle_angle"')
        put(after, ids[0], 2, physics.replace("still in one", "calm in <b>one"))
        put(after, ids[1], 2, template_text(ids[1], 2, title=f'"{HOSTILE}"'))
        put(after, "ladder-smooth-wall")
        old = replace(read_state(str(before)), name="<")
        new = replace(read_state(str(after)), name=">")
        return compared(old, new, Crew(1), lambda stage, done, total: None, show=True)


@cache
def page() -> str:
    return comparison_page(comparison())


def article(id: str) -> str:
    return page().split(f'<article id="{id}"')[1].split("</article>")[0]


def test_every_template_that_is_other_is_there_once_and_pointed_at() -> None:
    read = markup.read(page())
    assert [each["id"] for each in read.all("article")] == [
        "forearm-load", "seesaw-two-riders", "ladder-smooth-wall",
    ]  # fmt: skip
    assert len(read.ids) == len(set(read.ids))
    listed = page().split("<nav")[1].split("</nav>")[0]
    pointed = {
        *re.findall(r'href="#([^"]+)"', page()),
        *re.findall(r'labelledby="([^"]+)"', page()),
    }
    assert pointed <= set(read.ids)
    assert listed.count("<a ") == 3
    assert "1 new, 0 gone, 2 changed, 1 as they were" in markup.one_line(read)


def test_nothing_runs_and_nothing_is_fetched() -> None:
    for tag, attributes in markup.read(page()).found:
        assert tag not in {"script", "link", "img", "iframe", "object", "base", "form"}
        assert not {"src", "onload", "onclick", "onerror", "style"} & attributes.keys()
        assert (attributes.get("href") or "#").startswith("#")
    assert "url(" not in page()
    assert "script-src" not in page()
    assert "default-src 'none'" in page()


def test_what_somebody_typed_stands_there_as_typed() -> None:
    words = markup.one_line(markup.read(page()))
    assert "calm in <b>one" in words
    assert '<script>alert(1)</script> & "<img src=x onerror=alert(2)>' in words
    assert "< → >" in words


def test_words_are_marked_and_equal_draws_stand_side_by_side() -> None:
    arm = article("forearm-load")
    for told in ("<del>still</del>", "<ins>calm</ins>", "<del>+</del>", "<ins>-</ins>"):
        assert told in arm
    assert arm.count('<th scope="row">') == TRIALS
    assert arm.count("<svg") == 2
    assert "The same answers in 0 of 20 equal draws." in arm
    (change,) = (each for each in comparison().changes.changed if each.id == "forearm-load")
    for trial in change.trials:
        for id, printed in (*trial.before, *trial.after):
            assert f"{id}: {printed}<" in arm
    assert '<th scope="row">' not in article("seesaw-two-riders")
    assert article("ladder-smooth-wall").count("<svg") == 1


def test_other_marks_are_listed_where_they_are_other() -> None:
    assert COMPARISON.scheme not in page()
    (arm, *others) = comparison().shown
    assert arm.after
    scheme = arm.after.solution.scheme
    one, other, *rest = scheme
    other_scheme = (replace(one, points=one.points + 1), replace(other, points=other.points - 1))
    solution = replace(arm.after.solution, scheme=(*other_scheme, *rest))
    marked = replace(arm, after=replace(arm.after, solution=solution))
    found = comparison_page(replace(comparison(), shown=(marked, *others)))
    assert COMPARISON.scheme in found
    assert found.count('<ul class="side">') == 2


def test_words_come_from_the_language_and_work_that_can_hurt_has_its_caution() -> None:
    other = comparison_page(comparison(), replace(COMPARISON, language="de", new="neu"))
    assert '<html lang="de">' in other
    assert ">neu</h2>" in other
    words = markup.one_line(markup.read(page()))
    assert dict(COMPARISON.cautions)["ladder"] in words
    assert dict(COMPARISON.cautions)["lifting"] not in words


@pytest.fixture(scope="module")
def window() -> Iterator[Browser]:
    with browser() as opened:
        yield opened


@pytest.mark.parametrize(
    ("scheme", "width"),
    [
        ("light", 1280),
        ("dark", 390),
        pytest.param("light", 390, marks=pytest.mark.proof),
        pytest.param("dark", 1280, marks=pytest.mark.proof),
    ],
)
def test_axe_finds_nothing_and_keys_lead_to_each_change(
    window: Browser, tmp_path: Path, scheme: Literal["light", "dark"], width: int
) -> None:
    path = tmp_path / "comparison.html"
    path.write_text(page(), "utf-8")
    window.see(path, scheme, width)
    assert window.findings() == []
    assert window.ask("document.documentElement.scrollWidth <= innerWidth")
    window.press_until('nav a[href="#seesaw-two-riders"]')
    window.press(Keys.ENTER)
    window.expect("location.hash", "#seesaw-two-riders")
    top = window.ask("document.getElementById('seesaw-two-riders').getBoundingClientRect().top")
    assert 0 <= top < 300
    assert not window.driver.get_log("browser")
