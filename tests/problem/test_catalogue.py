"""What a list of templates shows, read from a folder of them."""

from __future__ import annotations

from pathlib import Path

import pytest

from probgen.bank.bank import default_bank
from probgen.input.fault import InputError
from probgen.problem.catalogue import Entry, of_family, read_catalogue


def template(folder: Path, id: str, family: str = "beams", level: object = 1) -> Path:
    path = folder / family / f"{id}.toml"
    path.parent.mkdir(exist_ok=True)
    path.write_text(
        f'id = "{id}"\nfamily = "{family}"\nlevel = {level}\ntitle = "T {id}"\nrevision = 3\n'
    )
    return path


def test_by_family_then_level_then_id(tmp_path: Path) -> None:
    for id, family, level in (("b", "beams", 2), ("c", "beams", 1), ("a", "beams", 2),
                              ("d", "arms", 5)):  # fmt: skip
        template(tmp_path, id, family, level)
    assert [entry.id for entry in read_catalogue(tmp_path)] == ["d", "c", "a", "b"]


def test_an_entry_has_what_a_list_shows(tmp_path: Path) -> None:
    path = template(tmp_path, "crane", level=4)
    assert read_catalogue(tmp_path) == (Entry("crane", "beams", 4, "T crane", 3, str(path)),)


@pytest.mark.parametrize("level", [0, 6, '"high"'])
def test_every_file_that_is_no_template_is_named(tmp_path: Path, level: object) -> None:
    one, two = template(tmp_path, "one", level=level), template(tmp_path, "two", level=level)
    two.write_text("[broken")
    template(tmp_path, "sound")
    with pytest.raises(InputError) as caught:
        read_catalogue(tmp_path)
    assert {fault.file for fault in caught.value.faults} == {str(one), str(two)}


@pytest.mark.parametrize(
    ("typed", "mend"),
    [("optics", ""), ("Beam", 'did you mean "beams"?'), ("particle", "particles")],
)
def test_a_family_that_there_is_not_is_no_empty_list(typed: str, mend: str) -> None:
    with pytest.raises(InputError) as caught:
        of_family(read_catalogue(), typed, "--family")
    (fault,) = caught.value.faults
    assert fault.found == f'"{typed}"'
    assert fault.expected.startswith("one of the families beams, friction, ")
    assert mend in fault.mend
    assert bool(mend) is bool(fault.mend)


def test_the_templates_of_one_family(tmp_path: Path) -> None:
    entries = [*read_catalogue(), Entry("mine", "arches", 1, "T", 1, "mine.toml")]
    assert [each.id for each in of_family(entries, "arches", "--family")] == ["mine"]
    assert {each.family for each in of_family(entries, "beams", "--family")} == {"beams"}


def test_the_supplied_templates_are_all_listed() -> None:
    assert {entry.id for entry in read_catalogue()} == set(default_bank().files)
