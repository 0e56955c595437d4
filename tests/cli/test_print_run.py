"""Print runs: an exam's versions, seats, large print, covers, a house of one's own."""

import csv
import re
from io import StringIO
from pathlib import Path

import pdfplumber
import pytest

from tests.cli.conftest import FilesIn, Run

ROSTER = """Name,ID,Seat,Large print
Ada Quill,s1,A1,
Bea Ostrander,s2,B2,
Cid Marlow,s3,A10,yes
Dana Pell,s4,B1,
Eli Vance-Roy,s5,A2,
"""
SET = """
course = "Mechanics"
title = "Midterm 2"
roster = "class.csv"
seed = "spring term, section 2"
[[problem]]
template = "seesaw-two-riders"
points = 8
"""
EXAM = 'exam = { versions = 4, spare = 2, notes = ["Write legibly."] }\nprint.order = "seat"\n'
STYLE = 'headings = "sans"\nheader = "Westmere College"\nlogo = "arms.png"\n'
PNG = bytes.fromhex(
    "89504e470d0a1a0a0000000d4948445200000001000000010804000000b51c0c02"
    "0000000b4944415478da6364f80f00010501012718e3660000000049454e44ae426082"
)  # one grey pixel


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "class.csv").write_text(ROSTER, encoding="utf-8")
    return tmp_path


def build(run: Run, folder: Path, head: str = "", *words: object) -> Path:
    (folder / "assignment.toml").write_text(head + SET, encoding="utf-8")
    result = run("build", "assignment.toml", "--out", "out", "--workers", 1, *words)
    assert result.exit_code == 0, result.stderr
    return folder / "out"


def paper(out: Path, kind: str, start: str) -> Path:
    """The one paper of a kind whose name begins so, in the usual print where there is large too."""
    return min((out / kind).glob(f"{start}*.pdf"), key=lambda path: len(path.name))


def texts(path: Path) -> list[str]:
    with pdfplumber.open(path) as opened:
        return [page.extract_text() for page in opened.pages]


def test_an_exam_has_a_sheet_and_a_key_for_each_version(run: Run, folder: Path) -> None:
    out = build(run, folder, EXAM)
    names = {
        re.sub("-[0-9A-Z]{5}-[0-9A-Z]{5}", "", path.relative_to(out).as_posix())
        for path in out.rglob("*.pdf")
        if not path.parent.name.startswith(".")
    }
    assert names == {
        *(f"{kind}/version-{letter}.pdf" for kind in ("sheets", "keys") for letter in "abcd"),
        "sheets/version-c-large.pdf",
        *(f"{name}.pdf" for name in ("all-sheets", "all-keys", "answers", "versions")),
    }
    rows = list(csv.DictReader(StringIO((out / "answers.csv").read_text("utf-8-sig"))))
    assert sorted({row["version"] for row in rows}) == ["A", "B", "C", "D"]
    for version in "ABCD":
        own = [row["answer"] for row in rows if row["version"] == version]
        assert len(own) == len(set(own)), "large print has no rows of its own"
    (table,) = texts(out / "answers.pdf")
    bare = "".join(table.split())
    assert all("".join(row["printed"].split()) in bare and row["code"] in bare for row in rows)


def test_an_exams_papers_name_nobody_and_lie_in_the_order_of_the_seats(
    run: Run, folder: Path
) -> None:
    out = build(run, folder, EXAM)
    dealt = list(csv.DictReader(StringIO((out / "versions.csv").read_text())))
    assert [row["seat"] for row in dealt] == ["A1", "A2", "A10", "B1", "B2", "", ""]
    assert [row["version"] for row in dealt] == ["A", "B", "C", "C", "D", "A", "B"]
    assert [row["needs"] for row in dealt] == ["", "", "large print", "", "", "", ""]
    assert [row["name"] for row in dealt[-2:]] == ["spare", "spare"]
    pages = texts(out / "all-sheets.pdf")
    covers = [place for place, text in enumerate(pages) if "Write legibly." in text]
    assert len(covers) == len(dealt)
    assert all(place % 2 == 0 for place in covers)
    assert [pages[place].split("\n")[1][-1] for place in covers] == [r["version"] for r in dealt]
    assert not any(name in " ".join(pages) for name in ("Quill", "Pell", "spare", "s1"))
    (listed,) = texts(out / "versions.pdf")
    assert all(row["name"] in listed for row in dealt)


def test_an_exams_keys_say_which_version_they_are_to(run: Run, folder: Path) -> None:
    out = build(run, folder, EXAM)
    for letter in "abcd":
        with pdfplumber.open(paper(out, "keys", f"version-{letter}-")) as opened:
            size = max(char["size"] for char in opened.pages[0].chars)
            large = [char["text"] for char in opened.pages[0].chars if char["size"] == size]
        assert large == [letter.upper()]


