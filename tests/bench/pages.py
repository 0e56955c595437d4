"""A class's pages: ours beside TeX alone on the same LaTeX, and beside one process a document."""

import tempfile
from collections.abc import Callable, Iterable, Sequence
from itertools import cycle
from pathlib import Path
from unittest.mock import patch

from joblib import Parallel, delayed

from probgen.build.build import build_assignment
from probgen.build.workers import Crew
from probgen.press import format_cache
from probgen.press.batch import Document
from probgen.press.engine import run_tex
from probgen.press.format_cache import format_for, source
from probgen.sheets.latex.layout import Layouts
from tests.bench.line import at_least, at_most, seconds
from tests.bench.school import School, cores, work_of_children
from tests.bench.stages import Stages

_SAMPLE = 20
_LIMIT = 3600.0


def bench(school: School, students: int) -> None:
    assignment = school.assignment(students)
    stages = Stages()
    with stages.watched():
        build_assignment(assignment, assignment.parent / "watched", Crew(1), lambda *told: None)
    preamble = Layouts().preamble("letter")
    bare, bare_work = _cost(lambda: _bare(stages.documents, preamble))
    with patch.object(format_cache, "OWN", format_cache.OWN[:1]):  # without the press's shortcuts
        plain, plain_work = _cost(lambda: _bare(stages.documents, f"{preamble}% plain\n"))
        sample = stages.documents[:: max(1, len(stages.documents) // _SAMPLE)][:_SAMPLE]
        once, _ = _cost(lambda: _one_by_one(sample, preamble))
    ordinary = once * len(stages.documents) / len(sample)
    ours = school.build(students)
    print(f"{len(stages.documents)} documents: ours {ours.seconds:.1f} s, TeX alone {bare:.1f} s, "
          f"without the press's shortcuts {plain:.1f} s, "
          f"one process each {ordinary:.0f} s (from {len(sample)}); processor time: "
          f"ours {ours.work:.1f} s, TeX alone {bare_work:.1f} s, {plain_work:.1f} s")  # fmt: skip
    near = at_most("class-beside-bare-engine", ours.seconds / bare, 1.5)
    far = at_least("ordinary-way-beside-class", ordinary / ours.seconds, 15.0)
    if not (near and far):
        print(stages.shares())


def _cost(do: Callable[[], object]) -> tuple[float, float]:
    """Wall time and processor time (s) of work that other processes do."""
    before = work_of_children()
    taken = seconds(do)
    return taken, work_of_children() - before


def _bare(documents: Sequence[Document], preamble: str) -> None:
    """As few TeX runs as there are cores, with the preamble dumped."""
    shares: list[list[Document]] = [[] for _ in range(cores())]
    for share, document in zip(cycle(shares), documents, strict=False):
        share.append(document)
    dumped = format_for(preamble)
    run = Parallel(cores(), prefer="threads")
    run(delayed(_print)(share, "", dumped) for share in shares if share)


def _one_by_one(documents: Iterable[Document], preamble: str) -> None:
    """A stock process for each document, which reads the preamble first."""
    head = source(preamble).replace(r"\dump", "")
    Parallel(cores(), prefer="threads")(delayed(_print)([each], head) for each in documents)


def _print(documents: Sequence[Document], head: str, dumped: Path | None = None) -> None:
    """One TeX run.  head: the preamble as text; dumped: the same as a format, in place of it."""
    with tempfile.TemporaryDirectory(prefix="probgen-bench-") as name:
        folder = Path(name)
        for place, document in enumerate(documents):
            (folder / f"{place}.tex").write_text(document.body, encoding="utf-8")
        calls = "\n".join(rf"\printdocument{{{place}}}" for place in range(len(documents)))
        main = f"{head}\\begin{{document}}\n{calls}\n\\end{{document}}\n"
        (folder / "run.tex").write_text(main, encoding="utf-8")
        options = [f"-fmt={dumped}"] if dumped else []
        readable = [dumped] if dumped else []
        run = run_tex([*options, "run.tex"], folder, _LIMIT, readable=readable)
        if not run.good:
            raise SystemExit(f"TeX: {run.complaint}")
