from pathlib import Path

import pytest

from probgen.bank.bank import default_bank, joined, plain_folder, read_choice, read_file
from probgen.bank.reading import FAMILIES
from probgen.bank.supplied import supplied
from probgen.input.fault import InputError
from probgen.quantities.unit import SI, US_CUSTOMARY
from probgen.statics.system import Kind, Role

# Relied on from outside: ids, givens with units, and what is asked.
FIXED = {
    "forearm-load": (
        "limbs",
        "load_mass kg, load_distance cm, forearm_mass kg, forearm_center cm, insertion cm, "
        "muscle_angle deg",
        ["B", "J"],
    ),
    "beam-stay-cable": (
        "beams",
        "length m, beam_mass kg, cable_at m, cable_angle deg, load_mass kg, load_at m",
        ["T", "R"],
    ),
    "ladder-smooth-wall": (
        "ladders",
        "length m, ladder_mass kg, ladder_angle deg, climber_mass kg, climber_at m",
        ["N_w", "N_f", "f", "mu"],
    ),
    "seesaw-two-riders": (
        "levers",
        "mass_1 kg, distance_1 m, mass_2 kg",
        ["distance_2", "P"],
    ),
}


@pytest.mark.parametrize("id", FIXED)
def test_fixed_templates_keep_their_givens_and_finds(id: str) -> None:
    family, givens, finds = FIXED[id]
    template = default_bank().read(id)
    assert template.family == family
    assert [f"{g.id} {g.unit.name}" for g in template.givens] == givens.split(", ")
    assert [find.quantity for find in template.system.finds] == finds


def test_every_family_has_templates_of_its_own() -> None:
    templates = default_bank().read_all()
    assert {template.family for template in templates} == set(FAMILIES)
    for template in templates:
        assert f"/{template.family}/" in template.path
        assert template.room >= 300


def test_angles_drawn_from_a_list_keep_away_from_where_sine_and_cosine_agree() -> None:
    for template in default_bank().read_all():
        for given in template.givens:
            if given.unit.name == "deg":
                assert all(abs(value - 45) >= 5 for value in given.choices), template.id


def test_supplied_templates_have_room_for_five_thousand_sets_of_numbers() -> None:
    bank = default_bank()
    for units in (SI, US_CUSTOMARY):
        small = {id for id in bank.files if bank.read(id, units).room < 5_000}
        assert small == set()


def test_no_template_pushes_with_a_cable() -> None:
    for template in default_bank().read_all():
        for force in template.system.forces:
            if force.kind in (Kind.CABLE, Kind.MUSCLE, Kind.CONTACT, Kind.ROLLER):
                size = template.system.variables.get(force.id)
                assert size is None or size.role is not Role.UNKNOWN or size.nonnegative


def test_a_bank_counts_up_to_a_million(tmp_path: Path) -> None:
    path = tmp_path / "own.toml"
    entry = 'id="a"\ntitle="b"\nrelease={}\n[[template]]\nid="forearm-load"\nrevision={}'
    path.write_text(entry.format(1_000_000, 1_000_000))
    bank = read_choice(path)
    assert (bank.release, bank.revisions) == (1_000_000, {"forearm-load": 1_000_000})
    for most in (0, 1_000_001):
        path.write_text(entry.format(most, most))
        with pytest.raises(InputError) as caught:
            read_choice(path)
        fields = {fault.field for fault in caught.value.faults}
        assert fields == {"release", "template[0].revision"}


@pytest.mark.parametrize("path", sorted(supplied("banks").glob("*.toml")), ids=lambda p: p.stem)
def test_a_supplied_bank_releases_supplied_templates(path: Path) -> None:
    bank = read_choice(path)
    assert bank.release >= 1
    assert {template.id for template in bank.read_all()} <= set(default_bank().files)


def test_a_folder_is_a_bank(tmp_path: Path, shelf: str) -> None:
    (tmp_path / "beams").mkdir()
    (tmp_path / "beams" / "shelf.toml").write_text(shelf)
    (tmp_path / "other.toml").write_text(shelf)
    bank = plain_folder("own", "Own", tmp_path)
    assert bank.read("shelf").title == "Shelf on a stay cable"
    with pytest.raises(InputError, match="as the file or its folder is named"):
        bank.read_all()


def test_the_same_id_twice_in_a_folder_is_refused(tmp_path: Path, shelf: str) -> None:
    for folder in ("a", "b"):
        (tmp_path / folder).mkdir()
        (tmp_path / folder / "shelf.toml").write_text(shelf)
    with pytest.raises(InputError, match="every id once"):
        plain_folder("own", "Own", tmp_path)


BANKS = [
    ("", {"id", "title", "release", "template"}),
    (
        'id="a"\ntitle="b"\nrelease=1\n[[template]]\nid="forearm-laod"\nrevision=1',
        {"template[0].id"},
    ),
    (
        'id="a"\ntitle="b"\nrelease=1\nreleased=2\n[[template]]\nid="forearm-load"',
        {"released", "template[0].revision"},
    ),
]


@pytest.mark.parametrize(("text", "fields"), BANKS)
def test_faults_of_a_bank_file(tmp_path: Path, text: str, fields: set[str]) -> None:
    path = tmp_path / "bank.toml"
    path.write_text(text)
    with pytest.raises(InputError) as caught:
        read_choice(path)
    assert {fault.field for fault in caught.value.faults} == fields


def test_a_template_that_moved_on_is_not_set_quietly(tmp_path: Path) -> None:
    path = tmp_path / "bank.toml"
    path.write_text('id="a"\ntitle="b"\nrelease=1\n[[template]]\nid="forearm-load"\nrevision=99')
    with pytest.raises(InputError, match="release the bank anew"):
        read_choice(path).read("forearm-load")


def test_a_template_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(InputError, match='did you mean "forearm-load"'):
        default_bank().read("forearm-laod")
    with pytest.raises(InputError, match="correct the path"):
        read_file(tmp_path / "nowhere.toml")


def test_a_template_is_found_by_its_path(tmp_path: Path, shelf: str) -> None:
    path = tmp_path / "mine.toml"
    path.write_text(shelf)
    assert read_file(path).id == "shelf"
    path.write_bytes(b"\xff\xfe")
    with pytest.raises(InputError, match="UTF-8"):
        read_file(path)


def test_several_banks_as_one_and_ids_that_clash(tmp_path: Path, shelf: str) -> None:
    banks = []
    for place, names in enumerate((["shelf"], ["other"], ["other", "third"])):
        folder = tmp_path / str(place)
        folder.mkdir()
        for name in names:
            (folder / f"{name}.toml").write_text(shelf.replace('"shelf-stay"', f'"{name}"'))
        banks.append(plain_folder(f"bank {place}", "", folder))
    assert list(joined(banks[:2], "a.toml", "bank").files) == ["shelf", "other"]
    assert joined(banks[:1], "a.toml", "bank") is banks[0]
    with pytest.raises(InputError, match="other, in bank 1 and in bank 2"):
        joined(banks, "a.toml", "bank")
