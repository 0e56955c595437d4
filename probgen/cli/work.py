"""`probgen work`: one problem, worked in the terminal, as JSON, PDF or HTML."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from probgen.problem.single import Single
    from probgen.working.convention import Convention


@click.command()
@click.argument("template")
@click.option(
    "--draw",
    "number",
    type=click.IntRange(min=1),
    default=1,
    show_default=True,
    help="Which draw.",
)
@click.option(
    "--with",
    "stated",
    metavar="NAME=VALUE",
    multiple=True,
    help='A given set by hand, in its own unit or with one: --with d="35 cm". Repeatable.',
)
@click.option(
    "--units",
    type=click.Choice(["SI", "US"], case_sensitive=False),
    help="Units of its data and answers.  [default: SI]",
)
@click.option(
    "--g",
    "gravity",
    help="Acceleration of free fall with its digits.  [default: 9.80 in m/s^2, 32.2 in ft/s^2]",
)
@click.option(
    "--method",
    type=click.Path(path_type=Path),
    help="A file with a course's method: an assignment file, or the lines of its [method].",
)
@click.option("--json", "as_json", is_flag=True, help="As one JSON object.")
@click.option("--pdf", type=click.Path(path_type=Path), help="Write sheet and key to a PDF file.")
@click.option("--html", type=click.Path(path_type=Path), help="Write both to an HTML file.")
@click.option(
    "--figures", type=click.Path(path_type=Path), help="Write the figures to a folder, as SVG."
)
@click.option(
    "--layouts", type=click.Path(path_type=Path), help="A folder with page layouts of your own."
)
@click.option(
    "--watch", is_flag=True, help="Work it anew each time its file is saved, until Ctrl-C."
)
def work(
    template: str,
    number: int,
    stated: tuple[str, ...],
    units: str | None,
    gravity: str | None,
    method: Path | None,
    as_json: bool,
    pdf: Path | None,
    html: Path | None,
    figures: Path | None,
    layouts: Path | None,
    watch: bool,
) -> None:
    """Work one problem: statement, givens, each step, answers, proof.

    TEMPLATE is an id (see `probgen list`) or the path of a template file.
    """
    from probgen.cli.watch import follow

    convention = _convention(method, units, gravity)
    for path, kind in ((pdf, ".pdf"), (html, ".html"), (figures, "")):
        _require_place(path, kind)
    values, wanted = _split(stated), _Wanted(as_json, pdf, html, figures, layouts)
    if not watch:
        wanted.give(_worked(template, number, values, convention))
        return

    def anew() -> Single:
        single = _worked(template, number, values, convention)
        wanted.give(single, followed=True)
        return single

    last = follow(_own_file(template), anew)
    if last is not None and html is not None:
        _write_page(last, html)


@dataclass(frozen=True, slots=True)
class _Wanted:
    """What is to be made of a worked problem."""

    as_json: bool
    pdf: Path | None
    html: Path | None
    figures: Path | None
    layouts: Path | None

    def give(self, single: Single, followed: bool = False) -> None:
        """followed: whether more will be made of the same file."""
        from probgen.cli.terminal import say, say_json

        for remark in single.remarks:
            say(f"remark: {remark}", err=True)
        if self.pdf is not None:
            _write_handout(single, self.pdf, self.layouts)
            say(f"sheet and key are in {self.pdf}", err=self.as_json)
        if self.html is not None:
            _write_page(single, self.html, followed)
            say(f"sheet and key are in {self.html}", err=self.as_json)
        if self.figures is not None:
            _write_figures(single, self.figures)
            say(f"its figures are in {self.figures}", err=self.as_json)
        if self.as_json:
            from probgen.problem.report import as_data

            say_json(as_data(single))
        elif self.pdf is self.html is self.figures is None:
            from rich.console import Console

            from probgen.cli.telling import show

            show(single, Console())


def _worked(template: str, number: int, values: dict[str, str], convention: Convention) -> Single:
    from probgen.problem.single import work_single

    froms = {"template_from": "TEMPLATE", "values_from": "--with"}
    return work_single(template, number, values, convention, **froms)


def _own_file(template: str) -> Path:
    path = Path(template)
    if not path.is_file():
        raise click.UsageError("--watch follows a file: name the path of a template file")
    return path


def _convention(method: Path | None, units: str | None, gravity: str | None) -> Convention:
    """The course's method from its file or the usual one, under what was typed."""
    from probgen.course.method import read_method_file, with_typed
    from probgen.quantities.unit import SI, US_CUSTOMARY
    from probgen.working.convention import Convention

    convention = Convention() if method is None else read_method_file(method)
    system = {"SI": SI, "US": US_CUSTOMARY, None: None}[units]
    return with_typed(convention, system, gravity, "--g")


def _require_place(path: Path | None, kind: str) -> None:
    """Judges before the work where its outcome is to go; a kind of "" stands for a folder."""
    from probgen.input.own_file import require_folder, require_free

    if path is not None and kind:
        require_free(path, kind)
    elif path is not None:
        require_folder(path)


def _write_handout(single: Single, pdf: Path, layouts: Path | None) -> None:
    from probgen.cli.terminal import say
    from probgen.course.typed_texts import remarks_on_template
    from probgen.input.own_file import write_own
    from probgen.papers.handout import print_handout
    from probgen.papers.typesetter import Typesetter
    from probgen.sheets.house import read_house

    typesetter = Typesetter(house=read_house(None, layouts))
    handout = print_handout(single, typesetter)
    write_own(pdf, handout.pdf, ".pdf")
    template = single.problem.template
    for remark in (*handout.remarks, *remarks_on_template(template.id, template.source)):
        say(f"remark: {remark}", err=True)


def _write_page(single: Single, html: Path, followed: bool = False) -> None:
    from probgen.input.own_file import write_own
    from probgen.papers.handout import html_handout

    write_own(html, html_handout(single, reloads=followed).encode(), ".html")


def _write_figures(single: Single, folder: Path) -> None:
    from probgen.figures.writers.svg import svg
    from probgen.input.own_file import require_free, write_own
    from probgen.problem.problem_figures import every_scene

    scenes = every_scene(single.problem, single.worked)
    drawn = {folder / f"{name}.svg": svg(scene).encode() for name, scene in scenes}
    for path in drawn:
        require_free(path, ".svg")
    for path, content in drawn.items():
        write_own(path, content, ".svg")


def _split(stated: tuple[str, ...]) -> dict[str, str]:
    """NAME=VALUE pairs; the last of several for one name counts."""
    pairs: dict[str, str] = {}
    for pair in stated:
        name, sign, value = pair.partition("=")
        if not sign or not name.strip() or not value.strip():
            raise click.BadParameter(f"{pair!r} is not NAME=VALUE", param_hint="--with")
        pairs[name.strip()] = value.strip()
    return pairs
