"""What is printed once each, and the names of its files."""

import pytest

from probgen.course.edition import Edition
from probgen.course.roster import Student
from probgen.course.version import Version, name_of_files, version_of


def edition(owner: str, name: str = "", code: str = "7K3MQ-9TXB4", large: bool = False) -> Edition:
    return Edition(code, owner, (), name, "B", large)


def test_a_paper_names_whom_it_named_when_it_was_handed_out() -> None:
    version = version_of(edition("s5", "Student 5", large=True), exam=False)
    assert version.owner == "Student 5 (s5)"
    assert (version.student.section, version.student.large, version.large) == ("B", True, True)
    assert (version.letter, version.repeats) == ("", False)
    assert not Version("", "a sheet of one problem", Student("", "")).large


def test_an_exams_version_is_nobodys_and_repeats_in_large_print() -> None:
    usual, large = (version_of(edition("D", large=big), exam=True) for big in (False, True))
    assert [(v.letter, v.large, v.repeats) for v in (usual, large)] == [
        ("D", False, False), ("D", True, True),
    ]  # fmt: skip
    assert usual.name == "version-d-7K3MQ-9TXB4"
    assert large.name == "version-d-large-7K3MQ-9TXB4"
    assert not any(v.student.name or v.student.id for v in (usual, large))


NAMES = {
    "Zoë Å. Müller": "zoë-å-müller-id-0-7K3MQ-9TXB4",
    "../../etc/passwd": "etc-passwd-id-0-7K3MQ-9TXB4",
    "李 明": "李-明-id-0-7K3MQ-9TXB4",
    "A" * 300: f"{'a' * 80}-id-0-7K3MQ-9TXB4",
    "con": "con-id-0-7K3MQ-9TXB4",
}


@pytest.mark.parametrize(("name", "file"), NAMES.items())
def test_file_names_are_safe_and_end_in_the_code(name: str, file: str) -> None:
    assert name_of_files(edition("id/0", name), exam=False) == file


def test_large_print_of_the_same_paper_has_another_file() -> None:
    assert name_of_files(edition("7", "Zoë", large=True), exam=False) == "zoë-7-large-7K3MQ-9TXB4"
