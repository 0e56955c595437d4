"""`probgen bank`, as a department uses it."""

import json
from pathlib import Path

from probgen.bank.bank import default_bank
from tests.banks import make_bank, put, review, template_text, write_release
from tests.cli.conftest import Run


def test_a_bank_is_begun_and_templates_are_taken_in(run: Run) -> None:
    made = run("bank", "new", "statics")
    assert made.exit_code == 0, made.output
    taken = run("bank", "import", "statics", "forearm-load", "seesaw-two-riders")
    assert taken.exit_code == 0, taken.output
    assert "2 templates taken in, 0 there already" in taken.output
    assert "is no goal of the bank yet" in taken.output
    for id in ("forearm-load", "seesaw-two-riders"):
        revision = default_bank().read(id).revision
        assert Path(f"statics/templates/{id}/r{revision}.toml").is_file()
    listed = run("list", "--bank", "statics")
    assert listed.output.count("\n") == 3
    checked = run("check", "statics", "--draws", "50")
    assert checked.exit_code == 0, checked.output


def test_what_a_template_lacks_for_a_release_is_told_when_it_is_taken_in(run: Run) -> None:
    assert run("bank", "new", "statics").exit_code == 0
    text = template_text("forearm-load", 1)
    head, rest = text.split("[origin]", 1)
    Path("own.toml").write_text(head + rest[rest.index("[given]") :], encoding="utf-8")
    taken = run("bank", "import", "statics", "own.toml")
    assert taken.exit_code == 0, taken.output
    assert "remark: forearm-load lacks what a release needs: origin.author, " in taken.output


def test_what_is_no_bank_is_told_with_the_mend(run: Run) -> None:
    Path("empty").mkdir()
    refused = run("bank", "import", "empty", "forearm-load")
    assert refused.exit_code == 1
    assert "probgen bank new empty" in refused.output


def test_two_states_are_compared_and_told(run: Run) -> None:
    make_bank(Path("statics"))
    write_release(Path("statics"), "statics-2027.1", {"forearm-load": 1, "seesaw-two-riders": 1})
    text = template_text("forearm-load", 2, direction='"90 - muscle_angle"')
    put(Path("statics"), "forearm-load", 2, text.replace("still in one hand", "in one hand, still"))
    told = run("bank", "compare", "statics")
    assert told.exit_code == 0, told.output
    lines = told.output.splitlines()
    assert lines[1] == "other physics, reworded: forearm-load (r1 -> r2)"
    assert "    muscle 1, direction: 90 + muscle_angle -> 90 - muscle_angle" in lines
    (said,) = (line for line in lines if line.startswith("    statement: "))
    assert "still in one hand," in said.partition(" -> ")[0]
    assert "in one hand, still," in said.partition(" -> ")[2]
    assert "    the same answers in 0 of 20 equal draws; the first:" in lines
    assert lines[-1] == "1 as they were"
    data = json.loads(run("bank", "compare", "statics-2027.1", "statics", "--json").output)
    (change,) = data["changed"]
    assert change["kinds"] == ["other physics", "reworded"]
    assert len(change["trials"]) == 20
    page = Path("shown/comparison.html")
    shown = run("bank", "compare", "statics", "--out", "shown", "--workers", "1")
    assert shown.output.splitlines() == [*lines, str(page)]
    assert page.read_text("utf-8").count("<article") == 1
    page.write_text("mine", "utf-8")
    assert run("bank", "compare", "statics", "--out", "shown").exit_code == 1
    assert page.read_text("utf-8") == "mine"
    nothing = run("bank", "compare", "statics", "statics")
    assert nothing.output == "statics -> statics\n2 as they were\n"


