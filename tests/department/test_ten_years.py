"""Years of a department's bank: nothing slips into a release unseen, and none is ever lost."""

import random
from pathlib import Path

import pytest

from probgen.bank.uses import read_uses
from tests.department.courses import Course
from tests.department.years import Department, named_with

IDS = (
    "forearm-load", "ring-three-ropes", "tiptoe-achilles", "beam-stay-cable", "well-windlass",
    "seesaw-two-riders", "gate-two-hinges", "sign-arm-strut", "pedal-bell-crank", "reaction-board",
)  # fmt: skip

UNMERGED = "one text: here two changes of the same lines were not merged"


def live(
    folder: Path, ids: tuple[str, ...], releases: int, changes: int, builds: int, seed: str
) -> tuple[Department, Course]:
    """So many releases of a bank, so many changes before and builds after each; what is told of
    each is true.
    """
    own, course = Department(folder, ids, seed), Course(folder / "mechanics")
    own.release("statics.0")
    use(own, course, "statics.0", builds)
    for count in range(1, releases):
        for _ in range(changes):
            id, slip = own.random.choice(own.ids), own.random.random() < 0.3
            ways = ["change", "change", "change", "clash", "rename"]
            way = own.random.choice(ways) if id not in own.touched else "change"
            if id in own.renamed:
                continue
            if way == "rename":
                own.rename(id)
            elif way == "clash":
                assert own.clash(id, slip) == UNMERGED
            else:
                own.change(id, slip)
        found = own.release(f"statics.{count}")
        assert found.release.follows == f"statics.{count - 1}"
        told = found.release.changes
        assert named_with(told, "other physics") == own.slipped
        assert named_with(told, "renamed") == set(own.renamed)
        for each in (own.slipped, own.touched, own.renamed):
            each.clear()
        use(own, course, f"statics.{count}", builds)
    for name, texts in own.texts.items():
        bank = own.folder.released(name)
        assert {id: bank.read(id).source for id in bank.files} == texts
    return own, course


def use(own: Department, course: Course, release: str, builds: int) -> None:
    for id in random.Random(release).choices(own.ids, k=builds):
        course.set(release, id)
    own.commit("uses")


def test_two_years(tmp_path: Path) -> None:
    own, course = live(tmp_path, IDS[:3], releases=4, changes=2, builds=1, seed="b")
    assert min(own.slips, own.clashes, own.renames) >= 1
    assert len(read_uses(own.bank)) == len(course.printed) == 4
    assert course.lost(own.folder) == []
    first = course.printed[0]
    assert course.anew(first.folder, "anew") == first.pages


@pytest.mark.proof
def test_ten_years(tmp_path: Path) -> None:
    own, course = live(tmp_path, IDS, releases=20, changes=14, builds=5, seed="ten years")
    assert own.changed >= 200
    assert min(own.slips, own.clashes, own.renames) >= 10
    assert len(read_uses(own.bank)) == len(course.printed) == 100
    assert course.lost(own.folder) == []
    for each in course.printed[::10]:
        assert course.anew(each.folder, "anew") == each.pages