def test_the_cover_of_an_exams_pile_says_how_to_deal_it(run: Run, folder: Path) -> None:
    cover = texts(build(run, folder, EXAM + "print.pile_cover = true\n") / "all-sheets.pdf")[0]
    for words in ("the order of the seats.", "row by row", "The last 2 are spare.", "A, B, C, D"):
        assert words in cover
    assert "7" in cover.split("Papers")[1].split("\n")[0]


UNSEATED = "Name,ID\nAda Quill,s1\nBea Ostrander,s2\n"
DEALING = {
    "rows": (UNSEATED, EXAM.replace("4,", "4, row = 12,"), "in this order, 12 to a row: nobody"),
    "no rows": (UNSEATED, EXAM, "in this order: nobody then has the version of whom they sit"),
    "seats, class list": (ROSTER, EXAM, "Give each seat the version that the list of versions"),
}


@pytest.mark.parametrize(("roster", "exam", "told"), DEALING.values(), ids=DEALING)
def test_the_cover_claims_no_more_than_the_room_allows(
    roster: str, exam: str, told: str, run: Run, folder: Path
) -> None:
    (folder / "class.csv").write_text(roster, encoding="utf-8")
    head = exam.replace('print.order = "seat"', "print.pile_cover = true")
    assert told in texts(build(run, folder, head) / "all-sheets.pdf")[0]


def test_lists_of_an_earlier_exam_do_not_stay(run: Run, folder: Path) -> None:
    lists = {"answers.pdf", "versions.pdf", "versions.csv"}
    assert lists <= {path.name for path in build(run, folder, EXAM).iterdir()}
    assert not lists & {path.name for path in build(run, folder, "", "--replace").iterdir()}


def sizes(path: Path) -> set[float]:
    with pdfplumber.open(path) as opened:
        return {round(char["size"]) for page in opened.pages for char in page.chars}


def test_large_print_is_large_wherever_it_is_printed(run: Run, folder: Path) -> None:
    out = build(run, folder, EXAM)
    (sheet,) = (out / "sheets").glob("*large*.pdf")
    code = sheet.stem[-11:]
    for words in (["s3"], [code, "--large"]):
        done = run("reprint", out, *words, "--out", "again")
        assert done.exit_code == 0, done.stderr
        assert "large print" not in done.stderr
        assert texts(folder / "again" / sheet.name) == texts(sheet)
        (folder / "again" / sheet.name).unlink()
    usual = run("reprint", out, code, "--out", "again")
    assert "Cid Marlow needs it in large print" in usual.stderr
    assert 18 not in sizes(next((folder / "again").iterdir()))
    assert run("solutions", out, "--workers", 1).exit_code == 0
    for path in (folder / "out-solutions").glob("version-*.pdf"):
        assert (18 in sizes(path)) == (path.name == sheet.name)
    least = [
        min(sizes(folder / "out-solutions" / name))
        for name in (sheet.name, sheet.name.replace("-large", ""))
    ]
    assert least[0] >= 1.5 * least[1], "letters of figures too"


