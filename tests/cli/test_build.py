"""`probgen build` and `probgen demo`, from the command line to the files."""

import csv
import json
from pathlib import Path

import pdfplumber
import pytest

from probgen.bank.bank import default_bank
from probgen.build import build, joined_pdfs
from tests.cli.conftest import FilesIn, Run


def text_of(path: Path) -> str:
    with pdfplumber.open(path) as pdf:
        return " ".join(page.extract_text() for page in pdf.pages)


def test_a_class_from_file_to_folder(run: Run, files_in: FilesIn, assignment: Path) -> None:
    result = run("build", assignment)
    assert result.exit_code == 0, result.stderr
    assert result.stderr == ""
    built = assignment.parent / "week-3"
    table = (built / "answers.csv").read_text(encoding="utf-8-sig")
    rows = list(csv.DictReader(table.splitlines()))
    code = {row["id"]: row["code"] for row in rows}
    names = {
        f"ada-1-quill-jr-s_7-{code['s_7']}.pdf", f"zoë-müller-łukasz-s_8-{code['s_8']}.pdf"
    }  # fmt: skip
    assert {name for name in files_in(built) if not name.startswith(".pieces/")} == {
        "record.json", ".made.json", "answers.csv", "codes.csv", "all-sheets.pdf", "all-keys.pdf",
        *(f"sheets/{name}" for name in names), *(f"keys/{name}" for name in names),
    }  # fmt: skip
    assert [row["answer"] for row in rows[:4]] == ["distance_2", "P", "B", "J.magnitude"]
    for student in ("s_7", "s_8"):
        own = [row for row in rows if row["id"] == student]
        (name,) = (name for name in names if name.endswith(f"{code[student]}.pdf"))
        sheet, key = text_of(built / "sheets" / name), text_of(built / "keys" / name)
        assert own[0]["code"] in sheet
        assert own[0]["code"] in key
        for row in own:
            digits = row["printed"].split()[0].rstrip("°")
            assert digits in key
            assert row["printed"] not in sheet
    together = text_of(built / "all-sheets.pdf")
    assert together.index("Ada #1 Quill, Jr.") < together.index("Zoë Müller-Łukasz")


def test_the_same_bytes_for_any_number_of_workers_and_from_the_record(
    run: Run, files_in: FilesIn, assignment: Path
) -> None:
    folder = assignment.parent
    run("build", assignment, "--out", "one", "--workers", 1)
    run("build", assignment, "--out", "two", "--workers", 2)
    record = folder / "one" / "record.json"
    assert run("build", record, "--out", "again").exit_code == 0
    assert files_in(folder / "one") == files_in(folder / "two") == files_in(folder / "again")


def test_what_cannot_be_printed_or_kept_apart_is_remarked(run: Run, assignment: Path) -> None:
    (assignment.parent / "class.csv").write_text("name,id\nAda 𓀀,1\nAda,2\n", encoding="utf-8")
    result = run("build", assignment)
    assert result.exit_code == 0
    assert "remark: Ada 𓀀: boxes are printed for 𓀀" in result.stderr
    assert result.stderr.count("remark") == 1


def test_another_seed_gives_other_numbers(run: Run, assignment: Path) -> None:
    drawn = []
    for seed in ("a" * 16, "b" * 16):
        run("build", assignment, "--out", seed, "--seed", seed)
        record = json.loads((assignment.parent / seed / "record.json").read_text(encoding="utf-8"))
        assert record["seed"] == seed
        drawn.append([each["drawn"] for each in record["printings"][0]["editions"]])
    assert drawn[0] != drawn[1]


def test_all_mistakes_of_assignment_file_and_class_list_at_once(run: Run, assignment: Path) -> None:
    wrong = assignment.read_text(encoding="utf-8").replace("two-riders", "three-riders")
    assignment.write_text(wrong, encoding="utf-8")
    (assignment.parent / "class.csv").write_text("Name,ID\nAda,1\nBea,1\n", encoding="utf-8")
    result = run("build", assignment)
    assert result.exit_code == 1
    assert "problem 1, template" in result.stderr
    assert "seesaw-two-riders" in result.stderr
    assert "class.csv: line 3, id" in result.stderr
    assert "2 problems" in result.stderr
    assert not (assignment.parent / "week-3").exists()


