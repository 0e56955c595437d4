"""Templates proved over many draws, and those that fail shown so that they can be seen again."""

import tomllib
from collections.abc import Sequence
from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.reading import read_template
from probgen.bank.supplied import supplied
from probgen.bank.template import Template
from probgen.draws.sample import Sample, sample
from probgen.input.fault import Faults, InputError
from probgen.input.remedy import WorkAgain
from probgen.problem import template_check
from probgen.problem.single import work_single
from probgen.problem.template_check import _untold, check_template, templates_named
from probgen.quantities.printing import plain
from probgen.quantities.unit import SI, US_CUSTOMARY
from tests.bank.test_shape import PLATE, part
from tests.situations import HEAD

BANK = default_bank()
FOREARM = BANK.read("forearm-load").source
PUSHING = 'from = 3.5, to = 5.0, step = 0.1, unit = "cm"', 'choices = [-4.0, 4.0], unit = "cm"'
STATED = "[[require]]\n"
NEVER = "[[hinge]]", '[[require]]\nthat = "B < 1 N"\nbecause = "weak"\n\n[[hinge]]'


def changed(old: str, new: str) -> Template:
    assert old in FOREARM
    return read_template(FOREARM.replace(old, new, 1), "own.toml")


def hold(id: str, draws: int) -> None:
    """A supplied template passes its check in both systems of units."""
    faults = Faults("")
    templates = list(templates_named([id], faults))
    assert not faults.found
    assert [template.units for template in templates] == [SI, US_CUSTOMARY]
    for template in templates:
        checked = check_template(template, draws)
        assert checked.proved + checked.refused == draws
        assert (checked.reversed, checked.bare, checked.bare_in_names) == ((), (), ())
        balanced = bool(checked.template.system.unknowns)
        assert (0.0 < checked.residual < 1e-9) if balanced else checked.residual == 0.0


@pytest.mark.parametrize("id", sorted(BANK.files))
def test_supplied_templates_hold(id: str) -> None:
    hold(id, 500)


@pytest.mark.proof
@pytest.mark.parametrize("id", sorted(BANK.files))
def test_supplied_templates_hold_over_25_000_draws(id: str) -> None:
    hold(id, 25_000)


def test_a_force_the_wrong_way_round_in_every_draw_is_named() -> None:
    """A wheelbarrow's hands pushed down; where some draws need a pull up, nothing is wrong."""
    source = BANK.read("wheelbarrow-compost").source
    upside_down = source.replace("direction = 90", "direction = 270")
    assert source.count("direction = 90") == 1
    for text, told in ((source, []), (upside_down, ["F"])):
        checked = check_template(read_template(text, "own.toml"), 60)
        assert [plain(each) for each in checked.reversed] == told


PROPPED = (
    HEAD.replace('"Own."', '"A bar {{ L }} long, of {{ m }}."')
    + """
[given]
L = { name = "length", choices = [1.2, 1.4], unit = "m" }
m = { name = "mass", choices = [4.0, 5.0, 6.0], unit = "kg" }
[points]
A = [0, 0]
B = ["L", 0]
[body.bar]
along = ["A", "B"]
[[hinge]]
at = "A"
symbol = "R"
[[weight]]
uniform = true
mass = "m"
[[force]]
at = "B"
direction = 90
symbol = "P"
"""
)
PASSED_BY = PROPPED + '[[find]]\nquantity = "R"\nas = "components"\n'
LEFT_OPEN = PROPPED + '[[force]]\nat = "A"\ndirection = 0\nsymbol = "Q"\n[[find]]\nquantity = "P"\n'


@pytest.mark.parametrize("text", [PASSED_BY, LEFT_OPEN], ids=["passed by", "left open"])
def test_a_force_that_no_step_works_out_is_not_judged(text: str) -> None:
    assert check_template(read_template(text, "own.toml"), 20).reversed == ()


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
    with pytest.raises(InputError, match="0 of 50 draws fit for use") as caught:
        check_template(changed(*NEVER), 50)
    assert caught.value.faults[0].mend.endswith("dropped are 100 % by B < 1 N (weak)")


def test_each_requirement_says_what_it_drops() -> None:
    """Bags of 1.0 to 8.0 kg by 0.5 kg: 10 of 15 are below 6 kg, so a third is dropped."""
    light = f'{STATED}that = "load_mass < 6 kg"\nbecause = "a light bag"\n\n[[hinge]]'
    checked = check_template(changed("[[hinge]]", light), 20_000)
    (dropped,) = checked.dropped
    assert dropped.by == "m_b < 6 kg (a light bag)"
    assert dropped.share == pytest.approx(1 / 3, abs=0.02)  # six deviations of a binomial
    assert checked.refused == round(dropped.share * 20_000)


