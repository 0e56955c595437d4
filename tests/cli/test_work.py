"""`probgen work`: the JSON contract, values set by hand, and what mistakes get."""

import errno
import importlib
import json
from pathlib import Path
from xml.etree import ElementTree

import pytest

from probgen.problem.catalogue import read_catalogue
from tests.cli.conftest import Run

command = importlib.import_module("probgen.cli.work")  # the module, not the command

FOREARM_AND_BOOK = {
    # OpenStax College Physics 2e, section 9.6, example 9.4, where the biceps pulls straight up.
    "load_mass": "4.0",
    "load_distance": "38 cm",
    "forearm_mass": "2.5 kg",
    "forearm_center": "16",
    "insertion": "0.040 m",
    "muscle_angle": "0",
}


def stated(values: dict[str, str]) -> list[str]:
    return [word for name, value in values.items() for word in ("--with", f"{name}={value}")]


def test_the_published_forearm_and_book(run: Run) -> None:
    result = run("work", "forearm-load", "--json", *stated(FOREARM_AND_BOOK))
    assert result.exit_code == 0
    answers = {answer["id"]: answer for answer in json.loads(result.stdout)["answers"]}
    assert answers["B"]["value"] == pytest.approx(470, abs=0.5)
    assert answers["J.magnitude"]["value"] == pytest.approx(407, abs=0.5)
    assert answers["J.direction"]["angle_from_x"] == pytest.approx(270)
    assert answers["J.y"]["value"] == pytest.approx(-407, abs=0.5)
    assert answers["B"]["unit"] == "N"
    assert answers["B"]["printed"] == "470 N"
    assert "muscle_angle = 0" in result.stderr
    assert "outside the range" in result.stderr


def test_g_and_value_reach_the_answer(run: Run) -> None:
    words = ["work", "seesaw-two-riders", "--json", *stated({"mass_1": "30", "mass_2": "45"})]
    usual, other = (json.loads(run(*words, *more).stdout) for more in ([], ["--g", "9.81"]))
    assert usual["values"]["mass_1"] == {"value": 30.0, "unit": "kg"}
    force = {answer["id"]: answer["value"] for answer in usual["answers"]}["P"]
    on_other = {answer["id"]: answer["value"] for answer in other["answers"]}["P"]
    assert on_other / force == pytest.approx(9.81 / 9.80)


def test_a_problem_in_us_customary_units(run: Run) -> None:
    worked = json.loads(run("work", "forearm-load", "--units", "US", "--json").stdout)
    units = {id: each["unit"] for id, each in worked["values"].items()}
    assert units["load_mass"] == "lbf"
    assert units["insertion"] == "in"
    assert {answer["unit"] for answer in worked["answers"]} == {"lbf", "deg"}


def test_g_is_that_of_the_ground_in_the_unit_of_the_system(run: Run) -> None:
    for words in (["--g", "10"], ["--g", "9.80", "--units", "US"], ["--g", "32.2"]):
        refused = run("work", "forearm-load", *words)
        assert refused.exit_code == 1
        assert "gravity" in refused.stderr
        assert "write " in refused.stderr
    assert run("work", "forearm-load", "--g", "32.17", "--units", "US").exit_code == 0


@pytest.mark.one_in(4)
@pytest.mark.parametrize("id", [entry.id for entry in read_catalogue()])
def test_every_template_is_worked_as_json_and_as_text(id: str, run: Run) -> None:
    worked = json.loads(run("work", id, "--json").stdout)
    assert set(worked) == {"template", "revision", "values", "answers", "steps", "proof"}
    assert worked["template"] == id
    assert worked["proof"]["max_residual"] < 1e-9
    assert worked["proof"]["second_solver_difference"] < 1e-9
    assert all(step["title"] and (step["text"] or step["equations"]) for step in worked["steps"])
    text = run("work", id)
    assert text.exit_code == 0
    for answer in worked["answers"]:
        assert answer["printed"] in text.stdout


def test_draws_differ_and_repeat(run: Run) -> None:
    first, second, again = (
        json.loads(run("work", "forearm-load", "--json", "--draw", n).stdout) for n in (1, 2, 1)
    )
    assert first == again
    assert first["values"] != second["values"]


MISTAKES = {
    "unknown id": (["forearm-laod"], 1, 'did you mean "forearm-load"?'),
    "no such file": (["mine.toml"], 1, "mine.toml"),
    "unknown given": (["forearm-load", "--with", "load_mas=3"], 1, '"load_mass"'),
    "wrong unit": (["forearm-load", "--with", "load_mass=3 cm"], 1, "kg"),
    "no number": (["forearm-load", "--with", "load_mass=heavy"], 1, "a number in kg"),
    "no solution": (["forearm-load", "--with", "insertion=0"], 1, "proof"),
    "g in words": (["forearm-load", "--g", "moon"], 1, "--g"),
    "no value": (["forearm-load", "--with", "load_mass"], 2, "NAME=VALUE"),
    "no template": ([], 2, "TEMPLATE"),
    "draw 0": (["forearm-load", "--draw", "0"], 2, "--draw"),
}


@pytest.mark.parametrize(("words", "code", "told"), MISTAKES.values(), ids=MISTAKES)
def test_mistakes_are_told_without_a_traceback(
    words: list[str], code: int, told: str, run: Run
) -> None:
    result = run("work", *words)
    assert result.exit_code == code
    assert told in result.stderr
    assert "Traceback" not in result.stderr
    assert not result.stdout


