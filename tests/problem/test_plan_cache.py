"""Plans kept on disk: found again, never mistaken, never in the way."""

from dataclasses import replace
from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.template import Template
from probgen.problem import plan_cache
from probgen.problem.plan_cache import plans_folder, prepared
from probgen.problem.problem import prepare
from probgen.working.convention import Convention


@pytest.fixture(autouse=True)
def cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.fixture
def template() -> Template:
    return default_bank().read("beam-stay-cable")


def files() -> list[Path]:
    return sorted(plans_folder().glob("*"))


def test_a_plan_is_made_once(template: Template, monkeypatch: pytest.MonkeyPatch) -> None:
    first = prepared(template, Convention())
    assert first.plan == prepare(template, Convention()).plan
    monkeypatch.setattr(plan_cache, "prepare", None)  # would fail if it were called
    assert prepared(template, Convention()).plan == first.plan
    assert len(files()) == 1


@pytest.mark.parametrize(
    "convention",
    [Convention(torque="arm"), Convention(positive="clockwise"), Convention(axes="level")],
)
def test_another_method_has_another_plan(template: Template, convention: Convention) -> None:
    prepared(template, Convention())
    assert prepared(template, convention).plan == prepare(template, convention).plan
    assert len(files()) == 2


def test_a_changed_template_has_another_plan(template: Template) -> None:
    prepared(template, Convention())
    changed = replace(template, system=replace(template.system, pivot="C"))
    assert prepared(changed, Convention()).plan == prepare(changed, Convention()).plan
    assert len(files()) == 2


@pytest.mark.parametrize("content", [b"", b"no plan", b"\x80\x04N."])
def test_a_file_that_is_no_plan_is_written_anew(template: Template, content: bytes) -> None:
    expected = prepared(template, Convention()).plan
    files()[0].write_bytes(content)
    assert prepared(template, Convention()).plan == expected
    assert files()[0].read_bytes() != content


def test_a_cache_that_cannot_be_written_is_no_matter(
    template: Template, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    assert prepared(template, Convention()).plan.steps
