"""What things are called stands beside the system and says nothing of its physics."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from probgen.bank.bank import default_bank
from probgen.bank.labels import BodyNamed, ByKind, Coined, Label, Sort, asks_coordinates
from probgen.bank.reading import read_template
from probgen.quantities.expression import Name
from probgen.statics.system import Find, Form, System
from tests.situations import HUNG_ASIDE


def test_what_a_file_calls_things(shelf: str) -> None:
    labels = read_template(shelf, "shelf.toml").labels
    assert labels.quantities["tree_mass"] == Label("M", "mass of the tree")
    assert labels.quantities["theta"] == Label("theta", "cable angle", "up")
    assert labels.quantities["T"] == Label("T", Coined(Sort.TENSION, ByKind.CABLE))
    assert labels.quantities["R.x"] == Label("R_x", Coined(Sort.X_COMPONENT, ByKind.HINGE))
    assert labels.quantities["g"].symbol == "g"
    assert labels.elements["R"] == Label("R", ByKind.HINGE)
    assert labels.elements["W_s"] == Label("W_s", BodyNamed("shelf"))
    assert labels.elements["W_t"] == Label("W_t", "the tree")
    assert labels.bodies == {"shelf": "shelf"}
    assert (labels.limits, labels.reasons, labels.finds) == ({}, {}, {})


def test_letters_for_formulas(shelf: str) -> None:
    labels = read_template(shelf, "shelf.toml").labels
    assert (labels.letter("R.x").id, labels.letter("R.x").symbol) == ("R.x", "R_x")
    assert (labels.whole("R").id, labels.whole("R").symbol) == ("R", "R")


def test_an_author_s_own_words_for_what_is_asked(shelf: str) -> None:
    text = shelf.replace('quantity = "T"', 'quantity = "T"\nwording = "how hard it pulls"', 1)
    told = read_template(text, "s.toml").labels.finds
    assert told == {Find("T", Form.VALUE): "how hard it pulls"}


OTHERWISE = [
    ('name = "shelf mass"', 'name = "weight of wood"'),
    ('measured = "up"', 'measured = "from the wall"'),
    ('symbol = "M"', 'symbol = "m_t"'),
    ("[body.shelf]\n", '[body.shelf]\nname = "board"\n'),
    ('symbol = "R"', 'symbol = "R"\nname = "pin"'),
    ('symbol = "T"', 'symbol = "T"\nname = "wire"'),
    ('[[find]]\nquantity = "T"', '[[find]]\nquantity = "T"\nwording = "the pull"'),
]


@pytest.mark.parametrize(("words", "others"), OTHERWISE)
def test_other_words_leave_the_system_as_it_is(shelf: str, words: str, others: str) -> None:
    known = shelf.replace('mass = "m"', 'mass = "m"\nof = "shelf"\nsymbol = "W_s"')
    one = read_template(known, "a")
    other = read_template(one.source.replace(words, others, 1), "a")
    assert other.labels != one.labels
    system = other.system
    if "board" in others:  # only the author's noun says that a weight is the body's own
        assert [e.own for e in system.elements] == [False] * 4
        return
    assert system == one.system


def test_equal_labels_have_one_hash(shelf: str) -> None:
    one, other = (read_template(shelf, "s.toml").labels for _ in range(2))
    assert one == other
    assert hash(one) == hash(other)


def texts(thing: Any) -> Iterator[str]:
    """Every text in a system that is not the letter of a name."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, Name):
        yield thing.id
    elif is_dataclass(thing):
        for field in fields(thing):
            yield from texts(getattr(thing, field.name))
    elif isinstance(thing, dict):
        yield from texts(tuple(thing.items()))
    elif isinstance(thing, tuple | list):
        for each in thing:
            yield from texts(each)


def test_a_system_holds_no_words(shelf: str) -> None:
    system: System = read_template(shelf, "shelf.toml").system
    found = set(texts(system))
    assert "tree_mass" in found
    assert not [text for text in found if " " in text and text != Form.MAGNITUDE_AND_DIRECTION]
    assert "M" not in found  # a letter


def test_only_a_centre_of_mass_is_asked_by_coordinates(shelf: str) -> None:
    assert not asks_coordinates(read_template(shelf, "shelf.toml").labels)
    asked = shelf + '[[find]]\ncentre_of_mass = ["W_s", "W_t"]'
    assert asks_coordinates(read_template(asked, "shelf.toml").labels)


def test_forces_of_one_name_are_told_apart_by_their_points() -> None:
    labels = default_bank().read("climbing-triangle").labels
    floor = {id: labels.quantities[id].name for id in ("N_A", "N_B", "f_A", "f_B")}
    assert floor == {
        "N_A": Coined(Sort.NORMAL_FORCE, "floor", "A"),
        "N_B": Coined(Sort.NORMAL_FORCE, "floor", "B"),
        "f_A": Coined(Sort.FRICTION, "floor", "A"),
        "f_B": Coined(Sort.FRICTION, "floor", "B"),
    }


def test_coefficients_looked_for_in_several_places_are_told_apart_by_their_points() -> None:
    labels = default_bank().read("climbing-triangle").labels
    least = {id: labels.quantities[id].name for id in ("mu_A", "mu_B")}
    assert least == {
        "mu_A": Coined(Sort.LEAST_COEFFICIENT, at="A"),
        "mu_B": Coined(Sort.LEAST_COEFFICIENT, at="B"),
    }
    alone = default_bank().read("ladder-smooth-wall").labels
    (only,) = [own.name for own in alone.quantities.values() if isinstance(own.name, Coined)
               and own.name.sort is Sort.LEAST_COEFFICIENT]  # fmt: skip
    assert only == Coined(Sort.LEAST_COEFFICIENT)


def test_the_push_of_a_body_that_acts_in_several_places_is_told_by_its_point() -> None:
    """The leg BC bears the top at C, is pinned to the other leg at E, and no push else is like."""
    labels = default_bank().read("folding-table-strap").labels
    assert labels.quantities["N_C"].name == Coined(Sort.SUPPORT_FORCE, BodyNamed("right"), "C")
    assert labels.quantities["T"].name == Coined(Sort.TENSION, "strap")


def test_forces_on_particles_are_not_told_by_places_that_no_figure_names() -> None:
    labels = read_template(HUNG_ASIDE, "ball.toml").labels
    assert labels.quantities["T"].name == Coined(Sort.TENSION, ByKind.CABLE)
    assert labels.quantities["S"].name == Coined(Sort.TENSION, ByKind.CABLE)


def test_a_force_that_no_other_is_called_like_needs_no_point(shelf: str) -> None:
    labels = read_template(shelf, "shelf.toml").labels
    assert all(
        not own.name.at for own in labels.quantities.values() if isinstance(own.name, Coined)
    )