def test_seats_covers_answers_and_large_print_for_a_class(run: Run, folder: Path) -> None:
    out = build(run, folder, 'print = { order = "seat", cover = true, answers = true }\n')
    assert {path.stem[:-12].removesuffix("-large") for path in (out / "sheets").iterdir()} == {
        "ada-quill-s1", "bea-ostrander-s2", "cid-marlow-s3", "dana-pell-s4", "eli-vance-roy-s5"
    }  # fmt: skip
    with (out / "codes.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [row["id"] for row in rows] == ["s1", "s5", "s3", "s4", "s2"], "by their seats"
    assert all((out / row["key"]).is_file() and row["code"] in row["key"] for row in rows)
    with pdfplumber.open(out / "all-keys.pdf") as opened:
        firsts = [opened.pages[int(row["key_page"]) - 1].extract_text() for row in rows]
    assert all(row["code"] in text for row, text in zip(rows, firsts, strict=True))
    first, second, third, *_ = texts(out / "all-sheets.pdf")
    assert "In large print: Cid Marlow." in first
    assert (second, "Ada Quill" in third) == ("", True)
    assert "not for students" in texts(out / "all-keys.pdf")[0]
    assert "Bea Ostrander" in texts(out / "answers.pdf")[0]

    def size(kind: str, name: str) -> float:
        with pdfplumber.open(paper(out, kind, name)) as opened:
            sizes = [char["size"] for page in opened.pages for char in page.chars]
        return float(max(set(sizes), key=sizes.count))

    assert size("sheets", "cid-marlow") >= 18
    assert size("keys", "cid-marlow") == size("keys", "ada-quill") < 12


def test_without_duplex_there_is_no_empty_page(run: Run, folder: Path) -> None:
    assert "" in texts(build(run, folder) / "all-sheets.pdf")
    assert "" not in texts(build(run, folder, "print.duplex = false\n") / "all-sheets.pdf")


@pytest.fixture
def house(folder: Path) -> Path:
    """A folder with a house style and a layout of its own."""
    place = folder / "house"
    place.mkdir()
    (place / "style.toml").write_text(STYLE, encoding="utf-8")
    (place / "arms.png").write_bytes(PNG)
    (place / "formulas.tex.j2").write_text("Bring your own formulas.", encoding="utf-8")
    return place


HOUSE = 'style = "house/style.toml"\nlayouts = "house"\nformulas = true\n'


def inks(path: Path) -> set[tuple[float, ...] | None]:
    """The colours lines are drawn in."""
    with pdfplumber.open(path) as opened:
        page = opened.pages[0]
        drawn = [shape["stroking_color"] for shape in (*page.lines, *page.curves)]
    return {(ink,) if isinstance(ink, float | int) else ink for ink in drawn}


def test_figures_have_colours_where_the_house_wants_them(
    run: Run, folder: Path, house: Path
) -> None:
    out = build(run, folder, HOUSE)
    assert all(len(ink or ()) <= 1 for ink in inks(paper(out, "sheets", "ada-quill")))
    style = (house / "style.toml").read_text(encoding="utf-8")
    (house / "style.toml").write_text(style + 'figures = "colour"\n', encoding="utf-8")
    out = build(run, folder, HOUSE, "--replace")
    assert (0.35, 0.35, 0.35) in inks(paper(out, "sheets", "ada-quill"))


def test_a_record_holds_the_house_its_pages_were_made_in(
    run: Run, folder: Path, house: Path, files_in: FilesIn
) -> None:
    out = build(run, folder, HOUSE)
    (page, last) = texts(paper(out, "sheets", "ada-quill"))
    assert "Westmere College" in page
    assert "Bring your own formulas." in last
    for path in house.iterdir():
        path.unlink()
    refused = run("build", "out/record.json", "--out", "again")
    assert refused.exit_code == 1
    assert "--trust-layouts" in refused.stderr
    result = run("build", "out/record.json", "--out", "again", "--trust-layouts")
    assert result.exit_code == 0, result.stderr
    assert files_in(folder / "again") == files_in(out)
    refused = run("solutions", "out")
    assert (refused.exit_code, "--trust-layouts" in refused.stderr) == (1, True)
    assert run("solutions", "out", "--trust-layouts").exit_code == 0


def test_layouts_of_the_command_line_go_first(run: Run, folder: Path, house: Path) -> None:
    other = folder / "other"
    other.mkdir()
    (other / "formulas.tex.j2").write_text("None today.", encoding="utf-8")
    out = build(run, folder, HOUSE, "--layouts", other)
    assert "None today." in texts(paper(out, "sheets", "ada-quill"))[-1]
    (other / "formulas.tex.j2").write_text("Some today.", encoding="utf-8")
    result = run("build", "out/record.json", "--out", "again", "--layouts", other)
    assert result.exit_code == 0, result.stderr
    assert "Some today." in texts(paper(folder / "again", "sheets", "ada-quill"))[-1]
    (other / "sheet.tex.j2").write_text("\\textbf{Try it.}", encoding="utf-8")
    result = run("work", "seesaw-two-riders", "--pdf", "try.pdf", "--layouts", other)
    assert result.exit_code == 0, result.stderr
    assert "Try it." in texts(folder / "try.pdf")[0]


def test_every_fault_of_the_house_and_the_seats_is_told_at_once(run: Run, folder: Path) -> None:
    (folder / "class.csv").write_text("name,id\nAda,1\n", encoding="utf-8")
    head = 'style = "none.toml"\nlayouts = "nowhere"\nprint.order = "seat"\n'
    (folder / "assignment.toml").write_text(head + SET, encoding="utf-8")
    result = run("build", "assignment.toml")
    assert result.exit_code == 1
    assert "3 problems" in result.stderr
    for words in ("none.toml", "nowhere", "print.order", "add a column Seat"):
        assert words in result.stderr


def test_a_layout_that_cannot_be_used_is_told_by_file_and_line(run: Run, folder: Path) -> None:
    own = folder / "own"
    own.mkdir()
    (own / "sheet.tex.j2").write_text("\n<< sheet.titel >>", encoding="utf-8")
    (folder / "assignment.toml").write_text(SET, encoding="utf-8")
    result = run("build", "assignment.toml", "--layouts", own, "--workers", 1)
    assert result.exit_code == 1
    assert "sheet.tex.j2: line 2" in result.stderr
    assert not (folder / "output").exists()