def test_a_folder_of_something_else_is_not_touched(
    run: Run, assignment: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    result = run("build", assignment, "--out", ".")
    assert result.exit_code == 1
    assert "the folder you are in" in result.stderr
    monkeypatch.chdir(assignment.parent.parent)
    result = run("build", assignment, "--out", assignment.parent)
    assert result.exit_code == 0  # it holds nothing but the set file and the class list
    (assignment.parent / "thesis").mkdir()
    (assignment.parent / "thesis" / "all-sheets.pdf").write_text("mine")
    result = run("build", assignment, "--out", assignment.parent / "thesis")
    assert result.exit_code == 1
    assert (assignment.parent / "thesis" / "all-sheets.pdf").read_text() == "mine"


def test_what_is_in_the_way_is_told_before_the_work(
    run: Run, assignment: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A mount point was found out when everything was printed."""
    (assignment.parent / "thesis").mkdir()
    (assignment.parent / "thesis" / "chapter.tex").write_text("years of work")
    monkeypatch.setattr(build, "prepare", None)  # no work is begun
    for out, told in {"/proc": "a mount point", "thesis": "chapter.tex", "/": "the root"}.items():
        result = run("build", assignment, "--out", out)
        assert result.exit_code == 1
        assert told in result.stderr


def test_faults_of_all_layers_come_at_once(run: Run, assignment: Path) -> None:
    """Each is judged as far as it can be alone, whatever else is wrong."""
    text = assignment.read_text(encoding="utf-8")
    text = text.replace("seesaw-two-riders", "seesaw-two-rider")
    text += """parts = [6, 4, 2]
[[problem]]
template = "beam-stay-cable"
points = 5
marks = { diagram = 1, results = 4 }
[due_in]
B = 2027-03-08
[method]
torque = "lever arm"
"""
    assignment.write_text(text, encoding="utf-8")
    told = run("build", assignment).stderr
    for words in ("problem 1, template", "problem 2, parts", "problem 3, marks.diagram",
                  "due_in.B", 'did you mean "arm"?'):  # fmt: skip
        assert words in told
    assert told.startswith("5 problems")
    assignment.write_text(text.replace("class.csv", "clas.csv"), encoding="utf-8")
    told = run("build", assignment).stderr
    assert "clas.csv" in told
    assert "due_in.B" not in told, "nobody knows the sections"
    assert told.startswith("5 problems")


def test_a_way_over_a_folder_that_is_not_there(run: Run, assignment: Path) -> None:
    result = run("build", assignment, "--out", "no/../class")
    assert result.exit_code == 0
    assert (assignment.parent / "class" / "all-sheets.pdf").exists()


def test_tex_missing_is_told_with_the_mend(
    run: Run, assignment: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PATH", str(assignment.parent))
    result = run("build", assignment, "--workers", 1)
    assert result.exit_code == 3
    assert "apt-get install" in result.stderr
    assert not (assignment.parent / "week-3").exists()


def test_a_record_is_checked(run: Run, assignment: Path) -> None:
    (assignment.parent / "record.json").write_text('{"format": 7}')
    result = run("build", "record.json")
    assert result.exit_code == 1
    assert "format 7" in result.stderr
    assert run("build", "record.json", "--seed", "x").exit_code == 2
    assert run("build", "record.json", "--correct", "x").exit_code == 2


def test_a_seed_that_can_be_guessed_is_refused(run: Run, assignment: Path) -> None:
    result = run("build", assignment, "--seed", "2027")
    assert result.exit_code == 1
    assert "that nobody can guess" in result.stderr
    named = assignment.read_text(encoding="utf-8").replace("spring term, section 2", "spring")
    assignment.write_text(named, encoding="utf-8")
    assert "that nobody can guess" in run("build", assignment).stderr


def test_the_demonstration_is_built_and_can_be_edited(run: Run, tmp_path: Path) -> None:
    assert run("demo", "--out", "demo", "--students", 2).exit_code == 0
    built = tmp_path / "demo"
    assert len(list((built / "sheets").iterdir())) == 2
    own = (built / "assignment.toml").read_text(encoding="utf-8").replace("Homework 5", "My week 6")
    (built / "assignment.toml").write_text(own, encoding="utf-8")
    assert run("demo", "--out", "demo").exit_code == 0  # edits are kept, and used
    assert (built / "assignment.toml").read_text(encoding="utf-8") == own
    assert "My week 6" in text_of(next((built / "keys").iterdir()))


def test_a_record_is_built_again_after_its_template_is_gone(
    run: Run, files_in: FilesIn, assignment: Path
) -> None:
    own = assignment.parent / "own.toml"
    source = default_bank().read("forearm-load").source
    own.write_text(source.replace('id = "forearm-load"', 'id = "own"'), encoding="utf-8")
    named = assignment.read_text(encoding="utf-8").replace('"forearm-load"', '"own.toml"')
    assignment.write_text(named, encoding="utf-8")
    assert run("build", assignment, "--out", "one").exit_code == 0
    for path in (own, assignment, assignment.parent / "class.csv"):
        path.unlink()
    assert run("build", "one/record.json", "--out", "again").exit_code == 0
    assert files_in(assignment.parent / "again") == files_in(assignment.parent / "one")


def test_a_record_is_built_again_into_its_own_folder(
    run: Run, files_in: FilesIn, assignment: Path
) -> None:
    assert run("build", assignment, "--out", "one").exit_code == 0
    before = files_in(assignment.parent / "one")
    (assignment.parent / "one" / "all-keys.pdf").unlink()
    assert run("build", "one/record.json", "--out", "one").exit_code == 0
    assert files_in(assignment.parent / "one") == before


def test_quiet_says_nothing(run: Run, assignment: Path) -> None:
    result = run("build", assignment, "--quiet")
    assert (result.exit_code, result.stdout, result.stderr) == (0, "", "")


def test_a_seed_drawn_by_a_build_that_was_stopped_is_kept(
    run: Run, assignment: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    text = assignment.read_text(encoding="utf-8")
    unseeded = text.replace('seed = "spring term, section 2"\n', "")
    assignment.write_text(unseeded, encoding="utf-8")
    with monkeypatch.context() as patch:
        patch.setattr(joined_pdfs, "join", stopped)
        assert run("build", assignment, "--out", "class", "--workers", 1).exit_code == 130
    kept = json.loads((assignment.parent / ".class.part" / "whole" / "record.json").read_text())
    assert run("build", assignment, "--out", "class", "--workers", 1).exit_code == 0
    built = json.loads((assignment.parent / "class" / "record.json").read_text())
    assert built == kept


def stopped(*words: object, **named: object) -> bytes:
    raise KeyboardInterrupt
