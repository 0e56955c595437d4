"""Figures look as they did when somebody looked at them last."""

from __future__ import annotations

from pathlib import Path

import pytest

from .figures import DRAWINGS, TOLERANCE, differences, drawn, kept

LOOK = "see tests/golden/README.md; if the figures are meant to look so: make golden"
KEPT = sorted(path.stem for path in DRAWINGS.glob("*.svg"))


@pytest.fixture(scope="module")
def now() -> dict[str, str]:
    return drawn()


@pytest.mark.parametrize("name", KEPT)
def test_a_figure_looks_as_it_was_kept(name: str, now: dict[str, str], tmp_path: Path) -> None:
    unlike = differences(kept(name), now[name])
    if unlike:
        (tmp_path / f"{name}.svg").write_text(now[name], encoding="utf-8")
        told = "\n".join(unlike[:3])
        pytest.fail(f"{DRAWINGS / name}.svg is now {tmp_path / name}.svg\n{told}\n{LOOK}")


def test_every_figure_is_kept_and_every_kept_figure_is_drawn(now: dict[str, str]) -> None:
    assert sorted(now) == KEPT


STROKE = '<path d="M1.50,2.00L30.00,-4.00" stroke="#000000" data-tag="body:beam"/>'
CHANGED = {
    "a little of a coordinate": ("30.00", f"{30 + 1.2 * TOLERANCE}"),
    "its sign": ("-4.00", "4.00"),
    "its kind": ("L30", "M30"),
    "its colour": ("#000000", "#ffffff"),
    "its name": ("beam", "seam"),
}


@pytest.mark.parametrize("what", CHANGED)
def test_a_change_of_a_stroke_is_seen(what: str) -> None:
    assert differences(STROKE, STROKE.replace(*CHANGED[what])) != []


def test_another_rounding_is_no_change() -> None:
    assert differences(STROKE, STROKE.replace("30.00", "30.01")) == []
    assert differences(STROKE, "") != []