def test_a_given_that_the_statement_never_tells_is_refused() -> None:
    told, symbol = "of {{ load_mass }}", "of {{ load_mass | symbol }}"
    with pytest.raises(InputError) as caught:
        check_template(changed(told, symbol), 20)
    (fault,) = caught.value.faults
    assert (fault.field, fault.found) == ("statement", "load_mass (mass of the bag)")
    assert "{{ load_mass }}" in fault.mend


@pytest.mark.parametrize(("told", "refused"), [("{{ O }}", False), ("{{ A }}", True), ("", True)])
def test_where_coordinates_are_measured_from_is_told(told: str, *, refused: bool) -> None:
    given = " ".join(f"{{{{ {id} }}}}" for id in "bhrwq")
    head = HEAD.replace('"Own."', f'"Own, {given}, from the point {told}."')
    parts = part('rectangle = ["O", "B"]') + part('circle = "Q"\nradius = "r"', symbol="W_2")
    find = '[[find]]\ncentre_of_mass = ["W_1", "W_2"]'
    template = read_template(head + PLATE + parts + find, "own.toml")
    found = [each.expected for each in _untold(template)]
    assert found == (["the point that coordinates are measured from, the one at [0, 0]"] * refused)


def test_what_acts_off_its_body_is_refused_once_with_a_draw_that_shows_it() -> None:
    """A forearm that ends at the centre of mass: the bag is beyond it in all draws."""
    with pytest.raises(InputError) as caught:
        check_template(changed('along = ["E", "H"]', 'along = ["E", "C"]'), 200)
    (fault,) = caught.value.faults
    assert "the bag acts at H, which lies beyond the forearm" in fault.field
    assert isinstance(fault.remedy, WorkAgain)


def test_a_draw_in_us_customary_is_shown_so_that_it_fails_again() -> None:
    text = FOREARM.replace("from = 1.4, to = 2.0, step = 0.1", "choices = [-2.0, 2.0]")
    assert text != FOREARM
    assert check_template(read_template(text, "own.toml"), 50).refused == 0
    with pytest.raises(InputError) as caught:
        check_template(read_template(text, "own.toml", US_CUSTOMARY), 50)
    remedy = caught.value.faults[0].remedy
    assert isinstance(remedy, WorkAgain)
    assert remedy.customary


LIMBS, FIRST = supplied("templates") / "limbs", supplied("banks") / "first-course.toml"
OF_LIMBS = {path.stem for path in LIMBS.glob("*.toml")}
OF_FIRST = {row["id"] for row in tomllib.loads(FIRST.read_text(encoding="utf-8"))["template"]}
PLACES: dict[str, tuple[Sequence[str], set[str]]] = {
    "nothing named": ([], set(BANK.files)),
    "an id": (["forearm-load"], {"forearm-load"}),
    "a template": ([str(BANK.files["forearm-load"])], {"forearm-load"}),
    "a folder": ([str(LIMBS)], OF_LIMBS),
    "a bank": ([str(FIRST)], OF_FIRST),
    "a bank by its name": (["first-course"], OF_FIRST),
    "several": (["tiptoe-achilles", str(FIRST)], {"tiptoe-achilles", *OF_FIRST}),
}


@pytest.mark.parametrize(("named", "ids"), PLACES.values(), ids=PLACES)
def test_the_templates_of_a_place_are_those_and_no_others(
    named: Sequence[str], ids: set[str]
) -> None:
    faults = Faults("")
    assert {template.id for template in templates_named(named, faults)} == ids
    assert not faults.found


def test_what_cannot_be_read_does_not_hide_the_others(tmp_path: Path) -> None:
    (tmp_path / "bad.toml").write_text("id = 3")
    faults = Faults("")
    gone = tmp_path / "gone.toml"
    named = [str(tmp_path / "bad.toml"), str(gone), "forearm-lode", "forearm-load"]
    assert [template.id for template in templates_named(named, faults)] == ["forearm-load"] * 2
    assert Path(faults.found[0].file).name == "bad.toml"
    missing = [fault.mend for fault in faults.found if fault.file == "PATH"]
    assert missing == ["", 'did you mean "forearm-load"?']


def test_many_draws_are_taken_part_by_part(monkeypatch: pytest.MonkeyPatch) -> None:
    """So that a million need no more memory than a part of them."""
    made: list[Sample] = []

    def noted(template: Template, draws: int, part: int = 0) -> Sample:
        made.append(sample(template, draws, part))
        return made[-1]

    monkeypatch.setattr(template_check, "sample", noted)
    whole = check_template(BANK.read("beam-stay-cable"), 120)
    monkeypatch.setattr(template_check, "_AT_ONCE", 50)
    parts = check_template(BANK.read("beam-stay-cable"), 120)
    assert [len(each) for each in made] == [120, 50, 50, 20]
    assert whole.proved + whole.refused == parts.proved + parts.refused == 120
    assert parts.refused > 0
    assert 0.0 < sum(each.share for each in parts.dropped) < 1.0
    first, second = made[1].places, made[2].places
    assert (first == made[0].places[:, :50]).all()
    assert (first != second).any()
