"""What each PDF of a built class tells about itself, and what a sheet must not tell."""

import csv
import re
import subprocess
from io import StringIO
from pathlib import Path

import pdfplumber
import pikepdf
import pytest
from click.testing import CliRunner

from probgen.cli import main

STUDENTS = {
    "Żaneta Święćka": "/Type1", "Юлия Їжак": "/Type1", "李小龍": "/Type0", "สมชาย": "/Type0",
}  # fmt: skip
"""Students, and the kind of fonts by which it is seen which engine printed their pages."""
OF_A_KEY = ("Key", "Torque balance", "Answers", "Marks", "What goes wrong here", "Interval")
HOLDS_MORE = {
    "/EmbeddedFiles", "/AF", "/JavaScript", "/Metadata", "/PieceInfo", "/Annots", "/AcroForm",
    "/PTEX.Fullbanner", "/PTEX.FileName", "/Author", "/Producer", "/Creator", "/CreationDate",
}  # fmt: skip


SET = """
course = "Mechanics"
title = "Week 3"
roster = "class.csv"
seed = "spring term, section 2"
[[problem]]
template = "seesaw-two-riders"
points = 8
[[problem]]
template = "forearm-load"
points = 12
"""


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("class")
    lines = [f"{name},s{number}" for number, name in enumerate(STUDENTS, 1)]
    (folder / "class.csv").write_text("\n".join(["name,id", *lines]), encoding="utf-8")
    (folder / "assignment.toml").write_text(SET, encoding="utf-8")
    words = ["build", folder / "assignment.toml", "--out", folder / "out", "--workers", 1]
    result = CliRunner().invoke(main, [str(word) for word in words])
    assert (result.exit_code, result.stderr) == (0, "")
    return folder / "out"


def test_each_pdf_says_whose_it_is_and_where_one_is_in_it(built: Path) -> None:
    for kind in ("sheets", "keys"):
        for name, path in papers(built, kind):
            with pikepdf.open(path) as opened:
                assert list(opened.docinfo) == ["/Title"]
                assert name in str(opened.docinfo["/Title"])
                assert opened.Root.Lang == "en"
                assert opened.Root.ViewerPreferences.DisplayDocTitle
                labels = [page.label for page in opened.pages]
                assert labels == [str(number) for number in range(1, len(labels) + 1)]
                with opened.open_outline() as outline:
                    assert len(outline.root) == 2, "a bookmark for each problem"


def test_fonts_are_embedded_outlines_of_the_engine_that_is_meant(built: Path) -> None:
    for kind in ("sheets", "keys"):
        for name, path in papers(built, kind):
            with pikepdf.open(path) as opened:
                held = [thing for thing in opened.objects if isinstance(thing, pikepdf.Dictionary)]
                fonts = [thing for thing in held if thing.get("/Type") == "/Font"]
                described = [thing for thing in held if thing.get("/Type") == "/FontDescriptor"]
                assert described
                assert all({"/FontFile", "/FontFile2", "/FontFile3"} & font.keys()
                           for font in described)  # fmt: skip
                kinds = {str(font.Subtype) for font in fonts if "/CIDSystemInfo" not in font}
                assert "/Type3" not in kinds
                assert STUDENTS[name] in kinds
                assert ("/Type0" in kinds) == (STUDENTS[name] == "/Type0")


def test_a_sheet_has_no_trace_of_its_key(built: Path) -> None:
    sheets = [path for _, path in papers(built, "sheets")]
    for number, path in enumerate([*sheets, built / "all-sheets.pdf"], 1):
        told = everything_told(path)
        assert "Name" in told
        assert words_of_a_key(told) == []
        for row in answers(built, f"s{number}" if number <= len(sheets) else ""):
            assert row["printed"] not in told
            assert row["value"] not in told
        with pikepdf.open(path) as opened:
            used = {key for thing in opened.objects for key in names_in(thing)}
        assert used & HOLDS_MORE == set()


def test_the_words_and_answers_sought_are_those_of_keys(built: Path) -> None:
    for number, (_, path) in enumerate(papers(built, "keys"), 1):
        told = everything_told(path)
        assert len(words_of_a_key(told)) >= 4
        found = [row["printed"] in told for row in answers(built, f"s{number}")]
        assert sum(found) >= 4


def papers(built: Path, kind: str) -> list[tuple[str, Path]]:
    """Each student with the paper of a kind, in the order of the class list."""
    paths = {path.stem[-13]: path for path in (built / kind).iterdir()}
    assert len(paths) == len(STUDENTS)
    return [(name, paths[str(number)]) for number, name in enumerate(STUDENTS, 1)]


def answers(built: Path, student: str) -> list[dict[str, str]]:
    """A student's rows of the table of answers, all rows for ""."""
    rows = csv.DictReader(StringIO((built / "answers.csv").read_text(encoding="utf-8-sig")))
    own = [row for row in rows if student in ("", row["id"])]
    assert own
    return own


def words_of_a_key(told: str) -> list[str]:
    return [word for word in OF_A_KEY if re.search(rf"\b{word}\b", told)]


def everything_told(path: Path) -> str:
    """The text of a PDF as two programs read it, and every string in its objects."""
    read = subprocess.run(["pdftotext", "-layout", path, "-"], capture_output=True, check=True)
    with pdfplumber.open(path) as opened:
        pages = [page.extract_text() for page in opened.pages]
    with pikepdf.open(path) as opened:
        strings = [text for thing in opened.objects for text in strings_in(thing)]
    return "\n".join([read.stdout.decode(), *pages, *strings])


def strings_in(thing: object) -> list[str]:
    """The strings of an object, but not those of the objects it refers to."""
    match thing:
        case pikepdf.String():
            return [str(thing)]
        case pikepdf.Array():
            parts = list(thing)
        case pikepdf.Dictionary() | pikepdf.Stream():
            parts = [thing[key] for key in thing.keys()]  # noqa: SIM118
        case _:
            return []
    direct = (part for part in parts if not getattr(part, "is_indirect", False))
    return [text for part in direct for text in strings_in(part)]


def names_in(thing: object) -> set[str]:
    if isinstance(thing, pikepdf.Dictionary | pikepdf.Stream):
        return set(thing.keys())
    return set()
