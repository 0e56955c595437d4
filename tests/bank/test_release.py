"""Releases as files."""

from datetime import date
from pathlib import Path

import pytest

from probgen.bank.release import Release, Released, newest, read_release, release_text, text_digest
from probgen.input.fault import InputError
from tests.banks import make_bank, write_release


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return write_release(make_bank(tmp_path), "statics-2027.1", {"forearm-load": 1})


def test_one_as_it_was_made(path: Path) -> None:
    release = read_release(path)
    assert (release.name, release.bank, release.date) == (
        "statics-2027.1", "statics", date(2027, 8, 15),
    )  # fmt: skip
    (one,) = release.templates.values()
    assert (one.id, one.revision) == ("forearm-load", 1)
    text = (path.parents[1] / "templates/forearm-load/r1.toml").read_text("utf-8")
    assert one.text == text_digest(text) == text_digest(text.replace("\n", "\r\n"))


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("revision = 1", "revision = 2"),
        ("2027-08-15", "2027-08-16"),
        ('physics = "0', 'physics = "1'),
        ('id = "forearm-load"', 'id = "seesaw-two-riders"'),
    ],
)
def test_an_edited_one_is_refused(path: Path, old: str, new: str) -> None:
    path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")
    with pytest.raises(InputError, match="a release that was edited"):
        read_release(path)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("2027-08-15", '"15 August"', "a date such as"),
        ("2027-08-15", "2027-08-15T10:00:00", "a date such as"),
        ('"statics-2027.1"', '"other"', "as the file is named"),
        ('text = "', 'text = "x', "hexadecimal"),
        ("[[template]]", "[[template]]\nby = 1", "the fields"),
    ],
)
def test_faults_are_told_rather_than_the_digest(path: Path, old: str, new: str, said: str) -> None:
    path.write_text(path.read_text("utf-8").replace(old, new), "utf-8")
    with pytest.raises(InputError, match=said) as error:
        read_release(path)
    assert "edited" not in str(error.value)


def test_an_id_twice(path: Path) -> None:
    text = path.read_text("utf-8")
    path.write_text(text + text[text.index("\n[[template]]") :], "utf-8")
    with pytest.raises(InputError, match="every template once"):
        read_release(path)


LINES = (
    'reworded: "a" -> \\b',
    "    other numbers: 3° -> 5°, 力, é",
    "= # [x] \u2028 \U0001f600 \u00a0",
    " ",
)


@pytest.mark.parametrize("follows", ["", "statics-2026.2"])
@pytest.mark.parametrize("changes", [(), LINES])
def test_what_is_written_is_read_again(
    tmp_path: Path, follows: str, changes: tuple[str, ...]
) -> None:
    rows = [Released(id, 3, text_digest(id), text_digest(id)[:32]) for id in ("a-b", "c-d")]
    release = Release(
        "statics-2027.1", "statics", date(2027, 8, 15), 'A. "K" Keeper', follows, changes,
        {each.id: each for each in rows},
    )  # fmt: skip
    path = tmp_path / "statics-2027.1.toml"
    path.write_text(release_text(release), "utf-8")
    assert read_release(path) == release
    path.write_text(path.read_text("utf-8").replace("Keeper", "Reader"), "utf-8")
    with pytest.raises(InputError, match="a release that was edited"):
        read_release(path)


@pytest.mark.parametrize(
    ("rows", "last"),
    [
        ([], None),
        ([("a", 1, "")], "a"),
        ([("x.9", 1, ""), ("x.10", 1, "x.9")], "x.10"),
        ([("b", 2, "a"), ("a", 1, "")], "b"),
        ([("a", 1, ""), ("left", 2, "a"), ("right", 3, "a")], "right"),
        ([("a", 1, "b"), ("b", 2, "a")], "b"),
    ],
)
def test_the_newest_is_the_last_that_none_follows(
    rows: list[tuple[str, int, str]], last: str | None
) -> None:
    made = [Release(name, "s", date(2027, 8, day), "", of, (), {}) for name, day, of in rows]
    found = newest(made)
    assert (found.name if found else None) == last
