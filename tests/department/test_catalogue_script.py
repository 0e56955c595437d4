"""The page in a real browser: what is typed filters, what is ticked is copied, all by keyboard."""

from collections.abc import Iterator
from pathlib import Path
from typing import Literal

import pytest
from selenium.webdriver.common.keys import Keys

from probgen.build.workers import Crew
from probgen.department.catalogue import Catalogue, catalogue_of
from probgen.department.catalogue_page import catalogue_page
from probgen.input.toml import parse_toml
from probgen.problem.lookup import choose_bank
from probgen.wording.english.catalogue import CATALOGUE
from tests.banks import make_bank, put, template_text
from tests.browser import Browser, browser

IDS = ["crate-ramp-strap", "seesaw-two-riders", "forearm-load"]
SHOWN = "[...document.querySelectorAll('article:not([hidden])')].map((each) => each.id)"
PLACES = """
window.places = [...document.querySelectorAll("a, input, select, summary, button, textarea")];
window.placed = (each) => `${places.indexOf(each)} ${each.outerHTML.slice(0, 80)}`;
"""
COUNTED = "document.getElementById('_counted').textContent"


@pytest.fixture(scope="module")
def catalogue(tmp_path_factory: pytest.TempPathFactory) -> Catalogue:
    folder = make_bank(tmp_path_factory.mktemp("bank") / "statics", IDS)
    text = template_text("forearm-load", 2, direction='"90 - muscle_angle"')
    put(folder, "forearm-load", 2, text)
    bank = choose_bank(str(folder), Path(), "BANK", "")
    return catalogue_of(bank, Crew(1), lambda stage, done, total: None)