def test_all_faulty_values_come_at_once(run: Run) -> None:
    words = stated({"load_mass": "3 cm", "insertion": "short", "depth": "1"})
    result = run("work", "forearm-load", *words)
    assert all(name in result.stderr for name in ("load_mass", "insertion", "depth"))


def test_a_template_of_ones_own(run: Run, tmp_path: Path) -> None:
    source = next(entry.path for entry in read_catalogue() if entry.id == "forearm-load")
    own = Path(source).read_text(encoding="utf-8").replace('id = "forearm-load"', 'id = "own-arm"')
    (tmp_path / "own.toml").write_text(own, encoding="utf-8")
    assert json.loads(run("work", "own.toml", "--json").stdout)["template"] == "own-arm"


def test_a_faulty_template_names_every_fault(run: Run, tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text('id = "own"\ntitel = "x"\n', encoding="utf-8")
    result = run("work", "own.toml")
    assert result.exit_code == 1
    assert "titel" in result.stderr
    assert "own.toml: statement" in result.stderr


def test_figures_are_written_as_svg(run: Run, tmp_path: Path) -> None:
    result = run("work", "stepladder-tie", "--figures", "figures")
    assert (result.exit_code, result.stdout) == (0, "its figures are in figures\n")
    found = {path.name: path for path in (tmp_path / "figures").iterdir()}
    assert found.keys() == {
        "situation.svg", "free-body-left+right.svg", "free-body-left.svg", "free-body-right.svg",
    }  # fmt: skip
    for path in found.values():
        assert ElementTree.parse(path).getroot().tag == "{http://www.w3.org/2000/svg}svg"


def test_sheet_and_key_are_written_as_html(run: Run, tmp_path: Path) -> None:
    result = run("work", "forearm-load", "--with", "load_mass=4.321", "--html", "page.html")
    assert (result.exit_code, result.stdout) == (0, "sheet and key are in page.html\n")
    page = (tmp_path / "page.html").read_text(encoding="utf-8")
    assert page.startswith("<!DOCTYPE html>")
    assert page.count("<article") == 2
    assert "4.321" in page


@pytest.mark.parametrize("target", ["--html", "--figures"])
def test_where_files_are_is_told_beside_the_data(run: Run, target: str) -> None:
    """With --json standard output holds the data alone."""
    result = run("work", "forearm-load", "--json", target, "made")
    assert json.loads(result.stdout)["template"] == "forearm-load"
    assert "made" in result.stderr
    plain = run("work", "forearm-load", target, "again")
    assert plain.stderr == ""
    assert plain.stdout.count("\n") == 1


def test_data_are_laid_out_to_be_read(run: Run) -> None:
    lines = run("work", "forearm-load", "--json").stdout.splitlines()
    assert lines[:2] == ["{", '  "template": "forearm-load",']
    assert "\\u" not in "".join(lines)  # letters as they are


def test_a_value_may_hold_an_equals_sign_and_a_later_one_counts(run: Run) -> None:
    result = run("work", "forearm-load", "--json", "--with", "load_mass=3", "--with", "load_mass=4")
    assert json.loads(result.stdout)["values"]["load_mass"]["value"] == 4.0
    refused = run("work", "forearm-load", "--with", "load_mass=3=4")
    assert refused.exit_code == 1
    assert "load_mass" in refused.stderr


def test_a_folder_is_no_file_to_write_a_page_to(run: Run) -> None:
    result = run("work", "beam-stay-cable", "--html", "/")
    assert result.exit_code == 1
    assert "name another file" in result.stderr
    assert "--out" not in result.stderr


def test_what_cannot_be_written_is_no_matter_of_an_option_it_has_not(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def closed(*_: object) -> None:
        raise PermissionError(errno.EACCES, "Permission denied", "page.html")

    monkeypatch.setattr(command, "_write_page", closed)
    result = run("work", "beam-stay-cable", "--html", "page.html")
    assert result.exit_code == 3
    assert result.stderr == (
        "Permission denied: page.html\n    mend      name a place you may write to\n"
    )


def test_a_problem_in_a_course_s_method(run: Run, tmp_path: Path) -> None:
    (tmp_path / "ours.toml").write_text(
        'order = "forces first"\ngravity = 9.81\n', encoding="utf-8"
    )
    told = run("work", "seesaw-two-riders", "--method", "ours.toml")
    assert told.exit_code == 0, told.stderr
    assert "9.81" in told.stdout
    assert told.stdout.index("Force balance") < told.stdout.index("Torque balance")
    usual = run("work", "seesaw-two-riders").stdout
    assert usual.index("Torque balance") < usual.index("Force balance")


def test_what_is_typed_stands_over_the_method_s_file(run: Run, tmp_path: Path) -> None:
    lines = 'order = "forces first"\ngravity = 9.81\n'
    (tmp_path / "ours.toml").write_text(lines, encoding="utf-8")
    words = ("work", "seesaw-two-riders", "--method", "ours.toml")
    for typed, g in ((("--g", "9.79"), "9.79"), (("--units", "US", "--g", "32.17"), "32.17")):
        told = run(*words, *typed)
        assert told.exit_code == 0, told.stderr
        assert g in told.stdout or "US" in typed  # weights are given in lbf: no g in the working
        assert "9.81" not in told.stdout
        assert ("lbf" in told.stdout) == ("US" in typed)
        assert told.stdout.index("Force balance") < told.stdout.index("Torque balance")
