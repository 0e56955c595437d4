"""Which stage of a build takes what share of its time, watched in one process."""

from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from pathlib import Path
from time import perf_counter
from typing import Any
from unittest.mock import patch

from probgen.build import build, chunk_store, delivery, joined_pdfs
from probgen.course import numbering
from probgen.papers import page, typesetter
from probgen.press import batch
from probgen.press.batch import Document
from probgen.problem import problem, problem_figures
from probgen.sheets.latex import layout
from probgen.sheets.latex.layout import Layouts

_WATCHED: tuple[tuple[str, object, str], ...] = (
    ("plan", build, "prepare"),
    ("draw", numbering, "draw_class"),
    ("solve", problem, "solve"),
    ("prove", problem, "prove"),
    ("word", problem, "results"),
    ("word", page, "tell_statement"),
    ("word", page, "tell_steps"),
    ("place labels", problem_figures, "situation"),
    ("place labels", problem_figures, "free_bodies"),
    ("layout", layout, "latex_picture"),
    ("layout", Layouts, "sheet"),
    ("layout", Layouts, "key"),
    ("TeX", batch, "run_tex"),
    ("split", batch, "cut_run"),
    ("split", batch, "extract"),
    ("split", batch, "collate"),
    ("split", joined_pdfs, "join"),
    ("write", Path, "write_bytes"),
    ("write", chunk_store, "write_beside"),
    ("write", joined_pdfs, "write_csv"),
    ("write", delivery, "write_record"),
)
"""Stage, and the function (where it is called from) whose time is the stage's."""


class Stages:
    """Seconds by stage; what one watched function spends in another counts for the other."""

    def __init__(self) -> None:
        self.seconds: dict[str, float] = defaultdict(float)
        self.documents: list[Document] = []
        self._open: list[str] = ["other"]
        self._since = 0.0

    @contextmanager
    def watched(self) -> Iterator[None]:
        with ExitStack() as patches:
            for stage, owner, name in _WATCHED:
                timed = self._timed(stage, getattr(owner, name))
                patches.enter_context(patch.object(owner, name, timed))
            patches.enter_context(patch.object(typesetter, "print_batch", self._kept))
            self._since = perf_counter()
            yield
            self._pass_time()

    def shares(self) -> str:
        """The share of every stage, the largest first."""
        whole = sum(self.seconds.values())
        longest = sorted(self.seconds.items(), key=lambda each: -each[1])
        rows = [f"{name:<13}{taken / whole:>5.0%}" for name, taken in longest]
        return "\n    ".join(["  share of the time in one process:", *rows])

    def _timed(self, stage: str, do: Callable[..., Any]) -> Callable[..., Any]:
        def timed(*words: Any, **named: Any) -> Any:
            self._pass_time()
            self._open.append(stage)
            try:
                return do(*words, **named)
            finally:
                self._pass_time()
                self._open.pop()

        return timed

    def _kept(self, documents: Sequence[Document], *words: Any, **named: Any) -> Any:
        self.documents += documents
        return batch.print_batch(documents, *words, **named)

    def _pass_time(self) -> None:
        now = perf_counter()
        self.seconds[self._open[-1]] += now - self._since
        self._since = now