def test_what_waits_is_shown_and_a_verdict_given(run: Run) -> None:
    make_bank(Path("statics"))
    review(Path("statics"), "seesaw-two-riders", 1)
    review(Path("statics"), "forearm-load", 1, person="B. Reader", note="well put")
    text = template_text("forearm-load", 2, direction='"90 - muscle_angle"')
    put(Path("statics"), "forearm-load", 2, text)
    told = run("bank", "review", "statics")
    assert told.exit_code == 0, told.output
    lines = told.output.splitlines()
    assert lines[0] == "forearm-load r2: not proposed"
    assert "    other physics: forearm-load (r1 -> r2)" in lines
    assert lines[-1] == "1 template of 2 to be reviewed"
    asked = ("bank", "review", "statics", "forearm-load", "--verdict", "proposed")
    given = run(*asked, "--by", "A. Editor", "--note", "reworded only", "--date", "2027-05-04")
    assert given.exit_code == 0, given.output
    assert "    proposed by A. Editor, 2027-05-04: reworded only" in given.output
    assert "other physics" in given.output
    own = run("bank", "review", "statics", "forearm-load", "--by", "A. Editor", "--verdict",
              "approved")  # fmt: skip
    assert own.exit_code == 1
    assert "somebody who neither wrote nor proposed it" in own.output
    first = run("bank", "review", "statics", "forearm-load", "--revision", "1")
    assert "approved by B. Reader, 2027-05-03: well put" in first.output


def test_a_verdict_without_its_person_or_templates(run: Run) -> None:
    make_bank(Path("statics"))
    for words in (
        ("--verdict", "approved", "--by", "A. Reader"),
        ("forearm-load", "--verdict", "approved"),
        ("forearm-load", "--by", "A. Reader"),
    ):
        assert run("bank", "review", "statics", *words).exit_code == 2
    assert not Path("statics/reviews.csv").exists()


def test_a_catalogue_is_one_page_that_is_ours(run: Run) -> None:
    make_bank(Path("statics"))
    written = run("bank", "catalogue", "statics", "--out", "shelf")
    assert written.exit_code == 0, written.output
    assert "2 problems in shelf/catalogue.html" in written.output
    page = Path("shelf/catalogue.html")
    first = page.read_bytes()
    assert first.count(b"<article") == 2
    again = run("bank", "catalogue", "statics", "--out", "shelf")
    assert again.exit_code == 0, again.output
    assert page.read_bytes() == first
    page.write_bytes(first + b"mine")
    refused = run("bank", "catalogue", "statics", "--out", "shelf")
    assert refused.exit_code == 1
    assert page.read_bytes() == first + b"mine"
    unknown = run("bank", "catalogue", "static")
    assert unknown.exit_code == 1
    assert "expected" in unknown.output


def test_what_a_course_sets_is_noted_found_and_told(run: Run) -> None:
    """From a bank near the course, by the name of a release, to what was set from it."""
    make_bank(Path("statics"))
    write_release(Path("statics"), "statics-2027.1", {"forearm-load": 1, "seesaw-two-riders": 1})
    assert run("new", "mechanics").exit_code == 0
    text = (
        'course = "Mechanics"\ntitle = "Week 2"\nroster = "../roster.csv"\n'
        'bank = "statics-2027.1"\n[[problem]]\ntemplate = "forearm-load"\npoints = 10\n'
    )
    Path("mechanics/week-1/assignment.toml").write_text(text, "utf-8")
    draft = run("build", "mechanics/week-1/assignment.toml", "--draft")
    assert draft.exit_code == 0, draft.output
    assert not Path("statics/uses").exists()
    built = run("build", "mechanics/week-1/assignment.toml")
    assert built.exit_code == 0, built.output
    told = json.loads(run("bank", "uses", "statics", "--json").output)
    assert [(use["template"], use["course"], use["students"]) for use in told] == [
        ("forearm-load", "Mechanics", 12)
    ]
    assert "Week 2" in run("bank", "uses", "statics", "forearm-load").output
    day = told[0]["day"]
    form = run("form", "mechanics/week-1/output")
    assert form.exit_code == 0, form.output
    (table,) = Path().rglob("answer-form.csv")
    head, *rows = table.read_text("utf-8-sig").splitlines()
    assert head.split(",")[3] == "1 B"
    table.write_text(
        "\n".join([head, *(f"{row[: row.index(',,')]},987654321,N,,,," for row in rows)])
    )
    marked = run("mark", "mechanics/week-1/output", str(table), "--out", "marks")
    assert marked.exit_code == 0, marked.output
    noted = run("bank", "note", "statics", "marks", "--date", "2027-01-05")
    assert noted.exit_code == 0, noted.output
    assert noted.output.splitlines()[0] == "forearm-load r1: 0.00 of its points earned"
    (use,) = json.loads(run("bank", "uses", "statics", "--json").output)
    assert (use["marked"], use["facility"], use["day"]) == (12, 0.0, day)
    other = make_bank(Path("other"), ["seesaw-two-riders"])
    assert "is not in other, and not noted" in run("bank", "note", str(other), "marks").output
    assert run("bank", "uses", "statics", "seesaw-two-riders").output == "0 uses\n"
    wrong = run("bank", "uses", "statics", "seesaw")
    assert wrong.exit_code == 1
    assert 'did you mean "seesaw-two-riders"' in wrong.output
    unused = run("bank", "find", "statics", "--not-used-since", "2020-01-01", "--json")
    assert [each["id"] for each in json.loads(unused.output)] == ["seesaw-two-riders"]
    found = run("bank", "find", "statics", "--asks", "direction").output
    assert "forearm-load" in found
    assert found.endswith("1 template\n")


