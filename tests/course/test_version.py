"""Versions: one for each student, or an exam's few, dealt so that neighbours differ."""

from probgen.course.exam import Exam
from probgen.course.roster import Student
from probgen.course.version import versions_of_class, versions_of_exam

CLASS = [Student(f"Student {n}", f"s{n}", large=n == 5) for n in range(10)]
CODES = ["C0", "C1", "C2", "C3"]


def test_each_student_has_a_version() -> None:
    versions = versions_of_class(CLASS, [f"C{n}" for n in range(10)])
    assert [version.student for version in versions] == CLASS
    assert [version.number for version in versions] == list(range(10))
    assert [version.owner for version in versions if version.large] == ["Student 5 (s5)"]
    assert not any(version.letter or version.repeats for version in versions)


def test_an_exam_has_its_letters_and_large_print_where_it_is_needed() -> None:
    versions = versions_of_exam(Exam(4, row=4), CLASS, CODES)
    assert [(v.letter, v.large, v.number, v.code) for v in versions] == [
        ("A", False, 0, "C0"),
        ("B", False, 1, "C1"),
        ("C", False, 2, "C2"),
        ("D", False, 3, "C3"),
        ("D", True, 3, "C3"),
    ]  # student 5 sits in the second row, second place: one to the right, two on for the row
    assert [v.name for v in versions if v.repeats] == ["version-d-large-C3"]
    assert not any(v.student.name or v.student.id for v in versions)
