"""`probgen work --watch`: a template file followed while somebody writes it."""

import importlib
import re
from collections.abc import Callable
from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from tests.cli.conftest import Run

module = importlib.import_module("probgen.cli.watch")
Act = Callable[[], object]


@pytest.fixture
def own(tmp_path: Path) -> Path:
    path = tmp_path / "forearm-load.toml"
    path.write_bytes(default_bank().files["forearm-load"].read_bytes())
    return path


@pytest.fixture
def between(monkeypatch: pytest.MonkeyPatch) -> Callable[[list[Act]], None]:
    """Has somebody act between two looks at the file, and then press Ctrl-C."""

    def plan(acts: list[Act]) -> None:
        left = iter([*acts])

        def pause(_: float) -> None:
            act = next(left, None)
            if act is None:
                raise KeyboardInterrupt
            act()

        monkeypatch.setattr(module.time, "sleep", pause)

    return plan


def retitled(path: Path, title: str) -> Act:
    text = re.sub(r'(?m)^title = ".*"$', f'title = "{title}"', path.read_text("utf-8"))
    return lambda: path.write_text(text, encoding="utf-8")


def test_each_save_is_worked_anew_and_the_last_page_stays_as_it_is(
    run: Run, own: Path, between: Callable[[list[Act]], None]
) -> None:
    pages: list[str] = []
    page = own.with_name("page.html")

    def look() -> None:
        pages.append(page.read_text("utf-8"))

    between([look, retitled(own, "An arm of another name"), look, look])
    done = run("work", own, "--watch", "--html", page)
    assert done.exit_code == 0, done.stderr
    assert done.stderr.count("is followed") == 2
    look()
    assert ["An arm of another name" in each for each in pages] == [False, True, True, True]
    assert ['http-equiv="refresh"' in each for each in pages] == [True, True, True, False]


def test_the_last_page_that_could_be_made_stays_where_the_last_save_is_wrong(
    run: Run, own: Path, between: Callable[[list[Act]], None]
) -> None:
    page = own.with_name("page.html")
    between([lambda: own.write_text("id = 3", encoding="utf-8"), lambda: None])
    done = run("work", own, "--watch", "--html", page)
    assert done.exit_code == 0
    assert "expected" in done.stderr
    text = page.read_text("utf-8")
    assert "http-equiv" in text
    assert 'http-equiv="refresh"' not in text


def test_what_is_wrong_meanwhile_is_told_and_a_file_away_is_waited_for(
    run: Run, own: Path, between: Callable[[list[Act]], None]
) -> None:
    whole = own.read_bytes()
    between(
        [
            lambda: own.write_text("id = 3", encoding="utf-8"),
            own.unlink,
            lambda: own.write_bytes(whole),
            lambda: None,
        ]
    )
    done = run("work", own, "--watch")
    assert done.exit_code == 0
    assert done.stdout.count("Proof: ") == 2
    assert "expected" in done.stderr
    assert done.stderr.count("is followed") == 3


def test_an_id_is_no_file_to_follow(run: Run) -> None:
    done = run("work", "forearm-load", "--watch")
    assert done.exit_code == 2
    assert "the path of a template file" in done.stderr
