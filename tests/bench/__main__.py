"""What a class costs, beside what it would cost otherwise: `make bench`.

Every figure is a ratio of two things measured in this run on this machine, or memory; each ends as
one line `bench NAME VALUE aim AIM ok|missed`.  Where an aim on the class is missed, the shares of
the stages stand below.

STUDENTS=300 make bench    the class of the aims; left out, a small one, which is quick
LARGE=3000 make bench      the large class that memory and growth are measured on; ten times as many
PAPERS=10000 make bench    simulated papers a family that slips are named on; left out, a thousand
BANK=2000 make bench       templates of a department's bank; left out, two hundred
"""

import os
import tempfile
from compileall import compile_dir
from pathlib import Path

import probgen
from tests.bench import (
    afterwards,
    author,
    bank,
    engine,
    growth,
    marking,
    naming,
    pages,
    python_share,
    spreading,
    startup,
)
from tests.bench.school import School


def main() -> None:
    students = int(os.environ.get("STUDENTS", "24"))
    large = int(os.environ.get("LARGE", str(10 * students)))
    papers = int(os.environ.get("PAPERS", "1000"))
    load = os.getloadavg()[0]
    print(f"{os.cpu_count()} cores, load {load:.1f}, {students} students x 5 problems")
    compile_dir(Path(probgen.__file__).parent, quiet=2)  # as it is where it has been installed
    with tempfile.TemporaryDirectory(prefix="probgen-bench-") as name:
        school = School(Path(name))
        (Path(name) / "marking").mkdir()
        engine.bench()
        startup.bench()
        naming.bench(papers)
        spreading.bench()
        marking.bench(Path(name) / "marking", large)
        author.bench(school)
        afterwards.bench(school, students)
        pages.bench(school, students)
        python_share.bench(school, students)
        growth.bench(school, students, large)
        (Path(name) / "banks").mkdir()
        bank.bench(Path(name) / "banks", int(os.environ.get("BANK", "200")))


if __name__ == "__main__":
    main()
