"""Templates proved over many draws, and those that fail shown so that they can be seen again."""

import tomllib
from collections.abc import Sequence
from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.supplied import supplied
from probgen.bank.template import Template
from probgen.input.fault import Faults, InputError
from probgen.input.remedy import WorkAgain
from probgen.problem.single import work_single
from probgen.problem.template_check import check_template, templates_at

BANK = default_bank()
FOREARM = BANK.read("forearm-load").source
PUSHING = 'from = 3.5, to = 5.0, step = 0.1, unit = "cm"', 'choices = [-4.0, 4.0], unit = "cm"'
NEVER = '[[hinge]]', '[[require]]\nthat = "B < 1 N"\nbecause = "weak"\n\n[[hinge]]'


def changed(old: str, new: str) -> Template:
    assert old in FOREARM
    return read_template(FOREARM.replace(old, new, 1), "own.toml")


@pytest.mark.parametrize("id", sorted(BANK.files))
def test_supplied_templates_hold(id: str) -> None:
    checked = check_template(BANK.read(id), 100)
    assert checked.proved + checked.refused == 100
    balanced = bool(checked.template.system.unknowns)
    assert (0.0 < checked.residual < 1e-9) if balanced else checked.residual == 0.0


def test_draws_that_fail_are_shown_so_that_they_fail_again() -> None:
    with pytest.raises(InputError) as caught:
        check_template(changed(*PUSHING), 200)
    assert len(caught.value.faults) == 3
    fault = caught.value.faults[0]
    assert "comes out negative" in fault.field
    assert "insertion = −4.0 cm" in fault.found
    assert isinstance(fault.remedy, WorkAgain)
    assert fault.remedy.template == "own.toml"
    with pytest.raises(InputError, match="comes out negative"):
        work_single("forearm-load", stated=fault.remedy.values)


@pytest.mark.parametrize(
    ("size", "moved"),
    [
        ("90 cm", "M lies off the forearm"),
        ("15.5 cm", "M and C change places along the forearm"),
        ("load_distance", "M and H fall together"),
        ("insertion*5 kg/(load_mass - 5 kg)", "insertion has no size"),
    ],
)
def test_proportions_that_move_a_point_elsewhere_are_shown(size: str, moved: str) -> None:
    stated = 'insertion = "9 cm"', f'insertion = "{size}"'
    with pytest.raises(InputError) as caught:
        check_template(changed(*stated), 200)
    assert all(fault.field == "picture" for fault in caught.value.faults)
    assert any(moved in fault.expected for fault in caught.value.faults)
    assert "load_mass = " in caught.value.faults[0].found


def test_proportions_that_keep_every_point_in_its_order_are_sound() -> None:
    """A template without any, and one with a size that leaves all points where they belong."""
    plain = changed('insertion = "9 cm"', "")
    assert plain.picture == {}
    assert check_template(plain, 50).proved == 50
    own = changed('insertion = "9 cm"', 'insertion = "8 cm"')
    assert check_template(own, 50).proved == 50


def test_the_same_draws_every_time() -> None:
    told = []
    for _ in range(2):
        with pytest.raises(InputError) as caught:
            check_template(changed(*PUSHING), 50)
        told.append(str(caught.value))
    assert told[0] == told[1]


def test_requirements_that_no_draw_meets() -> None:
    with pytest.raises(InputError, match="0 of 50 draws fit for use"):
        check_template(changed(*NEVER), 50)


LIMBS, FIRST = supplied("templates") / "limbs", supplied("banks") / "first-course.toml"
OF_LIMBS = {path.stem for path in LIMBS.glob("*.toml")}
OF_FIRST = {row["id"] for row in tomllib.loads(FIRST.read_text(encoding="utf-8"))["template"]}
PLACES: dict[str, tuple[Sequence[Path], set[str]]] = {
    "nothing named": ([], set(BANK.files)),
    "a template": ([BANK.files["forearm-load"]], {"forearm-load"}),
    "a folder": ([LIMBS], OF_LIMBS),
    "a bank": ([FIRST], OF_FIRST),
    "several": ([BANK.files["tiptoe-achilles"], FIRST], {"tiptoe-achilles", *OF_FIRST}),
}


@pytest.mark.parametrize(("paths", "ids"), PLACES.values(), ids=PLACES)
def test_the_templates_of_a_place_are_those_and_no_others(
    paths: Sequence[Path], ids: set[str]
) -> None:
    faults = Faults("")
    assert {template.id for template in templates_at(paths, faults)} == ids
    assert not faults.found


def test_what_cannot_be_read_does_not_hide_the_others(tmp_path: Path) -> None:
    (tmp_path / "bad.toml").write_text("id = 3")
    faults = Faults("")
    paths = [tmp_path / "bad.toml", tmp_path / "gone.toml", BANK.files["forearm-load"]]
    assert [template.id for template in templates_at(paths, faults)] == ["forearm-load"]
    assert {Path(fault.file).name for fault in faults.found} >= {"bad.toml", "gone.toml"}
