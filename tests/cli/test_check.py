"""`probgen check`."""

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
    first, second = result.stdout.splitlines()
    assert first == "forearm-load  FAILED"
    assert second.startswith("seesaw-two-riders  ")
    assert "draws proved" in second
    assert "insertion = −4.0 cm" in result.stderr
    assert "bad.toml: id" in result.stderr
    assert "see it again with: probgen work pushing.toml --with " in result.stderr
    assert run("check", good, "--draws", 60).exit_code == 0
