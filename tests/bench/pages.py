"""A class's pages: ours beside TeX alone on the same LaTeX, and beside one process a document."""

import tempfile
from collections.abc import Iterable, Sequence
from itertools import cycle
from pathlib import Path

from joblib import Parallel, delayed
from line import at_least, at_most, seconds
from school import School, cores, work_of_children
from stages import Stages

from probgen.course.build import build_set
from probgen.course.crew import Crew
from probgen.press.batch import Document
from probgen.press.engine import run_tex
from probgen.press.preformat import format_for, source
from probgen.sheets.layout import Layouts

_SAMPLE = 20
_LIMIT = 3600.0


def bench(school: School, students: int) -> None:
    set_file = school.set_file(students)
    stages = Stages()
    with stages.watched():
        build_set(set_file, set_file.parent / "watched", None, Crew(1), lambda *told: None)
    preamble = Layouts().preamble("letter")
    before = work_of_children()
    bare = seconds(lambda: _bare(stages.documents, preamble))
    bare_work = work_of_children() - before
    sample = stages.documents[:: max(1, len(stages.documents) // _SAMPLE)][:_SAMPLE]
    ordinary = seconds(lambda: _one_by_one(sample, preamble)) * len(stages.documents) / len(sample)
    ours = school.build(students)
    print(f"{len(stages.documents)} documents: ours {ours.seconds:.1f} s, TeX alone {bare:.1f} s, "
          f"one process each {ordinary:.0f} s (from {len(sample)}); "
          f"processor time: ours {ours.work:.1f} s, TeX alone {bare_work:.1f} s")  # fmt: skip
    near = at_most("class-beside-bare-engine", ours.seconds / bare, 1.5)
    far = at_least("ordinary-way-beside-class", ordinary / ours.seconds, 15.0)
    if not (near and far):
        print(stages.shares())


def _bare(documents: Sequence[Document], preamble: str) -> None:
    """As few TeX runs as there are cores, with the preamble dumped."""
    shares: list[list[Document]] = [[] for _ in range(cores())]
    for share, document in zip(cycle(shares), documents, strict=False):
        share.append(document)
    dumped = format_for(preamble)
    run = Parallel(cores(), prefer="threads")
    run(delayed(_print)(share, [f"-fmt={dumped}"], "") for share in shares if share)


def _one_by_one(documents: Iterable[Document], preamble: str) -> None:
    """A stock process for each document, which reads the preamble first."""
    head = source(preamble).replace(r"\dump", "")
    Parallel(cores(), prefer="threads")(delayed(_print)([each], [], head) for each in documents)


def _print(documents: Sequence[Document], options: Sequence[str], head: str) -> None:
    with tempfile.TemporaryDirectory(prefix="probgen-bench-") as name:
        folder = Path(name)
        for place, document in enumerate(documents):
            (folder / f"{place}.tex").write_text(document.body, encoding="utf-8")
        calls = "\n".join(rf"\printdocument{{{place}}}" for place in range(len(documents)))
        main = f"{head}\\begin{{document}}\n{calls}\n\\end{{document}}\n"
        (folder / "run.tex").write_text(main, encoding="utf-8")
        run = run_tex([*options, "run.tex"], folder, _LIMIT)
        if not run.good:
            raise SystemExit(f"TeX: {run.complaint}")
