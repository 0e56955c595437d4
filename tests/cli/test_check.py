"""`probgen check`."""

import re
from pathlib import Path

from probgen.bank.bank import default_bank
from tests.cli.conftest import Run


def test_every_template_has_its_line_and_all_faults_come_at_the_end(
    run: Run, tmp_path: Path
) -> None:
    bank = default_bank()
    forearm = bank.read("forearm-load").source
    pushing = forearm.replace("from = 3.5, to = 5.0, step = 0.1,", "choices = [-4.0, 4.0],")
    (tmp_path / "pushing.toml").write_text(pushing, encoding="utf-8")
    (tmp_path / "bad.toml").write_text("id = 3")
    good = bank.files["seesaw-two-riders"]
    result = run("check", "pushing.toml", "bad.toml", good, "--draws", 60)
    assert result.exit_code == 1
    lines = [line for line in result.stdout.splitlines() if not line.startswith(" ")]
    assert lines[:2] == ["forearm-load  FAILED", lines[1]]
    assert [line.split("  ")[0] for line in lines[1:]] == [
        "forearm-load (US customary)",
        "seesaw-two-riders",
        "seesaw-two-riders (US customary)",
    ]
    assert all("draws proved" in line for line in lines[1:])
    dropped = [line for line in result.stdout.splitlines() if line.startswith("    ")]
    assert any("% by |m_1 − m_2| ≥ 2 kg (riders of one mass make no problem)" in d for d in dropped)
    assert "insertion = −4.0 cm" in result.stderr
    assert "bad.toml: id" in result.stderr
    assert "see it again with: probgen work pushing.toml --with " in result.stderr
    assert run("check", good, "--draws", 60).exit_code == 0


def test_ids_and_banks_are_named_as_elsewhere(run: Run) -> None:
    assert run("check", "seesaw-two-riders", "--draws", 60).exit_code == 0
    every = run("check", "life-science", "--draws", 40)
    assert (every.exit_code, every.stderr) == (0, "")
    wrong = run("check", "seesaw-two-rider", "--draws", 60)
    assert wrong.exit_code == 1
    assert 'did you mean "seesaw-two-riders"?' in wrong.stderr


def test_texts_that_no_font_shows_are_remarked(run: Run, tmp_path: Path) -> None:
    source = default_bank().read("seesaw-two-riders").source
    text = re.sub('title = "', 'title = "\U00013000', source, count=1)
    (tmp_path / "own.toml").write_text(text, encoding="utf-8")
    result = run("check", "own.toml", "--draws", 2)
    assert "    remark: seesaw-two-riders, title: boxes are printed for \U00013000" in result.stdout
    result = run("work", "own.toml", "--pdf", "own.pdf")
    assert "remark: seesaw-two-riders, title: boxes are printed for \U00013000" in result.stderr


def test_a_force_the_wrong_way_round_is_remarked(run: Run, tmp_path: Path) -> None:
    source = default_bank().read("wheelbarrow-compost").source
    text = source.replace("direction = 90", "direction = 270").replace("{{ H }}", "H")
    text = text.replace('name = "', 'name = "at H ', 1)
    (tmp_path / "own.toml").write_text(text, encoding="utf-8")
    result = run("check", "own.toml", "--draws", 20)
    assert result.exit_code == 0
    assert "remark: F is below zero in every draw: turn its direction round" in result.stdout
    assert "remark: the statement names the point H without braces: write {{ H }}" in result.stdout
    assert "remark: a name has the point H without braces: write {{ H }}" in result.stdout
