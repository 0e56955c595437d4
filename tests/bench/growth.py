"""How memory and time grow: with the number of students, and with the number of workers."""

from tests.bench.line import at_least, at_most
from tests.bench.school import School, cores


def bench(school: School, students: int, large: int) -> None:
    """A tenth of the class, the class, a large one; then the class on one core, two, four, ..."""
    tenth = max(1, students // 10)
    tiny, few, many = (school.build(size) for size in (tenth, students, large))
    at_most(f"memory-{large}-beside-{students}", many.memory / few.memory, 1.3)
    at_most(f"memory-{large}", many.memory, 600.0, "MB")
    for larger, size, smaller, of in ((few, students, tiny, tenth), (many, large, few, students)):
        linear = (larger.seconds / size) / (smaller.seconds / of)
        at_most(f"seconds-a-student-{size}-beside-{of}", linear, 1.1)
    alone = school.build(students, 1)
    workers = 2
    while workers <= cores():
        faster = alone.seconds / school.build(students, workers).seconds
        at_least(f"speed-{workers}-workers-beside-1", faster, 0.8 * workers)
        workers *= 2
