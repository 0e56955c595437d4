"""States of a bank by their names."""

import subprocess
from pathlib import Path

import pytest

from probgen.bank.reading import read_template
from probgen.department import state
from probgen.department.state import last_release, read_state
from probgen.input.fault import InputError
from probgen.input.outside import OutsideError
from tests.banks import git, make_bank, put, write_release


@pytest.fixture
def bank(tmp_path: Path) -> Path:
    """A bank below the top of a repository, with two states in it and a third not yet."""
    bank = make_bank(tmp_path / "repository" / "statics", ["forearm-load"])
    git(bank.parent, "init", "-q")
    git(bank.parent, "add", ".")
    git(bank.parent, "commit", "-qm", "first")
    put(bank, "forearm-load", 2)
    git(bank.parent, "add", ".")
    git(bank.parent, "commit", "-qm", "second")
    put(bank, "forearm-load", 3)
    return bank


def revision(named: str) -> int:
    text = read_state(named).texts["forearm-load"]
    return read_template(text.content, text.path).revision


def test_a_folder_a_release_and_what_git_knows(bank: Path) -> None:
    release = write_release(bank, "statics-2027.1", {"forearm-load": 1})
    named = (str(bank), f"{bank}@HEAD", f"{bank}@HEAD~1", str(release))
    assert [revision(each) for each in named] == [3, 2, 1, 1]


@pytest.mark.parametrize("at", ["HEAD~7", "no-such-branch", "--output=x", "-h"])
def test_a_revision_that_is_none(bank: Path, at: str) -> None:
    with pytest.raises(InputError, match="a revision of it"):
        read_state(f"{bank}@{at}")
    assert not list(bank.parent.rglob("x"))


def test_a_folder_without_git_and_a_machine_without_it(
    bank: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    alone = make_bank(tmp_path / "alone")
    with pytest.raises(InputError, match="not a git repository"):
        read_state(f"{alone}@HEAD")
    with pytest.raises(InputError, match="no such folder"):
        read_state(f"{tmp_path / 'nowhere'}@HEAD")
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(OutsideError, match="git is not there"):
        read_state(f"{bank}@HEAD")


@pytest.mark.parametrize("filters", [["filter.own.smudge"], ["filter.own.process"]], ids=str)
def test_settings_of_a_repository_start_no_program(
    filters: list[str], bank: Path, tmp_path: Path
) -> None:
    mark = tmp_path / "it-ran"
    program = tmp_path / "program"
    program.write_text(f"#!/bin/sh\ntouch {mark}\ncat\n")
    program.chmod(0o755)
    (bank / ".gitattributes").write_text("*.toml filter=own diff=own\n")
    git(bank.parent, "add", ".")
    git(bank.parent, "commit", "-qm", "third", "--no-verify")
    for setting in ("core.fsmonitor", *filters, "core.pager", "diff.own.textconv",
                    "tar.tar.command"):  # fmt: skip
        git(bank.parent, "config", setting, str(program))
    mark.unlink(missing_ok=True)
    read_state(f"{bank}@HEAD")
    assert not mark.exists()


def test_links_are_left_out_and_all_else_is_as_it_was(bank: Path) -> None:
    (bank / "link.toml").symlink_to("/etc/passwd")
    (bank / "templates" / "odd \n name.toml").write_bytes(b"\r\n\0blob")
    git(bank.parent, "add", ".")
    git(bank.parent, "commit", "-qm", "third", "--no-verify")
    out = bank.parent / "out"
    state._extract(bank, "HEAD", out)
    assert not (out / "link.toml").is_symlink()
    assert not (out / "link.toml").exists()
    assert (out / "templates" / "odd \n name.toml").read_bytes() == b"\r\n\0blob"
    assert (out / "bank.toml").read_bytes() == (bank / "bank.toml").read_bytes()


def test_files_that_git_lacks_are_told_and_not_fetched(bank: Path, tmp_path: Path) -> None:
    mark = tmp_path / "it-ran"
    listed = subprocess.run(
        ["git", "-C", bank, "ls-tree", "HEAD", "bank.toml"], capture_output=True, check=True
    ).stdout.split()
    id = listed[2].decode()
    (bank.parent / ".git" / "objects" / id[:2] / id[2:]).unlink()
    for setting, value in {
        "core.repositoryformatversion": "1",
        "extensions.partialClone": "origin",
        "remote.origin.url": "ssh://nowhere/x",
        "core.sshCommand": f"touch {mark}; false",
    }.items():
        git(bank.parent, "config", setting, value)
    with pytest.raises(InputError, match="files that git lacks"):
        read_state(f"{bank}@HEAD")
    assert not mark.exists()


@pytest.mark.parametrize("bound", ["_MOST_BYTES", "_MOST_FILES"])
def test_a_revision_beyond_a_bound(bound: str, bank: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(state, bound, 1)
    with pytest.raises(InputError, match="more than can be read"):
        read_state(f"{bank}@HEAD")


def test_a_folder_with_the_sign_in_its_name_is_a_folder(tmp_path: Path) -> None:
    bank = make_bank(tmp_path / "us@home", ["forearm-load"])
    assert revision(str(bank)) == 1


def test_the_newest_release_is_the_last(tmp_path: Path) -> None:
    bank = make_bank(tmp_path, ["forearm-load"])
    with pytest.raises(InputError, match="a release made of the bank"):
        last_release(str(bank))
    for name in ("statics-2027.1", "statics-2027.2"):
        write_release(bank, name, {"forearm-load": 1})
    assert last_release(str(bank)).endswith("statics-2027.2.toml")


def test_files_that_cannot_be_read_are_told_at_once(tmp_path: Path) -> None:
    bank = make_bank(tmp_path)
    for id in ("forearm-load", "seesaw-two-riders"):
        (bank / "templates" / id / "r1.toml").write_bytes(b"\xff\xfe\xfa")
    with pytest.raises(InputError) as error:
        read_state(str(bank))
    assert len(error.value.faults) == 2


def test_files_of_a_revision_are_named_by_it(bank: Path) -> None:
    text = read_state(f"{bank}@HEAD~1").texts["forearm-load"]
    assert text.path == f"{bank}@HEAD~1/templates/forearm-load/r1.toml"
