"""The next release of a bank."""

from datetime import date
from pathlib import Path

import pytest

from probgen.bank.bank_folder import read_bank_folder
from probgen.bank.release import read_release, text_digest
from probgen.bank.template import Template
from probgen.department import next_release as module
from probgen.department.next_release import NextRelease, next_release, write_release
from probgen.input.fault import InputError
from probgen.statics.fingerprint import fingerprint
from tests.banks import (
    make_bank,
    make_ready,
    put,
    put_ready,
    ready_text,
    review,
    template_text,
    without_origin,
)

ARM, SEESAW = "forearm-load", "seesaw-two-riders"


DAY = date(2027, 8, 15)


def planned(bank: Path, name: str = "statics-2027.1", **more: str) -> NextRelease:
    chosen = {key: (value,) for key, value in more.items()}
    return next_release(read_bank_folder(bank), name, "A. Keeper", DAY, draws=20, **chosen)


def released(bank: Path, name: str = "statics-2027.1", **more: str) -> NextRelease:
    found = planned(bank, name, **more)
    write_release(found)
    return found


def test_the_first_and_the_next(tmp_path: Path) -> None:
    bank = make_ready(tmp_path)
    first = released(bank)
    path = bank / "releases" / "statics-2027.1.toml"
    assert read_release(path) == first.release
    assert first.release.changes == (f"new: {ARM}", f"new: {SEESAW}")
    source = (bank / "templates" / ARM / "r1.toml").read_text("utf-8")
    own = read_bank_folder(bank).released("statics-2027.1").read(ARM)
    assert first.release.templates[ARM].text == text_digest(source)
    assert first.release.templates[ARM].physics == fingerprint(own.system)
    put_ready(bank, ARM, 2, ready_text(ARM, 2, direction='"90 - muscle_angle"'))
    put(bank, SEESAW, 2, ready_text(SEESAW, 2, level="5"))
    second = released(bank, "statics-2027.2")
    assert second.release.follows == "statics-2027.1"
    assert second.release.changes[0] == f"other physics: {ARM} (r1 -> r2)"
    assert second.release.changes[-1] == "1 as they were"
    assert [(each.id, each.newest) for each in second.waiting] == [(SEESAW, 2)]
    old, new = (read_bank_folder(bank).released(f"statics-2027.{n}") for n in (1, 2))
    assert (old.revisions, new.revisions) == ({ARM: 1, SEESAW: 1}, {ARM: 2, SEESAW: 1})


def test_nothing_other_is_a_release_too_and_some_may_be_left_out(tmp_path: Path) -> None:
    bank = make_ready(tmp_path)
    released(bank)
    assert released(bank, "statics-2027.2").release.changes == ("2 as they were",)
    assert list(planned(bank, "b", only=ARM).release.templates) == [ARM]
    assert planned(bank, "b", without=ARM).release.changes == (f"gone: {ARM}", "1 as they were")
    (fault,) = planned(bank, "b", without="forearm-lode").faults
    assert (fault.found, fault.mend) == ('"forearm-lode"', 'did you mean "forearm-load"?')


def test_one_withdrawn_is_gone_also_with_its_folder(tmp_path: Path) -> None:
    bank = make_ready(tmp_path)
    released(bank)
    review(bank, ARM, 1, "withdrawn", date="2027-09-01")
    assert planned(bank, "b").release.changes == (f"gone: {ARM}", "1 as they were")
    (bank / "templates" / ARM / "r1.toml").unlink()
    found = planned(bank, "b")
    assert (found.release.changes, found.faults) == ((f"gone: {ARM}", "1 as they were"), ())


def test_one_never_released_may_be_taken_away(tmp_path: Path) -> None:
    bank = make_ready(tmp_path, [ARM])
    put(bank, SEESAW)
    released(bank)
    (bank / "templates" / SEESAW / "r1.toml").unlink()
    assert planned(bank, "b").faults == ()


def test_a_renamed_one_is_told_so(tmp_path: Path) -> None:
    bank = make_ready(tmp_path)
    released(bank)
    review(bank, ARM, 1, "withdrawn", date="2027-09-01")
    put_ready(bank, "forearm-bag", 1, ready_text(ARM, 1, id='"forearm-bag"'))
    found = planned(bank, "b")
    assert found.release.changes[0] == f"renamed: forearm-bag (r1, formerly {ARM})"
    assert found.faults == ()


def test_nothing_is_written_where_something_is_wrong_and_all_is_told(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    (fault,) = planned(bank).faults
    assert fault.expected == "one at least"
    put_ready(bank, ARM, 1, without_origin(template_text(ARM)))
    put_ready(bank, SEESAW, 1, ready_text(SEESAW, level="9"))
    found = planned(bank, "No Name")
    assert sorted({fault.field for fault in found.faults}) == [
        "goals[1]", "goals[2]", "level",
        "origin.author, origin.source, origin.licence, origin.language, minutes", "release",
    ]  # fmt: skip
    with pytest.raises(InputError):
        write_release(found)
    assert not (bank / "releases").exists()


def test_half_merged_reviews_and_an_edited_release(tmp_path: Path) -> None:
    bank = make_ready(tmp_path)
    released(bank)
    path = bank / "reviews.csv"
    text = path.read_text("utf-8")
    path.write_text(f"{text}<<<<<<< mine\n=======\n>>>>>>> theirs\n", "utf-8")
    (fault,) = planned(bank, "b").faults
    assert fault.field == "line 4"
    path.write_text(text, "utf-8")
    file = bank / "releases" / "statics-2027.1.toml"
    file.write_text(file.read_text("utf-8").replace("2027-08-15", "2027-08-14"), "utf-8")
    with pytest.raises(InputError, match="a release that was edited"):
        planned(bank, "b")


def test_only_what_the_release_before_has_not_is_proved_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bank = make_ready(tmp_path)
    proved: list[list[str]] = []

    def judge(_: object, templates: list[Template], draws: int) -> tuple[()]:
        proved.append([each.id for each in templates])
        return ()

    monkeypatch.setattr(module, "judge_draws", judge)
    released(bank)
    put_ready(bank, ARM, 2, ready_text(ARM, 2, level="5"))
    planned(bank, "b")
    assert proved == [[ARM, SEESAW], [ARM]]


def test_a_long_list_of_changes_is_cut(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    bank = make_ready(tmp_path)
    monkeypatch.setattr(module, "_LONGEST_LINE", 5)
    assert planned(bank).release.changes == ("new: ", "new: ")
    monkeypatch.setattr(module, "MOST_CHANGES", 1)
    found = released(bank)
    assert found.release.changes == ("and 2 lines more: compare the two releases",)


def test_who_releases_it_is_a_text_that_can_be_seen(tmp_path: Path) -> None:
    bank = read_bank_folder(make_ready(tmp_path))
    found = next_release(bank, "a", "  A.  Keeper ", DAY, draws=20)
    assert (found.release.by, found.faults) == ("A. Keeper", ())
    for by in ("", "\u2800", "A.\x1bKeeper"):
        (fault,) = next_release(bank, "a", by, DAY, draws=20).faults
        assert (fault.file, fault.field, fault.asked) == ("", "by", True)


def test_of_two_made_of_one_name_at_one_moment_the_first_stays(tmp_path: Path) -> None:
    bank = make_ready(tmp_path)
    one, other = planned(bank), planned(bank, only=ARM)
    path = write_release(one)
    before = path.read_bytes()
    with pytest.raises(InputError, match="a name of its own"):
        write_release(other)
    assert path.read_bytes() == before