@pytest.fixture(scope="module")
def page(catalogue: Catalogue, tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("page") / "catalogue.html"
    path.write_text(catalogue_page(catalogue), "utf-8")
    return path


@pytest.fixture(scope="module")
def window() -> Iterator[Browser]:
    with browser() as opened:
        yield opened


def complaints(window: Browser) -> list[str]:
    """What the browser had to say against the page."""
    return [str(each["message"]) for each in window.driver.get_log("browser")]


def all_ids(catalogue: Catalogue) -> list[str]:
    return [card.id for card in catalogue.cards]


def test_what_is_typed_filters(window: Browser, page: Path, catalogue: Catalogue) -> None:
    window.see(page)
    assert window.ask(SHOWN) == all_ids(catalogue)
    assert window.ask(COUNTED) == "3 of 3 problems"
    window.press_until("#_search")
    for letters, shown in (
        ("BICE", ["forearm-load"]),
        ("PS zeb", []),
        ("\ue003" * 3, ["forearm-load"]),
    ):
        window.press(letters)
        assert window.ask(SHOWN) == shown
        assert window.ask(COUNTED) == f"{len(shown)} of 3 problems"
        assert window.ask("document.getElementById('_none').hidden") == bool(shown)
    assert window.ask("document.querySelectorAll('.chapter:not([hidden])').length") == 1
    window.press(Keys.ESCAPE)
    assert window.ask(SHOWN) == all_ids(catalogue)
    assert complaints(window) == []


def test_family_level_and_goal_filter(window: Browser, page: Path, catalogue: Catalogue) -> None:
    window.see(page)
    window.press_until("[name=family][value=levers]")
    window.press(Keys.SPACE)
    assert window.ask(SHOWN) == ["seesaw-two-riders"]
    window.press_until("[name=family][value=limbs]")
    window.press(Keys.SPACE)
    assert set(window.ask(SHOWN)) == {"seesaw-two-riders", "forearm-load"}
    level = next(card.template.level for card in catalogue.cards if card.id == "forearm-load")
    window.press_until(f'[name=level][value="{level}"]')
    window.press(Keys.SPACE)
    fitting = {card.id for card in catalogue.cards if card.template.level == level}
    assert set(window.ask(SHOWN)) == fitting & {"seesaw-two-riders", "forearm-load"}
    window.press_until("[type=reset]", Keys.SHIFT + Keys.TAB)
    window.press(Keys.ENTER)
    window.expect(SHOWN, all_ids(catalogue))
    window.press_until("#_goal")
    for goal in catalogue.goals:
        window.press(Keys.ARROW_DOWN)
        wanted = [card.id for card in catalogue.cards if goal in card.template.goals]
        assert window.ask("document.getElementById('_goal').selectedOptions[0].text") == goal
        assert window.ask(SHOWN) == wanted


def test_what_is_ticked_is_copied(window: Browser, page: Path) -> None:
    window.see(page)
    assert window.ask("document.getElementById('_choice').hidden")
    for id in ("crate-ramp-strap", "forearm-load"):
        window.press_until(f"#{id} .tick input")
        window.press(Keys.SPACE)
    assert window.ask("document.getElementById('_chosen').textContent") == "2 chosen"
    window.press_until("#_copy")
    window.press(Keys.ENTER)
    window.expect("document.getElementById('_said').textContent", CATALOGUE.copied)
    taken = parse_toml(window.clipboard(), "copied")["problem"]
    assert sorted((each["template"], each["points"]) for each in taken) == [
        ("crate-ramp-strap", 10),
        ("forearm-load", 10),
    ]
    window.press(Keys.TAB, Keys.ENTER)
    assert window.ask("document.getElementById('_choice').hidden")
    assert window.ask("document.activeElement.matches('.tick input')")


def test_a_view_is_opened_by_key_and_by_fragment(window: Browser, page: Path) -> None:
    window.see(page)
    opened = "[...document.querySelectorAll('details[open]')].map((each) => each.parentElement.id)"
    window.expect(opened, [])
    window.press_until("#seesaw-two-riders h3 a")
    window.press(Keys.ENTER)
    window.expect(opened, ["seesaw-two-riders"])
    window.press_until("#seesaw-two-riders summary")
    window.press(Keys.ENTER)
    window.expect(opened, [])
    window.press_until("#_search", Keys.SHIFT + Keys.TAB)
    window.press("seesaw")
    window.ask("location.hash = 'forearm-load'")
    window.expect(opened, ["forearm-load"])
    assert "forearm-load" in window.ask(SHOWN)
    top = window.ask("document.getElementById('forearm-load').getBoundingClientRect().top")
    assert 0 < top < 300


def test_all_that_can_be_used_is_reached_by_key(window: Browser, page: Path) -> None:
    window.see(page)
    window.press_until("#forearm-load .tick input")
    window.press(Keys.SPACE)
    window.driver.execute_script(PLACES)
    wanted = set(window.ask("places.filter((each) => each.checkVisibility()).map(placed)"))
    window.ask("document.activeElement.blur()")
    met = set()
    for _ in range(len(wanted) + 5):  # once around, also through the window's own frame
        window.press(Keys.TAB)
        met.add(window.ask("placed(document.activeElement)"))
    assert len(wanted) > 20
    assert wanted - met == set()


@pytest.mark.parametrize(
    ("scheme", "width"),
    [
        ("light", 1280),
        ("dark", 1280),
        pytest.param("light", 390, marks=pytest.mark.proof),
        pytest.param("dark", 390, marks=pytest.mark.proof),
    ],
)
def test_axe_finds_nothing(
    window: Browser, page: Path, scheme: Literal["light", "dark"], width: int
) -> None:
    window.see(page, scheme, width)
    window.press_until("#forearm-load .tick input")
    window.press(Keys.SPACE)
    window.ask("location.hash = 'forearm-load'")
    window.expect("document.querySelector('#forearm-load details').open", True)
    assert window.ask("document.documentElement.scrollWidth <= innerWidth")
    assert window.findings() == []


def test_axe_would_find_something(window: Browser, page: Path) -> None:
    window.see(page)
    window.ask("document.querySelector('label[for=_search]').remove()")
    window.ask("document.getElementById('_search').removeAttribute('placeholder')")
    assert "label" in {rule for rule, _ in window.findings()}
