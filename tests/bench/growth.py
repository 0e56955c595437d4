"""How memory and time grow: with the number of students, and with the number of workers."""

from line import at_least, at_most
from school import School, cores


def bench(school: School, students: int, large: int) -> None:
    """The large class beside the small one, then the small one on one core, two, four, ..."""
    few, many = school.build(students), school.build(large)
    at_most(f"memory-{large}-beside-{students}", many.memory / few.memory, 1.3)
    at_most(f"memory-{large}", many.memory, 600.0, "MB")
    linear = (many.seconds / large) / (few.seconds / students)
    at_most(f"seconds-a-student-{large}-beside-{students}", linear, 1.1)
    alone = school.build(students, 1)
    workers = 2
    while workers <= cores():
        faster = alone.seconds / school.build(students, workers).seconds
        at_least(f"speed-{workers}-workers-beside-1", faster, 0.8 * workers)
        workers *= 2