def test_a_course_may_say_no(run: Run) -> None:
    make_bank(Path("statics"), ["forearm-load"])
    assert run("new", "mechanics").exit_code == 0
    path = Path("mechanics/week-1/assignment.toml")
    text = path.read_text("utf-8").partition("[[problem]]")[0]
    own = f'bank = "../../statics"\n{text}[[problem]]\ntemplate = "forearm-load"\npoints = 10\n'
    path.write_text(own, "utf-8")
    built = run("build", str(path), "--no-uses")
    assert built.exit_code == 0, built.output
    assert not Path("statics/uses").exists()


def test_problems_are_chosen_by_rule_and_the_same_again(run: Run) -> None:
    make_bank(Path("statics"), ["forearm-load", "seesaw-two-riders", "leg-raise-cuff"])
    assert run("new", "mechanics").exit_code == 0
    path = Path("mechanics/week-1/assignment.toml")
    head = 'course = "M"\ntitle = "W"\nroster = "../roster.csv"\nbank = "../../statics"\n'
    path.write_text(f'{head}[[problem]]\nfamily = "limbs"\nlevel = 2\npoints = 4\n')
    built = run("build", str(path), "--no-uses")
    assert built.exit_code == 0, built.output
    (line,) = [line for line in built.output.splitlines() if "taken for" in line]
    assert "taken for limbs, level 2: " in line
    put(Path("statics"), "bent-back-toolbox")
    put(Path("statics"), "arm-held-out")
    again = run("build", str(path), "--no-uses")
    assert line in again.output.splitlines()
    path.write_text(f'{head}[[problem]]\nfamily = "limb"\npoints = 4\n')
    refused = run("build", str(path), "--draft", "--replace")
    assert refused.exit_code == 1
    assert 'family "limb" fits 0' in refused.output


def test_a_bank_is_checked_with_what_to_look_at(run: Run) -> None:
    make_bank(Path("statics"), ())
    narrow = template_text("plank-raised-slowly").replace("step = 0.02", "step = 0.10")
    put(Path("statics"), "plank-raised-slowly", 1, narrow)
    checked = run("bank", "check", "statics", "--draws", "50", "--workers", "1")
    assert checked.exit_code == 0, checked.output
    assert "plank-raised-slowly  50 draws proved" in checked.output
    assert "sets of numbers; 5000 last for years of large classes" in checked.output
    assert "        mend  widen a range, or make a step smaller" in checked.output.splitlines()
    data = json.loads(run("bank", "check", "statics", "--draws", "50", "--json").output)
    assert [(own["units"], own["proved"]) for own in data] == [("SI", 50), ("US customary", 50)]
    assert data[0]["doubts"][0]["kind"] == "few sets of numbers"
    put(Path("statics"), "forearm-load", 1, template_text("forearm-load", direction='"270"'))
    failed = run("bank", "check", "statics", "--draws", "50", "--workers", "1")
    assert failed.exit_code == 1
    assert "forearm-load  FAILED" in failed.output
