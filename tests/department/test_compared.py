"""Two states of a bank: what both have is not read, what is other is found by several."""

from pathlib import Path

import pytest

from probgen.build.workers import Crew
from probgen.department import compared as module
from probgen.department.change import Kind
from probgen.department.compared import Comparison, compared
from probgen.department.state import read_state
from probgen.input.fault import InputError
from tests.banks import make_bank, put, template_text

IDS = ("forearm-load", "well-windlass", "seesaw-two-riders", "tiptoe-achilles")


def two(folder: Path) -> tuple[Path, Path]:
    """Two states: one template of other physics, one renamed, one new, one gone, one the same."""
    before, after = make_bank(folder / "before", IDS), make_bank(folder / "after", IDS[3:])
    put(after, IDS[0], 2, template_text(IDS[0], 2, direction='"90 - muscle_angle"'))
    put(after, "windlass", 1, template_text(IDS[1], id='"windlass"'))
    put(after, "diving-board", 2, template_text("diving-board", 2))
    return before, after


def held(before: Path, after: Path, workers: int = 1, *, show: bool = False) -> Comparison:
    report = lambda stage, done, total: None  # noqa: E731
    states = read_state(str(before)), read_state(str(after))
    return compared(*states, Crew(workers), report, show=show)


def test_each_is_found_and_shown_with_equal_numbers(tmp_path: Path) -> None:
    found = held(*two(tmp_path), show=True)
    assert (found.changes.new, found.changes.gone) == (("diving-board",), (IDS[2],))
    assert [(kind, [each.id for each in own]) for kind, own in found.chapters] == [
        (Kind.PHYSICS, [IDS[0]]), ("", ["windlass"]),
    ]  # fmt: skip
    assert found.changes.same == 1
    shown = {each.id: each for each in found.shown}
    assert shown.keys() == {IDS[0], IDS[2], "windlass", "diving-board"}
    arm, new, gone = shown[IDS[0]], found.new[0], found.gone[0]
    assert arm.before
    assert arm.after
    assert arm.before.draw.values == arm.after.draw.values
    assert (new.before, gone.after) == (None, None)
    assert new.after
    assert gone.before
    assert found.cautions == {"body", "design", "lifting"}


def test_several_at_a_time_find_the_same_and_nothing_more_is_shown_than_asked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, after = two(tmp_path)
    alone = held(before, after)
    assert alone.shown == ()
    monkeypatch.setattr(module, "_AT_ONCE", 1)
    assert held(before, after, workers=2).changes == alone.changes


def test_what_both_have_is_not_read(tmp_path: Path) -> None:
    before, after = two(tmp_path)
    for state in (before, after):
        put(state, IDS[3], 1, "no template at all")
    assert held(before, after).changes.same == 1
    put(after, IDS[3], 1, "nor this")
    with pytest.raises(InputError) as caught:
        held(before, after)
    assert {fault.file.split("/")[-4] for fault in caught.value.faults} == {"before", "after"}


def test_a_template_under_another_name_than_its_own(tmp_path: Path) -> None:
    before, after = two(tmp_path)
    put(after, "new-one", 1, template_text("diving-board", 1))
    with pytest.raises(InputError, match='"new-one", as the file or its folder is named'):
        held(before, after)
