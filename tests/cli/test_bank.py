"""`probgen bank`, as a department uses it."""

from pathlib import Path

from tests.cli.conftest import Run


def test_a_bank_is_begun_and_templates_are_taken_in(run: Run) -> None:
    made = run("bank", "new", "statics")
    assert made.exit_code == 0, made.output
    taken = run("bank", "import", "statics", "forearm-load", "seesaw-two-riders")
    assert taken.exit_code == 0, taken.output
    assert "2 templates taken in, 0 there already" in taken.output
    assert "is no goal of the bank yet" in taken.output
    assert Path("statics/templates/forearm-load/r1.toml").is_file()
    listed = run("list", "--bank", "statics")
    assert listed.output.count("\n") == 3
    checked = run("check", "statics", "--draws", "50")
    assert checked.exit_code == 0, checked.output


def test_what_is_no_bank_is_told_with_the_mend(run: Run) -> None:
    Path("empty").mkdir()
    refused = run("bank", "import", "empty", "forearm-load")
    assert refused.exit_code == 1
    assert "probgen bank new empty" in refused.output
